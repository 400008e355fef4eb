//! What a free call offers: everything that can be taken, and every fault that can be named, in lists short enough to read.

use super::ahead::Ahead;
use super::backing::Backing;
use super::exercise::{Exercise, choose_first};
use super::found::{Found, One, known_by};
use crate::bench::machine::Machine;
use crate::library::{Datum, Fault, Id, Input, Library, Obtained, Remedy, Taking};
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
    Found(Found),
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

impl Entry {
    /// By which words it is found beside those that it shows.
    pub(super) fn known_by(&self, library: &Library) -> Safe {
        let one = match self {
            Self::Take(datum) => One::Taken(*datum),
            Self::Name(fault) => One::Named(*fault),
            Self::Go(_) | Self::Insist(_) => return Safe::default(),
        };
        safe(&known_by(library, one))
    }
}

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
            Menu::Found(found) => {
                let page = found.page().iter().map(|one| match one {
                    One::Taken(datum) => take(datum),
                    One::Named(fault) => name(fault),
                });
                let turns = found.turns().into_iter();
                let turns = turns.map(|(words, page)| (Entry::Go(Menu::Found(page)), safe(&words)));
                page.chain(turns).chain([back()]).collect()
            }
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

    /// What stands in no list before the apprentice, and is found by words, what is asked most from here first: everything,
    /// or all faults where one is to be named.
    pub(super) fn beyond(&self, library: &Library, state: &State) -> Vec<(Entry, Safe)> {
        let (data, faults) = match &self.menu {
            Menu::Groups | Menu::Data(_) | Menu::Found(_) => (true, true),
            Menu::FaultGroups | Menu::Faults(_) => (false, true),
            Menu::Gate | Menu::Lacking(_) => (false, false),
        };
        let here: Vec<One> = match &self.menu {
            Menu::Data(at) => (self.groups.data.get(*at).into_iter())
                .flat_map(|group| group.members.iter().copied().map(One::Taken))
                .collect(),
            Menu::Faults(at) => (self.groups.faults.get(*at).into_iter())
                .flat_map(|group| group.members.iter().copied().map(One::Named))
                .collect(),
            Menu::Found(found) => found.page().to_vec(),
            _ => Vec::new(),
        };
        let all = self.everything(library, state).iter();
        all.filter(|one| !here.contains(one))
            .filter_map(|one| match one {
                One::Taken(datum) => data.then(|| take(library, state, datum)),
                One::Named(fault) => faults.then(|| name(library, fault)),
            })
            .collect()
    }

    /// The line of the list that alone is called by some words.
    pub(super) fn only_entry(&self, library: &Library, state: &State, words: &str) -> Option<usize> {
        let entries = self.entries(library, state);
        let mut called = entries
            .iter()
            .enumerate()
            .filter(|(_, (_, text))| is_called(text.as_str(), "", words).is_some());
        let (at, _) = called.next()?;
        called.next().is_none().then_some(at)
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
            Entry::Name(id) if proven_as_taken(library, ahead, id)? => {
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
}

/// Whether a fault is proven by what was taken, and by what that comes to: whoever has measured all of a sum knows the sum.
fn proven_as_taken(library: &Library, ahead: &mut Ahead<'_>, fault: Id<Fault>) -> Result<bool, Refusal> {
    for datum in Backing::of(library, &ahead.state, fault).takes {
        if ahead.state.value(datum).is_none() && is_all_taken(library, &ahead.state, datum) {
            ahead.carry_out(&Command::Take(datum))?;
        }
    }
    Ok(Backing::of(library, &ahead.state, fault).is_proven())
}

/// Whether all stands that a value is worked out from; of a measured one, whether it stands itself.
fn is_all_taken(library: &Library, state: &State, datum: Datum) -> bool {
    let inputs = match datum {
        Datum::Reading(id) => match &library.readings[id].source_of_value {
            Obtained::WorkedOut { inputs, .. } => inputs,
            Obtained::Measured(_) => return state.value(datum).is_some(),
        },
        Datum::Sign(_) | Datum::Field(_) => return state.value(datum).is_some(),
    };
    inputs.iter().all(|input| match input {
        Input::Reading(id) => is_all_taken(library, state, Datum::Reading(*id)),
        Input::Field(id) => state.value(Datum::Field(*id)).is_some(),
        Input::Fixed(_) => true,
    })
}

fn take(library: &Library, state: &State, datum: &Datum) -> (Entry, Safe) {
    (Entry::Take(*datum), taking_words(library, state, *datum))
}

fn name(library: &Library, fault: &Id<Fault>) -> (Entry, Safe) {
    let words = safe(&format!("Name it: {}", called(library, *fault)));
    (Entry::Name(*fault), words)
}

/// What a fault is called; whoever finds nothing looks for that by other words than its title.
pub(super) fn called(library: &Library, fault: Id<Fault>) -> String {
    let said = &library.faults[fault];
    match said.remedy == Remedy::None && said.text.is_none() {
        true => format!("{} (nothing is wrong: the furnace is sound)", said.title),
        false => said.title.clone(),
    }
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
