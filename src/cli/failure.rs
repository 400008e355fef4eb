//! Why a command failed, and with which exit code.

use std::fmt;
use std::io;

use crate::export::ExportError;
use crate::source::safe;
use crate::store::{LibraryReadError, StoreError};
use crate::walk::{Misfit, Refusal};

/// Findings: the program did its work and found something wrong.
pub(super) const FINDINGS: u8 = 1;
/// Wrong use, or input that cannot be read.
pub(super) const WRONG_USE: u8 = 2;
/// Something could not be saved.
pub(super) const NOT_SAVED: u8 = 3;

/// The code of two: damage counts before what could not be looked at.
pub(super) fn worse(one: u8, other: u8) -> u8 {
    match (one, other) {
        (FINDINGS, _) | (_, 0) => one,
        _ => other,
    }
}

/// Why a command failed.
#[derive(Debug)]
pub(super) struct Failure {
    pub code: u8,
    pub message: String,
    pub help: Option<String>,
}

impl Failure {
    pub fn new(code: u8, message: impl Into<String>) -> Self {
        Self {
            code,
            message: message.into(),
            help: None,
        }
    }

    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "proofwalk: {}", self.message)?;
        match &self.help {
            Some(help) => write!(f, "\n  help: {help}"),
            None => Ok(()),
        }
    }
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        Self::new(error.exit_code(), error.to_string())
    }
}

impl From<LibraryReadError> for Failure {
    fn from(error: LibraryReadError) -> Self {
        let message = format!("{}: {}", safe(&error.folder), safe(&error.message));
        Self::new(WRONG_USE, message).help(error.help)
    }
}

impl From<ExportError> for Failure {
    fn from(error: ExportError) -> Self {
        match error {
            ExportError::Taken(_) => Self::new(WRONG_USE, error.to_string())
                .help("name a folder that is not there yet, or is empty"),
            ExportError::Io(..) => Self::new(NOT_SAVED, error.to_string())
                .help("nothing was exported; see that the folder above it is there, may be written to, and has room"),
        }
    }
}

impl From<Refusal> for Failure {
    fn from(refusal: Refusal) -> Self {
        Self::new(WRONG_USE, refusal.message).help(refusal.help)
    }
}

impl From<Misfit> for Failure {
    fn from(misfit: Misfit) -> Self {
        Self::new(
            FINDINGS,
            format!("the session does not fit its library: {misfit}"),
        )
        .help("it was changed, or walked with another library; `proofwalk verify` says more")
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        Self::new(WRONG_USE, safe(&error.to_string()).to_string())
    }
}
