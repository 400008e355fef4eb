//! Which questions could change places, and what that would spare.
//!
//! Two kinds of change are looked for, within a tree's own steps. A question is asked before another, the rest of the tree staying
//! in its order; what it then decides, the questions between need not. And a stretch of questions, each of which ends in a
//! verdict or goes on to the next, is put in the order of chance over cost ([`best_order`](super::sequence::best_order)).
//!
//! - **Known** ([`Basis::Known`]): each way that is left there asks that question anyway, so its author answers for it.
//! - **To be judged** ([`Basis::ToJudge`]): some do not. A tree does not say what a question shows, or whether it can be asked at
//!   all, before the one in front of it is answered. The gain holds where it shows for other faults what it shows for most, of a
//!   stretch where each question shows its own fault and no other; the author must say whether it does.
//!
//! What may not pass, of either kind ([`Guard`]):
//!
//! - a question never passes work: a furnace after it is another furnace;
//! - nothing passes a question of the rating plate, nor what it is worked out from or its bands lean on: they say what kind
//!   of furnace it is, and what is asked there;
//! - nothing passes a question of which an answer is a shut-down or a finding of danger: danger comes first;
//! - a question with a caution, or one that opens something, passes only a question that has the same ones: dead before
//!   live, closed before open;
//! - what proves a verdict is taken all the same, and paid for; in a stretch, a question passes none that the proof of its
//!   own verdicts needs;
//! - the gate and the dangers stay as they are.
//!
//! The order in which a question lists its answers costs nothing: a technician reads them all, so no such change is proposed.

mod earlier;
mod guard;
mod stretch;

pub use guard::Guard;

use super::model::Model;
use super::ways::Ways;
use crate::library::{Id, Library, Step, Tree};

/// A gain below this is none: it is what rounding leaves.
const LEAST_GAIN: f64 = 1e-6;

/// Why a change may be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Every way that is left asks the question anyway.
    Known,
    /// It holds if the question can be asked there, and shows for the other faults what it shows for most.
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
pub fn proposals(
    library: &Library,
    guard: &Guard<'_>,
    tree: Id<Tree>,
    ways: &Ways,
    model: &Model,
) -> Vec<Proposal> {
    // Where ways are missing, what a question decides among those that are there says little; a stretch is whole.
    let mut proposals = match ways.cut {
        true => Vec::new(),
        false => earlier::proposals(library, guard, tree, &ways.ways, model),
    };
    let of_stretches = stretch::proposals(library, guard, tree, &ways.ways, model);
    let is_new = |proposal: &Proposal| {
        !proposals
            .iter()
            .any(|known| known.then == proposal.then && known.now == proposal.now)
    };
    let of_stretches: Vec<_> = of_stretches.into_iter().filter(is_new).collect();
    proposals.extend(of_stretches);
    proposals.retain(|proposal| proposal.gain > LEAST_GAIN);
    proposals.sort_by(|one, other| other.gain.total_cmp(&one.gain));
    proposals
}
