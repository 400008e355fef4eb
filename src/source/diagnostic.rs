//! One thing that is wrong with a library.

use super::Span;

/// How bad a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// The library must not be walked.
    Error,
    /// It can be walked, but somebody should look.
    Warning,
}

impl Level {
    /// The word for it, as reports print it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Warning => "warning",
        }
    }
}

/// One thing that is wrong, where it stands, and how to mend it.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagnostic {
    /// The rule's name, in kebab case.
    pub rule: &'static str,
    /// How bad it is.
    pub level: Level,
    /// Where it stands.
    pub span: Span,
    /// What is wrong, in one sentence without a full stop.
    pub message: String,
    /// How to mend it.
    pub help: String,
    /// Steps of a walk that shows it, first to last; empty where no walk is needed.
    pub witness: Vec<String>,
}
