//! What a person reads: what is wrong with a library, and what came of a call.

pub mod findings;
mod job;
mod job_text;

pub use job::{AnswerEntry, FindingEntry, Job, Log, ProofEntry, PutBackEntry, TreeEntry};
