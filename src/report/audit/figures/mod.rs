//! What both pages show, worked out of an audit.

mod alike;
mod curve;
mod expected;
mod first;
mod found_later;
mod months;
mod people;
mod standing;
mod ways;
mod written;

pub(super) use alike::{ONE_FURNACE, ONE_TECHNICIAN, spellings};
pub(super) use curve::{Curve, Day, curve};
pub(super) use expected::{Expected, expected};
pub(super) use first::first;
pub(super) use found_later::{FoundLater, Row as FoundLaterRow, found_later};
pub(super) use months::{Month, Months, NOT_DONE, SMALL, months};
pub(super) use people::{Person, name as name_of, people};
pub(super) use standing::{Groups, Place, Standing, Standings, UNDER, standings};
pub(super) use ways::{Way, Ways, ways};
pub(super) use written::{INNOCENT, others_gave, unevenness, whose_values};

use crate::audit::findings::{Step, Unsound};
use crate::audit::statistics::Count;
use crate::audit::{Audit, SessionRef};
use crate::source::{Safe, safe};

/// Columns of the longest name.
const LONGEST: usize = 80;

/// A registered name as it is spoken.
pub(super) fn spoken(name: &str) -> Safe {
    short(&name.replace('_', " "))
}

/// A name no longer than the program lets anybody write one: a log that was made by hand may hold one that fills the page.
pub(super) fn short(name: &str) -> Safe {
    safe(name).cut(LONGEST)
}

/// A share in per cent, one place: `8.5 %`.
pub(super) fn percent(share: f64) -> String {
    format!("{:.1} %", 100.0 * share)
}

/// A chance in per cent; a small one is never nothing.
pub(super) fn chance(chance: f64) -> String {
    match chance < 0.001 {
        true => "< 0.1 %".to_owned(),
        false => percent(chance),
    }
}

/// From one share to another: `6.1 to 11.7 %`.
pub(super) fn percents(low: f64, high: f64) -> String {
    format!("{:.1} to {:.1} %", 100.0 * low, 100.0 * high)
}

