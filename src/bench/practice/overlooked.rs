//! The dangers that an apprentice passed over.

use crate::bench::faults::Fault;
use crate::bench::trials::Walked;
use crate::library::{self, Datum, Id, Kind, Library, Remedy, Step, Tree};
use crate::source::safe;
use crate::walk::{Role, State, What};

/// Something that must not run, and was not shut down for what is wrong with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeftRunning {
    /// What is wrong with it.
    pub title: String,
    /// It was left off, for something else.
    pub off: bool,
    /// The tree's own way does not find it either.
    pub by_the_tree: bool,
}

/// What of the truth must not run and was not shut down for it, by what was named; `walked` is the tree's own way.
pub(super) fn left_running(
    library: &Library,
    truth: &[&Fault],
    named: &[Id<library::Fault>],
    walked: &Walked,
) -> Vec<LeftRunning> {
    let mut shut_down = named.iter();
    let off = shut_down.any(|fault| library.faults[*fault].remedy == Remedy::ShutDown);
    let mut left = Vec::new();
    for fault in truth {
        let verdicts = || fault.verdicts.iter().filter_map(|name| library.faults.find(name));
        let must_not_run = verdicts().any(|id| library.faults[id].remedy == Remedy::ShutDown);
        let found_by = |named: &[Id<library::Fault>]| verdicts().any(|id| named.contains(&id));
        if must_not_run && !found_by(named) {
            left.push(LeftRunning {
                title: fault.title.to_owned(),
                off,
                by_the_tree: !walked.mended && !found_by(&walked.state.moment.stated),
            });
        }
    }
    left
}

/// What is asked and done at the gate.
#[derive(Clone, Copy, Debug, PartialEq)]
enum AtGate {
    Ask(Datum),
    Do(Id<Step>),
}

/// What belongs before everything else, and was never done or only afterwards.
pub(super) fn at_gate(library: &Library, state: &State, raised: &[Id<Tree>]) -> Vec<String> {
    let Some(gate) = library.gate else {
        return Vec::new();
    };
    // A gate that ends the call by what it asks was right to ask no more.
    let frames = &state.moment.frames;
    let in_gate = frames.first().is_some_and(|frame| frame.role == Role::Gate)
        && frames.iter().all(|frame| frame.role != Role::Danger);
    let shut = state
        .moment
        .stated
        .last()
        .is_some_and(|fault| library.faults[*fault].remedy == Remedy::ShutDown);
    if in_gate && shut {
        return Vec::new();
    }
    let entries = entries(library, gate);
    let is_of_gate = |what: What| {
        entries.iter().any(|entry| match entry {
            AtGate::Ask(datum) => what == What::Datum(*datum),
            AtGate::Do(step) => what == What::Work(*step),
        })
    };
    let first_other = state.trail.iter().position(|answered| !is_of_gate(answered.what));
    let mut overlooked = Vec::new();
    for entry in &entries {
        let (what, words) = match entry {
            AtGate::Ask(datum) => (What::Datum(*datum), library.title_of(*datum).to_owned()),
            AtGate::Do(step) => match &library[*step].kind {
                Kind::Do { text, .. } => (What::Work(*step), safe(text).to_string()),
                _ => continue,
            },
        };
        let at = state.trail.iter().position(|answered| answered.what == what);
        match (at, first_other) {
            (None, _) if is_acted_upon(library, gate, what, raised) => {}
            (None, _) => overlooked.push(format!("Left out at the door: {words}")),
            (Some(at), Some(first)) if at > first => {
                overlooked.push(format!("Only after other work: {words}"));
            }
            _ => {}
        }
    }
    overlooked
}

/// Whether the gate asks something for a danger that was acted upon without it: who has left for gas has smelled it.
fn is_acted_upon(library: &Library, gate: Id<Tree>, what: What, raised: &[Id<Tree>]) -> bool {
    let steps = library.trees[gate].steps.clone().map(Id::new);
    let asks = steps
        .map(|id: Id<Step>| &library[id])
        .filter(|step| match step.kind {
            Kind::Measure { reading, .. } => what == What::Datum(Datum::Reading(reading)),
            Kind::Observe { sign, .. } => what == What::Datum(Datum::Sign(sign)),
            _ => false,
        });
    let mut goes = asks.flat_map(|step| step.edges());
    goes.any(|edge| matches!(&library[edge.go].kind, Kind::Visit { tree, .. } if raised.contains(tree)))
}

/// What the gate asks and has done on its own way: each once.
fn entries(library: &Library, gate: Id<Tree>) -> Vec<AtGate> {
    let mut entries = Vec::new();
    for at in library.trees[gate].steps.clone() {
        let id = Id::new(at);
        let entry = match &library[id].kind {
            Kind::Measure { reading, .. } => AtGate::Ask(Datum::Reading(*reading)),
            Kind::Observe { sign, .. } => AtGate::Ask(Datum::Sign(*sign)),
            Kind::Do { .. } => AtGate::Do(id),
            _ => continue,
        };
        if !entries.contains(&entry) {
            entries.push(entry);
        }
    }
    entries
}
