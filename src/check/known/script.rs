//! A way through a library, step by step.

use super::moves::How;
use crate::library::{Edge, Id, Step};

/// What a walk does at a step.
#[derive(Clone, Copy)]
pub(super) enum Act<'l> {
    /// Enters the tree that the step visits.
    Enter,
    /// Takes an edge: the first is the one that the answer names, the second the one that is left after its limit.
    Take(How, &'l Edge, &'l Edge),
    /// Ends its tree, or the walk.
    End,
}

/// A way through a library: each step with what is done there. A visit stands there twice, where it enters its tree and where
/// it comes back.
pub(super) type Script<'l> = Vec<(Id<Step>, Act<'l>)>;
