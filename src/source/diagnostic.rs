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
    /// Whether a walk takes those steps; none where that needs no showing.
    pub walk: Option<Walked>,
}

/// Whether a walk takes the steps that show a finding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Walked {
    /// It does, with these answers.
    With(Vec<WitnessAnswer>),
    /// The steps lead there, but no answers were found that do.
    NotShown,
}

/// An answer along a walk that shows a finding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WitnessAnswer {
    /// The step that asks.
    pub step: String,
    /// The reading, sign or plate field that is asked for.
    pub asks: String,
    /// What is answered: a quantity, the name of a value, or that it could not be taken or told.
    pub answer: String,
}
