//! Whether the bands of a step take every value once, whatever the plate says.
//!
//! The ends of bands are linear in plate fields, so a gap is a system of inequalities that some plate and some value
//! satisfy: one condition of every band broken. An overlap is another: two bands met. What is known of plates stands beside
//! them: the `order:` of the registry, and that a field with a plausible range at or above nothing is positive.

mod decide;
pub(super) mod fields;
mod linear;
mod question;
pub(super) mod round;
mod sweep;
mod system;
mod witness;

pub(super) use decide::{Overlap, follow_one_another, gaps, order_that_mends, overlaps};
pub(super) use linear::{Inequality, Room, Solution, Undecided, VARIABLES, Work, eliminate, solve};
pub(super) use question::Question;
