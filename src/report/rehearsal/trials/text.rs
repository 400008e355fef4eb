//! The table of faults, the confusion of parts, and the walks that were wrong.

use std::collections::BTreeMap;

use super::super::table::Table;
use super::super::{Page, way};
use super::{Report, outcome, truth};
use crate::bench::trials::{Outcome, Tally};
use crate::report::findings::{Look, counted};
use crate::source::Safe;

/// Widest column of names.
const WIDEST: usize = 40;

/// How many calls are shown with their walk; of more, a line each.
const WALKED: usize = 10;

/// What the columns count.
const WHAT_COUNTS: [&str; 4] = [
    "right: the bad part condemned, or one of a group with it, or the true cause named",
    "referred: no verdict, or a bad part handed on, or the furnace shut down for something else",
    "missed: ended as if nothing were wrong",
    "wrong: a good part condemned, or something put right that was in order",
];

/// What they count where two things are wrong.
const EITHER: &str = "Of two faults either counts where it is named, since the next call finds the other; an ending that names none is \
                      right only where both were put right on the way.";

/// For a person: each fault with what its calls came to, what was blamed for each part, minutes and answers, and the calls
/// that were wrong or missed, the wrong ones with their walk. At the end a sum that names the library as it is `called`.
pub fn text(report: &Report<'_>, called: &Safe, look: Look) -> String {
    let mut page = Page {
        look,
        text: String::new(),
    };
    let sum = report.trials.sum();
    by_fault(&mut page, report, &sum);
    by_part(&mut page, report);
    page.line(
        0,
        &format!(
            "a call takes {:.0} minutes and {:.0} answers on average, {:.0} minutes and {} answers at worst",
            sum.mean_minutes(),
            sum.mean_steps(),
            sum.most_minutes,
            sum.most_steps
        ),
    );
    page.blank();
    shown(&mut page, report);
    let calls = counted(sum.calls, "call");
    let sums = format!(
        "{calls}, {} right, {} referred, {} missed, {} wrong",
        sum.right, sum.referred, sum.missed, sum.wrong
    );
    page.sum(called, &sums);
    page.text
}

fn by_fault(page: &mut Page, report: &Report<'_>, sum: &Tally) {
    let all = counted(report.trials.by_fault.len(), "fault");
    let names = report.trials.by_fault.iter().map(|(subject, _)| subject.name());
    let wide = names
        .map(str::len)
        .chain([all.len()])
        .max()
        .unwrap_or_default()
        .min(WIDEST);
    let head = if report.pairs { "with another" } else { "fault" };
    let table = Table {
        names: wide,
        heads: ["calls", "right", "refer", "missed", "wrong"],
        wide: [6; 5],
    };
    page.head(&table, head);
    let mut row = |name: &str, tally: &Tally| {
        let Tally {
            calls,
            right,
            referred,
            missed,
            wrong,
            ..
        } = tally;
        let cells = [calls, right, referred, missed, wrong];
        page.row(&table, name, cells.map(usize::to_string));
    };
    for (subject, tally) in &report.trials.by_fault {
        row(subject.name(), tally);
    }
    row(&all, sum);
    page.blank();
    for line in WHAT_COUNTS {
        page.hanging(0, 2, line);
    }
    if report.pairs {
        page.hanging(0, 2, EITHER);
    }
    page.blank();
}

/// What is said where nothing was bad.
const NOTHING: &str = "(nothing)";

/// For each part that was bad, how often it was found and what was blamed instead.
fn by_part(page: &mut Page, report: &Report<'_>) {
    let mut parts: BTreeMap<&str, Tally> = BTreeMap::new();
    for (subject, tally) in &report.trials.by_fault {
        let part = match subject.fault() {
            Some(fault) => fault.part.unwrap_or("(a condition)"),
            None => NOTHING,
        };
        parts.entry(part).or_default().add(tally);
    }
    page.line(
        0,
        "what was bad, how often the verdict was right, and what was blamed:",
    );
    for (part, tally) in &parts {
        let mut blamed: Vec<_> = tally.blamed.iter().collect();
        blamed.sort_by(|one, other| other.1.cmp(one.1).then(one.0.cmp(other.0)));
        let blamed: Vec<String> = (blamed.iter())
            .filter(|_| *part != NOTHING)
            .map(|(name, count)| format!("{name} {count}"))
            .collect();
        page.hanging(
            2,
            4,
            format!(
                "{part}  {}  {}",
                percent(tally.right, tally.calls),
                blamed.join(", ")
            )
            .trim_end(),
        );
    }
    page.blank();
}

/// A share rounded down, so that 100 % is all.
fn percent(some: usize, all: usize) -> String {
    format!("{} %", (some * 100).checked_div(all).unwrap_or(100))
}

fn shown(page: &mut Page, report: &Report<'_>) {
    let (mut walked, mut any) = (0, false);
    let alone = report.trials.sum().calls == 1;
    for (subject, shown, played) in &report.shown {
        any = true;
        let was = outcome(shown);
        page.line(
            0,
            &format!(
                "{was}: {} with {}, ended in {}",
                played.tree,
                truth(played),
                shown.ended
            ),
        );
        let in_full = alone || (shown.outcome == Outcome::Wrong && walked < WALKED);
        if in_full {
            walked += 1;
            way::write(page, &report.rows(played), &[]);
        }
        if !alone {
            // In one piece, however long: it is there to be typed again.
            let again = page.shown(&report.again(*subject, shown.seed));
            page.text.push_str(&format!("  {again}\n"));
        }
    }
    let sum = report.trials.sum();
    let beyond = (sum.missed + sum.wrong).saturating_sub(report.shown.len());
    if !alone && beyond > 0 {
        let beyond = counted(beyond, "more call");
        page.line(
            0,
            &format!("{beyond} missed or wrong: of each fault the first few are shown"),
        );
    }
    if any {
        page.blank();
    }
}
