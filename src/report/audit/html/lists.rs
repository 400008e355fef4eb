//! What to read, finding by finding, each with its sessions.

use maud::{Markup, html};

use super::section;
use crate::audit::findings::{Alike, NoTest, WhyOpen};
use crate::audit::{Audit, SessionRef, Sessions};
use crate::report::audit::figures::{
    INNOCENT, MAY_BE_ANOTHER, NOT_ASKED, ONE_FURNACE, ONE_TECHNICIAN, came, doubtful, ended_in, margin,
    no_calls, number, others_gave, placed, short, spellings, spoken, stalled, unevenness, what_came,
    whose_values,
};
use crate::source::{Safe, safe};

/// Most lines of a list; the rest is counted. On paper fewer.
const LINES: usize = 60;
const PRINTED: usize = 7;

/// Most calls that left something open, on paper: furnaces that nobody has seen since stand first, and must be.
const PRINTED_OPEN: usize = 20;

/// The list of those.
const OPEN: &str = "left-open";

/// Most sessions that one line names. On paper fewer: two, as a callback has.
const SESSIONS: usize = 6;
const PRINTED_SESSIONS: usize = 2;

/// Every finding that has something to show.
pub(super) fn sections(audit: &Audit) -> Markup {
    html! {
        (came_back(audit))
        (came_again(audit))
        (misdiagnoses(audit))
        (insisted(audit))
        (left_open(audit))
        (combustion(audit))
        (written(audit))
        (borderline(audit))
        (steps(audit))
        (drift(audit))
        (look_alikes(audit))
        (unsound(audit))
    }
}

fn came_back(audit: &Audit) -> Markup {
    list(
        "came-back",
        "Calls that came back",
        audit.callback_pairs.iter(),
        |row| {
            html! {
                (short(&row.equipment)) ": " (ended_in(row.fault.as_deref(), row.outcome.as_deref())) " (" (who(row.technician.as_deref())) "); " (came(row.same_visit, row.days)) " "
                (ended_in(row.then.as_deref(), row.then_outcome.as_deref())) " (" (who(row.second_technician.as_deref())) ") "
                (read(&[row.first.clone(), row.second.clone()]))
            }
        },
    )
}

fn came_again(audit: &Audit) -> Markup {
    let title = "Left before it was closed, and somebody came again; no callbacks";
    list("came-again", title, &audit.came_again, |row| {
        html! {
            (short(&row.equipment)) ": left by " (who(row.technician.as_deref())) "; " (came(row.same_visit, row.days)) " "
            (ended_in(row.then.as_deref(), row.then_outcome.as_deref())) " (" (who(row.second_technician.as_deref())) ") "
            (read(&[row.first.clone(), row.second.clone()]))
        }
    })
}

fn misdiagnoses(audit: &Audit) -> Markup {
    list_with(
        "misdiagnoses",
        "Suspected misdiagnoses",
        MAY_BE_ANOTHER,
        &audit.suspected_misdiagnoses,
        |row| {
            html! {
                (spoken(&row.condemned)) " condemned" @if row.insisted { " on the technician's own verdict" } " (" (who(row.technician.as_deref())) "); "
                (came(row.same_visit, row.days)) " " (spoken(&row.then)) ", at " (short(&row.equipment)) " "
                (read(&[row.first.clone(), row.second.clone()]))
            }
        },
    )
}

fn insisted(audit: &Audit) -> Markup {
    let condemned = &audit.condemned;
    let told = format!(
        "Parts condemned: {} by proof, {} on the technician's own verdict.",
        condemned.proven, condemned.insisted
    );
    list_with(
        "insisted",
        "Insisted on, in writing",
        &told,
        &condemned.insisted_calls,
        |row| {
            html! {
                (spoken(&row.fault)) " (" (who(row.technician.as_deref())) ")" (what_came(audit, &row.session, row.equipment.as_deref())) (at(row.equipment.as_deref())) " " (read(std::slice::from_ref(&row.session)))
            }
        },
    )
}

fn left_open(audit: &Audit) -> Markup {
    list(OPEN, "Left open", &audit.left_open_calls, |row| {
        html! {
            @for (place, name) in row.put_backs.iter().enumerate() { @if place > 0 { ", " } (spoken(name)) }
            @match row.why {
                WhyOpen::Refused => ": refused, in writing (",
                WhyOpen::Abandoned => ": the call was left (",
            }
            (who(row.technician.as_deref())) ")" (at(row.equipment.as_deref())) " " (read(std::slice::from_ref(&row.session)))
            @match &row.seen_since {
                Some(seen) => { "; somebody was there since: " (read(std::slice::from_ref(seen))) }
                None => "; no call there since was closed with all put back",
            }
        }
    })
}

fn combustion(audit: &Audit) -> Markup {
    let found = &audit.combustion;
    let (count, of) = (found.skipped.count, found.skipped.of);
    let named = found.calls.len() as u64;
    let more = match count > named {
        true => format!(" {named} of them are named."),
        false => String::new(),
    };
    let told = format!(
        "{count} of {of} that replaced or set right something and could have been followed by a test, within a day.{more}"
    );
    let other = "Combustion tests asked for and not taken, in other calls";
    html! {
        (list_with("combustion", "Repairs without a combustion test", &told, &found.calls, no_test))
        (list("not-taken", other, &found.not_taken, no_test))
    }
}

fn no_test(row: &NoTest) -> Markup {
    html! {
        (fault(row.fault.as_deref())) ": " (safe(row.why.as_deref().unwrap_or(NOT_ASKED))) " (" (who(row.technician.as_deref())) ")"
        (at(row.equipment.as_deref())) " " (read(std::slice::from_ref(&row.session)))
    }
}

