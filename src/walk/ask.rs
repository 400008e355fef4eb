//! What any face must show.
//!
//! Every text here is safe to print as it is.

use std::cmp::Ordering;

use super::stated::Stated;
use crate::library::{Datum, Id, Restore, Severity};
use crate::measure::{Quantity, Scale};
use crate::source::Safe;

/// Everything a face needs for one screen.
#[derive(Clone, Debug)]
pub struct Ask {
    /// The tree it stands in.
    pub tree: Safe,
    /// `DRAFT` or `field trial`; nothing for an approved tree.
    pub status: Option<Safe>,
    /// The tree's edition, where it gives one.
    pub edition: Option<Safe>,
    /// Before the first answer: the overlays that are walked with, and what they replaced.
    pub overlays: Vec<Safe>,
    /// The trees that led here, outermost first, without the one it stands in.
    pub through: Vec<Safe>,
    /// What is asked.
    pub question: Question,
    /// What can be chosen, too, but stands in no list: it is found by words.
    pub by_words: Vec<ShownOption>,
    /// A heading the author gave the step.
    pub title: Option<Safe>,
    /// Why it is asked.
    pub why: Vec<Safe>,
    /// How to take it or do it, a line each.
    pub how: Vec<Safe>,
    /// What can hurt here.
    pub cautions: Vec<Safe>,
    /// Those that hold for every call: with its first question, unless that is about a danger.
    pub standing_cautions: Vec<Safe>,
    /// Where the thresholds come from.
    pub source: Option<Safe>,
    /// Minutes it usually takes.
    pub minutes: Option<f64>,
    /// Why it is asked a second time, where it is.
    pub again: Option<Again>,
    /// Whether "cannot be taken" may be answered, and what comes of it.
    pub unable: Option<Way>,
    /// Whether "not sure" may be answered, and what comes of it.
    pub unsure: Option<Way>,
}

/// What comes of an answer that is no value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// The walk goes on another way.
    GoesOn,
    /// The walk ends without a verdict.
    EndsUnproven,
    /// Nothing walks: it is left untaken, and something else is chosen.
    LeftUntaken,
}

/// Why a value is asked for a second time.
#[derive(Clone, Debug, PartialEq)]
pub enum Again {
    /// It lay within the meter's accuracy of this bound.
    Borderline {
        /// What was typed.
        typed: Safe,
        /// The bound, in words.
        bound: Safe,
    },
    /// It lay outside what is plausible.
    Implausible {
        /// What was typed.
        typed: Safe,
        /// The plausible range, in words.
        range: Safe,
    },
    /// The technician wanted to.
    Retake,
    /// A refused verdict lacks it.
    ForProof,
    /// In practice, the probe was put elsewhere.
    Elsewhere {
        /// What is measured there.
        put: Safe,
        /// What the meter shows there.
        shown: Safe,
    },
}

/// What is asked.
#[derive(Clone, Debug)]
pub enum Question {
    /// A number.
    Number {
        /// Of what.
        datum: Datum,
        /// What it is called.
        title: Safe,
        /// What a bare number is in.
        scale: Scale,
        /// What it will be used to work out, where it is.
        works_out: Option<Safe>,
        /// Where each value leads, lowest first; empty where it is only recorded.
        bands: Vec<ShownBand>,
        /// The plausible range: the scale to draw the bands on.
        plausible: Option<(Quantity, Quantity)>,
        /// The accuracy in words, where a meter is used.
        accuracy: Option<Safe>,
    },
    /// One of several.
    Choice {
        /// Of what; none where something is chosen that is no answer of the walk.
        datum: Option<Datum>,
        /// The question.
        prompt: Safe,
        /// The options, in the author's order.
        options: Vec<ShownOption>,
    },
    /// Something to do.
    Act {
        /// What.
        text: Vec<Safe>,
    },
    /// A verdict that is not proven.
    Unproven {
        /// The fault that would follow.
        fault: Safe,
        /// What would be done about it.
        remedy: Safe,
        /// What its proof lacks.
        lacks: Vec<Lack>,
    },
    /// Something is open that must be put back.
    PutBack {
        /// Which.
        restore: Id<Restore>,
        /// What to do.
        text: Safe,
        /// How many are still to come after this one.
        left: usize,
    },
    /// Everything is answered: the call can be closed.
    Finished,
    /// The call is closed.
    Closed,
}

/// One band of a question.
#[derive(Clone, Debug)]
pub struct ShownBand {
    /// The band in words, with the plate's numbers in place of its fields.
    pub words: Safe,
    /// The band as the author wrote it, where that differs.
    pub written: Option<Safe>,
    /// Lower end; none where it has none.
    pub low: Option<End>,
    /// Upper end; none where it has none.
    pub high: Option<End>,
    /// What the answer means.
    pub means: Option<Safe>,
    /// What it would put on the job report.
    pub finding: Option<Severity>,
}

impl ShownBand {
    /// Whether a value lies in it.
    pub fn takes(&self, value: Quantity) -> bool {
        let above = self
            .low
            .is_none_or(|end| end.allows(value.compare(end.at), Ordering::Greater));
        let below = self
            .high
            .is_none_or(|end| end.allows(value.compare(end.at), Ordering::Less));
        above && below
    }
}

/// An end of a band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct End {
    /// Where it is.
    pub at: Quantity,
    /// Whether the band takes the end itself.
    pub included: bool,
}

impl End {
    fn allows(self, found: Option<Ordering>, inside: Ordering) -> bool {
        found == Some(inside) || (self.included && found == Some(Ordering::Equal))
    }
}

