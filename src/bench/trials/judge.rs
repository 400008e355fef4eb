//! The verdict of a call against what was really wrong.

use super::call::Walked;
use crate::bench::faults::Fault;
use crate::library::{Id, Library, Remedy};
use crate::walk::End;

/// What a call came to, against the truth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// It condemned the true part, or one of a group with it, or put the true cause right, or named whoever must; with nothing
    /// wrong, it found nothing.
    Right,
    /// It ended without a verdict, handed a bad part on, or left the furnace off for something that was not the true fault.
    Referred,
    /// It ended as if nothing were wrong.
    Missed,
    /// It condemned a good part, or put right what was in order.
    Wrong,
}

/// How a walk ended.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ending {
    /// In a fault of the library; of several noted ones, the last.
    Fault(String),
    /// In an outcome of the complaint's tree.
    Outcome(String),
    /// Without a verdict.
    Unproven,
}

impl Ending {
    /// Its name: the fault's or the outcome's, or `unproven`.
    pub fn name(&self) -> &str {
        match self {
            Self::Fault(name) | Self::Outcome(name) => name,
            Self::Unproven => "unproven",
        }
    }
}

/// How a walk ended.
pub fn ending(library: &Library, walked: &Walked) -> Ending {
    let state = &walked.state;
    let noted = || {
        state
            .moment
            .stated
            .last()
            .map(|fault| library.faults[*fault].name.clone())
    };
    match &state.ended {
        Some(End::Verdict { fault, .. }) | Some(End::Insisted { fault, .. }) => Ending::Fault(fault.clone()),
        Some(End::Outcome { outcome }) => match noted() {
            Some(fault) => Ending::Fault(fault),
            None => Ending::Outcome(outcome.clone()),
        },
        Some(End::Unproven { .. }) | None => Ending::Unproven,
    }
}

/// A call against what was really wrong: nothing, one fault, or several at once.
///
/// Every verdict that was stated on the way counts: a good part that was condemned stays wrong, whatever came after it.
/// With several faults, one that is found is right: the next call finds the next.
pub fn judge(library: &Library, walked: &Walked, truth: &[&Fault]) -> Outcome {
    let state = &walked.state;
    // What the tree had put right as it went needs no verdict.
    let in_order = truth.is_empty() || walked.mended;
    let stated = (state.moment.stated.iter()).map(|fault| judge_verdict(library, *fault, truth, in_order));
    let stated: Vec<_> = stated.collect();
    if stated.contains(&Outcome::Wrong) {
        return Outcome::Wrong;
    }
    if stated.contains(&Outcome::Right) {
        return Outcome::Right;
    }
    stated.last().copied().unwrap_or(match &state.ended {
        Some(End::Outcome { .. }) => nothing_found(in_order),
        _ => Outcome::Referred,
    })
}

/// A walk that ended as if nothing were wrong: right where nothing is, any more.
fn nothing_found(in_order: bool) -> Outcome {
    match in_order {
        true => Outcome::Right,
        false => Outcome::Missed,
    }
}

/// What is said of the house and not of its furnace: right where the furnace is in order, since nothing else is left.
const OF_THE_HOUSE: &[&str] = &["house_loses_more"];

/// One verdict against what was really wrong; `in_order` where nothing is, any more.
pub fn judge_verdict(
    library: &Library,
    fault: Id<crate::library::Fault>,
    truth: &[&Fault],
    in_order: bool,
) -> Outcome {
    let said = &library.faults[fault];
    let mut named = (truth.iter())
        .filter(|fault| fault.verdicts.contains(&said.name.as_str()))
        .peekable();
    if named.peek().is_some() {
        // Who hands a bad part on has not found it, however near the words come.
        let found = |fault: &&Fault| said.remedy != Remedy::Refer || fault.part.is_none();
        return match named.any(found) {
            true => Outcome::Right,
            false => Outcome::Referred,
        };
    }
    match said.remedy {
        Remedy::Replace(part) => {
            let mut blamed = std::iter::once(part).chain(said.group.iter().copied());
            let is_bad = |name: &str| truth.iter().any(|fault| fault.part == Some(name));
            match blamed.any(|part| is_bad(&library.parts[part].name)) {
                true => Outcome::Right,
                false => Outcome::Wrong,
            }
        }
        Remedy::Correct => Outcome::Wrong,
        Remedy::Refer if truth.is_empty() && OF_THE_HOUSE.contains(&said.name.as_str()) => Outcome::Right,
        Remedy::ShutDown | Remedy::Refer | Remedy::Unresolved => Outcome::Referred,
        Remedy::None => nothing_found(in_order),
    }
}
