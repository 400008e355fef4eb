//! What came of a practice call, in an apprentice's words.

use super::debrief::{Debrief, Proof};
use super::menu::capital;
use crate::bench::trials::Outcome;
use crate::source::{Safe, safe};
use crate::walk::Known;

impl Debrief {
    /// The score in a line, for the record of the call.
    pub fn line(&self) -> String {
        let parts = |parts: &[String]| match parts {
            [] => "none".to_owned(),
            parts => parts.join(", "),
        };
        format!(
            "Practice: {}; {} min, the tree {} min; probes misplaced: {}; parts condemned for nothing: {}; \
             dangers overlooked: {}; left open: {}",
            self.verdict(),
            self.minutes,
            self.tree_minutes,
            self.misplaced,
            parts(&self.condemned_for_nothing),
            self.overlooked.len(),
            self.left_open.len()
        )
    }

    /// Whether nothing was wrong, any more, and nothing was said to be.
    fn is_sound(&self) -> bool {
        (self.truth.is_empty() || self.mended) && self.stopped
    }

    fn verdict(&self) -> &'static str {
        let (held, shown) = match &self.proof {
            Proof::Lacking(backing) => (Some(backing.holds), backing.is_shown()),
            Proof::Proven | Proof::Nothing => (None, false),
        };
        let sound = self.is_sound();
        match (self.outcome, held) {
            (Outcome::Right, None) if sound => "right: nothing is wrong, and nothing was condemned",
            (Outcome::Right, None) => "right, and proven",
            (Outcome::Right, Some(_)) if sound => {
                "right that nothing is wrong, but not shown: too little was looked at to know it"
            }
            (Outcome::Right, Some(_)) if shown => {
                "right: all that can be taken before the work speaks for it; the work would prove it"
            }
            (Outcome::Right, Some(0)) => {
                "a lucky guess: the right name, but nothing that was taken proves it"
            }
            (Outcome::Right, Some(_)) => "the right name, but not proven",
            (Outcome::Referred, _) if self.stopped => "stopped: nothing condemned, and the fault not found",
            (Outcome::Referred, _) if self.truth.is_empty() || self.mended => {
                "handed on or left off, though nothing is wrong"
            }
            (Outcome::Referred, _) => "handed on or left off, but not for what was wrong",
            (Outcome::Missed, _) => "missed: left as if nothing were wrong",
            (Outcome::Wrong, Some(_)) => "wrong, and not proven",
            (Outcome::Wrong, None) => "wrong",
        }
    }

    /// All of it, a section after the other: what matters most first.
    pub fn sections(&self) -> Vec<Known> {
        let mut truth = match self.truth.as_slice() {
            [] => vec!["Nothing: the furnace is sound".to_owned()],
            truth => truth.to_vec(),
        };
        if self.mended {
            truth.push("Work on the way has put it right".to_owned());
        }
        let found = vec![capital(self.verdict()), format!("You ended with: {}", self.ended)];
        let mut sections = vec![("What was wrong", truth), ("What you found", found)];
        if let Proof::Lacking(backing) = &self.proof {
            sections.push(match self.outcome {
                Outcome::Right => ("What would have proven it", backing.lack_words("")),
                _ => ("What its proof lacked", backing.lack_words("")),
            });
        }
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
        sections.push(("Dangers overlooked", none_if_empty(&self.overlooked)));
        sections.push(("Left open", none_if_empty(&self.left_open)));
        sections.push(self.way());
        let section = |(heading, lines): (&str, Vec<String>)| Known {
            heading: safe(heading),
            lines: lines.iter().map(|line| safe(line)).collect(),
        };
        sections.into_iter().map(section).collect()
    }

    fn took(&self) -> Vec<String> {
        let mut minutes = vec![format!(
            "{} min; the tree takes {} min",
            self.minutes, self.tree_minutes
        )];
        if self.misplaced > 0 {
            minutes.push(format!(
                "{} min of that for probes that were put elsewhere: {}",
                self.minutes_misplaced, self.misplaced
            ));
        }
        minutes
    }

    fn way(&self) -> (&'static str, Vec<String>) {
        let mut way: Vec<String> = self.way.iter().map(Safe::to_string).collect();
        if self.tree_outcome == Outcome::Right {
            return ("A proven way, by the tree", way);
        }
        way.push("The tree does not find it at this furnace".to_owned());
        ("The tree's way", way)
    }
}

fn none_if_empty(lines: &[String]) -> Vec<String> {
    match lines {
        [] => vec!["None".to_owned()],
        lines => lines.to_vec(),
    }
}
