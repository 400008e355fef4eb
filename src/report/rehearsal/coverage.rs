//! How much of each tree the scenarios walk, and what they leave out.

use super::table::Table;
use super::{Listed, Page};
use crate::library::{Id, Library, Tree};
use crate::report::findings::counted;
use crate::walk::{Missed, Rehearsal, Tally, TreeCoverage};

/// How many edges of a tree are named where not all are asked for.
const FEW: usize = 3;

/// Widest column of the trees' names.
const WIDEST: usize = 44;

pub(super) fn write(page: &mut Page, rehearsal: &Rehearsal<'_>, listed: Listed) {
    let library = rehearsal.library;
    let trees: Vec<_> = (0..library.trees.len())
        .map(|at| (Id::new(at), rehearsal.coverage.of(Id::new(at))))
        .collect();
    let all = counted(trees.len(), "tree");
    let names = trees.iter().map(|(id, _)| library.trees[*id].name.as_str());
    let wide = names
        .map(str::len)
        .chain([all.len()])
        .max()
        .unwrap_or_default()
        .min(WIDEST);
    let table = Table {
        names: wide,
        heads: ["steps", "edges"],
        wide: [18, 18],
    };
    page.head(&table, "walked");
    let (mut steps, mut edges) = (Tally::default(), Tally::default());
    for (id, walked) in &trees {
        steps += walked.steps;
        edges += walked.edges;
        let name = &library.trees[*id].name;
        page.row(&table, name, [walked.steps, walked.edges].map(share));
    }
    page.row(&table, &all, [steps, edges].map(share));
    page.blank();
    missed(page, library, &trees, listed);
}

/// `41/44   93 %`, rounded down, so that 100 % is all.
fn share(tally: Tally) -> String {
    let percent = (tally.covered * 100).checked_div(tally.total).unwrap_or(100);
    format!("{}/{} {percent:>3} %", tally.covered, tally.total)
}

fn missed(page: &mut Page, library: &Library, trees: &[(Id<Tree>, TreeCoverage<'_>)], listed: Listed) {
    let mut held_back = 0;
    let mut any = false;
    for (id, walked) in trees {
        let edges = &walked.missed_edges;
        if edges.is_empty() {
            continue;
        }
        if !any {
            page.line(0, "no scenario takes:");
            any = true;
        }
        let shown = match listed {
            Listed::All => edges.len(),
            _ => FEW.min(edges.len()),
        };
        for edge in &edges[..shown] {
            page.line(2, &missed_words(library, edge));
        }
        let left = edges.len() - shown;
        if left > 0 {
            page.line(2, &format!("… {left} more in {}", library.trees[*id].name));
        }
        held_back += left;
    }
    if held_back > 0 {
        page.line(0, "`--uncovered` lists them all.");
    }
    if any {
        page.blank();
    }
}

/// `no-gas.yaml:41  valve_voltage: below 18 V → weak_board`.
fn missed_words(library: &Library, missed: &Missed<'_>) -> String {
    let step = &library[missed.step];
    let place = library.files.place(missed.exit.at());
    let never = if missed.reachable { "" } else { "  (no walk can)" };
    format!(
        "{}:{}  {}: {} → {}{never}",
        place.file,
        place.line,
        step.name,
        missed.exit.words(library, step),
        library[missed.exit.edge.go].name
    )
}
