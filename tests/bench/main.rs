//! The simulated furnace and the technician: given a machine and meters that err, the walk must end in the truth.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod decides;
mod electric;
mod judge;
mod kinds;
mod practice;
mod sound;
mod sound_calls;
mod sums;
mod thermal;
mod told;
mod trials;
