//! What the tables hold: a call, told in rows.
//!
//! `docs/export.md` says what each column means, in the same order.

use jiff::Timestamp;

use super::rows::{Cell, Table};
use crate::audit::{Call, Ending, Remedy, Verdict};

/// Every table.
pub(super) const TABLES: [Table; 6] = [CALLS, READINGS, NOT_TAKEN, PUT_BACKS, STAYS, NOTED];

const CALLS: Table = Table {
    name: "calls",
    schema: "message calls {
        required binary session (UTF8);
        required binary folder (UTF8);
        required int64 opened (TIMESTAMP(MICROS,true));
        required int64 opened_ns;
        optional int64 closed (TIMESTAMP(MICROS,true));
        optional int64 closed_ns;
        optional binary closed_month (UTF8);
        required int64 last_ns;
        required binary tree (UTF8);
        optional binary technician (UTF8);
        optional binary site (UTF8);
        optional binary equipment (UTF8);
        required binary ending (UTF8);
        optional binary outcome (UTF8);
        optional binary why (UTF8);
        optional binary fault (UTF8);
        optional binary remedy (UTF8);
        optional binary part (UTF8);
        required boolean left_open;
        required int64 put_back;
        required boolean sealed;
        optional int64 torn_bytes;
        required boolean clock_went_back;
        required boolean from_file;
        required boolean with_library;
        required boolean could_test_combustion;
        required boolean after_work;
        required boolean proof;
    }",
};

const READINGS: Table = Table {
    name: "readings",
    schema: "message readings {
        required binary session (UTF8);
        required int64 place;
        required binary reading (UTF8);
        optional binary typed (UTF8);
        required double value;
        required binary unit (UTF8);
        required double margin;
        required boolean borderline;
        required int64 time (TIMESTAMP(MICROS,true));
        optional double seconds;
        optional double minutes;
        required boolean combustion;
        required boolean superseded;
    }",
};

const NOT_TAKEN: Table = Table {
    name: "not_taken",
    schema: "message not_taken {
        required binary session (UTF8);
        required int64 place;
        required binary datum (UTF8);
        required binary why (UTF8);
        required boolean combustion;
    }",
};

const PUT_BACKS: Table = Table {
    name: "put_backs",
    schema: "message put_backs {
        required binary session (UTF8);
        required binary restore (UTF8);
        required binary state (UTF8);
    }",
};

const STAYS: Table = Table {
    name: "stays",
    schema: "message stays {
        required binary session (UTF8);
        required int64 place;
        required binary step (UTF8);
        optional binary next_step (UTF8);
        optional double seconds;
        optional double minutes;
    }",
};

const NOTED: Table = Table {
    name: "noted",
    schema: "message noted {
        required binary session (UTF8);
        required int64 place;
        required binary fault (UTF8);
        required binary remedy (UTF8);
        optional binary part (UTF8);
    }",
};

