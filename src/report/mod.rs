//! What a person reads: what is wrong with a library, what came of its scenarios, a tree as a picture, what
//! the trade computes, and what came of a call.

pub mod audit;
#[cfg(test)]
mod contrast;
pub mod findings;
pub mod formulas;
mod history;
mod job;
pub mod picture;
pub mod practice;
pub mod rehearsal;
pub mod replay;

pub use history::{History, PastCall, ReadingHistory, ReadingPoint};
pub use job::{
    AnswerEntry, BandEntry, FindingEntry, Job, Log, NotLookedAtEntry, NotedEntry, PlateEntry, ProofEntry,
    PutBackEntry, ReadingEntry, TakingEntry, TreeEntry, WorkedOutEntry,
};

/// Most columns of a page of text, and fewest.
const WIDTH: usize = 78;
const NARROWEST: usize = 36;

/// How many columns a page of text takes on a terminal of so many, or elsewhere.
fn columns_on(terminal: Option<usize>) -> usize {
    terminal.map_or(WIDTH, |columns| columns.clamp(NARROWEST, WIDTH))
}
