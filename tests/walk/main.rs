//! Service calls: given what has happened, when the technician does this, then that happens.

// Helpers of tests stop a test as an assertion would.
#![allow(clippy::unwrap_used)]

mod answers;
mod back;
mod built_in;
mod call;
mod corrected;
mod coverage;
mod dangers;
mod doubts;
mod edges;
mod fresh;
mod leaving;
mod log;
mod marks;
mod plate;
mod possible;
mod proof;
mod random;
mod rehearse;
mod retraced;
#[path = "../common/schemas.rs"]
mod schemas;
mod suggestion;
mod told;
mod visits;
