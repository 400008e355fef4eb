//! What can be wrong with a library before its graph is looked at.

use std::fmt;

use crate::measure::Misread;
use crate::source::Span;

/// One thing that could not be read or resolved, and where it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Where.
    pub span: Span,
    /// What.
    pub kind: ProblemKind,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq)]
pub enum ProblemKind {
    /// A file, key or value that does not have the format's shape.
    Malformed {
        /// What is wrong.
        message: String,
        /// How to mend it.
        help: String,
    },
    /// A name that nothing is registered under.
    UnknownName {
        /// What kind of thing is named.
        what: What,
        /// The name.
        name: String,
        /// The registered name that was probably meant.
        nearest: Option<String>,
        /// Of a value, those that are registered, as far as they are few.
        registered: Vec<String>,
    },
    /// A name that is taken.
    DuplicateName {
        /// What kind of thing is named.
        what: What,
        /// The name.
        name: String,
        /// Where it stood first.
        first: Span,
        /// Not the same to the letter, but to the eye.
        look_alike: Option<String>,
    },
    /// A quantity of another dimension than its place has.
    UnitMismatch(Misread),
}

/// The kinds of things that have names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum What {
    Tree,
    Step,
    Outcome,
    PlateField,
    Reading,
    ReadingOrSign,
    Datum,
    Sign,
    Value,
    Part,
    Fault,
    Restore,
    Caution,
    Source,
    Formula,
    Argument,
}

impl fmt::Display for What {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Tree => "tree",
            Self::Step => "step",
            Self::Outcome => "outcome",
            Self::PlateField => "plate field",
            Self::Reading => "reading",
            Self::ReadingOrSign => "reading or sign",
            Self::Datum => "reading, sign or plate field",
            Self::Sign => "sign",
            Self::Value => "value",
            Self::Part => "part",
            Self::Fault => "fault",
            Self::Restore => "put-back",
            Self::Caution => "caution",
            Self::Source => "source",
            Self::Formula => "formula",
            Self::Argument => "argument",
        })
    }
}