/// One option of a question.
#[derive(Clone, Debug)]
pub struct ShownOption {
    /// Its position, for [`super::Command::Choose`].
    pub value: usize,
    /// What it says.
    pub text: Safe,
    /// By which other words it is found; they are not shown.
    pub known_by: Safe,
    /// What the answer means.
    pub means: Option<Safe>,
    /// What it would put on the job report.
    pub finding: Option<Severity>,
}

impl ShownOption {
    /// How well it is called by some words; see [`is_called`].
    pub fn is_called(&self, words: &str) -> Option<CalledBy> {
        is_called(self.text.as_str(), self.known_by.as_str(), words)
    }
}

/// By what some words call something; what calls it better comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CalledBy {
    /// By what it says.
    Text,
    /// Also by other words that it is known by.
    OtherWords,
}

/// Whether all of some words, in any order, are words or parts of words of a text, or begin other words that it is known by. No
/// words call nothing.
///
/// ```
/// use proofwalk::walk::{CalledBy, is_called};
///
/// let (title, key) = ("Igniter draws too little in the warm-up", "igniter_opens_hot");
/// assert_eq!(is_called(title, key, "warm igniter"), Some(CalledBy::Text));
/// assert_eq!(is_called(title, key, "igniter open"), Some(CalledBy::OtherWords));
/// assert_eq!(is_called(title, key, "igniter pens"), None);
/// ```
pub fn is_called(text: &str, known_by: &str, words: &str) -> Option<CalledBy> {
    let (text, known_by) = (text.to_lowercase(), known_by.to_lowercase());
    let called = |word: &str| {
        let begins = || parts(&known_by).any(|other| other.starts_with(word));
        match text.contains(word) {
            true => Some(CalledBy::Text),
            false => begins().then_some(CalledBy::OtherWords),
        }
    };
    let words = words.to_lowercase();
    // A key is typed as it is written, too.
    let by: Option<Vec<CalledBy>> = words
        .split(|character: char| character.is_whitespace() || character == '_')
        .filter(|word| !word.is_empty())
        .map(called)
        .collect();
    by?.into_iter().max()
}

/// The words of a text.
fn parts(text: &str) -> impl Iterator<Item = &str> {
    text.split(|character: char| !character.is_alphanumeric())
}

/// A line of a proof that does not hold.
#[derive(Clone, Debug)]
pub struct Lack {
    /// The line in words.
    pub words: Safe,
    /// The alternatives of which any one would do, each with all that it takes; empty where there is only one.
    pub any_of: Vec<Vec<Claimed>>,
    /// What can still be taken for it.
    pub take: Vec<(Datum, Safe)>,
    /// Why it does not hold.
    pub because: LackKind,
}

/// One thing that an alternative of a proof takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Claimed {
    /// It in words.
    pub words: Safe,
    /// Why it does not hold; none where it does.
    pub because: Option<LackKind>,
}

/// Why a line of a proof does not hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LackKind {
    /// Nothing fresh was taken.
    NotTaken,
    /// What was taken lies within the meter's accuracy of the bound.
    Borderline,
    /// What was taken says otherwise.
    Contradicted,
}

/// One answer of the trail, newest last.
#[derive(Clone, Debug)]
pub struct TrailEntry {
    /// For [`super::Command::Back`].
    pub position: usize,
    /// What was asked.
    pub title: Safe,
    /// For [`super::Command::Retake`]; none where nothing was taken that could be taken again.
    pub datum: Option<Datum>,
    /// What was answered.
    pub answer: Safe,
    /// Whether it was borderline.
    pub borderline: bool,
    /// What was worked out after it, before anything else was asked.
    pub worked_out: Vec<ShownValue>,
    /// What stood already when steps after it would have asked for it.
    pub stood: Vec<ShownValue>,
    /// The faults that the walk no longer comes to after it.
    pub ruled_out: Vec<Safe>,
}

/// A value that nobody was asked for: it was worked out, or stood already.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShownValue {
    /// What it is called.
    pub title: Safe,
    /// The value.
    pub value: Safe,
    /// What that means, at the step that asked for it.
    pub means: Option<Safe>,
}

/// A visit that a noted verdict cut short, with what was not looked at for that reason.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NotLookedAt {
    /// What the visited tree is called.
    pub tree: Safe,
    /// The verdict that was noted.
    pub because: Safe,
    /// What was not looked at, each by what it is called or asked.
    pub checks: Vec<Safe>,
}

/// What a face shows beside the question.
#[derive(Clone, Debug, Default)]
pub struct Standing {
    /// Faults that can still be the one, most direct first.
    pub possible: Vec<Safe>,
    /// What was answered, with what the walk no longer comes to.
    pub trail: Vec<TrailEntry>,
    /// The last answer is news: a simulated furnace gave it, and not whoever reads this.
    pub last_is_news: bool,
    /// What is open and must be put back.
    pub open: Vec<Safe>,
    /// What goes on the job report so far.
    pub findings: Vec<(Severity, Safe)>,
    /// What was passed over, because a verdict before it was noted.
    pub not_looked_at: Vec<NotLookedAt>,
    /// Questions left at worst.
    pub at_worst: usize,
    /// The dangers offered from every step, in the library's order.
    pub dangers: Vec<Safe>,
    /// How it ended, once it has.
    pub ended: Option<Safe>,
    /// What the verdict asks for in which it ended, if it ended in one.
    pub stated: Option<Stated>,
}
