//! What to read, finding by finding: a few of each, and how many more there are.

use super::page::Page;
use crate::audit::findings::{Alike, NoTest, WhyOpen};
use crate::audit::{Audit, SessionRef, Sessions};
use crate::report::audit::figures::{
    INNOCENT, MAY_BE_ANOTHER, NOT_ASKED, ONE_FURNACE, ONE_TECHNICIAN, came, counted, days, doubtful,
    ended_in, margin, no_calls, number, others_gave, placed, short, spellings, spoken, stalled, unevenness,
    what_came, whose_values,
};
use crate::source::{Safe, safe};

/// Most of one finding that are shown.
const SHOWN: usize = 5;

/// Most sessions that one of them names.
const SESSIONS: usize = 3;

/// Writes every finding that has something to show.
pub(super) fn write(page: &mut Page, audit: &Audit) {
    came_back(page, audit);
    came_again(page, audit);
    misdiagnoses(page, audit);
    insisted(page, audit);
    left_open(page, audit);
    combustion(page, audit);
    written(page, audit);
    borderline(page, audit);
    steps(page, audit);
    drift(page, audit);
    look_alikes(page, audit);
    unsound(page, audit);
}

fn came_back(page: &mut Page, audit: &Audit) {
    list(
        page,
        "CALLS THAT CAME BACK",
        audit.callback_pairs.iter(),
        |page, row| {
            page.item(&safe(&format!(
                "{}: {} ({}); {} {} ({})",
                short(&row.equipment),
                ended_in(row.fault.as_deref(), row.outcome.as_deref()),
                who(row.technician.as_deref()),
                came(row.same_visit, row.days),
                ended_in(row.then.as_deref(), row.then_outcome.as_deref()),
                who(row.second_technician.as_deref())
            )));
            read(page, &[&row.first, &row.second]);
        },
    );
}

fn came_again(page: &mut Page, audit: &Audit) {
    list(
        page,
        "LEFT BEFORE IT WAS CLOSED, AND SOMEBODY CAME AGAIN",
        &audit.came_again,
        |page, row| {
            page.item(&safe(&format!(
                "{}: left by {}; {} {} ({})",
                short(&row.equipment),
                who(row.technician.as_deref()),
                came(row.same_visit, row.days),
                ended_in(row.then.as_deref(), row.then_outcome.as_deref()),
                who(row.second_technician.as_deref())
            )));
            read(page, &[&row.first, &row.second]);
        },
    );
    if !audit.came_again.is_empty() {
        page.text(&format!(
            "Within {} of its last record. These are no callbacks: a call that was never closed cannot come back.",
            days(audit.window_days)
        ));
    }
}

fn misdiagnoses(page: &mut Page, audit: &Audit) {
    let rows = &audit.suspected_misdiagnoses;
    list(page, "SUSPECTED MISDIAGNOSES", rows, |page, row| {
        page.item(&safe(&format!(
            "{} condemned{} ({}); {} {}",
            spoken(&row.condemned),
            match row.insisted {
                true => ", insisted on",
                false => "",
            },
            who(row.technician.as_deref()),
            came(row.same_visit, row.days),
            spoken(&row.then)
        )));
        page.below(&at(&row.equipment));
        read(page, &[&row.first, &row.second]);
    });
    if !rows.is_empty() {
        page.text(MAY_BE_ANOTHER);
    }
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
                "{} ({}){}",
                spoken(&row.fault),
                who(row.technician.as_deref()),
                what_came(audit, &row.session, row.equipment.as_deref())
            )));
            at_some(page, row.equipment.as_deref());
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
            "{}: {why} ({}); {}",
            names.join(", "),
            who(row.technician.as_deref()),
            match row.seen_since {
                Some(_) => "somebody was there since:",
                None => "no call there since was closed with all put back",
            }
        )));
        at_some(page, row.equipment.as_deref());
        read(page, &[&row.session]);
        if let Some(seen) = &row.seen_since {
            read(page, &[seen]);
        }
    });
}

fn combustion(page: &mut Page, audit: &Audit) {
    let found = &audit.combustion;
    let (count, of) = (found.skipped.count, found.skipped.of);
    if count > 0 {
        page.title(&format!("REPAIRS WITHOUT A COMBUSTION TEST ({count})"));
        page.text(&format!(
            "of {} that replaced or set right something and could have been followed by a test, within a day",
            counted(of, "call", "calls")
        ));
        some_of(page, &found.calls, count, no_test);
    }
    list(
        page,
        "COMBUSTION TESTS ASKED FOR AND NOT TAKEN, IN OTHER CALLS",
        &found.not_taken,
        no_test,
    );
}

fn no_test(page: &mut Page, row: &NoTest) {
    page.item(&safe(&format!(
        "{}: {} ({})",
        fault(row.fault.as_deref()),
        row.why.as_deref().unwrap_or(NOT_ASKED),
        who(row.technician.as_deref())
    )));
    at_some(page, row.equipment.as_deref());
    read(page, &[&row.session]);
}

