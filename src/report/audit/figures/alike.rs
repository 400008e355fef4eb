//! Names that look like one.

use super::{counted, short};
use crate::audit::findings::Alike;
use crate::audit::{Audit, Rows};
use crate::source::{Safe, safe};

/// Most names of one group.
const NAMES: usize = 6;

/// What to say of equipment whose names look like one.
pub(in super::super) const ONE_FURNACE: &str = "These differ in case, coding, blanks and punctuation only: two may even look the same. A call at one is no callback of the other: if they are one furnace, have \
     it written one way.";

/// What to say of technicians whose names look like one.
pub(in super::super) const ONE_TECHNICIAN: &str = "These differ in case, coding, blanks and punctuation only: two may even look the same. Each is counted alone: if they are one, have the name written one way.";

/// The names of a group, each with its calls.
pub(in super::super) fn spellings(group: &Alike) -> Safe {
    let told = |calls: u64| format!(" ({})", counted(calls, "call", "calls"));
    named(group, NAMES, told)
}

/// What to see to first of them.
pub(super) fn look_alike(audit: &Audit) -> Option<String> {
    let furnaces = first_of(&audit.alike.equipment).map(|furnaces| {
        format!("These look like one furnace: {furnaces}; a call at one is no callback of the other.")
    });
    let technicians = first_of(&audit.alike.technicians)
        .map(|people| format!("These look like one technician: {people}; each is counted alone."));
    match (furnaces, technicians) {
        (Some(furnaces), Some(people)) => Some(format!("{furnaces} {people}")),
        (one, other) => one.or(other),
    }
}

/// The names of the first group, and how many groups more there are.
fn first_of(groups: &Rows<Alike>) -> Option<String> {
    let names = named(&groups.get(0)?, super::first::NAMED, |_| String::new());
    Some(match groups.len() {
        1 => names.to_string(),
        all => format!("{names}; so do the names of {} more", all - 1),
    })
}

/// The first names of a group, in quotes, since blanks and full stops tell them apart.
fn named(group: &Alike, most: usize, told: impl Fn(u64) -> String) -> Safe {
    let names: Vec<String> = (group.names.iter().take(most))
        .map(|spelling| format!("“{}”{}", short(&spelling.name), told(spelling.calls)))
        .collect();
    let names = names.join(", ");
    match group.names.len().saturating_sub(most) {
        0 => safe(&names),
        more => safe(&format!("{names} and {more} more")),
    }
}
