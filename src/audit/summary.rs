//! What an audit comes to: plain data.

use jiff::Timestamp;
use serde::{Serialize, Serializer};

use super::findings::{
    Borderline, Combustion, Condemned, Drift, LeftOpen, LookAlikes, Misdiagnosis, Pair, Step, Unsound,
    Written,
};
use super::groups::{Month, Part, Technician, Tree};
use super::learned::Learned;
use super::rows::Rows;
use super::statistics::wilson;

/// What every audit says of itself.
pub const CAUTION: &str = "An audit finds causes; it does not assign liability. A number points at sessions to be read, not at a \
     person: read them before anything is concluded.";

/// A rate over fewer cases than this says so.
pub const TOO_SMALL: u64 = 20;

/// What an audit comes to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Audit {
    /// That causes are found, and nobody is accused.
    pub caution: &'static str,
    /// The window for callbacks, in days of 24 h.
    pub window_days: u32,
    /// When the first call was opened whose clock is believed; none where there is no call.
    pub from: Option<Timestamp>,
    /// The last instant in the archive by a clock that is believed, up to which every call was followed.
    pub until: Option<Timestamp>,
    /// The folders that were read, as they were named.
    pub folders: Vec<String>,
    /// Calls: sessions that could be read.
    pub calls: u64,
    /// Calls that ended in any way, with every put-back done or refused in writing.
    pub closed: u64,
    /// Session files that are damaged, foreign, unreadable or of another call than their id says; they are no calls.
    pub damaged: u64,
    /// Sessions of practice at a simulated furnace; they are no calls.
    pub practice: u64,
    /// Files that are no session files by their name, and were passed over.
    pub other_files: u64,
    /// Copies of a session that was counted already.
    pub copies: u64,
    /// Files that were not read, since the system says that they are unchanged from an audit before; their sums were checked then.
    pub from_index: u64,
    /// Calls that are more than a day ahead of the time of the audit, and too many for their clocks to be doubted. The archive ends with
    /// the last of them.
    pub ahead: u64,
    /// Calls whose own library is not at hand. What their names mean is taken from the built-in one, where that is another edition of it.
    pub without_library: u64,
    /// Calls without an equipment: nothing can follow them.
    pub without_equipment: u64,
    /// Callbacks, counted.
    pub callbacks: Callbacks,
    /// Callbacks, each with its sessions, in the order of their equipment.
    pub callback_pairs: Rows<Pair>,
    /// Calls that were left before they were closed, each with the next at its equipment within the window. These are no callbacks:
    /// nobody can call back about a call that was never closed. But a furnace that was driven away from and seen again is what a
    /// service manager asks about first.
    pub came_again: Rows<Pair>,
    /// Callbacks whose first call condemned a part, and whose next ended in a fault with another remedy.
    pub suspected_misdiagnoses: Rows<Misdiagnosis>,
    /// Calls referred without a verdict.
    pub unproven: u64,
    /// Calls that ended on the technician's own verdict, in writing.
    pub insisted: u64,
    /// Calls with a put-back refused, or abandoned with one open.
    pub left_open: u64,
    /// By technician, in the order of their names.
    pub by_technician: Vec<Technician>,
    /// By the tree of the complaint.
    pub by_tree: Vec<Tree>,
    /// By condemned part.
    pub by_part: Vec<Part>,
    /// By the month in which calls were closed, in UTC.
    pub by_month: Vec<Month>,
    /// By proven fault, of closed calls: which verdicts held.
    pub learned: Vec<Learned>,
    /// Parts condemned by proof, against parts insisted on.
    pub condemned: Condemned,
    /// The calls that left something open.
    pub left_open_calls: Rows<LeftOpen>,
    /// Borderline readings on the way to a verdict.
    pub borderline: Rows<Borderline>,
    /// Readings that look written rather than read.
    pub written: Written,
    /// Steps where calls stall or are abandoned, worst first.
    pub steps: Vec<Step>,
    /// Combustion tests that were skipped.
    pub combustion: Combustion,
    /// Damaged, half-written, foreign and unsealed sessions.
    pub unsound: Vec<Unsound>,
    /// The sessions of practice.
    pub practice_sessions: Vec<SessionRef>,
    /// Readings of an equipment that drift over the years.
    pub drift: Vec<Drift>,
    /// Names that differ in case, blanks and punctuation only: nothing follows from one to the other.
    pub alike: LookAlikes,
    /// How long each closed call with an equipment was followed: what a survival curve is made of.
    #[serde(skip)]
    pub follow_ups: Rows<FollowUp>,
    /// How often each way on from a step was taken: what a path diagram is made of.
    #[serde(skip)]
    pub passages: Vec<Passage>,
}

