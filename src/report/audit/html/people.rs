//! What there is to ask each technician about, as a table.

use maud::{Markup, html};

use super::section;
use super::table::{Cell, cells, table};
use crate::audit::Audit;
use crate::report::audit::figures::{name_of, people};

/// The section; nothing where nobody is known.
pub(super) fn section_of(audit: &Audit) -> Option<Markup> {
    let people = people(audit);
    if people.iter().all(|person| person.technician.is_none()) {
        return None;
    }
    let rows: Vec<Vec<Cell>> = (people.iter())
        .map(|person| {
            let counts = [
                person.calls,
                person.left_open,
                person.not_tested,
                person.suspected,
                person.insisted,
                person.unproven,
            ];
            let name = name_of(person).to_string();
            cells(std::iter::once(name).chain(counts.map(|count| count.to_string())))
        })
        .collect();
    let heads = cells([
        "Technician",
        "Calls",
        "Left open",
        "Combustion test not taken",
        "Suspected misdiagnoses",
        "Insisted",
        "Unproven",
    ]);
    let body = html! {
        p {
            "Calls that left something open, tests that were asked for and not taken, condemned parts after which the next call ended in "
            "another remedy, verdicts insisted on without proof, calls referred without one. Nobody is ranked: houses, machines and shifts differ."
        }
        (table("What there is to ask each technician about, in the order of their names", &heads, &rows))
    };
    Some(section("ask", "What there is to ask about", &body))
}
