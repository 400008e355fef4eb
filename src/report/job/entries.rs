//! What stands on a job report, a kind of line after the other.

use serde::Serialize;

/// One tree.
#[derive(Clone, Debug, Serialize)]
pub struct TreeEntry {
    /// Its name.
    pub tree: String,
    /// What it is called.
    pub title: String,
    /// How far it is trusted: `draft`, `field-trial` or `approved`.
    pub status: &'static str,
    /// Its edition, where it gives one.
    pub edition: Option<String>,
}

/// One line of the proof.
#[derive(Clone, Debug, Serialize)]
pub struct ProofEntry {
    /// What was claimed.
    pub claim: String,
    /// What was measured for it.
    pub measured: Vec<String>,
    /// Whether it held at the end.
    pub holds: bool,
}

/// One finding.
#[derive(Clone, Debug, Serialize)]
pub struct FindingEntry {
    /// How bad.
    pub severity: &'static str,
    /// What.
    pub text: String,
}

/// One field of the rating plate.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PlateEntry {
    /// What it is called.
    pub title: String,
    /// What the plate says.
    pub value: String,
}

/// One answer.
#[derive(Clone, Debug, Serialize)]
pub struct AnswerEntry {
    /// What was asked.
    pub title: String,
    /// What was answered.
    pub answer: String,
    /// It lay within the meter's accuracy of a bound.
    pub borderline: bool,
    /// What was worked out after it, before anything else was asked.
    pub worked_out: Vec<WorkedOutEntry>,
    /// The faults that the walk no longer came to after it.
    pub ruled_out: Vec<String>,
}

/// One reading that was worked out.
#[derive(Clone, Debug, Serialize)]
pub struct WorkedOutEntry {
    /// What it is called.
    pub title: String,
    /// What came out.
    pub value: String,
    /// What that means, in the tree's words.
    pub means: Option<String>,
}

/// One thing that was opened.
#[derive(Clone, Debug, Serialize)]
pub struct PutBackEntry {
    /// What to do to put it back.
    pub text: String,
    /// `done`, `refused` or `open`.
    pub state: &'static str,
    /// Why it stays open, in the technician's words.
    pub why: Option<String>,
}
