//! The head of the page, and the figures that matter first.

use maud::{Markup, html};

use super::section;
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{counted, days, first, not_counted, percent, percents};
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
            @if audit.without_library > 0 {
                dt { "Library not at hand" }
                dd { (counted(audit.without_library, "call, whose remedy", "calls, whose remedies")) " nobody knows" }
            }
        }
        p.caution role="note" { (audit.caution) }
        p.note {
            "Intervals are of 95 %, as if each call stood for itself: furnaces that come back again and again make them a little too "
            "narrow. Where a group is too small to say anything of, it says “too few”. Nobody is ranked. "
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
    let window = format!(
        "came back within {}: {} of {}{interval}",
        days(audit.window_days),
        back.count,
        back.of
    );
    let at_30 = match back.of {
        0 => "—".to_owned(),
        _ if back.too_small => "too few".to_owned(),
        _ => percent(audit.callbacks.at_30_days),
    };
    let tiles = [
        (
            audit.closed.to_string(),
            format!("closed, of {}", counted(audit.calls, "call", "calls")),
        ),
        (shown(back), window),
        (
            at_30,
            "to be expected within 30 days, once every call has had them".to_owned(),
        ),
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
            @let first = first(audit);
            @if !first.is_empty() {
                h3 { "What to see to first" }
                ol.first { @for line in &first { li { (line) } } }
            }
        },
    )
}

/// A rate, or that there is too little.
fn shown(rate: &Rate) -> String {
    match rate.too_small {
        true => "too few".to_owned(),
        false => percent(rate.rate),
    }
}

/// Its interval, to stand after other words.
fn interval(rate: &Rate) -> String {
    match rate.too_small {
        true => String::new(),
        // The sign must not stand on a line of its own.
        false => format!("; {}", percents(rate.low, rate.high).replace(" %", "\u{a0}%")),
    }
}
