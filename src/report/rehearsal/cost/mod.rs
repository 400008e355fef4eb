//! What the trees of a library cost, for a person and for another program.

mod apart;
mod changes;
mod json;
mod leans_on;
mod table;

use super::Page;
use crate::bench::cost::{Basis, Cost, TreeCost};
use crate::library::{Id, Library, Step};
use crate::report::findings::{Look, counted};
use crate::source::Safe;

pub use json::json;

/// For a person: a line a tree with what its figures mean, what they lean on, how far faults are told apart, and what could
/// change places.
pub fn text(cost: &Cost<'_>, called: Option<&Safe>, look: Look) -> String {
    let mut page = Page {
        look,
        text: String::new(),
    };
    match (cost.trees.is_empty(), cost.without.is_empty()) {
        (false, _) => {
            table::write(&mut page, cost);
            leans_on::write(&mut page, cost);
            apart::write(&mut page, cost);
            changes::write(&mut page, cost);
        }
        (true, false) => page.line(0, "nothing can be priced: no tree of the library ends in a fault"),
        (true, true) => page.line(0, "nothing can be priced: the library has no tree yet"),
    }
    let trees = counted(cost.trees.len(), "tree");
    let sum = format!("{trees} priced, {} end in no fault", cost.without.len());
    match called {
        Some(called) => page.sum(called, &sum),
        None => page.line(0, &sum),
    }
    page.text
}

fn name<'l>(library: &'l Library, tree: &TreeCost) -> &'l str {
    &library.trees[tree.tree].name
}

/// Rounded down, so that 100 % is all.
fn share(share: Option<f64>) -> String {
    share.map_or_else(
        || "-".to_owned(),
        |share| format!("{} %", (share * 100.0 + 1e-9).floor()),
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
