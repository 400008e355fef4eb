//! What there is to ask each technician about, a line each.

use super::page::Page;
use crate::audit::Audit;
use crate::report::audit::figures::{Person, counted, name_of, people};
use crate::source::{Safe, ascii, safe};

/// Columns of a name.
const NAME: usize = 17;

/// Columns of a count.
const COUNT: usize = 9;

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
    match page.is_narrow() {
        true => people.iter().for_each(|person| in_words(page, person)),
        false => in_columns(page, &people),
    }
    if all > SHOWN {
        page.text(&format!("and {} with fewer calls", all - SHOWN));
    }
    page.text(
        "“Not tested”: a combustion test was asked for and not taken. “Suspect verdict”: a part was condemned, and the next call \
         there ended in another remedy. Nobody is ranked: houses, machines and shifts differ.",
    );
}

fn in_columns(page: &mut Page, people: &[Person]) {
    for heads in [
        ["", "", "left", "not", "suspect", "", ""],
        [
            "technician",
            "calls",
            "open",
            "tested",
            "verdict",
            "insisted",
            "unproven",
        ],
    ] {
        let [name, counts @ ..] = heads;
        line(page, &safe(name), &counts.map(str::to_owned));
    }
    for person in people {
        let name = name_of(person);
        let name = if page.is_ascii() { ascii(&name) } else { name };
        let counts = counts(person).map(|(_, count)| count.to_string());
        let calls = [person.calls.to_string()];
        line(page, &name, &[calls.as_slice(), &counts].concat());
    }
}

fn line(page: &mut Page, name: &Safe, counts: &[String]) {
    let name = name.cut(NAME);
    let pad = " ".repeat(NAME - name.width().min(NAME));
    let counts: String = counts.iter().map(|count| format!("{count:>COUNT$}")).collect();
    page.row(&safe(&format!("  {name}{pad}{counts}")));
}

fn in_words(page: &mut Page, person: &Person) {
    let some = counts(person).into_iter().filter(|(_, count)| *count > 0);
    let words: Vec<String> = some.map(|(what, count)| format!("{what} {count}")).collect();
    let calls = counted(person.calls, "call", "calls");
    let name = name_of(person);
    page.item(&safe(&match words.is_empty() {
        true => format!("{name}: {calls}"),
        false => format!("{name}: {calls}; {}", words.join(", ")),
    }));
}

/// What is counted of a technician, beside the calls.
fn counts(person: &Person) -> [(&'static str, u64); 5] {
    [
        ("left open", person.left_open),
        ("not tested", person.not_tested),
        ("suspect verdict", person.suspected),
        ("insisted", person.insisted),
        ("unproven", person.unproven),
    ]
}
