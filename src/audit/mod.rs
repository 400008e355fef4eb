//! What the company learns from its calls.

pub mod statistics;
