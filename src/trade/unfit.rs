//! Inputs that a formula does not take.

use std::fmt;

use crate::measure::Misread;

/// Why a formula gives no result, and what would mend it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unfit {
    /// What is wrong, without a full stop.
    pub message: String,
    /// How to mend it.
    pub help: String,
}

impl Unfit {
    pub(super) fn new(message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            message: message.into(),
            help: help.into(),
        }
    }

    /// The same, said of what has this name.
    pub(super) fn of(name: &str, unfit: Self) -> Self {
        Self::new(format!("{name}: {}", unfit.message), unfit.help)
    }
}

impl fmt::Display for Unfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}; {}", self.message, self.help)
    }
}

impl std::error::Error for Unfit {}

impl From<Misread> for Unfit {
    fn from(misread: Misread) -> Self {
        Self {
            message: misread.message,
            help: misread.help,
        }
    }
}
