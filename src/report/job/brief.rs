//! The call in a few short lines, to read out on the phone to a senior technician.

use super::{Job, no_field_call, severity_word};
use crate::source::safe;

/// Lines at most.
const LINES: usize = 12;
/// Columns of a line; on a phone's forty it takes two rows.
const WIDTH: usize = 78;
/// A first sentence shorter than this tells only how the furnace stands.
const PREAMBLE: usize = 20;
/// Of what was found, the worst that are told.
const FOUND: usize = 3;

impl Job {
    /// The call in at most twelve short lines: what it came to, what is to be done, what shows it, what is open.
    pub fn brief(&self) -> String {
        let mut lines = vec![format!("Call: {}", self.complaint)];
        // Whoever hears it on the phone must not take it for a furnace in a house.
        let from = self.answered_from.iter();
        lines.extend(from.map(|from| format!("NO FIELD CALL: {}", no_field_call(from))));
        lines.extend(
            self.dangers
                .first()
                .map(|danger| format!("DANGER was raised: {danger}")),
        );
        lines.push(self.ended.clone().unwrap_or_else(|| "Still walking.".to_owned()));
        lines.extend(self.stands_at.iter().map(|asked| format!("Stands at: {asked}")));
        lines.extend(
            self.drafts()
                .next()
                .map(|tree| format!("DRAFT was walked: {}", tree.title)),
        );
        lines.extend(self.remedy.clone());
        lines.extend(self.found());
        let last = self.last_lines();
        lines.extend(self.shown(LINES.saturating_sub(lines.len() + last.len())));
        lines.extend(last);
        let short = lines.iter().map(|line| safe(line).cut(WIDTH).to_string());
        short.map(|line| line + "\n").collect()
    }

    /// The worst of what was found beside the verdict, and how much more there is.
    fn found(&self) -> Vec<String> {
        let noted = self
            .found_on_the_way
            .iter()
            .map(|noted| format!("Found: {}", noted.title));
        let worth_telling = self.findings.iter().filter(|finding| finding.severity != "note");
        let findings =
            worth_telling.map(|finding| format!("{}: {}", severity_word(finding.severity), finding.text));
        let mut found: Vec<String> = noted.chain(findings).collect();
        let more = found.len().saturating_sub(FOUND);
        found.truncate(FOUND);
        if let (Some(last), 1..) = (found.last_mut(), more) {
            *last = format!("{last}; and {more} more");
        }
        found
    }

    /// What the verdict rests on and what has changed, then the newest answers; work that was done is no news.
    fn shown(&self, room: usize) -> Vec<String> {
        let mut shown: Vec<String> = Vec::new();
        for (title, value) in self.proof.iter().flat_map(|line| &line.taken) {
            let words = asked(title, value, "");
            if !shown.contains(&words) {
                shown.push(words);
            }
        }
        for (entry, before, after) in self
            .before_and_after()
            .filter(|(_, before, after)| !before.is_as(after))
        {
            let values = format!("{}, then {}", before.value, after.value);
            shown.push(asked(&entry.title, &values, ""));
        }
        shown.truncate(room);
        let mut newest: Vec<String> = Vec::new();
        for answer in self.answers.iter().rev().filter(|answer| answer.kind != "work") {
            let close = if answer.borderline { " (borderline)" } else { "" };
            let came_out = answer.worked_out.iter().rev();
            let came_out = came_out.map(|came_out| asked(&came_out.title, &came_out.value, ""));
            for words in came_out.chain([asked(&answer.title, &answer.answer, close)]) {
                if !shown.contains(&words) && !newest.contains(&words) {
                    newest.push(words);
                }
            }
        }
        newest.truncate(room - shown.len());
        shown.extend(newest.into_iter().rev());
        shown
    }

    /// What must not be forgotten, for the end.
    fn last_lines(&self) -> Vec<String> {
        let passed_over: usize = self.not_looked_at.iter().map(|visit| visit.checks.len()).sum();
        let mut lines = Vec::new();
        if passed_over > 0 {
            let trees: Vec<&str> = (self.not_looked_at.iter())
                .map(|visit| visit.tree.as_str())
                .collect();
            lines.push(format!(
                "Not looked at, {passed_over} {}: {}",
                if passed_over == 1 { "check" } else { "checks" },
                trees.join(", ")
            ));
        }
        let open: Vec<&str> = (self.put_back.iter())
            .filter(|entry| entry.state != "done")
            .map(|entry| entry.text.as_str())
            .collect();
        if !open.is_empty() {
            lines.push(format!(
                "Still open, to be put back, {}: {}",
                open.len(),
                open.join("; ")
            ));
        }
        lines
    }
}

/// What was asked, as short as it can be said, and the whole of its answer.
fn asked(title: &str, answer: &str, more: &str) -> String {
    let title = title.split(" (").next().unwrap_or(title);
    // Of `Power off. How is the wheel?` the question is enough; a longer first sentence says what it is about.
    let title = match title.split_once(". ") {
        Some((before, question)) if before.len() < PREAMBLE => question,
        _ => title,
    };
    let colon = if title.ends_with(['?', '.', ':']) { "" } else { ":" };
    let answer = safe(&format!("{colon} {answer}{more}"));
    let room = WIDTH.saturating_sub(answer.width()).max(WIDTH / 3);
    format!("{}{answer}", safe(title).cut(room))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_question_gives_way_to_its_answer() {
        assert_eq!(
            asked("Power off. How is the wheel? (look)", "Loose", ""),
            "How is the wheel? Loose"
        );
        assert_eq!(
            asked("Watch the CO for five minutes. What does it do?", "Falls", ""),
            "Watch the CO for five minutes. What does it do? Falls"
        );
        assert_eq!(
            asked("Flame current", "3 uA", " (borderline)"),
            "Flame current: 3 uA (borderline)"
        );
        let long = asked(&"long ".repeat(40), "3 uA", "");
        assert!(
            long.ends_with(": 3 uA") && long.chars().count() <= WIDTH,
            "{long}"
        );
    }
}
