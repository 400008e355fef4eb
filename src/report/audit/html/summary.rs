//! The head of the page, and the figures that matter first.

use maud::{Markup, html};

use super::section;
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{
    AHEAD, Expected, NOT_AT_HAND, SAME_VISIT, WHY_THREE_RATES, counted, days, expected, first, not_counted,
    percent, percents, returns,
};
use crate::source::safe;

/// The head: what was audited, and how to take it.
pub(super) fn head(audit: &Audit) -> Markup {
    let day = |time: jiff::Timestamp| time.strftime("%Y-%m-%d").to_string();
    html! {
        h1 { "Audit of " (counted(audit.calls, "call", "calls")) }
        dl {
            dt { "Folders" }
            dd { @for (place, folder) in audit.folders.iter().enumerate() { @if place > 0 { ", " } (safe(folder)) } }
            @if let (Some(from), Some(until)) = (audit.from, audit.until) {
                dt { "Opened" }
                dd { (day(from)) " to " (day(until)) ", UTC" }
            }
            @let aside = not_counted(audit);
            @if !aside.is_empty() {
                dt { "Not counted" }
                dd { (aside.join(", ")) }
            }
            @if audit.from_index > 0 {
                dt { "Not read" }
                dd {
                    (counted(audit.from_index, "file, unchanged", "files, unchanged"))
                    " since an earlier audit: sums not checked again"
                }
            }
            @if audit.without_equipment > 0 {
                dt { "Cannot be followed" }
                dd { (counted(audit.without_equipment, "call without an equipment", "calls without an equipment")) }
            }
            @if audit.ahead > 0 {
                dt { "Clocks" }
                dd { (counted(audit.ahead, "call is", "calls are")) " " (AHEAD) }
            }
            @if audit.without_library > 0 {
                dt { "Library not at hand" }
                dd { (counted(audit.without_library, "call", "calls")) ": " (NOT_AT_HAND) }
            }
        }
        p.caution role="note" { (audit.caution) }
        p.note {
            "Intervals are of 95 %, as if each call stood for itself: furnaces that come back again and again make them a little too "
            "narrow. A “settled” call is one whose days are over; of under 20 of them no group is held against others. Nobody is ranked. "
            "To walk a call again, step by step: " code { "proofwalk replay SESSION --sessions DIR" }
            "; for its job report: " code { "proofwalk report SESSION --sessions DIR" }
        }
    }
}

/// The figures that matter first.
pub(super) fn figures(audit: &Audit) -> Markup {
    let back = &audit.callbacks.rate;
    let skipped = &audit.combustion.skipped;
    let (interval, skipped_interval) = (interval(back), interval(skipped));
    let days = days(audit.window_days);
    let settled = &audit.callbacks.settled;
    let mut window = format!("came back within {days}: {} of {}{interval}", back.count, back.of);
    if audit.callbacks.same_visit > 0 {
        window += &format!(
            "; {} of those on the same visit, {SAME_VISIT}",
            audit.callbacks.same_visit
        );
    }
    if let Some(returns) = returns(audit) {
        window += &format!("; {returns}");
    }
    let tiles = [
        (
            audit.closed.to_string(),
            format!("closed, of {}", counted(audit.calls, "call", "calls")),
        ),
        (shown(back), window),
        (
            shown(settled),
            format!(
                "of the settled calls, whose {days} are over, came back on another visit: {} of {}{}",
                settled.count,
                settled.of,
                self::interval(settled)
            ),
        ),
        by_then(expected(audit), &days),
        (
            audit.suspected_misdiagnoses.len().to_string(),
            match audit.suspected_misdiagnoses.len() {
                1 => "suspected misdiagnosis".to_owned(),
                _ => "suspected misdiagnoses".to_owned(),
            },
        ),
        (
            audit.unproven.to_string(),
            "referred without a verdict".to_owned(),
        ),
        (
            audit.insisted.to_string(),
            "ended on the technician's own verdict".to_owned(),
        ),
        (audit.left_open.to_string(), "left something open".to_owned()),
        (
            shown(skipped),
            format!(
                "repairs without a combustion test: {} of {}{skipped_interval}",
                skipped.count, skipped.of
            ),
        ),
    ];
    section(
        "figures",
        "In short",
        &html! {
            ul.tiles { @for (figure, told) in &tiles { li { b { (figure) } span { (told) } } } }
            @if settled.of > 0 { p.note { (WHY_THREE_RATES) } }
            @let first = first(audit);
            @if !first.is_empty() {
                h3 { "What to see to first" }
                ol.first { @for line in &first { li { (line) } } }
            }
        },
    )
}

/// A rate; of too few for one, how many of how many.
fn shown(rate: &Rate) -> String {
    match rate.too_small {
        _ if rate.of == 0 => "—".to_owned(),
        true => format!("{} of {}", rate.count, rate.of),
        false => percent(rate.rate),
    }
}

/// What is to be expected, and of when.
fn by_then(expected: Expected, days: &str) -> (String, String) {
    let told = format!("to be expected within {days}, once every call has had them");
    match expected {
        Expected::Nothing => ("—".to_owned(), told),
        Expected::NotKnown(day) => {
            let so_far = day.map_or_else(String::new, |day| format!("; {day}"));
            (
                "not known".to_owned(),
                format!("what is to be expected within {days}: nobody was followed so long yet{so_far}"),
            )
        }
        Expected::Between(interval) => (interval, told),
        Expected::Share(share, interval) => (share, format!("{told}; {}", unbroken(&interval))),
    }
}

/// A share whose sign does not stand on a line of its own.
fn unbroken(share: &str) -> String {
    share.replace(" %", "\u{a0}%")
}

/// Its interval, to stand after other words.
fn interval(rate: &Rate) -> String {
    match rate.of {
        0 => String::new(),
        _ => format!("; {}", unbroken(&percents(rate.low, rate.high))),
    }
}
