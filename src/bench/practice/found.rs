//! What words find among all that can be taken and named, a page at a time.

use super::exercise::Exercise;
use super::groups::Groups;
use super::menu::{Menu, called};
use super::near::Near;
use crate::bench::machine::Machine;
use crate::library::{Datum, Fault, Id, Library, Remedy, Tree};
use crate::walk::{CalledBy, Refusal, State, is_called};

/// Something that can be taken, or named.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum One {
    /// A reading, a sign or a plate field.
    Taken(Datum),
    /// A fault.
    Named(Id<Fault>),
}

/// What was found, and the page of it that is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    all: Vec<One>,
    from: usize,
}

/// Entries of a page: what a screen of 24 lines holds without scrolling.
const PAGE: usize = 12;

impl Found {
    /// The entries that are shown.
    pub fn page(&self) -> &[One] {
        let to = (self.from + PAGE).min(self.all.len());
        self.all.get(self.from..to).unwrap_or_default()
    }

    /// The pages beside it, each in words.
    pub fn turns(&self) -> Vec<(String, Self)> {
        let to = self.from + self.page().len();
        let page = |from: usize| Self {
            all: self.all.clone(),
            from,
        };
        let mut turns = Vec::new();
        if to < self.all.len() {
            let more = (self.all.len() - to).min(PAGE);
            turns.push((format!("The next {more}"), page(to)));
        }
        if self.from > 0 {
            turns.push((format!("The {PAGE} before"), page(self.from.saturating_sub(PAGE))));
        }
        turns
    }

    /// What is asked of it.
    pub fn prompt(&self) -> String {
        match self.all.len() {
            count if count > PAGE => format!(
                "Which of these? {} to {} of {count}, what is asked most from here first",
                self.from + 1,
                self.from + self.page().len()
            ),
            _ => "Which of these?".to_owned(),
        }
    }
}

impl<M: Machine> Exercise<M> {
    /// Everything that can be taken and named, what is asked most from the complaint first. A call has one complaint, so that it
    /// is put in order once.
    pub(super) fn everything(&self, library: &Library, state: &State) -> &[One] {
        self.ordered
            .get_or_init(|| ordered(&self.groups, library, state.moment.complaint))
    }

    /// Looks for readings, signs, plate fields and faults that are called by all of some words, what calls them best first.
    pub(super) fn search(&mut self, library: &Library, state: &State, words: &str) -> Result<(), Refusal> {
        if words.chars().all(|character| character.is_ascii_digit()) {
            return Err(Refusal::new(
                "the list has no such number",
                "choose one of its numbers, or give words to look for",
            ));
        }
        let by = |one: One| {
            let title = match one {
                One::Taken(datum) => library.title_of(datum).to_owned(),
                One::Named(fault) => called(library, fault),
            };
            is_called(&title, &known_by(library, one), words)
        };
        let everything = self.everything(library, state).iter();
        let mut all: Vec<(CalledBy, One)> = everything.filter_map(|one| Some((by(*one)?, *one))).collect();
        all.sort_by_key(|(by, _)| *by);
        let all: Vec<One> = all.into_iter().map(|(_, one)| one).collect();
        if all.is_empty() {
            return Err(Refusal::new(
                "nothing here is called so",
                "try another word, or choose from the list by its number",
            ));
        }
        self.menu = Menu::Found(Found { all, from: 0 });
        Ok(())
    }
}

/// By which words something is known beside its title: its key and, of a fault, what is done about it and to which part.
pub(super) fn known_by(library: &Library, one: One) -> String {
    let fault = match one {
        One::Taken(datum) => return library.name_of(datum).to_owned(),
        One::Named(fault) => &library.faults[fault],
    };
    let part = match fault.remedy {
        Remedy::Replace(part) => Some(&library.parts[part]),
        _ => None,
    };
    let part = part.map(|part| format!("{} {}", part.title, part.name));
    let text = fault.text.as_deref().unwrap_or_default();
    format!("{} {text} {}", fault.name, part.unwrap_or_default())
}

/// All that can be taken, then all that can be named, of both what is asked most from a complaint first.
fn ordered(groups: &Groups, library: &Library, complaint: Option<Id<Tree>>) -> Vec<One> {
    let near = Near::of(library, complaint);
    let mut data: Vec<Datum> = groups
        .data
        .iter()
        .flat_map(|group| group.members.clone())
        .collect();
    let mut faults: Vec<Id<Fault>> = groups
        .faults
        .iter()
        .flat_map(|group| group.members.clone())
        .collect();
    data.sort_by(|one, other| near.asked(*other).total_cmp(&near.asked(*one)));
    faults.sort_by(|one, other| near.stated(*other).total_cmp(&near.stated(*one)));
    let data = data.into_iter().map(One::Taken);
    data.chain(faults.into_iter().map(One::Named)).collect()
}
