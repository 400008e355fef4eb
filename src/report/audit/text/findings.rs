//! What to read, finding by finding: a few of each, and how many more there are.

use super::page::Page;
use crate::audit::{Audit, SessionRef, findings::WhyOpen};
use crate::report::audit::figures::{counted, number, percent, spoken};
use crate::source::{Safe, safe};

/// Most of one finding that are shown.
const SHOWN: usize = 5;

/// Most sessions that one of them names.
const SESSIONS: usize = 3;

/// Writes every finding that has something to show.
pub(super) fn write(page: &mut Page, audit: &Audit) {
    misdiagnoses(page, audit);
    insisted(page, audit);
    left_open(page, audit);
    combustion(page, audit);
    written(page, audit);
    borderline(page, audit);
    steps(page, audit);
    drift(page, audit);
    unsound(page, audit);
}

fn misdiagnoses(page: &mut Page, audit: &Audit) {
    let rows = &audit.suspected_misdiagnoses;
    list(page, "SUSPECTED MISDIAGNOSES", rows, |page, row| {
        page.item(&safe(&format!(
            "{} condemned; {:.0} days later {}",
            spoken(&row.condemned),
            row.days,
            spoken(&row.then)
        )));
        page.below(&at(&row.equipment));
        read(page, &[&row.first, &row.second]);
    });
}

fn insisted(page: &mut Page, audit: &Audit) {
    let condemned = &audit.condemned;
    if condemned.proven + condemned.insisted > 0 {
        page.title("PARTS CONDEMNED");
        page.text(&format!(
            "{} by proof, {} on the technician's own verdict",
            condemned.proven, condemned.insisted
        ));
    }
    list(
        page,
        "INSISTED ON, IN WRITING",
        &condemned.insisted_calls,
        |page, row| {
            page.item(&safe(&format!(
                "{} ({})",
                spoken(&row.fault),
                who(row.technician.as_deref())
            )));
            read(page, &[&row.session]);
        },
    );
}

fn left_open(page: &mut Page, audit: &Audit) {
    list(page, "LEFT OPEN", &audit.left_open_calls, |page, row| {
        let why = match row.why {
            WhyOpen::Refused => "refused, in writing",
            WhyOpen::Abandoned => "the call was left",
        };
        let names: Vec<String> = row
            .put_backs
            .iter()
            .map(|name| spoken(name).to_string())
            .collect();
        page.item(&safe(&format!(
            "{}: {why} ({})",
            names.join(", "),
            who(row.technician.as_deref())
        )));
        read(page, &[&row.session]);
    });
}

fn combustion(page: &mut Page, audit: &Audit) {
    let found = &audit.combustion;
    if found.skipped.of == 0 && found.calls.is_empty() {
        return;
    }
    page.title("COMBUSTION TESTS");
    let (count, of) = (found.skipped.count, found.skipped.of);
    page.text(&format!(
        "{count} of {of} calls that replaced or set right something were not followed by a test."
    ));
    some(page, &found.calls, |page, row| {
        let fault = row.fault.as_deref().map_or(safe("no verdict"), spoken);
        let why = row.why.as_deref().map_or("not asked for", |why| why);
        page.item(&safe(&format!(
            "{fault}: {why} ({})",
            who(row.technician.as_deref())
        )));
        read(page, &[&row.session]);
    });
}

