//! What came of a practice call, in an apprentice's words.

use super::came::Came;
use super::debrief::{Debrief, Proof, TreeCame};
use super::menu::capital;
use super::overlooked::LeftRunning;
use crate::bench::trials::Outcome;
use crate::source::{Safe, safe};
use crate::walk::Known;

impl Debrief {
    /// Whether nothing was wrong, any more, and nothing was said to be.
    fn is_sound(&self) -> bool {
        (self.truth.is_empty() || self.mended) && self.stopped
    }

    /// What it came to.
    pub fn came(&self) -> Came {
        let (held, shown) = match &self.proof {
            Proof::Lacking(backing) => (Some(backing.holds), backing.is_shown()),
            Proof::Proven | Proof::Nothing => (None, false),
        };
        let sound = self.is_sound();
        match (self.outcome, held) {
            (Outcome::Right, None) if sound => Came::Sound,
            (Outcome::Right, None) if self.other_fault => Came::OtherFault,
            (Outcome::Right, None) => Came::Proven,
            (Outcome::Right, Some(_)) if sound => Came::SoundUnshown,
            (Outcome::Right, Some(_)) if shown => Came::Shown,
            (Outcome::Right, Some(0)) => Came::Guessed,
            (Outcome::Right, Some(_)) => Came::Named,
            (Outcome::Referred, _) if sound => Came::StoppedSound,
            (Outcome::Referred, _) if self.stopped => Came::Stopped,
            (Outcome::Referred, _) if self.truth.is_empty() || self.mended => Came::HandedOnSound,
            (Outcome::Referred, _) if self.handed_on && self.left_running.is_empty() => Came::HandedOnSafe,
            (Outcome::Referred, _) if self.handed_on => Came::HandedOnUnsafe,
            (Outcome::Referred, _) => Came::HandedOn,
            (Outcome::Missed, _) => Came::Missed,
            (Outcome::Wrong, Some(_)) => Came::WrongUnproven,
            (Outcome::Wrong, None) => Came::Wrong,
        }
    }

    /// All of it, a section after the other: what matters most first.
    pub fn sections(&self) -> Vec<Known> {
        let mut truth = self.truth();
        if let Some(why) = self.occasion {
            truth.push(format!("Why it was called for: {why}"));
        }
        if self.mended {
            truth.push("Work on the way has put it right".to_owned());
        }
        let mut found = vec![
            capital(self.came().words()),
            format!("You ended with: {}", self.ended),
        ];
        let not_found = self.not_found.iter();
        found.extend(not_found.map(|fault| format!("Not found by that, and left to the next call: {fault}")));
        if !self.named_before.is_empty() {
            found.push(format!(
                "Named before, and not proven: {}",
                self.named_before.join("; ")
            ));
        }
        let mut sections = vec![("What was wrong", truth), ("What you found", found)];
        sections.extend(self.lacking());
        sections.push(("What it took", self.took()));
        sections.push((
            "Parts condemned for nothing",
            none_if_empty(&self.condemned_for_nothing),
        ));
        if !self.condemned_unproven.is_empty() {
            let words = |part: &String| format!("{part}: it is bad, but you did not prove it");
            let parts = self.condemned_unproven.iter().map(words).collect();
            sections.push(("Parts condemned without proof", parts));
        }
        if !self.raised.is_empty() {
            let words = |danger: &String| format!("{danger}: in doubt that is right, whatever it took");
            sections.push(("Dangers acted upon", self.raised.iter().map(words).collect()));
        }
        let left = self.left_running.iter().map(left_words);
        let overlooked: Vec<String> = self.overlooked_at_gate.iter().cloned().chain(left).collect();
        sections.push(("Dangers overlooked", none_if_empty(&overlooked)));
        sections.push(("Left open", none_if_empty(&self.left_open)));
        sections.push(self.way());
        // The way of the tree is long: what came of it stands once more where the eye is.
        sections.push(("In short", vec![self.in_short()]));
        let section = |(heading, lines): (&str, Vec<String>)| Known {
            heading: safe(heading),
            lines: lines.iter().map(|line| safe(line)).collect(),
        };
        sections.into_iter().map(section).collect()
    }

