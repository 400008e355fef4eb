//! Which questions could change places, and what that would spare.
//!
//! Two kinds of change are looked for, within a tree's own steps:
//!
//! - **Known** ([`Basis::Known`]): a question is asked earlier, where every case that is left there has an answer to it: its
//!   author has it asked on all those ways anyway. What it then decides, the questions between need not.
//! - **To be judged** ([`Basis::ToJudge`]): a stretch of questions, each of which ends in a verdict or goes on to the next, in
//!   the order of chance over cost. A tree does not say what a question shows, or whether it can be asked at all, before
//!   the one in front of it is answered; so this holds only where each shows its own fault and no other, and its author must say
//!   whether it does.
//!
//! What may not pass, of either kind ([`Guard`]):
//!
//! - a question never passes work: a furnace after it is another furnace;
//! - nothing passes a question of the rating plate, nor what it is worked out from or its bands lean on: they say what kind
//!   of furnace it is, and what is asked there;
//! - nothing passes a question of which an answer is a shut-down or a finding of danger: danger comes first;
//! - a question with a caution, or one that opens something, passes only a question that has the same ones: dead before
//!   live, closed before open;
//! - a question passes none that the proof of a verdict behind it needs;
//! - the gate and the dangers stay as they are.

mod guard;
mod known;
mod stretch;

pub use guard::Guard;

use super::model::Model;
use super::ways::Way;
use crate::library::{Id, Library, Step, Tree};

/// A gain below this is none: it is what rounding leaves.
const LEAST_GAIN: f64 = 1e-6;

/// Why a change may be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// The tree's own ways answer for it.
    Known,
    /// It holds if each question shows its own fault and no other, and can be asked before the others.
    ToJudge,
}

/// Questions that could change places.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// The steps as they are asked now.
    pub now: Vec<Id<Step>>,
    /// The same steps as they would be asked.
    pub then: Vec<Id<Step>>,
    /// The minutes that it spares, expected over all faults of the tree.
    pub gain: f64,
    /// Why it may be done.
    pub basis: Basis,
}

/// What could change places in a tree that is neither the gate nor a danger's, the greatest gain first.
pub fn proposals(library: &Library, guard: &Guard<'_>, tree: Id<Tree>, ways: &[Way], model: &Model) -> Vec<Proposal> {
    let mut proposals = known::proposals(library, guard, tree, ways, model);
    proposals.extend(stretch::proposals(library, guard, tree, ways, model));
    proposals.retain(|proposal| proposal.gain > LEAST_GAIN);
    proposals.sort_by(|one, other| other.gain.total_cmp(&one.gain));
    proposals
}
