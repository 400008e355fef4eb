//! What the trees of a library cost, for a person and for another program.

mod json;

use super::Page;
use crate::bench::cost::{Basis, Cost, Proposal, TreeCost};
use crate::library::{Id, Library, Step};
use crate::report::findings::{Look, counted};
use crate::source::Safe;

pub use json::json;

/// Widest column of the trees' names.
const WIDEST: usize = 30;

/// How many questions that could change places are shown.
const SHOWN: usize = 10;

/// What the figures mean, each with its column.
const MEANINGS: [(&str, &str); 6] = [
    (
        "tree",
        "minutes from the tree's start to the verdict as the tree asks, expected over its ways.",
    ),
    (
        "least",
        "the exact least of all orders that ask first what must come first, if a question shows, for a fault that no way \
         asks it of, what it shows for most. - where the ways are too many.",
    ),
    (
        "floor",
        "what no such order can come below. The gate and the dangers keep their order: - for both.",
    ),
    (
        "calls",
        "minutes of the worked calls from here to a fault, as they were walked, on average.",
    ),
    (
        "alone",
        "share of the faults isolated to one part; what is handed on is not isolated.",
    ),
    (
        "ways",
        "a + where there are more, less likely ones: the figures are of those that were followed.",
    ),
];

/// For a person: a line a tree, what the figures mean and lean on, and what could change places.
pub fn text(cost: &Cost<'_>, called: Option<&Safe>, look: Look) -> String {
    let mut page = Page {
        look,
        text: String::new(),
    };
    table(&mut page, cost);
    for (name, words) in MEANINGS {
        page.hanging(0, 7, &format!("{name:5}  {words}"));
    }
    page.blank();
    leans_on(&mut page, cost);
    page.blank();
    isolation(&mut page, cost);
    page.blank();
    proposals(&mut page, cost);
    if let Some(called) = called {
        page.text.push_str(&format!("{}: ", page.shown(called.as_str())));
    }
    let trees = counted(cost.trees.len(), "tree");
    page.line(
        0,
        &format!("{trees} priced, {} end in no fault", cost.without.len()),
    );
    page.text
}

fn table(page: &mut Page, cost: &Cost<'_>) {
    let names = cost.trees.iter().map(|tree| name(cost.library, tree).len());
    let wide = names
        .chain(["minutes to a verdict".len()])
        .max()
        .unwrap_or_default()
        .min(WIDEST);
    let row = |name: &str, cells: [String; 7]| {
        let [faults, ways, tree, least, floor, calls, alone] = cells;
        format!("{name:wide$} {faults:>6} {ways:>6} {tree:>6} {least:>6} {floor:>6} {calls:>6} {alone:>6}")
    };
    let head = ["faults", "ways", "tree", "least", "floor", "calls", "alone"];
    page.line(0, &row("minutes to a verdict", head.map(str::to_owned)));
    for tree in &cost.trees {
        let name = page.shown(name(cost.library, tree)).cut(wide);
        let cells = [
            tree.faults.len().to_string(),
            format!("{}{}", tree.ways, if tree.cut { "+" } else { "" }),
            minutes(Some(tree.minutes)),
            minutes(tree.least),
            minutes(tree.floor),
            minutes(tree.calls.mean()),
            share(tree.isolated.fraction(1)),
        ];
        page.line(0, &row(name.as_str(), cells));
    }
    page.blank();
}

fn name<'l>(library: &'l Library, tree: &TreeCost) -> &'l str {
    &library.trees[tree.tree].name
}

fn minutes(minutes: Option<f64>) -> String {
    minutes.map_or_else(|| "-".to_owned(), |minutes| format!("{minutes:.1}"))
}

/// Rounded down, so that 100 % is all.
fn share(share: Option<f64>) -> String {
    share.map_or_else(
        || "-".to_owned(),
        |share| format!("{} %", (share * 100.0 + 1e-9).floor()),
    )
}

