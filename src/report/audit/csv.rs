//! An audit as one table: CSV as RFC 4180 has it, that no spreadsheet takes for formulas.
//!
//! Its first column says what a row is: the whole archive, a group, or a finding. So one filter shows one of them.

mod quoted;

use quoted::quoted;

use crate::audit::{Audit, Rate, SessionRef, Tally};

/// The columns.
const COLUMNS: [&str; 27] = [
    "row",
    "name",
    "session",
    "next_session",
    "folder",
    "technician",
    "equipment",
    "detail",
    "calls",
    "closed",
    "callbacks",
    "of",
    "rate",
    "low",
    "high",
    "too_small",
    "suspected_misdiagnoses",
    "unproven",
    "insisted",
    "left_open",
    "same_visit",
    "settled_callbacks",
    "settled_of",
    "settled_rate",
    "settled_low",
    "settled_high",
    "settled_too_small",
];

/// An audit as a table.
pub fn csv(audit: &Audit) -> String {
    let mut table = Table {
        audit,
        text: String::new(),
    };
    table.line(COLUMNS.map(str::to_owned));
    table.groups();
    table.came_back();
    table.calls();
    table.written();
    table.look_alikes();
    table.text
}

/// One row, before it is written.
#[derive(Default)]
struct Row<'a> {
    kind: &'static str,
    name: &'a str,
    session: Option<&'a SessionRef>,
    next: Option<&'a SessionRef>,
    technician: Option<&'a str>,
    equipment: Option<&'a str>,
    detail: String,
    counts: Option<[Option<u64>; 2]>,
    rate: Option<Rate>,
    others: Option<[u64; 4]>,
    same_visit: Option<u64>,
    settled: Option<Rate>,
}

struct Table<'a> {
    audit: &'a Audit,
    text: String,
}

impl<'a> Table<'a> {
    fn groups(&mut self) {
        let audit = self.audit;
        self.row(Row {
            kind: "all",
            counts: Some([Some(audit.calls), Some(audit.closed)]),
            rate: Some(audit.callbacks.rate),
            others: Some([
                audit.suspected_misdiagnoses.len() as u64,
                audit.unproven,
                audit.insisted,
                audit.left_open,
            ]),
            same_visit: Some(audit.callbacks.same_visit),
            settled: Some(audit.callbacks.settled),
            ..Row::default()
        });
        for row in &audit.by_technician {
            self.group("technician", row.technician.as_deref().unwrap_or(""), &row.tally);
        }
        for row in &audit.by_tree {
            self.group("tree", &row.tree, &row.tally);
        }
        for row in &audit.by_part {
            self.group("part", &row.part, &row.tally);
        }
        for row in &audit.by_month {
            self.row(Row {
                kind: "month",
                name: &row.month,
                counts: Some([None, Some(row.closed)]),
                rate: Some(row.callbacks),
                settled: Some(row.settled),
                ..Row::default()
            });
        }
    }

    fn group(&mut self, kind: &'static str, name: &'a str, tally: &Tally) {
        self.row(Row {
            kind,
            name,
            counts: Some([Some(tally.calls), Some(tally.closed)]),
            rate: Some(tally.callbacks),
            others: Some([
                tally.suspected_misdiagnoses,
                tally.unproven,
                tally.insisted,
                tally.left_open,
            ]),
            same_visit: Some(tally.same_visit),
            settled: Some(tally.settled),
            ..Row::default()
        });
    }

    fn came_back(&mut self) {
        let audit = self.audit;
        for found in audit.callback_pairs.iter() {
            self.row(Row {
                kind: "callback",
                name: if found.same_complaint {
                    "same complaint"
                } else {
                    ""
                },
                session: Some(&found.first),
                next: Some(&found.second),
                technician: found.technician.as_deref(),
                equipment: Some(&found.equipment),
                detail: match found.same_visit {
                    true => "same visit".to_owned(),
                    false => format!("after {:.1} days", found.days),
                },
                ..Row::default()
            });
        }
        for found in &audit.came_again {
            self.row(Row {
                kind: "left and came again",
                name: found
                    .then
                    .as_deref()
                    .or(found.then_outcome.as_deref())
                    .unwrap_or(""),
                session: Some(&found.first),
                next: Some(&found.second),
                technician: found.technician.as_deref(),
                equipment: Some(&found.equipment),
                detail: format!("after {:.1} days", found.days),
                ..Row::default()
            });
        }
        for found in &audit.suspected_misdiagnoses {
            self.row(Row {
                kind: "suspected misdiagnosis",
                name: &found.condemned,
                session: Some(&found.first),
                next: Some(&found.second),
                technician: found.technician.as_deref(),
                equipment: Some(&found.equipment),
                detail: match found.same_visit {
                    true => format!("on the same visit {}", found.then),
                    false => format!("then {}", found.then),
                },
                ..Row::default()
            });
        }
    }

