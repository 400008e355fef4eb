//! What each apprentice's first tries came to.

use std::collections::BTreeMap;

use super::page::{Page, count, name};
use super::{Class, End, furnaces};
use crate::audit::statistics::wilson;
use crate::report::findings::counted;

/// Fewest furnaces of which a share says something of somebody (a choice of ours: the interval of ten is still half as wide as
/// it can be).
const ENOUGH: u64 = 10;

/// What the columns are called.
const HEADS: [&str; 7] = [
    "apprentice",
    "proven",
    "min, tree",
    "for nothing",
    "dangers",
    "open",
    "guesses",
];

/// What an apprentice's first tries came to.
#[derive(Default)]
struct Sum {
    furnaces: u64,
    solved: u64,
    minutes: f64,
    tree_minutes: f64,
    condemned: usize,
    overlooked: usize,
    left_open: usize,
    named_before: usize,
    unfinished: usize,
    not_known: usize,
}

/// Each apprentice, by name.
pub(super) fn write(page: &mut Page, class: &Class) {
    let mut sums: BTreeMap<String, Sum> = BTreeMap::new();
    for (_, tries) in furnaces(class) {
        for tried in tries.iter().filter(|tried| tried.attempt == 1) {
            let Some(who) = &tried.practised.apprentice else {
                continue;
            };
            let sum = sums.entry(who.clone()).or_default();
            let mark = match &tried.practised.end {
                End::NotFinished => {
                    sum.unfinished += 1;
                    continue;
                }
                End::NotKnown => {
                    sum.not_known += 1;
                    continue;
                }
                End::Came(mark) => mark,
            };
            sum.furnaces += 1;
            sum.solved += u64::from(mark.came.is_solved());
            sum.minutes += mark.minutes;
            sum.tree_minutes += mark.tree_minutes;
            sum.condemned += usize::from(mark.has_condemned());
            sum.overlooked += mark.overlooked;
            sum.left_open += mark.left_open;
            sum.named_before += mark.named_before;
        }
    }
    page.line(0, "EACH APPRENTICE, first tries");
    if sums.is_empty() {
        page.line(2, "Nobody gave a name with --technician");
        return;
    }
    page.head(&HEADS);
    for (who, sum) in &sums {
        page.row(
            &HEADS,
            &[
                &name(Some(who)),
                &format!("{} of {}", sum.solved, sum.furnaces),
                &format!("{}, {}", sum.minutes.round(), sum.tree_minutes.round()),
                &count(sum.condemned),
                &count(sum.overlooked),
                &count(sum.left_open),
                &count(sum.named_before),
            ],
        );
        let left_out = [(sum.unfinished, "not finished"), (sum.not_known, "not known")];
        for (count, why) in left_out.into_iter().filter(|(count, _)| *count > 0) {
            let tries = match count {
                1 => "1 first try".to_owned(),
                many => format!("{many} first tries"),
            };
            page.line(4, &format!("{tries} {why}, and not counted"));
        }
        if sum.furnaces > 0 {
            page.line(4, &share(sum));
        }
    }
}

/// What the furnaces of an apprentice say of those to come.
fn share(sum: &Sum) -> String {
    if sum.furnaces < ENOUGH {
        return format!("{}: too few to say", counted(sum.furnaces as usize, "furnace"));
    }
    let (low, high) = wilson(sum.solved, sum.furnaces);
    format!(
        "proves {:.0} to {:.0} % of such furnaces",
        100.0 * low,
        100.0 * high
    )
}
