//! What was condemned, against what a callback found later.

use std::collections::BTreeMap;

use super::spoken;
use crate::audit::Audit;
use crate::source::Safe;

/// Most columns for what was found; what is seldom found stands together in one more.
const COLUMNS: usize = 8;

/// Every condemned part, and what was found later.
#[derive(Debug)]
pub(in super::super) struct FoundLater {
    /// What was found, most often first; the last may be all that is seldom.
    pub columns: Vec<Safe>,
    /// A part each, in the order of their names.
    pub rows: Vec<Row>,
}

/// One condemned part.
#[derive(Debug)]
pub(in super::super) struct Row {
    /// The part.
    pub part: Safe,
    /// Calls that condemned it and could come back.
    pub of: u64,
    /// Those that did not come back.
    pub held: u64,
    /// Those that came back, with nothing else found.
    pub same: u64,
    /// Those that came back and ended in each column's fault.
    pub found: Vec<u64>,
}

/// What the calls of an audit condemned.
pub(in super::super) fn found_later(audit: &Audit) -> FoundLater {
    let mut found: BTreeMap<(String, String), u64> = BTreeMap::new();
    for wrong in &audit.suspected_misdiagnoses {
        *found.entry((wrong.condemned, wrong.then)).or_default() += 1;
    }
    let mut often: BTreeMap<&str, u64> = BTreeMap::new();
    for ((_, then), times) in &found {
        *often.entry(then).or_default() += times;
    }
    let mut names: Vec<(&str, u64)> = often.into_iter().collect();
    // By name where as often, as the map has them.
    names.sort_by_key(|(_, times)| std::cmp::Reverse(*times));
    let seldom = names.split_off(names.len().min(COLUMNS));
    let mut columns: Vec<Safe> = names.iter().map(|(name, _)| spoken(name)).collect();
    if !seldom.is_empty() {
        columns.push(spoken("something else"));
    }
    let column = |fault: &str| {
        let named = names.iter().position(|(name, _)| *name == fault);
        named.unwrap_or(names.len())
    };
    let rows = audit.by_part.iter().map(|part| {
        let mut later = vec![0; columns.len()];
        for ((_, then), times) in found.iter().filter(|((condemned, _), _)| *condemned == part.part) {
            later[column(then)] += times;
        }
        let back = part.tally.callbacks;
        Row {
            part: spoken(&part.part),
            of: back.of,
            held: back.of - back.count,
            same: back.count.saturating_sub(later.iter().sum()),
            found: later,
        }
    });
    let rows = rows.filter(|row| row.of > 0).collect();
    FoundLater { columns, rows }
}