    /// What was wrong, each with the words by which it is named.
    fn truth(&self) -> Vec<String> {
        if self.truth.is_empty() {
            return vec!["Nothing: the furnace is sound".to_owned()];
        }
        let mut lines = Vec::new();
        for (title, named) in self.truth.iter().zip(&self.named_as) {
            lines.push(title.clone());
            lines.extend(
                named
                    .as_ref()
                    .map(|named| format!("In the list of faults: {named}")),
            );
        }
        lines
    }

    fn took(&self) -> Vec<String> {
        let mut minutes = vec![format!(
            "{} min; the tree takes {} min",
            self.minutes, self.tree_minutes
        )];
        if self.misplaced > 0 {
            let probes = match self.misplaced {
                1 => "1 probe that was put elsewhere than asked".to_owned(),
                probes => format!("{probes} probes that were put elsewhere than asked"),
            };
            minutes.push(format!("{} min of that for {probes}", self.minutes_misplaced));
        }
        minutes
    }

    /// What the proof lacks of what it ended on.
    fn lacking(&self) -> Option<(&'static str, Vec<String>)> {
        let Proof::Lacking(backing) = &self.proof else {
            return None;
        };
        let mut words = backing.lack_words("");
        let heading = match self.outcome {
            _ if self.is_sound() => "What would have shown that nothing is wrong",
            Outcome::Right if backing.otherwise == 0 => "What would have proven it",
            Outcome::Right => {
                words.push(
                    "This furnace does not show all of it: what can be taken here proves less".to_owned(),
                );
                "What its proof lacked"
            }
            _ => "What its proof lacked",
        };
        Some((heading, words))
    }

    /// All that matters in one line: a right name does not excuse a danger that was left.
    fn in_short(&self) -> String {
        let came = self.came();
        let mut parts = vec![capital(came.words())];
        if came == Came::HandedOnSafe || came == Came::HandedOnUnsafe {
            parts.push(format!("what was wrong: {}", self.truth.join(", and ")));
        }
        if !self.not_found.is_empty() {
            parts.push(format!(
                "left to the next call: {}",
                self.not_found.join(", and ")
            ));
        }
        for left in &self.left_running {
            let title = &left.title;
            let words = match left.off {
                true => format!("but nobody was told of this danger: {title}"),
                false => format!("but this was left running: {title}"),
            };
            parts.push(match left.by_the_tree {
                true => format!("{words} (the tree leaves it too)"),
                false => words,
            });
        }
        let dangers = self.overlooked_at_gate.len();
        let open = self.left_open.len();
        let named = self.named_before.len();
        parts.extend((dangers > 0).then(|| {
            let steps = if dangers == 1 { "step" } else { "steps" };
            format!("but {dangers} {steps} of the gate left out or too late")
        }));
        parts.extend((open > 0).then(|| match open {
            1 => "but 1 thing was left open".to_owned(),
            open => format!("but {open} things were left open"),
        }));
        parts.extend((named > 0).then(|| match named {
            1 => "1 other fault was named before".to_owned(),
            named => format!("{named} other faults were named before"),
        }));
        parts.join("; ")
    }

    fn way(&self) -> (&'static str, Vec<String>) {
        let mut way: Vec<String> = self.way.iter().map(Safe::to_string).collect();
        let sum = match self.tree_came {
            TreeCame::Proven => return ("A proven way, by the tree", way),
            TreeCame::Sound => "The tree finds nothing, and nothing is wrong",
            TreeCame::PutRight => "Its work has put right what was wrong, and it proves no verdict",
            TreeCame::HandedOn => "The tree hands it on: that is no diagnosis",
            TreeCame::NotFound if self.truth.is_empty() => {
                "The tree does not come to it that nothing is wrong with this furnace"
            }
            TreeCame::NotFound => "The tree does not find it at this furnace",
        };
        way.push(sum.to_owned());
        ("The tree's way", way)
    }
}

fn left_words(left: &LeftRunning) -> String {
    let title = &left.title;
    let words = match left.off {
        true => format!("It was left off, but for something else; nobody was told of: {title}"),
        false => format!("It must not run, and was not shut down: {title}"),
    };
    match left.by_the_tree {
        true => format!("{words} (the tree's own way leaves it too)"),
        false => words,
    }
}

fn none_if_empty(lines: &[String]) -> Vec<String> {
    match lines {
        [] => vec!["None".to_owned()],
        lines => lines.to_vec(),
    }
}
