//! What a free call offers: everything that can be taken, and every fault that can be named, in lists short enough to read.

use super::ahead::Ahead;
use super::backing::Backing;
use super::exercise::{Exercise, choose_first};
use crate::bench::machine::Machine;
use crate::library::{Datum, Fault, Id, Library, Taking};
use crate::source::{Safe, safe};
use crate::walk::{Command, End, Event, Refusal, State, is_called};

/// Which list stands before the apprentice.
#[derive(Clone, Debug, PartialEq)]
pub enum Menu {
    /// The gate, or the furnace at once.
    Gate,
    /// What readings and signs are about.
    Groups,
    /// The readings and signs of a group.
    Data(usize),
    /// What faults are about.
    FaultGroups,
    /// The faults of a group.
    Faults(usize),
    /// What was found by words.
    Found {
        /// Readings, signs and plate fields.
        data: Vec<Datum>,
        /// Faults.
        faults: Vec<Id<Fault>>,
    },
    /// A fault that was named, and what its proof lacks.
    Lacking(Id<Fault>),
}

/// A line of a list.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Entry {
    /// Another list.
    Go(Menu),
    /// Takes something.
    Take(Datum),
    /// Names a fault.
    Name(Id<Fault>),
    /// Names a fault that is not proven.
    Insist(Id<Fault>),
}

/// Entries of a list that was found; more could not be read.
const MOST_FOUND: usize = 25;

impl<M: Machine> Exercise<M> {
    /// The list that stands before the apprentice.
    pub(super) fn entries(&self, library: &Library, state: &State) -> Vec<(Entry, Safe)> {
        let back = || (Entry::Go(Menu::Groups), safe("Back to the list"));
        let take = |datum: &Datum| take(library, state, datum);
        let name = |fault: &Id<Fault>| name(library, fault);
        match &self.menu {
            Menu::Gate => vec![
                (
                    Entry::Go(Menu::Groups),
                    safe("Walk the gate: is it safe to go in, and to fire the furnace?"),
                ),
                (Entry::Go(Menu::Groups), safe("Go straight to the furnace")),
            ],
            Menu::Groups => {
                let groups = self.groups.data.iter().enumerate();
                let groups = groups.map(|(at, group)| {
                    let words = safe(&format!("{} ({})", capital(&group.heading), group.members.len()));
                    (Entry::Go(Menu::Data(at)), words)
                });
                groups
                    .chain([(Entry::Go(Menu::FaultGroups), safe("NAME THE FAULT"))])
                    .collect()
            }
            Menu::Data(at) => {
                let members = self.groups.data.get(*at).map(|group| group.members.as_slice());
                members
                    .unwrap_or_default()
                    .iter()
                    .map(take)
                    .chain([back()])
                    .collect()
            }
            Menu::FaultGroups => {
                let groups = self.groups.faults.iter().enumerate();
                let groups =
                    groups.map(|(at, group)| (Entry::Go(Menu::Faults(at)), safe(&capital(&group.heading))));
                groups.chain([back()]).collect()
            }
            Menu::Faults(at) => {
                let members = self.groups.faults.get(*at).map(|group| group.members.as_slice());
                members
                    .unwrap_or_default()
                    .iter()
                    .map(name)
                    .chain([back()])
                    .collect()
            }
            Menu::Found { data, faults } => data
                .iter()
                .map(take)
                .chain(faults.iter().map(name))
                .chain([back()])
                .collect(),
            Menu::Lacking(fault) => {
                let backing = Backing::of(library, state, *fault);
                let mut entries: Vec<_> = backing.takes.iter().map(take).collect();
                entries.push(match backing.is_proven() {
                    true => name(fault),
                    false => (
                        Entry::Insist(*fault),
                        safe("Name it all the same: as your own verdict, not proven"),
                    ),
                });
                entries.push(back());
                entries
            }
        }
    }

    /// What stands in no list before the apprentice, and is found by words: everything, or all faults where one is to be named.
    pub(super) fn beyond(&self, library: &Library, state: &State) -> Vec<(Entry, Safe)> {
        let (data, faults) = match &self.menu {
            Menu::Groups | Menu::Data(_) | Menu::Found { .. } => (true, true),
            Menu::FaultGroups | Menu::Faults(_) => (false, true),
            Menu::Gate | Menu::Lacking(_) => (false, false),
        };
        let here = |datum: &Datum| match &self.menu {
            Menu::Data(at) => self
                .groups
                .data
                .get(*at)
                .is_some_and(|group| group.members.contains(datum)),
            Menu::Found { data, .. } => data.contains(datum),
            _ => false,
        };
        let named_here = |fault: &Id<Fault>| match &self.menu {
            Menu::Faults(at) => self
                .groups
                .faults
                .get(*at)
                .is_some_and(|group| group.members.contains(fault)),
            Menu::Found { faults, .. } => faults.contains(fault),
            _ => false,
        };
        let all = self
            .groups
            .data
            .iter()
            .filter(|_| data)
            .flat_map(|group| &group.members);
        let takes = all
            .filter(|datum| !here(datum))
            .map(|datum| take(library, state, datum));
        let all = self
            .groups
            .faults
            .iter()
            .filter(|_| faults)
            .flat_map(|group| &group.members);
        let names = all
            .filter(|fault| !named_here(fault))
            .map(|fault| name(library, fault));
        takes.chain(names).collect()
    }

