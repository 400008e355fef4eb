//! The minutes of each tree, a line each, and what the columns mean.

use super::super::table::Table;
use super::{Page, name, share};
use crate::bench::cost::{Cost, TreeCost};

/// Widest column of the trees' names.
const WIDEST: usize = 29;

/// What stands over the names.
const HEAD: &str = "minutes to a verdict";

/// What the figures mean, each with its column.
const MEANINGS: [(&str, &str); 6] = [
    (
        "ways",
        "the ways from the tree's start to a verdict. A + where there are more, less likely ones: every figure is of those that \
         were followed.",
    ),
    (
        "now",
        "expected minutes from the tree's start to a verdict, in the order it asks now.",
    ),
    (
        "least",
        "the optimum: what the best order of the same questions takes, found exactly. With ≥ a bound instead, where the ways are \
         too many: no order comes below it. Both take it that a question shows, for a fault that no way asks it of, what it \
         shows for most. - for the gate and the dangers, which keep their order for safety's sake.",
    ),
    (
        "gap",
        "now less least: taken so, no other order spares more; where a fault shows something else than most, a change named below \
         may. With ≤ it is less than that, since a bound lies below the optimum.",
    ),
    (
        "calls",
        "minutes of the worked calls from this tree to a fault, as they were walked, on average; to compare with.",
    ),
    (
        "alone",
        "the fraction of its faults isolated to one part or one cause; what is handed on is not isolated.",
    ),
];

pub(super) fn write(page: &mut Page, cost: &Cost<'_>) {
    let names = cost.trees.iter().map(|tree| name(cost.library, tree).len());
    let wide = names.chain([HEAD.len()]).max().unwrap_or_default().min(WIDEST);
    let table = Table {
        names: wide,
        heads: ["faults", "ways", "now", "least", "gap", "calls", "alone"],
        wide: [6, 6, 6, 7, 7, 6, 6],
    };
    page.head(&table, HEAD);
    for tree in &cost.trees {
        let (least, gap) = least(tree);
        let cells = [
            tree.faults.len().to_string(),
            format!("{}{}", tree.ways, if tree.cut { "+" } else { "" }),
            minutes(tree.minutes),
            least,
            gap,
            tree.calls.mean().map_or_else(unknown, minutes),
            share(tree.isolated.fraction(1)),
        ];
        page.row(&table, name(cost.library, tree), cells);
    }
    page.blank();
    for (name, words) in MEANINGS {
        page.hanging(0, 7, &format!("{name:5}  {words}"));
    }
    page.blank();
}

/// The optimum and the gap to it, or the bound and what the gap cannot be above.
fn least(tree: &TreeCost) -> (String, String) {
    match (tree.least, tree.floor) {
        (Some(least), _) => (minutes(least), minutes((tree.minutes - least).max(0.0))),
        (None, Some(floor)) => (
            format!("≥{}", minutes(floor)),
            format!("≤{}", minutes((tree.minutes - floor).max(0.0))),
        ),
        (None, None) => (unknown(), unknown()),
    }
}

fn minutes(minutes: f64) -> String {
    format!("{minutes:.1}")
}

fn unknown() -> String {
    "-".to_owned()
}
