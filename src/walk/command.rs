//! What a technician can ask of a walk.

use crate::library::{Datum, Id, Restore};
use crate::source::safe;

/// One thing that a technician wants.
#[derive(Clone, Debug, PartialEq)]
pub enum Command {
    /// Answers the question with a number, as it was typed.
    Type(String),
    /// Answers the question with one of its options, by position.
    Choose(usize),
    /// What was asked for cannot be taken; why, in a few words.
    Unable(String),
    /// The technician cannot tell which option it is.
    Unsure,
    /// What was to be done is done.
    Done,
    /// Takes what a refused verdict lacks.
    Take(Datum),
    /// Takes again what stands.
    Retake(Datum),
    /// Takes back the answer of this position in the trail, and all after it.
    Back(usize),
    /// Writes something down.
    Note(String),
    /// There is a danger: by its position in the library.
    Danger(usize),
    /// Ends the walk without a verdict; why, in a few words.
    Stop(String),
    /// Ends the walk on the technician's own verdict, in writing.
    Insist(String),
    /// Something that was open has been put back.
    PutBack(Id<Restore>),
    /// It stays open; why, in writing.
    LeaveOpen(Id<Restore>, String),
    /// Closes the call.
    Close,
}

/// Why a command is not carried out. Nothing has changed; the question stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// What is wrong.
    pub message: String,
    /// What can be done.
    pub help: String,
}

impl Refusal {
    /// A refusal with its way out. What it repeats of what was typed is made safe to show.
    pub fn new(message: impl AsRef<str>, help: impl AsRef<str>) -> Self {
        Self {
            message: safe(message.as_ref()).to_string(),
            help: safe(help.as_ref()).to_string(),
        }
    }
}

impl std::fmt::Display for Refusal {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}: {}", self.message, self.help)
    }
}

impl std::error::Error for Refusal {}