fn written(page: &mut Page, audit: &Audit) {
    let found = &audit.written;
    if found.digits.len() + found.repeated.len() + found.hurried.len() == 0 {
        return;
    }
    page.title("WRITTEN RATHER THAN READ?");
    page.text(INNOCENT);
    some(page, &found.digits, |page, row| {
        page.item(&safe(&format!(
            "{}: last digits are uneven; {}",
            short(&row.technician),
            unevenness(row)
        )));
        let digits: Vec<String> = (0..)
            .zip(row.counts)
            .map(|(digit, count)| format!("{digit}: {count}"))
            .collect();
        page.below(&safe(&digits.join("  ")));
        few(page, &row.sessions);
    });
    some(page, &found.repeated, |page, row| {
        let reading = spoken(&row.reading);
        let (value, unit) = (number(row.value), &row.unit);
        page.item(&safe(&format!(
            "{}: {reading} is {value} {unit} {} times of {}; {}",
            short(&row.technician),
            row.times,
            row.of,
            others_gave(row)
        )));
        few(page, &row.sessions);
    });
    if !found.repeated.is_empty() {
        page.text(&whose_values(&found.repeated));
    }
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
            let (value, unit, off) = (number(row.value), &row.unit, margin(row.margin));
            let fault = row.fault.as_deref().map_or(safe("no verdict"), spoken);
            page.item(&safe(&format!(
                "{}: {value} {unit} ± {off}, then {fault}",
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
            page.item(&safe(&format!("{}: {}", row.step, stalled(row))));
            few(page, &row.sessions);
        },
    );
}

fn drift(page: &mut Page, audit: &Audit) {
    list(page, "READINGS THAT DRIFT", &audit.drift, |page, row| {
        page.item(&safe(&format!(
            "{} at {}: from {} to {} {} in {:.0} days, {} a year",
            spoken(&row.reading),
            short(&row.equipment),
            number(row.first_value),
            number(row.last_value),
            row.unit,
            row.days,
            number(row.a_year)
        )));
        read(page, &[&row.first, &row.last]);
    });
}

fn look_alikes(page: &mut Page, audit: &Audit) {
    let (furnaces, people) = (&audit.alike.equipment, &audit.alike.technicians);
    for (title, groups, told) in [
        ("ONE FURNACE BY SEVERAL NAMES?", furnaces, ONE_FURNACE),
        ("ONE TECHNICIAN BY SEVERAL NAMES?", people, ONE_TECHNICIAN),
    ] {
        list(page, title, groups, |page, group: Alike| {
            page.item(&spellings(&group));
            let latest = group.names.iter().map(|spelling| &spelling.latest);
            read(page, &latest.take(SESSIONS).collect::<Vec<_>>());
        });
        if !groups.is_empty() {
            page.text(told);
        }
    }
}

fn unsound(page: &mut Page, audit: &Audit) {
    list(
        page,
        "CALLS CUT OFF, NEVER CLOSED OR IN DOUBT",
        &doubtful(audit),
        |page, row| {
            page.item(&safe(&format!("{}: {}", row.session.id, row.why)));
        },
    );
    list(page, "FILES THAT ARE NO CALLS", &no_calls(audit), |page, row| {
        page.item(&safe(&format!("{}: {}", placed(audit, row), row.why)));
    });
    list(
        page,
        "PRACTICE, IN NO FIGURE",
        &audit.practice_sessions,
        |page, row| {
            page.item(&safe(&row.id));
        },
    );
}

/// A heading and a few of a list; nothing of an empty one.
fn list<R: ExactSizeIterator>(
    page: &mut Page,
    title: &str,
    rows: impl IntoIterator<IntoIter = R, Item = R::Item>,
    write: impl Fn(&mut Page, R::Item),
) {
    let rows = rows.into_iter();
    if rows.len() > 0 {
        page.title(&format!("{title} ({})", rows.len()));
        some(page, rows, write);
    }
}

fn some<R: ExactSizeIterator>(
    page: &mut Page,
    rows: impl IntoIterator<IntoIter = R, Item = R::Item>,
    write: impl Fn(&mut Page, R::Item),
) {
    let rows = rows.into_iter();
    let all = rows.len() as u64;
    some_of(page, rows, all, write);
}

/// A few of so many, of which not all need be named.
fn some_of<R: ExactSizeIterator>(
    page: &mut Page,
    rows: impl IntoIterator<IntoIter = R, Item = R::Item>,
    all: u64,
    write: impl Fn(&mut Page, R::Item),
) {
    let rows = rows.into_iter();
    let many = rows.len();
    for row in rows.take(SHOWN) {
        write(page, row);
    }
    let shown = many.min(SHOWN) as u64;
    if all > shown {
        let named = match many as u64 == all {
            true => "names them all".to_owned(),
            false => format!("names {many} in all"),
        };
        page.text(&format!("and {} more: --format csv {named}", all - shown));
    }
}

/// A fault as it is spoken; that there is none.
fn fault(name: Option<&str>) -> Safe {
    name.map_or(safe("no verdict"), spoken)
}

fn at_some(page: &mut Page, equipment: Option<&str>) {
    if let Some(equipment) = equipment {
        page.below(&at(equipment));
    }
}

fn who(technician: Option<&str>) -> Safe {
    short(technician.unwrap_or("not named"))
}

fn at(equipment: &str) -> Safe {
    safe(&format!("at {}", short(equipment)))
}

/// The first few to read.
fn few(page: &mut Page, sessions: &Sessions) {
    for session in sessions.iter().take(SESSIONS) {
        read(page, &[&session]);
    }
}

fn read(page: &mut Page, sessions: &[&SessionRef]) {
    for session in sessions {
        page.below(&safe(&session.id));
    }
}