fn written(page: &mut Page, audit: &Audit) {
    let found = &audit.written;
    if found.digits.len() + found.repeated.len() + found.hurried.len() == 0 {
        return;
    }
    page.title("WRITTEN RATHER THAN READ?");
    some(page, &found.digits, |page, row| {
        let all: u64 = row.counts.iter().sum();
        let share = percent(row.zeros_and_fives);
        page.item(&safe(&format!(
            "{}: last digits are uneven; {share} of {all} are 0 or 5",
            row.technician
        )));
        let digits: Vec<String> = (0..)
            .zip(row.counts)
            .map(|(digit, count)| format!("{digit}: {count}"))
            .collect();
        page.below(&safe(&digits.join("  ")));
        read(page, &few(&row.sessions));
    });
    some(page, &found.repeated, |page, row| {
        let reading = spoken(&row.reading);
        let (value, unit) = (number(row.value), &row.unit);
        page.item(&safe(&format!(
            "{}: {reading} is {value} {unit} {} times of {}; with all others {} of {}",
            row.technician, row.times, row.of, row.others, row.others_of
        )));
        read(page, &few(&row.sessions));
    });
    some(page, &found.hurried, |page, row| {
        page.item(&safe(&format!(
            "{} of {} readings came faster than a hand can measure; {} in {:.0} s ({})",
            row.readings,
            row.of,
            spoken(&row.reading),
            row.seconds,
            who(row.technician.as_deref())
        )));
        read(page, &[&row.session]);
    });
}

fn borderline(page: &mut Page, audit: &Audit) {
    list(
        page,
        "BORDERLINE READINGS ON THE WAY TO A VERDICT",
        &audit.borderline,
        |page, row| {
            let (value, unit, margin) = (number(row.value), &row.unit, number(row.margin));
            let fault = row.fault.as_deref().map_or(safe("no verdict"), spoken);
            page.item(&safe(&format!(
                "{}: {value} {unit} ± {margin}, then {fault}",
                spoken(&row.reading)
            )));
            read(page, &[&row.session]);
        },
    );
}

fn steps(page: &mut Page, audit: &Audit) {
    list(
        page,
        "STEPS WHERE CALLS STALL OR END",
        &audit.steps,
        |page, row| {
            page.item(&safe(&format!(
                "{}: of {} times stalled {}, given up {}, abandoned {}; at most {:.0} min",
                row.step, row.times, row.stalled, row.given_up, row.abandoned, row.longest_minutes
            )));
            read(page, &few(&row.sessions));
        },
    );
}

fn drift(page: &mut Page, audit: &Audit) {
    list(page, "READINGS THAT DRIFT", &audit.drift, |page, row| {
        page.item(&safe(&format!(
            "{} at {}: from {} to {} {} in {:.0} days, {} a year",
            spoken(&row.reading),
            row.equipment,
            number(row.first_value),
            number(row.last_value),
            row.unit,
            row.days,
            number(row.a_year)
        )));
        read(page, &[&row.first, &row.last]);
    });
}

fn unsound(page: &mut Page, audit: &Audit) {
    list(
        page,
        "DAMAGED, HALF-WRITTEN, FOREIGN OR NEVER CLOSED",
        &audit.unsound,
        |page, row| {
            page.item(&safe(&format!("{}: {}", row.session.id, row.why)));
        },
    );
}

/// A heading and a few of a list; nothing of an empty one.
fn list<T>(page: &mut Page, title: &str, rows: &[T], write: impl Fn(&mut Page, &T)) {
    if !rows.is_empty() {
        page.title(&format!("{title} ({})", rows.len()));
        some(page, rows, write);
    }
}

fn some<T>(page: &mut Page, rows: &[T], write: impl Fn(&mut Page, &T)) {
    for row in rows.iter().take(SHOWN) {
        write(page, row);
    }
    if rows.len() > SHOWN {
        let more = counted((rows.len() - SHOWN) as u64, "more", "more");
        page.text(&format!("and {more}: --format json names them all"));
    }
}

fn who(technician: Option<&str>) -> &str {
    technician.unwrap_or("not named")
}

fn at(equipment: &str) -> Safe {
    safe(&format!("at {equipment}"))
}

fn few(sessions: &[SessionRef]) -> Vec<&SessionRef> {
    sessions.iter().take(SESSIONS).collect()
}

fn read(page: &mut Page, sessions: &[&SessionRef]) {
    for session in sessions {
        page.below(&safe(&session.id));
    }
}
