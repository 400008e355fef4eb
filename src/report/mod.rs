//! What a person reads: what is wrong with a library.

pub mod findings;
