//! What can be taken and named, grouped as its authors grouped it.
//!
//! A registry has no key for what a reading is about. Its author heads stretches of it with a comment, `# ── ignition ──`; those
//! headings are the groups here, and what has none stands under what it is.

use std::collections::HashMap;

use crate::library::{Datum, Fault, Id, Library};
use crate::source::{FileId, Span};

/// Some things under a heading.
#[derive(Clone, Debug, PartialEq)]
pub struct Group<T> {
    /// The heading.
    pub heading: String,
    /// The things, in the author's order.
    pub members: Vec<T>,
}

/// Everything that a free call offers.
#[derive(Clone, Debug)]
pub struct Groups {
    /// Readings and signs, and at the end the plate.
    pub data: Vec<Group<Datum>>,
    /// Faults that can be named.
    pub faults: Vec<Group<Id<Fault>>>,
}

impl Groups {
    /// Those of a library, without the readings, signs and plate fields of some names: what no furnace answers.
    pub fn of(library: &Library, without: &[&str]) -> Self {
        let mut headings = Headings::new(library);
        let mut data = Vec::new();
        for (id, reading) in library.readings.iter() {
            add(
                &mut data,
                headings.over(reading.at, "readings"),
                Datum::Reading(id),
            );
        }
        for (id, sign) in library.signs.iter() {
            add(&mut data, headings.over(sign.at, "signs"), Datum::Sign(id));
        }
        for (id, _) in library.plate.iter() {
            add(&mut data, "the plate and the labels".to_owned(), Datum::Field(id));
        }
        data.retain_mut(|group: &mut Group<Datum>| {
            group
                .members
                .retain(|datum| !without.contains(&library.name_of(*datum)));
            !group.members.is_empty()
        });
        let mut faults = Vec::new();
        for (id, fault) in library.faults.iter() {
            add(&mut faults, headings.over(fault.at, "faults"), id);
        }
        Self { data, faults }
    }
}

fn add<T>(groups: &mut Vec<Group<T>>, heading: String, member: T) {
    match groups.iter_mut().find(|group| group.heading == heading) {
        Some(group) => group.members.push(member),
        None => groups.push(Group {
            heading,
            members: vec![member],
        }),
    }
}

/// The headings of files, each looked for once.
struct Headings<'l> {
    library: &'l Library,
    by_file: HashMap<FileId, Vec<(usize, String)>>,
}

impl<'l> Headings<'l> {
    fn new(library: &'l Library) -> Self {
        Self {
            library,
            by_file: HashMap::new(),
        }
    }

    /// The last heading above a place; `without` where there is none.
    fn over(&mut self, at: Span, without: &str) -> String {
        let text = self.library.files.get(at.file).text();
        let headings = self.by_file.entry(at.file).or_insert_with(|| headings(text));
        let before = headings.partition_point(|(start, _)| *start < at.start as usize);
        match before.checked_sub(1).and_then(|last| headings.get(last)) {
            Some((_, heading)) => heading.clone(),
            None => without.to_owned(),
        }
    }
}

/// The headings of a text with where each begins: comments with a rule drawn beside their words.
fn headings(text: &str) -> Vec<(usize, String)> {
    let mut start = 0;
    let mut found = Vec::new();
    for line in text.split_inclusive('\n') {
        if let Some(heading) = heading(line) {
            found.push((start, heading));
        }
        start += line.len();
    }
    found
}

fn heading(line: &str) -> Option<String> {
    let comment = line.trim().strip_prefix('#')?.trim();
    let ruled = |rule: char| comment.starts_with([rule; 2].iter().collect::<String>().as_str());
    if !['─', '-', '='].into_iter().any(ruled) {
        return None;
    }
    let words = comment.trim_matches(|c: char| matches!(c, '─' | '-' | '=') || c.is_whitespace());
    (!words.is_empty()).then(|| words.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_heading_is_a_comment_with_a_rule_beside_it() {
        assert_eq!(
            heading("  # ── line voltage ─────\n").as_deref(),
            Some("line voltage")
        );
        assert_eq!(heading("# == gas ==").as_deref(), Some("gas"));
        assert_eq!(heading("# Everything seen, heard, felt"), None);
        assert_eq!(heading("# ──────"), None);
        assert_eq!(heading("  line_voltage:"), None);
    }
}
