//! Faults of the electric half.

use super::Fault;

/// Its faults.
pub const FAULTS: &[Fault] = &[];