fn written(audit: &Audit) -> Markup {
    let found = &audit.written;
    html! {
        (list_with("digits", "Last digits that look written", &format!("{INNOCENT} The same value of a reading counts three times at most."), &found.digits, |row| html! {
            (short(&row.technician)) ": " (unevenness(row)) " ("
            @for (digit, count) in row.counts.iter().enumerate() { @if digit > 0 { ", " } (digit) ": " (count) }
            ") " (few(&row.sessions))
        }))
        (list_with("repeated", "The same value again and again", &whose_values(&found.repeated), &found.repeated, |row| html! {
            (short(&row.technician)) ": " (spoken(&row.reading)) " is " (number(row.value)) " " (safe(&row.unit)) " " (row.times) " times of " (row.of)
            "; " (others_gave(row)) " " (few(&row.sessions))
        }))
        (list_with("hurried", "Faster than a hand can measure", "Readings noted on paper and typed in the van come as fast.", &found.hurried, |row| html! {
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
                (spoken(&row.reading)) ": " (number(row.value)) " " (safe(&row.unit)) " ± " (margin(row.margin)) ", then "
                (row.fault.as_deref().map_or(safe("no verdict"), spoken)) " " (read(std::slice::from_ref(&row.session)))
            }
        },
    )
}

fn steps(audit: &Audit) -> Markup {
    list("steps", "Steps where calls stall or end", &audit.steps, |row| {
        html! {
            (safe(&row.step)) ": " (stalled(row)) " " (few(&row.sessions))
        }
    })
}

fn drift(audit: &Audit) -> Markup {
    list("drift", "Readings that drift", &audit.drift, |row| {
        html! {
            (spoken(&row.reading)) " at " (short(&row.equipment)) ": from " (number(row.first_value)) " to " (number(row.last_value)) " " (safe(&row.unit))
            " in " (format!("{:.0}", row.days)) " days, " (number(row.a_year)) " a year " (read(&[row.first.clone(), row.last.clone()]))
        }
    })
}

fn look_alikes(audit: &Audit) -> Markup {
    let found = &audit.alike;
    let line = |group: Alike| {
        let latest: Vec<SessionRef> = group.names.iter().map(|name| name.latest.clone()).collect();
        html! { (spellings(&group)) " " (read(&latest)) }
    };
    html! {
        (list_with("one-furnace", "One furnace by several names?", ONE_FURNACE, &found.equipment, line))
        (list_with("one-technician", "One technician by several names?", ONE_TECHNICIAN, &found.technicians, line))
    }
}

fn unsound(audit: &Audit) -> Markup {
    html! {
        (list("doubtful", "Calls cut off, never closed or in doubt", &doubtful(audit), |row| html! {
            code.id { (safe(&row.session.id)) } ": " (safe(&row.why))
        }))
        (list("no-calls", "Files that are no calls", &no_calls(audit), |row| html! {
            code.id { (placed(audit, row)) } ": " (safe(&row.why))
        }))
        (list("practice", "Practice, in no figure", &audit.practice_sessions, |row| html! { code.id { (safe(&row.id)) } }))
    }
}

fn list<R: ExactSizeIterator>(
    id: &str,
    title: &str,
    rows: impl IntoIterator<IntoIter = R, Item = R::Item>,
    line: impl Fn(R::Item) -> Markup,
) -> Markup {
    list_with(id, title, "", rows, line)
}

/// A list with something to say before it.
fn list_with<R: ExactSizeIterator>(
    id: &str,
    title: &str,
    told: &str,
    rows: impl IntoIterator<IntoIter = R, Item = R::Item>,
    line: impl Fn(R::Item) -> Markup,
) -> Markup {
    let rows = rows.into_iter();
    let many = rows.len();
    if many == 0 {
        return Markup::default();
    }
    let printed = if id == OPEN { PRINTED_OPEN } else { PRINTED };
    section(
        id,
        &format!("{title} ({many})"),
        &html! {
            @if !told.is_empty() { p { (told) } }
            ul.found {
                @for (number, row) in rows.take(LINES).enumerate() { li class=[(number >= printed).then_some("rest")] { (line(row)) } }
            }
            @if many > printed { p.more.paper { (rest(many - printed)) } }
            @if many > LINES { p.more.screen { (rest(many - LINES)) } }
        },
    )
}

/// How many more there are, and what lists them all.
fn rest(more: usize) -> Markup {
    html! { "and " (more) " more: " code { "proofwalk audit DIR --format csv" } " lists them all" }
}

/// A fault as it is spoken; that there is none.
fn fault(name: Option<&str>) -> Safe {
    name.map_or(safe("no verdict"), spoken)
}

fn at(equipment: Option<&str>) -> Markup {
    html! { @if let Some(equipment) = equipment { " at " (short(equipment)) } }
}

fn who(technician: Option<&str>) -> Safe {
    short(technician.unwrap_or("not named"))
}

/// The first few to read.
fn few(sessions: &Sessions) -> Markup {
    let first: Vec<SessionRef> = sessions.iter().take(SESSIONS).collect();
    ids(&first, sessions.len())
}

fn read(sessions: &[SessionRef]) -> Markup {
    ids(sessions, sessions.len())
}

/// The first of so many, and how many more there are; on paper fewer.
fn ids(first: &[SessionRef], many: usize) -> Markup {
    html! {
        @for (number, session) in first.iter().take(SESSIONS).enumerate() {
            code class=(if number < PRINTED_SESSIONS { "id" } else { "id rest" }) { (safe(&session.id)) } " "
        }
        @if many > SESSIONS { span.screen { "and " (many - SESSIONS) " more" } }
        @if many > PRINTED_SESSIONS { span.paper { "and " (many - PRINTED_SESSIONS) " more" } }
    }
}
