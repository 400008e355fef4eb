//! What there is to ask each technician about, a line each.

use super::page::Page;
use crate::audit::Audit;
use crate::report::audit::figures::{name_of, people};
use crate::source::{ascii, safe};

/// Columns of a name.
const NAME: usize = 17;

/// Most technicians; those with the most calls are shown.
const SHOWN: usize = 30;

/// Writes the table; nothing where nobody is known.
pub(super) fn write(page: &mut Page, audit: &Audit) {
    let mut people = people(audit);
    if people.iter().all(|person| person.technician.is_none()) {
        return;
    }
    let all = people.len();
    if all > SHOWN {
        people.sort_by_key(|person| std::cmp::Reverse(person.calls));
        people.truncate(SHOWN);
        people.sort_by(|one, other| one.technician.cmp(&other.technician));
    }
    page.title("WHAT THERE IS TO ASK ABOUT");
    page.row(&safe(&format!(
        "  {:NAME$} {:>7} {:>9} {:>9} {:>9} {:>9} {:>9}",
        "", "", "left", "not", "suspect", "", ""
    )));
    page.row(&safe(&format!(
        "  {:NAME$} {:>7} {:>9} {:>9} {:>9} {:>9} {:>9}",
        "technician", "calls", "open", "tested", "verdict", "insisted", "unproven"
    )));
    for person in &people {
        let name = name_of(person);
        let name = if page.is_ascii() { ascii(&name) } else { name };
        let name = name.cut(NAME);
        let pad = " ".repeat(NAME - name.width().min(NAME));
        page.row(&safe(&format!(
            "  {name}{pad} {:>7} {:>9} {:>9} {:>9} {:>9} {:>9}",
            person.calls,
            person.left_open,
            person.not_tested,
            person.suspected,
            person.insisted,
            person.unproven
        )));
    }
    if all > SHOWN {
        page.text(&format!("and {} with fewer calls", all - SHOWN));
    }
    page.text(
        "“Not tested”: a combustion test was asked for and not taken. “Suspect verdict”: a part was condemned, and the next call \
         there ended in another remedy. Nobody is ranked: houses, machines and shifts differ.",
    );
}
