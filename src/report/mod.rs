//! What a person reads: what is wrong with a library, a tree as a picture, and what came of a call.

pub mod findings;
mod job;
mod job_text;
pub mod picture;

pub use job::{AnswerEntry, FindingEntry, Job, Log, ProofEntry, PutBackEntry};
