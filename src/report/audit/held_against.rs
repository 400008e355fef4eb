//! What both pages conclude of groups, where the truth is known.

use jiff::ToSpan;

use super::made::{call, start};
use super::tests::{parsed, words};
use super::{html, text};
use crate::audit::{Audit, Auditor, Ending, Remedy, Verdict, Window};

/// Calls that are told to an auditor one by one.
struct Told {
    auditor: Auditor,
    number: u64,
}

impl Told {
    fn new() -> Self {
        Self {
            auditor: Auditor::new(Window::default(), Vec::new()),
            number: 0,
        }
    }

    /// A call that condemned a part, so many hours after the start.
    fn call(&mut self, technician: &str, part: &str, equipment: &str, hours: i64) {
        let mut call = call(self.number, start() + hours.hours());
        self.number += 1;
        call.technician = Some(technician.into());
        call.equipment = Some(equipment.into());
        call.ending = Ending::Verdict(Verdict {
            fault: format!("{part}_bad").into(),
            remedy: Remedy::Replace(part.into()),
        });
        self.auditor.add(&call);
    }

    /// So many calls from a day on, four a day, the first `back` of them seen again by another after three days.
    fn calls(&mut self, technician: &str, part: &str, day: i64, many: i64, back: i64) {
        for at in 0..many {
            let hours = 24 * day + 6 * at;
            let equipment = format!("{technician}-{part}-{at}");
            self.call(technician, part, &equipment, hours);
            if at < back {
                self.call("second", "valve", &equipment, hours + 72);
            }
        }
    }

    fn audit(self) -> Audit {
        self.auditor.finish()
    }
}

/// The paragraphs of a heading.
fn under<'p>(page: &'p str, heading: &str) -> &'p str {
    let (_, after) = page.split_once(heading).unwrap();
    after.split("\n\n").next().unwrap()
}

#[test]
fn a_check_at_once_after_a_repair_marks_nobody() {
    let mut told = Told::new();
    for at in 0..40 {
        let equipment = format!("house-{at}");
        told.call("careful", "igniter", &equipment, 24 * at);
        // Opened when the first was closed, as a call takes an hour here.
        told.call("careful", "igniter", &equipment, 24 * at + 1);
        told.call("other", "igniter", &format!("other-{at}"), 24 * at);
    }
    told.call("other", "igniter", "last", 24 * 100);
    let audit = told.audit();
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.same_visit), (40, 40));
    let page = text(&audit, 78, true);
    assert!(page.contains("Same visit      40 of those"), "{page}");
    assert!(
        !words(&page).contains("than chance explains:") && !page.contains("More comes back of"),
        "{page}"
    );
    let list = under(&page, "CALLS THAT CAME BACK (40)");
    assert!(
        list.contains("same visit, igniter bad") && !list.contains("half a day"),
        "{list}"
    );
    assert!(html(&audit).contains("same visit, igniter bad"));
}

#[test]
fn nobody_is_excellent_whose_calls_are_a_few_days_old() {
    let mut told = Told::new();
    told.calls("old", "igniter", 0, 400, 100);
    told.calls("new", "igniter", 130, 40, 0);
    let page = text(&told.audit(), 78, true);
    let technicians = under(&page, "BY TECHNICIAN");
    let new = technicians
        .lines()
        .find(|line| line.trim_start().starts_with("new"))
        .unwrap();
    assert!(new.contains(" 0 of 0 ") && new.ends_with("under 20"), "{new}");
    let technicians = words(technicians);
    let (_, out) = technicians.split_once("than chance explains: ").unwrap();
    assert!(!out.contains("new"), "{technicians}");
}

#[test]
fn a_part_is_told_of_before_a_technician() {
    let mut told = Told::new();
    told.calls("ana", "igniter", 0, 200, 10);
    told.calls("ben", "igniter", 0, 200, 10);
    told.calls("ana", "capacitor", 0, 20, 10);
    told.calls("kim", "igniter", 0, 60, 30);
    told.calls("end", "igniter", 200, 1, 0);
    let audit = told.audit();
    let page = text(&audit, 78, true);
    let parts = under(&page, "BY CONDEMNED PART");
    let line = |name: &str| {
        parts
            .lines()
            .find(|line| line.trim_start().starts_with(name))
            .unwrap()
    };
    assert!(
        line("capacitor").contains("50.0 %") && line("capacitor").ends_with("very high"),
        "{parts}"
    );
    let first = under(&page, "WHAT TO SEE TO FIRST");
    let place = |words: &str| first.find(words).unwrap_or_else(|| panic!("{words}: {first}"));
    assert!(
        place("condemned capacitor than chance") < place("comes back of kim"),
        "{first}"
    );

    let page = html(&audit);
    let document = parsed(&page);
    let mark = |class: &str, name: &str| {
        let marks = document
            .descendants()
            .filter(|node| node.attribute("class") == Some(class));
        let names = marks.filter_map(|mark| mark.first_element_child()?.text());
        names.filter(|told| told.starts_with(name)).count()
    };
    // In the colour that warns stands what lies above, and only that.
    assert_eq!((mark("out", "capacitor:"), mark("out", "kim:")), (1, 1));
    assert_eq!(
        (mark("out", "ana:"), mark("out", "ben:"), mark("below", "ben:")),
        (0, 0, 1)
    );
}

#[test]
fn what_nobody_was_followed_to_is_not_known_yet() {
    let mut told = Told::new();
    told.calls("ana", "igniter", 0, 40, 4);
    let page = text(&told.audit(), 78, true);
    let callbacks = under(&page, "CALLBACKS WITHIN 30 DAYS");
    assert!(
        callbacks.contains("not known yet: nobody was followed so long; "),
        "{callbacks}"
    );
    assert!(callbacks.contains(" by day 8\n"), "{callbacks}");
    assert!(page.contains("nothing is concluded from"), "{page}");
    assert!(!page.contains("Settled"), "{page}");

    let mut auditor = Auditor::new(Window { days: 5 }, Vec::new());
    for number in 0..40 {
        let mut call = call(number, start() + (number as i64 * 12).hours());
        call.equipment = Some(format!("furnace-{}", number % 35).into());
        auditor.add(&call);
    }
    let page = text(&auditor.finish(), 78, true);
    let expected = page.lines().find(|line| line.starts_with("  Within 5 days"));
    assert!(
        expected.is_some_and(|line| line.contains(" 0.0 % to be expected")),
        "{page}"
    );
}

#[test]
fn a_return_that_follows_two_calls_is_said_to_be_one() {
    let mut told = Told::new();
    for at in 0..25 {
        let equipment = format!("house-{at}");
        told.call("ana", "igniter", &equipment, 24 * at);
        told.call("ben", "igniter", &equipment, 24 * at);
        told.call("kim", "valve", &equipment, 24 * at + 48);
    }
    let audit = told.audit();
    let callbacks = &audit.callbacks;
    assert_eq!(callbacks.returns, 25);
    assert!(callbacks.rate.count > 25, "{callbacks:?}");
    assert!(text(&audit, 78, true).contains("Returns         25 calls in all"));
}
