//! What one session boils down to.

use std::sync::Arc;

use compact_str::CompactString;
use jiff::Timestamp;

/// What one session boils down to: all that an audit needs of it, with the names as its library has them.
#[derive(Clone, Debug, PartialEq)]
pub struct Call {
    /// The session's id.
    pub session: CompactString,
    /// Which of the audited folders it lies in, by position.
    pub folder: u32,
    /// When it was opened: the time of its first record.
    pub opened: Timestamp,
    /// The latest time in it.
    pub last: Timestamp,
    /// When it was closed: it had ended, and everything opened was put back or refused in writing. None where it was not.
    pub closed: Option<Timestamp>,
    /// The technician closed it: nothing was meant to follow.
    pub sealed: bool,
    /// How many bytes of a last, half-written line follow; none where it is whole.
    pub torn: Option<u64>,
    /// The clock went back in it.
    pub clock_went_back: bool,
    /// A file gave its answers; nobody was on site.
    pub from_file: bool,
    /// An apprentice practised at a simulated furnace: no call of the company.
    pub practice: bool,
    /// Its library is at hand: what its names mean is known.
    pub with_library: bool,
    /// The tree of the complaint.
    pub tree: CompactString,
    /// Who walked it.
    pub technician: Option<CompactString>,
    /// Where.
    pub site: Option<CompactString>,
    /// At which equipment.
    pub equipment: Option<CompactString>,
    /// How it ended.
    pub ending: Ending,
    /// Verdicts that were proven and noted on the way, in order.
    pub noted: Vec<Verdict>,
    /// What was opened, and how it was left.
    pub put_backs: PutBacks,
    /// Every reading that was taken or worked out, in order.
    pub readings: Vec<Taken>,
    /// What was asked for and not taken, in order.
    pub not_taken: Vec<NotTaken>,
    /// Where the walk stood, in order.
    pub stays: Vec<Stay>,
    /// Its library knows readings of the flue gas.
    pub could_test_combustion: bool,
    /// It walked the tree by which its library has work proven.
    pub after_work: bool,
}

/// How a call ended.
#[derive(Clone, Debug, PartialEq)]
pub enum Ending {
    /// In a proven verdict.
    Verdict(Verdict),
    /// In an outcome of its tree.
    Outcome(CompactString),
    /// Referred without a verdict.
    Unproven {
        /// Why, in the log's words.
        why: CompactString,
    },
    /// On the technician's own verdict, in writing.
    Insisted(Verdict),
    /// Not at all.
    Open,
}

/// A verdict, with what is done about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// The fault.
    pub fault: CompactString,
    /// What is done about it.
    pub remedy: Remedy,
}

/// What is done about a fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Remedy {
    /// This part is replaced: it was condemned.
    Replace(CompactString),
    /// Something is set right.
    Correct,
    /// The machine must not run.
    ShutDown,
    /// Another trade takes over.
    Refer,
    /// Nothing is wrong here.
    Nothing,
    /// The library of the call is not at hand, so nobody knows.
    Unknown,
}

/// What a call opened, and how it was left.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PutBacks {
    /// How many were put back.
    pub done: u32,
    /// What was refused in writing.
    pub refused: Vec<CompactString>,
    /// What is still open.
    pub open: Vec<CompactString>,
}

/// A reading that was taken or worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// Which.
    pub reading: CompactString,
    /// As it was typed; none where it was worked out.
    pub typed: Option<CompactString>,
    /// The value, in the reading's own unit.
    pub value: f64,
    /// That unit.
    pub unit: CompactString,
    /// Half the width of what the meter leaves open, in the same unit.
    pub margin: f64,
    /// It lay that close to a bound of the step that asked.
    pub borderline: bool,
    /// When.
    pub time: Timestamp,
    /// Seconds since it was asked for; none where it was worked out, or the clock went back.
    pub seconds: Option<f64>,
    /// Minutes that its library gives for taking it.
    pub minutes: Option<f64>,
    /// It is a reading of the flue gas.
    pub combustion: bool,
    /// The technician took it back, or took it again.
    pub superseded: bool,
}

/// Something that was asked for and not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotTaken {
    /// What.
    pub datum: CompactString,
    /// Why, in the technician's words.
    pub why: CompactString,
    /// It is a reading of the flue gas.
    pub combustion: bool,
}

/// A step that the walk stood at.
#[derive(Clone, Debug, PartialEq)]
pub struct Stay {
    /// The step, with its tree: `tree/step`. The stay before went on to it, and has the same text.
    pub step: Arc<str>,
    /// The step it went on to; none where the call ended or was left there.
    pub to: Option<Arc<str>>,
    /// Seconds until the walk went on; none where it did not, or the clock went back.
    pub seconds: Option<f64>,
    /// Minutes that its library gives for it, or for all that was taken at it where those are more.
    pub minutes: Option<f64>,
}

impl Call {
    /// The verdict of the call, proven or insisted on; where it ended in an outcome, the last that was noted on the way.
    pub fn verdict(&self) -> Option<&Verdict> {
        match &self.ending {
            Ending::Verdict(verdict) | Ending::Insisted(verdict) => Some(verdict),
            Ending::Outcome(_) => self.noted.last(),
            Ending::Unproven { .. } | Ending::Open => None,
        }
    }

    /// Whether it only proves work that was done before: nothing came of it that is to be done. Nobody called for it.
    pub fn is_proof(&self) -> bool {
        let is_done = |verdict: &Verdict| matches!(verdict.remedy, Remedy::Nothing | Remedy::Unknown);
        self.after_work && self.verdict().is_none_or(is_done)
    }

    /// Whether something was left open: a put-back refused, or one still open.
    pub fn left_open(&self) -> bool {
        !self.put_backs.refused.is_empty() || !self.put_backs.open.is_empty()
    }
}

impl Verdict {
    /// The part that was condemned.
    pub fn condemned(&self) -> Option<&str> {
        match &self.remedy {
            Remedy::Replace(part) => Some(part),
            _ => None,
        }
    }
}