/// Callbacks, counted.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Callbacks {
    /// How many, over closed calls with an equipment.
    #[serde(flatten)]
    pub rate: Rate,
    /// The share of calls that are called back within 30 days, by Kaplan and Meier: calls that were not followed so long
    /// count for as long as they were.
    pub at_30_days: f64,
    /// The low end of its interval of 95 %; none where no call was followed for 30 days, so that the share is not known yet.
    pub at_30_days_low: Option<f64>,
    /// The high end of it.
    pub at_30_days_high: Option<f64>,
    /// The same estimate for the window; none where no call was followed for so long.
    pub at_window: Option<f64>,
    /// The low end of its interval.
    pub at_window_low: Option<f64>,
    /// The high end of it.
    pub at_window_high: Option<f64>,
    /// Days of 24 h that the call was followed that was followed longest; none where none could be.
    pub followed_days: Option<f64>,
    /// Those of the same complaint.
    pub same_complaint: Rate,
    /// Those whose next call belongs to the same visit: the same technician, who is named, went on from one to the other.
    pub same_visit: u64,
    /// The calls that they came back as: one that follows two calls that overlap is the next of both.
    pub returns: u64,
    /// Closed walks with an equipment that only prove work that was done before. They are in none of these: what they prove is.
    pub proofs: u64,
    /// Calls whose whole window lies before the end of the archive, and those among them that came back within it on another visit.
    pub settled: Rate,
}

/// A share, with what it is worth.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Rate {
    /// How many.
    pub count: u64,
    /// Of how many.
    pub of: u64,
    /// The share; 0 of 0 is 0.
    pub rate: f64,
    /// The lower end of Wilson's 95 % interval.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
    /// Of too few to say anything: fewer than [`TOO_SMALL`].
    pub too_small: bool,
}

/// How long a closed call was followed. There is one for each, so it is kept small.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FollowUp {
    /// Its days; below zero where nobody called.
    days: f64,
}

impl FollowUp {
    /// So many days, and whether it was the next call that ended them.
    pub fn new(days: f64, called_back: bool) -> Self {
        let sign = if called_back { 1.0 } else { -1.0 };
        Self {
            days: days.copysign(sign),
        }
    }

    /// Days of 24 h from its closing to the next call at its equipment, or to the end of the archive.
    pub fn days(self) -> f64 {
        self.days.abs()
    }

    /// It was the next call.
    pub fn called_back(self) -> bool {
        self.days.is_sign_positive()
    }
}

/// A way on from a step, and how often it was taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Passage {
    /// The step that was left, as `tree/step`.
    pub from: String,
    /// The step that was reached; none where the call ended or was left there.
    pub to: Option<String>,
    /// How often.
    pub times: u64,
}

/// A session, and the folder it lies in.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SessionRef {
    /// Its id.
    pub id: String,
    /// Its folder, by position in [`Audit::folders`].
    pub folder: u32,
}

impl Serialize for SessionRef {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        // An id is found in whatever folder it lies: no two sessions of an audit have the same.
        serializer.serialize_str(&self.id)
    }
}

impl Rate {
    /// So many of so many.
    pub fn new(count: u64, of: u64) -> Self {
        let (low, high) = wilson(count, of);
        Self {
            count,
            of,
            rate: if of == 0 { 0.0 } else { count as f64 / of as f64 },
            low,
            high,
            too_small: of < TOO_SMALL,
        }
    }
}