    fn calls(&mut self) {
        let audit = self.audit;
        for found in &audit.condemned.insisted_calls {
            self.row(Row {
                kind: "insisted",
                name: &found.fault,
                session: Some(&found.session),
                technician: found.technician.as_deref(),
                equipment: found.equipment.as_deref(),
                ..Row::default()
            });
        }
        for found in &audit.left_open_calls {
            self.row(Row {
                kind: "left open",
                session: Some(&found.session),
                next: found.seen_since.as_ref(),
                technician: found.technician.as_deref(),
                equipment: found.equipment.as_deref(),
                detail: found.put_backs.join(", "),
                ..Row::default()
            });
        }
        for found in &audit.borderline {
            self.row(Row {
                kind: "borderline",
                name: &found.reading,
                session: Some(&found.session),
                technician: found.technician.as_deref(),
                equipment: found.equipment.as_deref(),
                detail: format!("{} {} ± {}", found.value, found.unit, found.margin),
                ..Row::default()
            });
        }
        let combustion = &audit.combustion;
        let skipped = combustion.calls.iter().map(|found| ("no combustion test", found));
        let not_taken = combustion
            .not_taken
            .iter()
            .map(|found| ("combustion test not taken", found));
        for (kind, found) in skipped.chain(not_taken) {
            self.row(Row {
                kind,
                name: found.fault.as_deref().unwrap_or(""),
                session: Some(&found.session),
                technician: found.technician.as_deref(),
                equipment: found.equipment.as_deref(),
                detail: found.why.clone().unwrap_or_default(),
                ..Row::default()
            });
        }
        for found in &audit.unsound {
            self.row(Row {
                kind: "session file",
                name: found.what.name(),
                session: Some(&found.session),
                detail: found.why.clone(),
                ..Row::default()
            });
        }
        for session in &audit.practice_sessions {
            self.row(Row {
                kind: "practice",
                session: Some(session),
                ..Row::default()
            });
        }
        for found in &audit.drift {
            self.row(Row {
                kind: "drift",
                name: &found.reading,
                session: Some(&found.first),
                next: Some(&found.last),
                equipment: Some(&found.equipment),
                detail: format!("{:+.3} {} a year", found.a_year, found.unit),
                ..Row::default()
            });
        }
    }

    /// Names that look like one: `detail` is that of theirs which most calls have.
    fn look_alikes(&mut self) {
        let found = &self.audit.alike;
        for (groups, is_person) in [(&found.equipment, false), (&found.technicians, true)] {
            for group in groups {
                for spelling in &group.names {
                    let name = Some(spelling.name.as_str());
                    self.row(Row {
                        kind: if is_person {
                            "one technician?"
                        } else {
                            "one furnace?"
                        },
                        session: Some(&spelling.latest),
                        technician: name.filter(|_| is_person),
                        equipment: name.filter(|_| !is_person),
                        detail: group.names[0].name.clone(),
                        counts: Some([Some(spelling.calls), None]),
                        ..Row::default()
                    });
                }
            }
        }
    }

    fn written(&mut self) {
        let audit = self.audit;
        for found in &audit.steps {
            for session in found.sessions.iter() {
                self.row(Row {
                    kind: "stalled or left",
                    name: &found.step,
                    session: Some(&session),
                    ..Row::default()
                });
            }
        }
        for found in &audit.written.digits {
            for session in found.sessions.iter() {
                self.row(Row {
                    kind: "uneven last digits",
                    session: Some(&session),
                    technician: Some(&found.technician),
                    ..Row::default()
                });
            }
        }
        for found in &audit.written.repeated {
            for session in found.sessions.iter() {
                self.row(Row {
                    kind: "same value again",
                    name: &found.reading,
                    session: Some(&session),
                    technician: Some(&found.technician),
                    detail: format!("{} {}", found.value, found.unit),
                    ..Row::default()
                });
            }
        }
        for found in &audit.written.hurried {
            self.row(Row {
                kind: "hurried",
                name: &found.reading,
                session: Some(&found.session),
                technician: found.technician.as_deref(),
                equipment: found.equipment.as_deref(),
                detail: format!("{} of {} readings", found.readings, found.of),
                ..Row::default()
            });
        }
    }

    fn row(&mut self, row: Row<'_>) {
        let folder = row
            .session
            .and_then(|session| self.audit.folders.get(session.folder as usize));
        let id = |session: Option<&SessionRef>| session.map(|session| session.id.clone()).unwrap_or_default();
        let number = |number: Option<u64>| number.map(|number| number.to_string()).unwrap_or_default();
        // Of nothing there is no share, and no interval.
        let some = |rate: &Rate| rate.of > 0;
        let share = |rate: Option<Rate>, part: fn(Rate) -> f64| {
            (rate.filter(some)).map_or_else(String::new, |rate| format!("{:.6}", part(rate)))
        };
        let text = |text: Option<&str>| text.unwrap_or_default().to_owned();
        let too_small = |rate: Option<Rate>| rate.map(|rate| rate.too_small.to_string()).unwrap_or_default();
        let (rate, settled) = (row.rate, row.settled);
        let other = |at: usize| number(row.others.map(|others| others[at]));
        self.line([
            row.kind.to_owned(),
            row.name.to_owned(),
            id(row.session),
            id(row.next),
            folder.cloned().unwrap_or_default(),
            text(row.technician),
            text(row.equipment),
            row.detail,
            number(row.counts.and_then(|counts| counts[0])),
            number(row.counts.and_then(|counts| counts[1])),
            number(rate.map(|rate| rate.count)),
            number(rate.map(|rate| rate.of)),
            share(rate, |rate| rate.rate),
            share(rate, |rate| rate.low),
            share(rate, |rate| rate.high),
            too_small(rate),
            other(0),
            other(1),
            other(2),
            other(3),
            number(row.same_visit),
            number(settled.map(|settled| settled.count)),
            number(settled.map(|settled| settled.of)),
            share(settled, |rate| rate.rate),
            share(settled, |rate| rate.low),
            share(settled, |rate| rate.high),
            too_small(settled),
        ]);
    }

    fn line(&mut self, fields: [String; COLUMNS.len()]) {
        for (place, field) in fields.iter().enumerate() {
            if place > 0 {
                self.text.push(',');
            }
            self.text.push_str(&quoted(field));
        }
        self.text.push_str("\r\n");
    }
}
