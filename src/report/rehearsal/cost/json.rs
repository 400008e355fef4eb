//! What the trees of a library cost, as JSON.

use serde::Serialize;

use super::{basis, name};
use crate::bench::cost::{Cost, FaultCost, Isolated, Proposal, TreeCost};
use crate::library::{Fault, Id, Library, Step};
use crate::source::safe;

#[derive(Serialize)]
struct Priced {
    library: String,
    /// What every figure leans on.
    assumed: Assumed,
    fault_detection: Option<f64>,
    fault_isolation: Isolation,
    unmet: Vec<String>,
    not_followed: Vec<String>,
    trees: Vec<Tree>,
    without_faults: Vec<String>,
}

#[derive(Serialize)]
struct Assumed {
    faults_at_once: usize,
    faults: usize,
    weighted: usize,
    weights: &'static str,
    minutes: &'static str,
    without_minutes: Vec<String>,
}

#[derive(Serialize)]
struct Isolation {
    to_one: Option<f64>,
    to_two: Option<f64>,
    to_three: Option<f64>,
    mean_group: Option<f64>,
}

#[derive(Serialize)]
struct Tree {
    tree: String,
    ways: usize,
    all_ways: bool,
    minutes: f64,
    least: Option<f64>,
    least_known: Option<f64>,
    floor: Option<f64>,
    calls: usize,
    calls_minutes: Option<f64>,
    fault_isolation: Isolation,
    ambiguous: Vec<Vec<String>>,
    faults: Vec<FaultEntry>,
    proposals: Vec<Change>,
}

#[derive(Serialize)]
struct FaultEntry {
    fault: String,
    weight: f64,
    ways: usize,
    minutes: f64,
    group: Option<usize>,
    calls: usize,
    calls_minutes: Option<f64>,
}

#[derive(Serialize)]
struct Change {
    basis: &'static str,
    gain: f64,
    file: String,
    line: usize,
    now: Vec<String>,
    then: Vec<String>,
}

/// For another program, as JSON. Minutes are minutes, fractions lie between 0 and 1; what is not known is null.
pub fn json(cost: &Cost<'_>) -> String {
    let library = cost.library;
    let priced = Priced {
        library: shown(&library.name),
        assumed: Assumed {
            faults_at_once: 1,
            faults: library.faults.len(),
            weighted: cost.weighted,
            weights: "faults' weight in the registry, 1 where absent",
            minutes: "steps', readings' and signs' minutes in the library, 0 where absent",
            without_minutes: cost
                .unpriced
                .iter()
                .map(|datum| shown(library.name_of(*datum)))
                .collect(),
        },
        fault_detection: cost.detected,
        fault_isolation: isolation(&cost.isolated),
        unmet: cost
            .unmet
            .iter()
            .map(|fault| fault_name(library, *fault))
            .collect(),
        not_followed: cost
            .unfollowed
            .iter()
            .map(|fault| fault_name(library, *fault))
            .collect(),
        trees: cost.trees.iter().map(|tree| entry(library, tree)).collect(),
        without_faults: cost
            .without
            .iter()
            .map(|tree| shown(&library.trees[*tree].name))
            .collect(),
    };
    // A structure of texts, numbers and lists has nothing that JSON cannot hold.
    let mut text = serde_json::to_string_pretty(&priced).unwrap_or_default();
    text.push('\n');
    text
}

fn entry(library: &Library, tree: &TreeCost) -> Tree {
    Tree {
        tree: shown(name(library, tree)),
        ways: tree.ways,
        all_ways: !tree.cut,
        minutes: tree.minutes,
        least: tree.least,
        least_known: tree.known,
        floor: tree.floor,
        calls: tree.calls.count,
        calls_minutes: tree.calls.mean(),
        fault_isolation: isolation(&tree.isolated),
        ambiguous: (tree.ambiguous.iter())
            .map(|group| group.iter().map(|fault| fault_name(library, *fault)).collect())
            .collect(),
        faults: tree
            .faults
            .iter()
            .map(|fault| fault_entry(library, fault))
            .collect(),
        proposals: tree
            .proposals
            .iter()
            .map(|proposal| change(library, proposal))
            .collect(),
    }
}

fn fault_entry(library: &Library, fault: &FaultCost) -> FaultEntry {
    FaultEntry {
        fault: fault_name(library, fault.fault),
        weight: fault.weight,
        ways: fault.ways,
        minutes: fault.minutes,
        group: fault.left,
        calls: fault.calls.count,
        calls_minutes: fault.calls.mean(),
    }
}

fn change(library: &Library, proposal: &Proposal) -> Change {
    let place = proposal
        .now
        .first()
        .map(|step| library.files.place(library[*step].at));
    let names = |steps: &[Id<Step>]| super::names(library, steps).into_iter().map(shown).collect();
    Change {
        basis: basis(proposal.basis),
        gain: proposal.gain,
        file: place.as_ref().map(|place| shown(&place.file)).unwrap_or_default(),
        line: place.map(|place| place.line).unwrap_or_default(),
        now: names(&proposal.now),
        then: names(&proposal.then),
    }
}

fn isolation(isolated: &Isolated) -> Isolation {
    Isolation {
        to_one: isolated.fraction(1),
        to_two: isolated.fraction(2),
        to_three: isolated.fraction(3),
        mean_group: isolated.mean_size(),
    }
}

fn fault_name(library: &Library, fault: Id<Fault>) -> String {
    shown(&library.faults[fault].name)
}

fn shown(text: &str) -> String {
    String::from(safe(text))
}
