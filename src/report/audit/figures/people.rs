//! What there is to ask each technician about, counted; nobody is ranked.

use std::collections::BTreeMap;

use super::short;
use crate::audit::Audit;
use crate::source::Safe;

/// Most names in a line.
const NAMED: usize = 3;

/// What there is to ask a technician about.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(in super::super) struct Person {
    /// Who; none for the calls that do not say.
    pub technician: Option<String>,
    /// Their calls.
    pub calls: u64,
    /// Calls that left something open.
    pub left_open: u64,
    /// Combustion tests that were asked for and not taken.
    pub not_tested: u64,
    /// Callbacks that make a misdiagnosis suspected.
    pub suspected: u64,
    /// Calls that ended on their own verdict.
    pub insisted: u64,
    /// Calls referred without a verdict.
    pub unproven: u64,
}

/// Every technician of an audit, in the order of their names.
pub(in super::super) fn people(audit: &Audit) -> Vec<Person> {
    let mut not_tested: BTreeMap<Option<&str>, u64> = BTreeMap::new();
    for technician in not_taken(audit) {
        *not_tested.entry(technician).or_default() += 1;
    }
    let person = |row: &crate::audit::Technician| Person {
        technician: row.technician.clone(),
        calls: row.tally.calls,
        left_open: row.tally.left_open,
        not_tested: not_tested.get(&row.technician.as_deref()).copied().unwrap_or(0),
        suspected: row.tally.suspected_misdiagnoses,
        insisted: row.tally.insisted,
        unproven: row.tally.unproven,
    };
    audit.by_technician.iter().map(person).collect()
}

/// Who was asked for each combustion test that was not taken.
pub(in super::super) fn not_taken(audit: &Audit) -> impl Iterator<Item = Option<&str>> {
    let found = &audit.combustion;
    let asked = found.calls.iter().filter(|call| call.why.is_some());
    asked
        .chain(&found.not_taken)
        .map(|call| call.technician.as_deref())
}

/// Who did something how often, the most often first: `t-04 102, t-07 3`, and how many more.
pub(in super::super) fn by_whom(people: &[Person], count: fn(&Person) -> u64) -> String {
    let mut counts: Vec<(u64, &Person)> = (people.iter())
        .map(|person| (count(person), person))
        .filter(|(count, _)| *count > 0)
        .collect();
    counts.sort_by_key(|(count, _)| std::cmp::Reverse(*count));
    let mut words: Vec<String> = (counts.iter().take(NAMED))
        .map(|(count, person)| format!("{} {count}", name(person)))
        .collect();
    if let Some(more) = counts.len().checked_sub(NAMED).filter(|more| *more > 0) {
        words.push(format!("{more} more"));
    }
    words.join(", ")
}

/// A technician as the page names them.
pub(in super::super) fn name(person: &Person) -> Safe {
    short(person.technician.as_deref().unwrap_or("not named"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn person(technician: &str, left_open: u64) -> Person {
        Person {
            technician: Some(technician.to_owned()),
            left_open,
            ..Person::default()
        }
    }

    #[test]
    fn those_who_did_it_most_come_first_and_those_who_did_not_are_left_out() {
        let people = [person("a", 1), person("b", 0), person("c", 7)];
        assert_eq!(by_whom(&people, |person| person.left_open), "c 7, a 1");
        assert_eq!(by_whom(&people, |person| person.insisted), "");
    }

    #[test]
    fn more_than_a_few_are_counted() {
        let people: Vec<Person> = ["a", "b", "c", "d", "e"].map(|name| person(name, 2)).into();
        assert_eq!(
            by_whom(&people, |person| person.left_open),
            "a 2, b 2, c 2, 2 more"
        );
    }
}
