//! What tests of the whole program share: a place of their own, the program, and a call whose answers are known.

#![allow(
    dead_code,
    reason = "what one of the test programs leaves unused, another uses"
)]

pub mod call;
pub mod scene;
pub mod spoken;
pub mod wait;
