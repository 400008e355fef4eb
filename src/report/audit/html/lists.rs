//! What to read, finding by finding, each with its sessions.

use maud::{Markup, html};

use super::{LINES, section};
use crate::audit::findings::WhyOpen;
use crate::audit::{Audit, SessionRef};
use crate::report::audit::figures::{number, percent, spoken};
use crate::source::{Safe, safe};

/// Most sessions that one line names.
const SESSIONS: usize = 6;

/// Every finding that has something to show.
pub(super) fn sections(audit: &Audit) -> Markup {
    html! {
        (misdiagnoses(audit))
        (insisted(audit))
        (left_open(audit))
        (combustion(audit))
        (written(audit))
        (borderline(audit))
        (steps(audit))
        (drift(audit))
        (unsound(audit))
    }
}

fn misdiagnoses(audit: &Audit) -> Markup {
    list(
        "misdiagnoses",
        "Suspected misdiagnoses",
        &audit.suspected_misdiagnoses,
        |row| {
            html! {
                (spoken(&row.condemned)) " condemned" @if row.insisted { " on the technician's own verdict" } "; "
                (format!("{:.0}", row.days)) " days later " (spoken(&row.then)) ", at " (safe(&row.equipment)) " "
                (read(&[row.first.clone(), row.second.clone()]))
            }
        },
    )
}

fn insisted(audit: &Audit) -> Markup {
    let condemned = &audit.condemned;
    let title = format!(
        "Parts condemned: {} by proof, {} insisted on",
        condemned.proven, condemned.insisted
    );
    list("insisted", &title, &condemned.insisted_calls, |row| {
        html! {
            (spoken(&row.fault)) " (" (who(row.technician.as_deref())) ") " (read(std::slice::from_ref(&row.session)))
        }
    })
}

fn left_open(audit: &Audit) -> Markup {
    list("left-open", "Left open", &audit.left_open_calls, |row| {
        html! {
            @for (place, name) in row.put_backs.iter().enumerate() { @if place > 0 { ", " } (spoken(name)) }
            @match row.why {
                WhyOpen::Refused => ": refused, in writing (",
                WhyOpen::Abandoned => ": the call was left (",
            }
            (who(row.technician.as_deref())) ") " (read(std::slice::from_ref(&row.session)))
        }
    })
}

fn combustion(audit: &Audit) -> Markup {
    list(
        "combustion",
        "Work without a combustion test",
        &audit.combustion.calls,
        |row| {
            html! {
                (row.fault.as_deref().map_or(safe("no verdict"), spoken)) ": "
                (row.why.as_deref().map_or(safe("not asked for"), safe)) " (" (who(row.technician.as_deref())) ") "
                (read(std::slice::from_ref(&row.session)))
            }
        },
    )
}

fn written(audit: &Audit) -> Markup {
    let found = &audit.written;
    html! {
        (list("digits", "Last digits that look written", &found.digits, |row| html! {
            (safe(&row.technician)) ": " (percent(row.zeros_and_fives)) " of " (row.counts.iter().sum::<u64>()) " are 0 or 5, a fifth is expected ("
            @for (digit, count) in row.counts.iter().enumerate() { @if digit > 0 { ", " } (digit) ": " (count) }
            ") " (read(&row.sessions))
        }))
        (list("repeated", "The same value again and again", &found.repeated, |row| html! {
            (safe(&row.technician)) ": " (spoken(&row.reading)) " is " (number(row.value)) " " (safe(&row.unit)) " " (row.times) " times of " (row.of)
            "; with all others " (row.others) " of " (row.others_of) " " (read(&row.sessions))
        }))
        (list("hurried", "Faster than a hand can measure", &found.hurried, |row| html! {
            (row.readings) " of " (row.of) " readings; " (spoken(&row.reading)) " in " (number(row.seconds)) " s (" (who(row.technician.as_deref())) ") "
            (read(std::slice::from_ref(&row.session)))
        }))
    }
}

fn borderline(audit: &Audit) -> Markup {
    list(
        "borderline",
        "Borderline readings on the way to a verdict",
        &audit.borderline,
        |row| {
            html! {
                (spoken(&row.reading)) ": " (number(row.value)) " " (safe(&row.unit)) " ± " (number(row.margin)) ", then "
                (row.fault.as_deref().map_or(safe("no verdict"), spoken)) " " (read(std::slice::from_ref(&row.session)))
            }
        },
    )
}

fn steps(audit: &Audit) -> Markup {
    list("steps", "Steps where calls stall or end", &audit.steps, |row| {
        html! {
            (safe(&row.step)) ": of " (row.times) " times stalled " (row.stalled) ", given up " (row.given_up) ", abandoned " (row.abandoned)
            "; at most " (format!("{:.0}", row.longest_minutes)) " min " (read(&row.sessions))
        }
    })
}

fn drift(audit: &Audit) -> Markup {
    list("drift", "Readings that drift", &audit.drift, |row| {
        html! {
            (spoken(&row.reading)) " at " (safe(&row.equipment)) ": from " (number(row.first_value)) " to " (number(row.last_value)) " " (safe(&row.unit))
            " in " (format!("{:.0}", row.days)) " days, " (number(row.a_year)) " a year " (read(&[row.first.clone(), row.last.clone()]))
        }
    })
}

fn unsound(audit: &Audit) -> Markup {
    list(
        "unsound",
        "Damaged, half-written, foreign or never closed",
        &audit.unsound,
        |row| {
            html! {
                code { (safe(&row.session.id)) } ": " (safe(&row.why))
            }
        },
    )
}

fn list<T>(id: &str, title: &str, rows: &[T], line: impl Fn(&T) -> Markup) -> Markup {
    if rows.is_empty() {
        return Markup::default();
    }
    section(
        id,
        &format!("{title} ({})", rows.len()),
        &html! {
            ul.found { @for row in rows.iter().take(LINES) { li { (line(row)) } } }
            @if rows.len() > LINES { p.more { "and " (rows.len() - LINES) " more: " code { "--format json" } " names them all" } }
        },
    )
}

fn who(technician: Option<&str>) -> Safe {
    safe(technician.unwrap_or("not named"))
}

fn read(sessions: &[SessionRef]) -> Markup {
    html! {
        @for session in sessions.iter().take(SESSIONS) { code { (safe(&session.id)) } " " }
        @if sessions.len() > SESSIONS { "and " (sessions.len() - SESSIONS) " more" }
    }
}