/// What all figures lean on: one fault, the weights, the minutes.
fn leans_on(page: &mut Page, cost: &Cost<'_>) {
    page.line(
        0,
        "All of this takes it that one fault is there, and one that the tree can end in.",
    );
    let faults = cost.library.faults.len();
    let weights = match cost.weighted {
        0 => format!("Weights: none of the {faults} faults has one in the registry, so all count alike."),
        some if some == faults => "Weights: those of the faults in the registry.".to_owned(),
        some => {
            format!("Weights: of {faults} faults {some} have one in the registry; the others count as 1.")
        }
    };
    page.line(0, &weights);
    page.line(
        0,
        "A fault's ways share its weight as if each answer on them were as likely as another.",
    );
    page.line(
        0,
        "Minutes: those of the library's steps, readings and signs. The plate, and putting back, count nothing.",
    );
    if !cost.unpriced.is_empty() {
        let names = cost.unpriced.iter().map(|datum| cost.library.name_of(*datum));
        let names = names.collect::<Vec<_>>().join(", ");
        page.line(0, &format!("Without minutes, so they count nothing: {names}."));
    }
    let spared = cost.trees.iter().filter_map(|tree| {
        let known = tree.known.filter(|known| tree.minutes - known >= 0.05)?;
        Some(format!(
            "{} {known:.1} instead of {:.1}",
            name(cost.library, tree),
            tree.minutes
        ))
    });
    let spared: Vec<String> = spared.collect();
    if !spared.is_empty() {
        let spared = spared.join(", ");
        page.line(
            0,
            &format!(
                "Minutes in the best order of their questions that leans on nothing but the answers on their own ways: {spared}."
            ),
        );
    }
}

/// How far faults are found and told apart.
fn isolation(page: &mut Page, cost: &Cost<'_>) {
    let fractions = [1, 2, 3].map(|at_most| share(cost.isolated.fraction(at_most)));
    let [one, two, three] = fractions;
    page.line(
        0,
        &format!(
            "Fault detection: {} of the registered faults, by weight, are some tree's verdict. Fault isolation, of those: \
             {one} to one part, {two} to two at most, {three} to three at most; the rest is handed on.",
            share(cost.detected)
        ),
    );
    let mut groups: Vec<String> = Vec::new();
    for tree in &cost.trees {
        for fault in tree.faults.iter().filter(|fault| fault.left > Some(1)) {
            let words = format!(
                "{} ({})",
                cost.library.faults[fault.fault].name,
                fault.left.unwrap_or_default()
            );
            if !groups.contains(&words) {
                groups.push(words);
            }
        }
    }
    if !groups.is_empty() {
        page.line(
            0,
            &format!("Ambiguity groups, with their sizes: {}.", groups.join(", ")),
        );
    }
}

fn proposals(page: &mut Page, cost: &Cost<'_>) {
    let all = cost.trees.iter();
    let mut all: Vec<&Proposal> = all.flat_map(|tree| &tree.proposals).collect();
    all.sort_by(|one, other| other.gain.total_cmp(&one.gain));
    if all.is_empty() {
        page.line(
            0,
            "No question can come earlier and spare minutes, by what may pass what.",
        );
        page.blank();
        return;
    }
    page.line(
        0,
        "What would spare most, each on its own, in minutes a call of its tree:",
    );
    for proposal in all.iter().take(SHOWN) {
        page.hanging(2, 6, &words(cost.library, proposal));
    }
    if all.len() > SHOWN {
        page.line(2, &format!("… {} more, with `--format json`", all.len() - SHOWN));
    }
    page.line(
        0,
        "`known`: each way that is left there asks it anyway. `judge`: only if it can be asked there, and shows for other \
         faults what it shows for most; the tree does not say. No question passes work, the plate, what it leans on, a \
         question of danger, or one with fewer cautions or put-backs than its own; what proves a verdict stays.",
    );
    page.blank();
}

/// `0.64  draft-not-proved.yaml:41  judge: housing, wheel instead of wheel, housing`.
fn words(library: &Library, proposal: &Proposal) -> String {
    let place = proposal
        .now
        .first()
        .map(|step| library.files.place(library[*step].at));
    let place = place
        .map(|place| format!("{}:{}", place.file, place.line))
        .unwrap_or_default();
    format!(
        "{:.2}  {place}  {}: {} instead of {}",
        proposal.gain,
        basis(proposal.basis),
        names(library, &proposal.then).join(", "),
        names(library, &proposal.now).join(", ")
    )
}

fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Known => "known",
        Basis::ToJudge => "judge",
    }
}

fn names<'l>(library: &'l Library, steps: &[Id<Step>]) -> Vec<&'l str> {
    steps.iter().map(|step| library[*step].name.as_str()).collect()
}
