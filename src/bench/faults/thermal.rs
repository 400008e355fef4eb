//! Faults of the thermal half.

use super::Fault;

/// Its faults.
pub const FAULTS: &[Fault] = &[];