/// A number to four digits that matter, as few as it needs.
pub(super) fn number(value: f64) -> String {
    let before = value.abs().log10().floor().clamp(-6.0, 3.0) as i32;
    let text = format!("{value:.0$}", (3 - before) as usize);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

/// All settled calls, and those that came back on another visit: what groups are held against.
pub(super) fn all(audit: &Audit) -> Count {
    Count::new(audit.callbacks.settled.count, audit.callbacks.settled.of)
}

/// What a callback ended in: its fault, its outcome, or that it did in neither.
pub(super) fn ended_in(fault: Option<&str>, outcome: Option<&str>) -> Safe {
    fault.or(outcome).map_or(safe("no verdict"), spoken)
}

/// A number with its noun, `1 call`, `2 calls`.
pub(super) fn counted(count: u64, one: &str, more: &str) -> String {
    match count {
        1 => format!("1 {one}"),
        _ => format!("{count} {more}"),
    }
}

/// Days of a window, with their noun.
pub(super) fn days(days: u32) -> String {
    counted(u64::from(days), "day", "days")
}

/// So many days of 24 h later, as a person says it.
pub(super) fn later(days: f64) -> String {
    match days.max(0.0).round() as u64 {
        0 => "within half a day".to_owned(),
        days => format!("{} later", counted(days, "day", "days")),
    }
}

/// When a second call came: on the same visit, or so many days later.
pub(super) fn came(same_visit: bool, days: f64) -> String {
    match same_visit {
        true => "same visit,".to_owned(),
        false => later(days),
    }
}

/// Files that hold no call: damaged, foreign, unreadable or of another call, and empty ones.
pub(super) fn no_calls(audit: &Audit) -> Vec<&Unsound> {
    audit.unsound.iter().filter(|file| !file.what.is_call()).collect()
}

/// Calls that were cut off, never closed or doubtful otherwise; they count.
pub(super) fn doubtful(audit: &Audit) -> Vec<&Unsound> {
    audit.unsound.iter().filter(|file| file.what.is_call()).collect()
}

/// Where a file that holds no call lies: its folder is named where there are several.
pub(super) fn placed(audit: &Audit, file: &Unsound) -> Safe {
    let id = &file.session.id;
    match audit.folders.get(file.session.folder as usize) {
        Some(folder) if audit.folders.len() > 1 => safe(&format!("{}/{id}", folder.trim_end_matches('/'))),
        _ => safe(id),
    }
}

/// What was passed over, a number with its noun each; nothing of what there is none of.
pub(super) fn not_counted(audit: &Audit) -> Vec<String> {
    let empty = no_calls(audit).len() as u64 - audit.damaged;
    let all = [
        (
            audit.damaged,
            "damaged, foreign or unreadable file",
            "damaged, foreign or unreadable files",
        ),
        (empty, "empty file", "empty files"),
        (audit.copies, "copy of a session", "copies of sessions"),
        (audit.practice, "practice session", "practice sessions"),
        (audit.other_files, "other file", "other files"),
    ];
    let some = all.into_iter().filter(|(count, ..)| *count > 0);
    some.map(|(count, one, more)| counted(count, one, more)).collect()
}

/// Which calls a rate that anything is held against is of.
pub(super) fn what_is_settled(audit: &Audit) -> String {
    let window = days(audit.window_days);
    let rate = &audit.callbacks.rate;
    match audit.callbacks.settled.of {
        0 => format!(
            "Of no call are the {window} after it over yet: what follows is of all closed calls so far, and nothing is concluded from it."
        ),
        of => format!(
            "What follows is of the {of} settled calls of {}: the {window} after them are over. Counted are those of \
             them that came back on another visit.",
            rate.of
        ),
    }
}

/// Whether several calls came back as one.
pub(super) fn returns(audit: &Audit) -> Option<String> {
    let (count, returns) = (audit.callbacks.rate.count, audit.callbacks.returns);
    (returns < count).then(|| {
        let calls = counted(returns, "call", "calls");
        format!("{calls} in all: one that follows calls that overlap is the next of each")
    })
}

/// What it means that a group has too few settled calls.
pub(super) const WHAT_UNDER_IS: &str = "“under 20”: of fewer than 20 settled calls, a group is held against nothing; its line spans the rates that \
     its calls would fit.";

/// What the words of a place in the funnel mean.
pub(super) const LIMITS: &str = "Of a group, “high” and “low” lie outside what chance gives 95 of 100 groups of that size, “very” outside 998 of 1000.";

/// What the columns say of a group that is held against all.
pub(super) const WHAT_CHANCE_IS: &str = "“Chance” is how often chance alone would put any of them as far out, allowing for how many are looked at; under 5 %, a group is named.";

/// Why there are three rates of calls that came back.
pub(super) const WHY_THREE_RATES: &str = "Three rates of calls that came back answer three questions. How many of all closed calls have so far, though those \
     closed lately may yet? How many of the settled ones have, on another visit? This one is used wherever groups are compared. And \
     how many will have, once every call has had its days?";

/// What a second call on the same visit is.
pub(super) const SAME_VISIT: &str = "to which the same technician went on before leaving";

/// What counts as a callback.
pub(super) const WHAT_COUNTS: &str =
    "Any next call at the same equipment counts, also one that was planned, or about something else.";

/// Of calls ahead of the time of the audit, after how many there are.
pub(super) const AHEAD: &str = "more than a day ahead of this machine's clock, and too many to doubt: find out whose clock is \
    wrong, since all that counts days depends on it";

/// Of calls whose own library was not kept.
pub(super) const NOT_AT_HAND: &str = "their own library is not kept here, so the remedies of their faults are those of the built-in \
    library where it is another edition of theirs, and not known otherwise";

/// What to say of a repair after which no test was asked for: that is the tree's, not the technician's.
pub(super) const NOT_ASKED: &str = "none was asked for on the call";

/// What came of the calls at a step: only what happened is told.
pub(super) fn stalled(step: &Step) -> String {
    let times = |count: u64| counted(count, "time", "times");
    let did = [
        (step.stalled, "stood long"),
        (step.given_up, "given up without a verdict"),
        (step.abandoned, "left there"),
    ];
    let did: Vec<String> = (did.iter().filter(|(count, _)| *count > 0))
        .map(|(count, what)| format!("{what} {}", times(*count)))
        .collect();
    format!(
        "came to {}, {}; at most {:.0} min",
        times(step.times),
        did.join(", "),
        step.longest_minutes
    )
}

/// How far a value may be off, to two digits that matter.
pub(super) fn margin(value: f64) -> String {
    let before = value.abs().log10().floor().clamp(-6.0, 1.0) as i32;
    number(
        format!("{value:.0$}", (1 - before) as usize)
            .parse()
            .unwrap_or(value),
    )
}

/// What to bear in mind of suspected misdiagnoses.
pub(super) const MAY_BE_ANOTHER: &str = "The part may have been bad all the same, and something else as well: the two calls tell. On the same visit nobody called \
     back: whoever found the second thing went on looking.";

/// What came after a call, as the end of a sentence: a verdict without proof may be right.
pub(super) fn what_came(audit: &Audit, session: &SessionRef, equipment: Option<&str>) -> String {
    let Some(equipment) = equipment else {
        return String::new();
    };
    // Both lists are in the order of their equipment, and an archive may have thousands of pairs.
    let next = [&audit.callback_pairs, &audit.came_again]
        .into_iter()
        .find_map(|pairs| {
            let begin = pairs.partition_point(|pair| pair.equipment.as_str() < equipment);
            (begin..pairs.len())
                .map_while(|at| pairs.get(at).filter(|pair| pair.equipment == equipment))
                .find(|pair| pair.first == *session)
        });
    match next {
        Some(pair) => format!("; somebody came again {}", later(pair.days)),
        None => format!(
            "; no call there within {} after it, so far",
            self::days(audit.window_days)
        ),
    }
}

/// Whom the callbacks are counted of, where not every call is.
pub(super) fn who_counts(audit: &Audit) -> Option<String> {
    let told: Vec<String> = [left(audit), proofs(audit)].into_iter().flatten().collect();
    (!told.is_empty()).then(|| told.join(" "))
}

/// The walks that were to prove work, which nobody called for.
fn proofs(audit: &Audit) -> Option<String> {
    let proofs = audit.callbacks.proofs;
    let walks = counted(
        proofs,
        "walk was to prove work, and nothing to do came of it: nobody called for it, and it is",
        "walks were to prove work, and nothing to do came of them: nobody called for them, and they are",
    );
    (proofs > 0).then(|| format!("{walks} in none of these figures."))
}

/// The calls that were left.
fn left(audit: &Audit) -> Option<String> {
    let left = audit.calls - audit.closed;
    let calls = counted(
        left,
        "call was left before that, and is",
        "calls were left before that, and are",
    );
    (left > 0).then(|| {
        format!(
            "Only closed calls count: ended in any way, with everything put back or refused in writing. {calls} in none of \
             these figures, also where somebody came again."
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_as_short_as_they_may_be() {
        let shown = [
            0.0,
            3.5,
            -0.350_000_01,
            123.456,
            98_765.4,
            0.000_123_456,
            f64::NAN,
        ]
        .map(number);
        assert_eq!(shown, ["0", "3.5", "-0.35", "123.5", "98765", "0.0001235", "NaN"]);
        assert_eq!(
            [0.4, 0.6, 1.4, 12.0].map(later),
            ["within half a day", "1 day later", "1 day later", "12 days later"]
        );
        assert_eq!(
            (percent(0.0854), percents(0.061, 0.1166)),
            ("8.5 %".into(), "6.1 to 11.7 %".into())
        );
    }
}