/// Tells a call: `take` is given each row, with the position of its table in [`TABLES`].
pub(super) fn tell(call: &Call, folder: &str, mut take: impl FnMut(usize, &[Cell<'_>])) {
    let session = Cell::from(call.session.as_str());
    take(0, &row(call, folder));
    for (place, taken) in (0_i64..).zip(&call.readings) {
        take(
            1,
            &[
                session,
                place.into(),
                taken.reading.as_str().into(),
                taken.typed.as_deref().into(),
                taken.value.into(),
                taken.unit.as_str().into(),
                taken.margin.into(),
                taken.borderline.into(),
                taken.time.as_microsecond().into(),
                taken.seconds.into(),
                taken.minutes.into(),
                taken.combustion.into(),
                taken.superseded.into(),
            ],
        );
    }
    for (place, not) in (0_i64..).zip(&call.not_taken) {
        let (datum, why) = (not.datum.as_str().into(), not.why.as_str().into());
        take(2, &[session, place.into(), datum, why, not.combustion.into()]);
    }
    let put_backs = &call.put_backs;
    for (state, restores) in [("open", &put_backs.open), ("refused", &put_backs.refused)] {
        for restore in restores {
            take(3, &[session, restore.as_str().into(), state.into()]);
        }
    }
    for (place, stay) in (0_i64..).zip(&call.stays) {
        let (step, next) = ((*stay.step).into(), stay.to.as_deref().into());
        let times = [stay.seconds.into(), stay.minutes.into()];
        take(4, &[session, place.into(), step, next, times[0], times[1]]);
    }
    for (place, noted) in (0_i64..).zip(&call.noted) {
        let (fault, remedy) = (noted.fault.as_str().into(), remedy(&noted.remedy).into());
        take(
            5,
            &[session, place.into(), fault, remedy, noted.condemned().into()],
        );
    }
}

/// The row of the call itself.
fn row<'a>(call: &'a Call, folder: &'a str) -> [Cell<'a>; 28] {
    let verdict: Option<&Verdict> = call.verdict();
    let (ending, outcome, why) = match &call.ending {
        Ending::Verdict(_) => ("verdict", None, None),
        Ending::Outcome(outcome) => ("outcome", Some(outcome.as_str()), None),
        Ending::Unproven { why } => ("unproven", None, Some(why.as_str())),
        Ending::Insisted(_) => ("insisted", None, None),
        Ending::Open => ("open", None, None),
    };
    [
        call.session.as_str().into(),
        folder.into(),
        call.opened.as_microsecond().into(),
        nanoseconds(call.opened).into(),
        call.closed.map(Timestamp::as_microsecond).into(),
        call.closed.map(nanoseconds).into(),
        Cell::Month(call.closed),
        nanoseconds(call.last).into(),
        call.tree.as_str().into(),
        call.technician.as_deref().into(),
        call.site.as_deref().into(),
        call.equipment.as_deref().into(),
        ending.into(),
        outcome.into(),
        why.into(),
        verdict.map(|verdict| verdict.fault.as_str()).into(),
        verdict.map(|verdict| remedy(&verdict.remedy)).into(),
        verdict.and_then(Verdict::condemned).into(),
        call.left_open().into(),
        i64::from(call.put_backs.done).into(),
        call.sealed.into(),
        call.torn
            .map(|bytes| i64::try_from(bytes).unwrap_or(i64::MAX))
            .into(),
        call.clock_went_back.into(),
        call.from_file.into(),
        call.with_library.into(),
        call.could_test_combustion.into(),
        call.after_work.into(),
        call.is_proof().into(),
    ]
}

/// The month of a time, in UTC, as the audit names it.
pub(super) fn month(time: Timestamp) -> String {
    time.strftime("%Y-%m").to_string()
}

/// Since 1970. Two of them are subtracted in SQL, so that times more than 146 years away are cut.
fn nanoseconds(time: Timestamp) -> i64 {
    const MOST: i64 = i64::MAX / 2;
    let most = i128::from(MOST);
    i64::try_from(time.as_nanosecond().clamp(-most, most)).unwrap_or(MOST)
}

/// In a word, as the format of libraries has it.
fn remedy(remedy: &Remedy) -> &'static str {
    match remedy {
        Remedy::Replace(_) => "replace",
        Remedy::Correct => "correct",
        Remedy::ShutDown => "shut_down",
        Remedy::Refer => "refer",
        Remedy::Nothing => "none",
        Remedy::Unknown => "unknown",
    }
}

#[cfg(test)]
mod tests {
    use jiff::Timestamp;

    use super::{TABLES, nanoseconds};

    /// The columns that a section of the page explains: what stands in backquotes in the first column of its table.
    fn explained(page: &'static str, table: &str) -> Vec<&'static str> {
        let (_, section) = page.split_once(&format!("\n## {table}\n")).unwrap();
        let section = section.split("\n## ").next().unwrap();
        let rows = section.lines().filter(|line| line.starts_with("| `"));
        let first = rows.filter_map(|line| line.split('|').nth(1));
        first
            .flat_map(|names| names.split('`').skip(1).step_by(2))
            .collect()
    }

    #[test]
    fn the_page_explains_every_column_in_order() {
        let page = include_str!("../../docs/export.md");
        for table in TABLES {
            let columns = table
                .schema
                .lines()
                .skip(1)
                .filter_map(|line| line.split_whitespace().nth(2));
            let columns: Vec<_> = columns.map(|name| name.trim_end_matches(';')).collect();
            assert_eq!(columns, explained(page, table.name), "{}", table.name);
        }
    }

    #[test]
    fn any_two_times_can_be_subtracted() {
        let (first, last) = (nanoseconds(Timestamp::MIN), nanoseconds(Timestamp::MAX));
        assert!(last.checked_sub(first).is_some());
        let time: Timestamp = "1970-01-01T00:00:01.000000002Z".parse().unwrap();
        assert_eq!(nanoseconds(time), 1_000_000_002);
    }
}