    /// A line of the list was chosen.
    pub(super) fn choose(
        &mut self,
        library: &Library,
        ahead: &mut Ahead<'_>,
        choice: usize,
    ) -> Result<(), Refusal> {
        let mut entries = self.entries(library, &ahead.state);
        entries.extend(self.beyond(library, &ahead.state));
        if choice >= entries.len() {
            return Err(choose_first());
        }
        match entries.swap_remove(choice).0 {
            Entry::Go(menu) => {
                self.menu = menu;
                Ok(())
            }
            Entry::Take(datum) => {
                if !matches!(self.menu, Menu::Lacking(_)) {
                    self.menu = Menu::Groups;
                }
                ahead.carry_out(&Command::Take(datum))
            }
            Entry::Name(id) if Backing::of(library, &ahead.state, id).is_proven() => {
                let fault = library.faults[id].name.clone();
                let noted = false;
                ahead.emit(Event::Stated {
                    fault: fault.clone(),
                    noted,
                })?;
                let danger = false;
                ahead.emit(Event::Ended(End::Verdict { fault, danger }))
            }
            Entry::Name(id) => {
                self.menu = Menu::Lacking(id);
                let fault = library.faults[id].name.clone();
                ahead.emit(Event::Withheld { fault })
            }
            Entry::Insist(id) => {
                let fault = library.faults[id].name.clone();
                let words = "named in practice, without its proof".to_owned();
                ahead.emit(Event::Ended(End::Insisted { fault, words }))
            }
        }
    }

    /// Looks for readings, signs, plate fields and faults with all of some words in what they are called.
    pub(super) fn search(&mut self, library: &Library, words: &str) -> Result<(), Refusal> {
        if words.chars().all(|character| character.is_ascii_digit()) {
            return Err(Refusal::new(
                "the list has no such number",
                "choose one of its numbers, or give words to look for",
            ));
        }
        let named = |title: &str| is_called(title, words);
        let all = self.groups.data.iter().flat_map(|group| &group.members);
        let data: Vec<Datum> = all
            .filter(|datum| named(library.title_of(**datum)))
            .copied()
            .collect();
        let faults = library.faults.iter().filter(|(_, fault)| named(&fault.title));
        let faults: Vec<Id<Fault>> = faults.map(|(id, _)| id).collect();
        match data.len() + faults.len() {
            0 => Err(Refusal::new(
                "nothing here is called so",
                "try another word, or choose from the list by its number",
            )),
            found if found > MOST_FOUND => Err(Refusal::new(
                format!("{found} things are called so"),
                "give more words",
            )),
            _ => {
                self.menu = Menu::Found { data, faults };
                Ok(())
            }
        }
    }
}

fn take(library: &Library, state: &State, datum: &Datum) -> (Entry, Safe) {
    (Entry::Take(*datum), taking_words(library, state, *datum))
}

fn name(library: &Library, fault: &Id<Fault>) -> (Entry, Safe) {
    let words = safe(&format!("Name it: {}", library.faults[*fault].title));
    (Entry::Name(*fault), words)
}

/// What can be taken, with its minutes and what stands of it.
fn taking_words(library: &Library, state: &State, datum: Datum) -> Safe {
    let taking = taking(library, datum);
    let minutes = taking.and_then(|taking| taking.minutes);
    let minutes = minutes
        .map(|minutes| format!(" ({minutes} min)"))
        .unwrap_or_default();
    let stands = match (state.value(datum), state.could_not.contains_key(&datum)) {
        (Some(standing), _) => format!(" = {}", standing.typed),
        (None, true) => " = could not be taken".to_owned(),
        (None, false) => String::new(),
    };
    safe(&format!("{}{minutes}{stands}", library.title_of(datum)))
}

/// The work of taking a reading or a sign.
pub(super) fn taking(library: &Library, datum: Datum) -> Option<&Taking> {
    match datum {
        Datum::Reading(id) => Some(&library.readings[id].taking),
        Datum::Sign(id) => Some(&library.signs[id].taking),
        Datum::Field(_) => None,
    }
}

/// With a capital letter in front.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => String::new(),
    }
}
