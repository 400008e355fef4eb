//! The job report as text, for a terminal, a mail or a printer.

use super::super::columns_on;
use super::{Job, TreeEntry, asked_words, no_field_call, severity_word};
use crate::source::{safe, wrap};
use crate::walk::NO_LONGER;

/// Names of faults that are no longer reached after an answer; after a first one that can be half the library.
const RULED_OUT: usize = 4;

pub(in crate::report) const GOVERNS: &str = "Local codes, the rating plate and the maker's instructions govern. Work that needs a \
                       license belongs to those who hold one.";

impl Job {
    /// The report as text of at most 78 columns, or as many as the terminal has.
    pub fn text(&self, terminal: Option<usize>) -> String {
        let mut page = Page {
            text: String::new(),
            columns: columns_on(terminal),
        };
        page.title("JOB REPORT");
        page.line("Complaint", &self.complaint);
        for (label, value) in [
            ("Site", &self.site),
            ("Equipment", &self.equipment),
            ("Technician", &self.technician),
        ] {
            page.line(label, value.as_deref().unwrap_or("not given"));
        }
        page.line("Opened", &self.opened);
        page.line("Last entry", &format!("{} ({})", self.last, self.status));
        self.result(&mut page);
        self.work_lines(&mut page);
        self.proof_lines(&mut page);
        self.details(&mut page);
        page.title("RECORD");
        page.line("Session", &self.session);
        page.line("Library", &self.library);
        page.line("Its hash", &self.library_hash);
        for overlay in &self.overlays {
            page.line("Overlay", overlay);
        }
        for tree in &self.trees {
            page.line("Tree", &tree_words(tree));
        }
        page.line("Log", &format!("{} lines", self.records));
        page.line("Its head", &self.head);
        page.blank();
        page.text(GOVERNS);
        page.text
    }

    fn result(&self, page: &mut Page) {
        page.title("RESULT");
        if let Some(from) = &self.answered_from {
            page.item(&format!("NO FIELD CALL: {}", no_field_call(from)));
        }
        for tree in self.drafts() {
            page.item(&format!(
                "NOT RELEASED: walked by a draft of the tree “{}”.",
                tree.title
            ));
        }
        for danger in &self.dangers {
            page.item(&format!("DANGER was raised on this call: {danger}"));
        }
        page.item(self.ended.as_deref().unwrap_or("The call is not finished."));
        if let Some(asked) = &self.stands_at {
            page.item(&format!("It stands at: {asked}"));
        }
        for words in [&self.because, &self.remedy, &self.advice, &self.then]
            .into_iter()
            .flatten()
        {
            page.item(words);
        }
        for noted in &self.found_on_the_way {
            page.item(&format!("Also found on the way: {}", noted.title));
            for words in [noted.because.as_ref(), Some(&noted.remedy), noted.advice.as_ref()] {
                words.into_iter().for_each(|words| page.under(words));
            }
        }
        if !self.not_looked_at.is_empty() {
            page.title("NOT LOOKED AT");
        }
        for visit in &self.not_looked_at {
            page.item(&format!("{}, since “{}” was noted:", visit.tree, visit.because));
            for check in &visit.checks {
                page.under(check);
            }
        }
        if !self.findings.is_empty() {
            page.title("FINDINGS, WORST FIRST");
            for finding in &self.findings {
                page.item(&format!("{}: {}", severity_word(finding.severity), finding.text));
            }
        }
    }

    fn proof_lines(&self, page: &mut Page) {
        if self.proof.is_empty() {
            return;
        }
        page.title("PROOF");
        for line in &self.proof {
            let Some(lacking) = &line.lacking else {
                page.item(&format!("holds: {}", line.claim));
                line.measured.iter().for_each(|measured| page.below(measured));
                continue;
            };
            page.item(lacking.heading());
            lacking.claims.iter().for_each(|claim| page.listed(claim));
            if let Some(others) = lacking.others() {
                page.under(&others);
            }
        }
    }

    /// What was done, and what it changed.
    fn work_lines(&self, page: &mut Page) {
        if !self.work.is_empty() {
            page.title("WHAT WAS DONE");
        }
        for work in &self.work {
            page.item(work);
        }
        let mut changed = self.before_and_after().peekable();
        if changed.peek().is_some() {
            page.title("BEFORE AND AFTER");
        }
        for (reading, before, after) in changed {
            let same = if before.is_as(after) {
                " (no more than the meter can tell)"
            } else {
                ""
            };
            page.item(&format!(
                "{}: {}, then {}{same}",
                reading.title, before.value, after.value
            ));
        }
    }

