//! What to see to first: what can hurt someone, then what can be learned from.

use super::alike::look_alike;
use super::people::{Person, by_whom, not_taken, people};
use super::{Groups, counted, short, standings};
use crate::audit::{Audit, WhatIsWrong};
use crate::source::{Safe, safe};

/// Most names in a line.
pub(super) const NAMED: usize = 3;

/// What to do, a line each, the most urgent first.
pub(in super::super) fn first(audit: &Audit) -> Vec<Safe> {
    let people = people(audit);
    let lines = [
        left_open(audit, &people),
        not_closed(audit),
        not_tested(audit, &people),
        misdiagnoses(audit),
        // Where one goes by two names, what is said of groups below is said of half of it.
        look_alike(audit),
        standing_out(audit, Groups::Parts),
        standing_out(audit, Groups::Complaints),
        standing_out(audit, Groups::Technicians),
        written(audit),
        stalling(audit),
        untested(audit),
        clocks(audit),
        damaged(audit),
    ];
    lines.into_iter().flatten().map(|line| safe(&line)).collect()
}

fn left_open(audit: &Audit, people: &[Person]) -> Option<String> {
    let calls = counted(audit.left_open, "call", "calls");
    let whose = by_whom(people, |person| person.left_open);
    let unseen = (audit.left_open_calls.iter())
        .take_while(|call| call.seen_since.is_none())
        .count();
    let then = match unseen {
        0 => "somebody was at each furnace since: see that it was put back.".to_owned(),
        _ => format!(
            "at {unseen} of them no call since was closed with all put back: have those furnaces seen, first of all."
        ),
    };
    (audit.left_open > 0).then(|| format!("{calls} left something open ({whose}); {then}"))
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

fn not_tested(audit: &Audit, people: &[Person]) -> Option<String> {
    let many = not_taken(audit).count() as u64;
    let tests = counted(many, "combustion test was", "combustion tests were");
    let whose = by_whom(people, |person| person.not_tested);
    (many > 0).then(|| {
        format!("{tests} asked for and not taken ({whose}): have those furnaces tested, and ask what kept them from it.")
    })
}

fn untested(audit: &Audit) -> Option<String> {
    let found = &audit.combustion;
    let asked = found.calls.iter().filter(|call| call.why.is_some()).count() as u64;
    let never = found.skipped.count - asked;
    let repairs = counted(found.skipped.of, "repair", "repairs");
    (never > 0).then(|| {
        format!("After {never} of {repairs} no combustion test was made, and none was asked for on the call: see that work is proven before it is left.")
    })
}

fn misdiagnoses(audit: &Audit) -> Option<String> {
    // What a technician goes on to find before leaving is no callback.
    let later = audit.suspected_misdiagnoses.iter().filter(|row| !row.same_visit);
    let many = later.count() as u64;
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
    let did = [
        (worst.stalled, "stood long", "stood long"),
        (worst.given_up, "was given up", "were given up"),
        (worst.abandoned, "was left", "were left"),
    ];
    let did: Vec<String> = (did.into_iter().filter(|(times, ..)| *times > 0))
        .map(|(times, one, many)| counted(times, one, many))
        .collect();
    Some(format!(
        "Of {} that came to {}, {}, more than at any other step: ask what holds them up there.",
        counted(worst.times, "call", "calls"),
        worst.step,
        did.join(" and ")
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
        format!("{files} could not be read as calls: what is wrong with each stands under “Files that are no calls”.")
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
