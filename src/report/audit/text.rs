//! An audit as a page of at most 78 columns.

use std::fmt::Write as _;

use crate::audit::{Audit, Rate, SessionRef, Tally};
use crate::source::{safe, wrap};

const WIDTH: usize = 78;

/// Findings of one kind that are shown; JSON and CSV hold them all.
const SHOWN: usize = 12;

/// An audit as a page.
pub fn text(audit: &Audit) -> String {
    let mut page = Page {
        audit,
        text: String::new(),
    };
    page.head();
    page.groups();
    page.came_back();
    page.calls();
    page.written();
    page.foot();
    page.text
}

struct Page<'a> {
    audit: &'a Audit,
    text: String,
}

impl Page<'_> {
    fn head(&mut self) {
        let audit = self.audit;
        self.text.push_str("AUDIT\n");
        self.wrapped("  ", audit.caution);
        let day = |time: jiff::Timestamp| time.strftime("%Y-%m-%d").to_string();
        if let (Some(from), Some(until)) = (audit.from, audit.until) {
            self.wrapped("  ", &format!("From {} to {}.", day(from), day(until)));
        }
        self.wrapped(
            "  ",
            &format!(
                "{} calls, {} closed, {} referred without a verdict, {} insisted on, {} left something open; {} files damaged.",
                audit.calls, audit.closed, audit.unproven, audit.insisted, audit.left_open, audit.damaged
            ),
        );
        let callbacks = &audit.callbacks;
        self.wrapped(
            "  ",
            &format!(
                "Callbacks within {} days: {}. Within 30 days, counting calls for as long as they were followed: {}.",
                audit.window_days,
                rate(&callbacks.rate),
                percent(callbacks.at_30_days)
            ),
        );
        self.wrapped(
            "  ",
            &format!("Of the same complaint: {}.", rate(&callbacks.same_complaint)),
        );
    }

    fn groups(&mut self) {
        let audit = self.audit;
        self.title("BY TECHNICIAN, in the order of names");
        for row in &audit.by_technician {
            self.row(row.technician.as_deref().unwrap_or("not given"), &row.tally);
        }
        self.title("BY COMPLAINT");
        for row in &audit.by_tree {
            self.row(&row.tree, &row.tally);
        }
        self.title("BY CONDEMNED PART");
        for row in &audit.by_part {
            self.row(&row.part, &row.tally);
        }
    }

    fn row(&mut self, name: &str, tally: &Tally) {
        let callbacks = &tally.callbacks;
        let said = match tally.too_small {
            true => format!("{} of {}: too few to say", callbacks.count, callbacks.of),
            false => rate(callbacks),
        };
        let name = safe(name).cut(24);
        let _ = writeln!(self.text, "  {name:<24}  {:>5} calls  {said}", tally.calls);
    }

    fn came_back(&mut self) {
        let audit = self.audit;
        let found = &audit.suspected_misdiagnoses;
        self.list("SUSPECTED MISDIAGNOSES", found.len(), |page, at| {
            let one = &found[at];
            page.item(&format!(
                "{}: condemned {}, then {}",
                one.equipment, one.condemned, one.then
            ));
            page.command(&one.first);
            page.command(&one.second);
        });
        let found = &audit.callback_pairs;
        self.list("CALLBACKS", found.len(), |page, at| {
            let one = &found[at];
            let same = if one.same_complaint {
                ", same complaint"
            } else {
                ""
            };
            page.item(&format!("{} after {:.1} days{same}", one.equipment, one.days));
            page.command(&one.first);
            page.command(&one.second);
        });
    }

    fn calls(&mut self) {
        let audit = self.audit;
        let condemned = &audit.condemned;
        self.list("INSISTED ON", condemned.insisted_calls.len(), |page, at| {
            let one = &condemned.insisted_calls[at];
            page.item(&one.fault);
            page.command(&one.session);
        });
        self.list("LEFT OPEN", audit.left_open_calls.len(), |page, at| {
            let one = &audit.left_open_calls[at];
            page.item(&one.put_backs.join(", "));
            page.command(&one.session);
        });
        self.list(
            "BORDERLINE ON THE WAY TO A VERDICT",
            audit.borderline.len(),
            |page, at| {
                let one = &audit.borderline[at];
                page.item(&format!("{} {} {}", one.reading, one.value, one.unit));
                page.command(&one.session);
            },
        );
        let tests = &audit.combustion;
        self.list(
            "NO COMBUSTION TEST AFTER THE WORK",
            tests.calls.len(),
            |page, at| {
                let one = &tests.calls[at];
                let why = one.why.as_deref().unwrap_or("not asked for");
                page.item(&format!("{}: {why}", one.fault.as_deref().unwrap_or("no fault")));
                page.command(&one.session);
            },
        );
        self.list(
            "STEPS WHERE CALLS STALL OR ARE LEFT",
            audit.steps.len(),
            |page, at| {
                let one = &audit.steps[at];
                page.item(&format!(
                    "{}: of {} times {} stalled, {} given up, {} left",
                    one.step, one.times, one.stalled, one.given_up, one.abandoned
                ));
                one.sessions
                    .iter()
                    .take(2)
                    .for_each(|session| page.command(session));
            },
        );
        self.list("READINGS THAT DRIFT", audit.drift.len(), |page, at| {
            let one = &audit.drift[at];
            page.item(&format!(
                "{}: {} from {} to {} {}",
                one.equipment, one.reading, one.first_value, one.last_value, one.unit
            ));
            page.command(&one.first);
            page.command(&one.last);
        });
        self.list("SESSION FILES", audit.unsound.len(), |page, at| {
            let one = &audit.unsound[at];
            page.item(&format!("{} {}: {}", one.session.id, one.what.name(), one.why));
        });
    }

    fn written(&mut self) {
        let written = &self.audit.written;
        self.list(
            "LAST DIGITS THAT LOOK WRITTEN",
            written.digits.len(),
            |page, at| {
                let one = &written.digits[at];
                page.item(&format!(
                    "{}: zeros and fives {}",
                    one.technician,
                    percent(one.zeros_and_fives)
                ));
                one.sessions
                    .iter()
                    .take(2)
                    .for_each(|session| page.command(session));
            },
        );
        self.list(
            "THE SAME VALUE AGAIN AND AGAIN",
            written.repeated.len(),
            |page, at| {
                let one = &written.repeated[at];
                page.item(&format!(
                    "{}: {} {} {}, {} of {} times",
                    one.technician, one.reading, one.value, one.unit, one.times, one.of
                ));
                one.sessions
                    .iter()
                    .take(2)
                    .for_each(|session| page.command(session));
            },
        );
        self.list(
            "FASTER THAN A HAND CAN MEASURE",
            written.hurried.len(),
            |page, at| {
                let one = &written.hurried[at];
                page.item(&format!(
                    "{} of {} readings; {} in {:.0} s",
                    one.readings, one.of, one.reading, one.seconds
                ));
                page.command(&one.session);
            },
        );
    }

    fn foot(&mut self) {
        self.text.push('\n');
        self.wrapped("", "`proofwalk replay SESSION` walks a call again, step by step; `proofwalk report` prints its job report.");
    }

    fn title(&mut self, title: &str) {
        let _ = writeln!(self.text, "\n{title}");
    }

    fn list(&mut self, title: &str, count: usize, show: impl Fn(&mut Self, usize)) {
        if count == 0 {
            return;
        }
        self.title(&format!("{title}: {count}"));
        (0..count.min(SHOWN)).for_each(|at| show(self, at));
        if count > SHOWN {
            self.wrapped(
                "  ",
                &format!("and {} more, in --format json and csv", count - SHOWN),
            );
        }
    }

    fn item(&mut self, text: &str) {
        self.wrapped("  - ", text);
    }

    fn command(&mut self, session: &SessionRef) {
        let folder = self.audit.folders.get(session.folder as usize);
        let folder = folder.map(String::as_str).unwrap_or(".");
        self.wrapped(
            "    ",
            &format!("proofwalk report {} --sessions {}", session.id, folder),
        );
    }

    fn wrapped(&mut self, margin: &str, text: &str) {
        let mut margin = margin.to_owned();
        for line in wrap(&safe(text), WIDTH - margin.len()) {
            let _ = writeln!(self.text, "{margin}{line}");
            margin = " ".repeat(margin.len());
        }
    }
}

fn rate(rate: &Rate) -> String {
    format!(
        "{} of {}, {} ({} to {})",
        rate.count,
        rate.of,
        percent(rate.rate),
        percent(rate.low),
        percent(rate.high)
    )
}

fn percent(share: f64) -> String {
    format!("{:.1} %", 100.0 * share)
}
