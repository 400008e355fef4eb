//! What to see to first: what can hurt someone, then what can be learned from.

use super::{Groups, counted, short, standings};
use crate::audit::{Audit, WhatIsWrong};
use crate::source::{Safe, safe};

/// Most names in a line.
const NAMED: usize = 3;

/// What to do, a line each, the most urgent first.
pub(in super::super) fn first(audit: &Audit) -> Vec<Safe> {
    let lines = [
        left_open(audit),
        not_closed(audit),
        combustion(audit),
        misdiagnoses(audit),
        standing_out(audit, Groups::Parts),
        standing_out(audit, Groups::Complaints),
        standing_out(audit, Groups::Technicians),
        written(audit),
        stalling(audit),
        clocks(audit),
        damaged(audit),
    ];
    lines.into_iter().flatten().map(|line| safe(&line)).collect()
}

fn left_open(audit: &Audit) -> Option<String> {
    let calls = counted(audit.left_open, "call", "calls");
    (audit.left_open > 0).then(|| {
        format!("{calls} left something open: have each furnace under “Left open” seen again, and what is open put back.")
    })
}

fn not_closed(audit: &Audit) -> Option<String> {
    let left = audit.calls - audit.closed;
    let closed = counted(
        left,
        "call was left before it was",
        "calls were left before they were",
    );
    (left > 0).then(|| format!("{closed} closed: ask what became of the furnace."))
}

fn combustion(audit: &Audit) -> Option<String> {
    let skipped = &audit.combustion.skipped;
    let repairs = counted(skipped.of, "repair", "repairs");
    (skipped.count > 0).then(|| {
        format!(
            "{} of {repairs} went without a combustion test: have those furnaces tested, and see whether the tree asked for one.",
            skipped.count
        )
    })
}

fn misdiagnoses(audit: &Audit) -> Option<String> {
    let many = audit.suspected_misdiagnoses.len() as u64;
    let suspected = counted(many, "suspected misdiagnosis", "suspected misdiagnoses");
    (many > 0).then(|| format!("{suspected}: read both calls of each, with those who walked them."))
}

fn standing_out(audit: &Audit, groups: Groups) -> Option<String> {
    standings(audit, groups).above(some)
}

fn written(audit: &Audit) -> Option<String> {
    let found = &audit.written;
    let hurried: Vec<String> = found.hurried.iter().filter_map(|row| row.technician).collect();
    let mut names: Vec<&str> = (found.digits.iter().map(|row| row.technician.as_str()))
        .chain(found.repeated.iter().map(|row| row.technician.as_str()))
        .chain(hurried.iter().map(String::as_str))
        .collect();
    names.sort_unstable();
    names.dedup();
    (!names.is_empty()).then(|| {
        format!(
            "Readings of {} look written rather than read: ask how they were taken.",
            some(&names)
        )
    })
}

fn stalling(audit: &Audit) -> Option<String> {
    let worst = audit.steps.first().filter(|step| step.sessions.len() > 1)?;
    Some(format!(
        "At no other step do more calls stall or end than at {}: ask what holds them up there.",
        worst.step
    ))
}

fn clocks(audit: &Audit) -> Option<String> {
    let is_doubted = |what| matches!(what, WhatIsWrong::ClockAhead | WhatIsWrong::ClockBehind);
    let many = audit.unsound.iter().filter(|file| is_doubted(file.what)).count() as u64;
    let calls = counted(many, "call has a date", "calls have dates");
    (many > 0).then(|| {
        format!("{calls} far from all others: see to the clock where they were recorded. Who called back when is in doubt there.")
    })
}

fn damaged(audit: &Audit) -> Option<String> {
    let files = counted(audit.damaged, "file", "files");
    (audit.damaged > 0).then(|| {
        format!("{files} could not be read as calls: fetch them again from where they were recorded.")
    })
}

/// A few names, and how many more.
fn some(names: &[&str]) -> String {
    let shown: Vec<String> = (names.iter().take(NAMED))
        .map(|name| short(name).to_string())
        .collect();
    let shown = shown.join(", ");
    match names.len().saturating_sub(NAMED) {
        0 => shown,
        more => format!("{shown} and {more} more"),
    }
}
