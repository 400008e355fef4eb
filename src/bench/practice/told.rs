//! What came of a practice call, in an apprentice's words.

use super::debrief::{Debrief, Proof};
use super::menu::capital;
use crate::bench::trials::Outcome;
use crate::source::{Safe, safe};
use crate::walk::Known;

/// What a practice call came to, against the truth and against what was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Came {
    /// Nothing is wrong, and enough was looked at to know it.
    Sound,
    /// The right name, proven.
    Proven,
    /// The right name, and all speaks for it that can be taken before the work.
    Shown,
    /// Nothing is wrong, but too little was looked at.
    SoundUnshown,
    /// The right name, not all of its proof.
    Named,
    /// The right name, and nothing of its proof.
    Guessed,
    /// Stopped with nothing condemned.
    Stopped,
    /// Handed on though nothing is wrong.
    HandedOnSound,
    /// Handed on for something else.
    HandedOn,
    /// Left as if nothing were wrong.
    Missed,
    /// Wrong, and its proof was lacking.
    WrongUnproven,
    /// Wrong.
    Wrong,
}

impl Came {
    /// All there are.
    pub const ALL: &[Self] = &[
        Self::Sound,
        Self::Proven,
        Self::Shown,
        Self::SoundUnshown,
        Self::Named,
        Self::Guessed,
        Self::Stopped,
        Self::HandedOnSound,
        Self::HandedOn,
        Self::Missed,
        Self::WrongUnproven,
        Self::Wrong,
    ];

    /// It in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Sound => "right: nothing is wrong, and nothing was condemned",
            Self::Proven => "right, and proven",
            Self::Shown => {
                "right: all that can be taken before the work speaks for it; the work would prove it"
            }
            Self::SoundUnshown => {
                "right that nothing is wrong, but not shown: too little was looked at to know it"
            }
            Self::Named => "the right name, but not proven",
            Self::Guessed => "a lucky guess: the right name, but nothing that was taken proves it",
            Self::Stopped => "stopped: nothing condemned, and the fault not found",
            Self::HandedOnSound => "handed on or left off, though nothing is wrong",
            Self::HandedOn => "handed on or left off, but not for what was wrong",
            Self::Missed => "missed: left as if nothing were wrong",
            Self::WrongUnproven => "wrong, and not proven",
            Self::Wrong => "wrong",
        }
    }

    /// It in a word or two, for a column.
    pub fn short(self) -> &'static str {
        match self {
            Self::Sound | Self::Proven | Self::Shown => "proven",
            Self::SoundUnshown | Self::Named => "not proven",
            Self::Guessed => "guessed",
            Self::Stopped => "stopped",
            Self::HandedOnSound | Self::HandedOn => "handed on",
            Self::Missed => "missed",
            Self::WrongUnproven | Self::Wrong => "wrong",
        }
    }

    /// Whether it was found, and shown by what was taken.
    pub fn is_solved(self) -> bool {
        matches!(self, Self::Sound | Self::Proven | Self::Shown)
    }
}

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
            (Outcome::Right, None) => Came::Proven,
            (Outcome::Right, Some(_)) if sound => Came::SoundUnshown,
            (Outcome::Right, Some(_)) if shown => Came::Shown,
            (Outcome::Right, Some(0)) => Came::Guessed,
            (Outcome::Right, Some(_)) => Came::Named,
            (Outcome::Referred, _) if self.stopped => Came::Stopped,
            (Outcome::Referred, _) if self.truth.is_empty() || self.mended => Came::HandedOnSound,
            (Outcome::Referred, _) => Came::HandedOn,
            (Outcome::Missed, _) => Came::Missed,
            (Outcome::Wrong, Some(_)) => Came::WrongUnproven,
            (Outcome::Wrong, None) => Came::Wrong,
        }
    }

    /// All of it, a section after the other: what matters most first.
    pub fn sections(&self) -> Vec<Known> {
        let mut truth = match self.truth.as_slice() {
            [] => vec!["Nothing: the furnace is sound".to_owned()],
            truth => truth.to_vec(),
        };
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
        if !self.raised.is_empty() {
            let words = |danger: &String| format!("{danger}: in doubt that is right, whatever it took");
            sections.push(("Dangers acted upon", self.raised.iter().map(words).collect()));
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
        let lacking = match self.truth.is_empty() {
            true => "The tree does not come to it that nothing is wrong with this furnace",
            false => "The tree does not find it at this furnace",
        };
        way.push(lacking.to_owned());
        ("The tree's way", way)
    }
}

fn none_if_empty(lines: &[String]) -> Vec<String> {
    match lines {
        [] => vec!["None".to_owned()],
        lines => lines.to_vec(),
    }
}
