//! What has happened on a call, in the past tense: what the session log holds.
//!
//! Events name things as the library does, so that a log can be read without it.

use serde::{Deserialize, Serialize};

/// One thing that has happened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Event {
    /// The call was opened; apart, since it is several times as large as what happens after it.
    Opened(Box<Opened>),
    /// The walk entered a tree.
    Entered {
        /// Which.
        tree: String,
        /// Why.
        role: Role,
    },
    /// The walk took an edge.
    Took {
        /// The edge's number in its library.
        edge: u32,
        /// The step it left, with its tree.
        from: String,
        /// The step it reached.
        to: String,
    },
    /// The walk returned from a tree.
    Returned {
        /// With which outcome.
        outcome: String,
    },
    /// The walk left the trees that it had visited from this tree, because a verdict in them was noted.
    Left {
        /// How many trees it still stands in.
        depth: usize,
    },
    /// A reading was taken or worked out.
    Measured {
        /// Which.
        reading: String,
        /// As it was typed; none where it was worked out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        typed: Option<String>,
        /// The value, in the reading's own unit.
        value: f64,
        /// That unit.
        unit: String,
        /// Half the width of what the meter leaves open, in the same unit.
        margin: f64,
        /// It lies that close to a bound of the step that asked.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        borderline: bool,
        /// Why the formula it was worked out by says that it is to be trusted less.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        warnings: Vec<String>,
    },
    /// A sign was observed.
    Observed {
        /// Which.
        sign: String,
        /// What was seen.
        value: String,
    },
    /// A field of the rating plate was read.
    ReadPlate {
        /// Which.
        field: String,
        /// A value's name, or a number as it was typed.
        value: String,
    },
    /// A value was given and is asked for again before it is taken.
    Doubted {
        /// Of what.
        datum: String,
        /// What was given.
        value: String,
        /// Why.
        why: Doubt,
        /// The bound or the range that makes it doubtful, in words.
        against: String,
    },
    /// Something could not be taken.
    CouldNot {
        /// What.
        datum: String,
        /// Why, in the technician's words.
        why: String,
    },
    /// The technician could not tell.
    WasUnsure {
        /// Of which sign.
        sign: String,
    },
    /// A step's work was done.
    Did {
        /// The step, with its tree.
        step: String,
    },
    /// What was taken before no longer counts.
    Voided {
        /// What.
        data: Vec<String>,
        /// By what.
        why: Voiding,
    },
    /// The technician takes something again, or takes what a proof lacks.
    Retaking {
        /// What.
        datum: String,
        /// For a proof.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        for_proof: bool,
    },
    /// Things were opened that must be put back.
    LeftOpen {
        /// Which.
        restores: Vec<String>,
    },
    /// Things were put back by a step of the tree.
    Restored {
        /// Which.
        restores: Vec<String>,
    },
    /// A verdict was not stated, because it is not proven.
    Withheld {
        /// Which.
        fault: String,
    },
    /// A verdict was stated: its proof held.
    Stated {
        /// Which.
        fault: String,
        /// The walk went on after it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        noted: bool,
    },
    /// The walk came to its end.
    Ended(End),
    /// The technician took back an answer and all after it.
    WentBack {
        /// The answer's position in the trail.
        to: usize,
    },
    /// The technician wrote something down.
    Noted {
        /// What.
        text: String,
    },
    /// Something was put back.
    PutBack {
        /// What.
        restore: String,
    },
    /// Something stays open.
    KeptOpen {
        /// What.
        restore: String,
        /// Why, in the technician's words.
        why: String,
    },
    /// The call was closed.
    Closed,
    /// The log's last line had been torn, and was cut off.
    TailCut {
        /// How many bytes.
        bytes: u64,
        /// The file that keeps them.
        kept: String,
    },
}

/// How a call was opened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Opened {
    /// The library.
    pub library: LibraryMark,
    /// The tree of the complaint.
    pub tree: String,
    /// Who walks it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub technician: Option<String>,
    /// Where.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub site: Option<String>,
    /// At which equipment.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub equipment: Option<String>,
    /// The program's version.
    pub program: String,
    /// The file that answered, or the practice that it was, where nobody was on site.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub answered_from: Option<String>,
}

impl Opened {
    /// What [`Opened::answered_from`] begins with where a simulated furnace answered, and no file.
    pub const PRACTICE: &'static str = "practice seed ";
    /// What it ends with where a tree asked in that practice.
    pub const GUIDED: &'static str = " guided";

    /// Whether it is practice: a simulated furnace answered.
    pub fn is_practice(&self) -> bool {
        let from = self.answered_from.as_deref();
        from.is_some_and(|from| from.starts_with(Self::PRACTICE))
    }

    /// Whether it is practice in which no tree asked: what a tree no longer comes to after an answer says nothing there.
    pub fn is_free_practice(&self) -> bool {
        let from = self.answered_from.as_deref();
        self.is_practice() && from.is_some_and(|from| !from.ends_with(Self::GUIDED))
    }
}

/// Which library a call was walked with.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LibraryMark {
    /// Its name.
    pub name: String,
    /// Its edition.
    pub edition: String,
    /// The overlays laid over it, in that order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub overlays: Vec<OverlayMark>,
    /// The hash of its files, those of the overlays included.
    pub hash: String,
}

/// Which overlay was laid over a library.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OverlayMark {
    /// Its name.
    pub name: String,
    /// Its edition; empty where it gives none.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub edition: String,
}

/// Why a tree was entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// It is the gate.
    Gate,
    /// It is the complaint's.
    Complaint,
    /// A step visits it.
    Visit,
    /// There is a danger.
    Danger,
}

/// Why a value is asked for again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Doubt {
    /// It lies within the meter's accuracy of a bound.
    Borderline,
    /// It lies outside what is plausible.
    Implausible,
}

/// What made earlier values not count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Voiding {
    /// A step's work changed what was measured.
    Work,
    /// The value is taken again.
    Retake,
    /// A danger interrupted the walk.
    Danger,
}

/// How a walk ended.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum End {
    /// In a verdict that was stated.
    Verdict {
        /// Which.
        fault: String,
        /// It was a danger's: put-backs are listed, not demanded.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        danger: bool,
    },
    /// In an outcome of the tree it began with.
    Outcome {
        /// Which.
        outcome: String,
    },
    /// Without a verdict.
    Unproven {
        /// Why.
        why: String,
    },
    /// In the technician's own verdict.
    Insisted {
        /// The fault that was not proven.
        fault: String,
        /// The technician's words.
        words: String,
    },
}
