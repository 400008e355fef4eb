//! A call as a face sees it.

use super::ask::{Ask, Standing};
use super::command::{Command, Refusal};
use crate::source::Safe;

/// Something that was known of the equipment before a call: a section with its heading.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Known {
    /// What it is about.
    pub heading: Safe,
    /// What is known, a line each.
    pub lines: Vec<Safe>,
}

/// A call that is being walked, with its journal behind it: what a face shows, and whom it asks to do things.
pub trait Call {
    /// The question that stands.
    fn ask(&self) -> &Ask;

    /// What stands beside it.
    fn standing(&self) -> &Standing;

    /// What was known of the equipment before this call, a section after the other; nothing where it is not known.
    fn known(&self) -> &[Known] {
        &[]
    }

    /// What is told once the call is closed, a section after the other; mostly nothing.
    fn known_after(&self) -> &[Known] {
        &[]
    }

    /// Whether words that are none of a question's options look for others: a list too long to read is searched.
    fn searches(&self) -> bool {
        false
    }

    /// Carries a command out. When this returns `Ok`, everything it led to is on disk.
    ///
    /// # Errors
    ///
    /// Where the command is refused or cannot be saved; then nothing has changed, and the question stands.
    fn carry_out(&mut self, command: Command) -> Result<(), NotDone>;
}

/// Why a command was not carried out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotDone {
    /// It makes no sense here, or could not be read.
    Refused(Refusal),
    /// It could not be saved.
    NotSaved {
        /// What went wrong.
        message: String,
        /// What to do.
        help: String,
    },
}