    fn details(&self, page: &mut Page) {
        if !self.answers.is_empty() {
            page.title("WHAT WAS ASKED AND ANSWERED");
        }
        if self.answers.iter().any(|answer| !answer.ruled_out.is_empty()) {
            page.wrapped(
                &format!(
                    "“{NO_LONGER}”: verdicts that the walk could not come to any more after an answer; none of them was \
                     shown to be absent."
                ),
                "  ",
                "  ",
            );
        }
        for (number, answer) in self.answers.iter().enumerate() {
            let close = if answer.borderline { " (borderline)" } else { "" };
            let words = asked_words(&answer.title, &answer.answer);
            page.numbered(number + 1, &format!("{words}{close}"));
            for came_out in &answer.worked_out {
                let means = came_out.means.as_deref().map(|means| format!(": {means}"));
                let means = means.unwrap_or_default();
                page.below(&format!(
                    "worked out: {}: {}{means}",
                    came_out.title, came_out.value
                ));
            }
            if !answer.ruled_out.is_empty() {
                page.below(&format!("{NO_LONGER}: {}", some_of(&answer.ruled_out)));
            }
        }
        if !self.put_back.is_empty() {
            page.title("OPENED, AND HOW IT WAS LEFT");
        }
        for entry in &self.put_back {
            let why = entry
                .why
                .as_deref()
                .map(|why| format!(" (left open because: {why})"))
                .unwrap_or_default();
            let state = match entry.state {
                "done" => "put back",
                "refused" => "LEFT OPEN",
                _ => "STILL OPEN",
            };
            page.item(&format!("{state}: {}{why}", entry.text));
        }
        if !self.notes.is_empty() {
            page.title("NOTES");
        }
        for note in &self.notes {
            page.item(note);
        }
    }
}

/// A tree with how far it is trusted, and its edition.
pub(super) fn tree_words(tree: &TreeEntry) -> String {
    let status = tree.status.replace('-', " ");
    let edition = tree
        .edition
        .as_deref()
        .map(|edition| format!(", edition {edition}"));
    format!("{} ({status}{})", tree.title, edition.unwrap_or_default())
}

/// All trees, those of one status and edition together.
pub(super) fn trees_words(trees: &[TreeEntry]) -> String {
    let mut kinds: Vec<(&str, Option<&str>, Vec<&str>)> = Vec::new();
    for tree in trees {
        let edition = tree.edition.as_deref();
        match kinds
            .iter_mut()
            .find(|kind| (kind.0, kind.1) == (tree.status, edition))
        {
            Some(kind) => kind.2.push(&tree.title),
            None => kinds.push((tree.status, edition, vec![&tree.title])),
        }
    }
    let kinds = kinds.into_iter().map(|(status, edition, titles)| {
        let edition = edition.map(|edition| format!(", edition {edition}"));
        let status = status.replace('-', " ");
        format!("{} ({status}{})", titles.join(", "), edition.unwrap_or_default())
    });
    kinds.collect::<Vec<_>>().join("; ")
}

/// The first few of a list, and how many more there are.
fn some_of(names: &[String]) -> String {
    match names.len().checked_sub(RULED_OUT) {
        Some(more @ 1..) => format!("{}; and {more} more", names[..RULED_OUT].join("; ")),
        _ => names.join("; "),
    }
}

struct Page {
    text: String,
    columns: usize,
}

impl Page {
    fn blank(&mut self) {
        self.text.push('\n');
    }

    fn title(&mut self, title: &str) {
        if !self.text.is_empty() {
            self.blank();
        }
        self.text(title);
    }

    fn text(&mut self, text: &str) {
        self.wrapped(text, "", "");
    }

    fn line(&mut self, label: &str, value: &str) {
        self.wrapped(value, &format!("  {label:<11} "), "              ");
    }

    fn item(&mut self, text: &str) {
        self.wrapped(text, "  - ", "    ");
    }

    fn under(&mut self, text: &str) {
        self.wrapped(text, "    ", "    ");
    }

    fn numbered(&mut self, number: usize, text: &str) {
        self.wrapped(text, &format!("{number:>4}. "), "      ");
    }

    fn listed(&mut self, text: &str) {
        self.wrapped(text, "    - ", "      ");
    }

    fn below(&mut self, text: &str) {
        self.wrapped(text, "      ", "      ");
    }

    fn wrapped(&mut self, text: &str, first: &str, rest: &str) {
        for (number, line) in wrap(&safe(text), self.columns - rest.len().max(first.len()))
            .iter()
            .enumerate()
        {
            let margin = if number == 0 { first } else { rest };
            self.text.push_str(margin);
            self.text.push_str(line.as_str());
            self.text.push('\n');
        }
    }
}
