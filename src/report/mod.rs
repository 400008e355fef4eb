//! What a person reads: what is wrong with a library, what came of its scenarios, a tree as a picture, what
//! the trade computes, and what came of a call.

pub mod audit;
pub mod findings;
pub mod formulas;
mod job;
mod job_text;
pub mod picture;
pub mod rehearsal;
pub mod replay;

pub use job::{AnswerEntry, FindingEntry, Job, Log, ProofEntry, PutBackEntry, TreeEntry};
