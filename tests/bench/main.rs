//! The simulated furnace and the technician: given a machine and meters that err, the walk must end in the truth.

// Helpers of tests stop a test as an assertion would.
#![allow(clippy::unwrap_used)]

mod electric;
mod practice;
mod sound;
mod thermal;
mod told;
