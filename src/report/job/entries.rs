//! What stands on a job report, a kind of line after the other.

use serde::Serialize;

use super::proof::Lacking;

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
    /// The same, each apart from what it is called.
    #[serde(skip)]
    pub(super) taken: Vec<(String, String)>,
    /// Whether it held at the end.
    pub holds: bool,
    /// What it lacks, where it did not.
    #[serde(skip)]
    pub(super) lacking: Option<Lacking>,
}

/// One verdict that was noted on the way.
#[derive(Clone, Debug, Serialize)]
pub struct NotedEntry {
    /// The fault's registered name.
    pub fault: String,
    /// What it is called.
    pub title: String,
    /// What is done about it.
    pub remedy: String,
    /// Why it follows, in the tree's words.
    pub because: Option<String>,
    /// What to tell the owner.
    pub advice: Option<String>,
}

/// One visit that a noted verdict cut short.
#[derive(Clone, Debug, Serialize)]
pub struct NotLookedAtEntry {
    /// What the visited tree is called.
    pub tree: String,
    /// The verdict that was noted.
    pub because: String,
    /// What was not looked at for that reason, on the whole call.
    pub checks: Vec<String>,
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
    /// `reading`, `sign`, `plate` or `work`.
    pub kind: &'static str,
    /// The registered name of what was asked; none of work.
    pub name: Option<String>,
    /// A value was given; otherwise it could not be taken, or work was done.
    pub given: bool,
    /// What was worked out after it, before anything else was asked.
    pub worked_out: Vec<WorkedOutEntry>,
    /// The faults that the walk no longer came to after it.
    pub ruled_out: Vec<String>,
}

/// One reading that was worked out.
#[derive(Clone, Debug, Serialize)]
pub struct WorkedOutEntry {
    /// Its registered name.
    pub reading: String,
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
