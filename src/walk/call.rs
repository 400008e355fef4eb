//! A call as a face sees it.

use super::ask::{Ask, Standing};
use super::command::{Command, Refusal};

/// A call that is being walked, with its journal behind it: what a face shows, and whom it asks to do things.
pub trait Call {
    /// The question that stands.
    fn ask(&self) -> &Ask;

    /// What stands beside it.
    fn standing(&self) -> &Standing;

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
