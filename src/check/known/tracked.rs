//! A handful of values, and what is known of each at a place in a walk.

use std::collections::HashMap;

use super::dependence::Dependence;
use super::interner::Interner;
use super::joint::Joint;
use super::numbers::{Key, Numbers};
use crate::library::{Datum, FieldKind, Id, Library, PlateField};
use crate::measure::Band;

/// What is known of one value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Known {
    /// Nothing: it was not taken, or no longer counts.
    Stale,
    /// It stands; where one of several values is meant, which.
    Choice(Option<u32>),
    /// It stands, and lies where these numbers do.
    Number(NumbersId),
}

/// Interned numbers; the first are those of which nothing is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct NumbersId(u32);

/// What is known of every tracked value, interned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct StateId(u32);

impl StateId {
    /// Nothing is known of anything.
    pub const NOTHING: Self = Self(0);
}

impl NumbersId {
    const ANY: Self = Self(0);
}

/// A handful of values, and everything that can be known of them.
pub(super) struct Tracked<'l> {
    pub library: &'l Library,
    pub dependence: &'l Dependence,
    data: Vec<Datum>,
    places: HashMap<Datum, usize>,
    numbers: Interner<Key, Numbers>,
    states: Interner<Box<[Known]>, Box<[Known]>>,
    /// Whether the first numbers leave nothing that the second do not.
    within: HashMap<(NumbersId, NumbersId), bool>,
}

impl<'l> Tracked<'l> {
    /// Tracks these values.
    pub fn new(
        library: &'l Library,
        dependence: &'l Dependence,
        data: impl IntoIterator<Item = Datum>,
    ) -> Self {
        let mut tracked = Self {
            library,
            dependence,
            data: Vec::new(),
            places: HashMap::new(),
            numbers: Interner::default(),
            states: Interner::default(),
            within: HashMap::new(),
        };
        for datum in data {
            if !tracked.places.contains_key(&datum) {
                tracked.places.insert(datum, tracked.data.len());
                tracked.data.push(datum);
            }
        }
        tracked.numbers.id(Vec::new(), Numbers::default);
        let nothing: Box<[Known]> = vec![Known::Stale; tracked.data.len()].into();
        tracked.states.id(nothing.clone(), || nothing);
        tracked
    }

    /// Whether a value is tracked.
    pub fn tracks(&self, datum: Datum) -> bool {
        self.places.contains_key(&datum)
    }

    /// How many values are tracked.
    pub fn count(&self) -> usize {
        self.data.len()
    }

    /// What is known of a value; nothing of one that is not tracked.
    pub fn known(&self, state: StateId, datum: Datum) -> Known {
        self.places
            .get(&datum)
            .map_or(Known::Stale, |&place| self.states[state.0][place])
    }

    /// Whether a value stands.
    pub fn stands(&self, state: StateId, datum: Datum) -> bool {
        self.known(state, datum) != Known::Stale
    }

    fn with(&mut self, state: StateId, datum: Datum, known: Known) -> StateId {
        let Some(&place) = self.places.get(&datum) else {
            return state;
        };
        if self.states[state.0][place] == known {
            return state;
        }
        let mut all = self.states[state.0].clone();
        all[place] = known;
        StateId(self.states.id(all.clone(), || all))
    }

    /// The state once a value stands, of which nothing else is known.
    pub fn taken(&mut self, state: StateId, datum: Datum) -> StateId {
        if self.stands(state, datum) {
            return state;
        }
        self.with(state, datum, self.anything(datum))
    }

    fn anything(&self, datum: Datum) -> Known {
        match datum {
            Datum::Reading(_) => Known::Number(NumbersId::ANY),
            Datum::Sign(_) => Known::Choice(None),
            Datum::Field(field) => match self.library.plate[field].kind {
                FieldKind::Number { .. } => Known::Number(NumbersId::ANY),
                FieldKind::Choices(_) => Known::Choice(None),
            },
        }
    }

    /// The state once a value no longer counts, with those that go with it.
    pub fn voided(&mut self, state: StateId, datum: Datum) -> StateId {
        let dependence = self.dependence;
        let mut state = state;
        for gone in dependence.gone_with(datum) {
            state = self.with(state, gone, Known::Stale);
        }
        match datum {
            Datum::Field(field) => self.read_anew(state, field),
            Datum::Reading(_) | Datum::Sign(_) => state,
        }
    }

    /// The state once a plate field may have another value than numbers were compared with.
    fn read_anew(&mut self, state: StateId, field: Id<PlateField>) -> StateId {
        let mut state = state;
        for place in 0..self.data.len() {
            if let Known::Number(id) = self.states[state.0][place] {
                let kept = self.numbers[id.0].without(field);
                let known = Known::Number(self.number(kept));
                state = self.with(state, self.data[place], known);
            }
        }
        state
    }

    /// What interned numbers are.
    pub fn numbers(&self, id: NumbersId) -> &Numbers {
        &self.numbers[id.0]
    }

    fn number(&mut self, numbers: Numbers) -> NumbersId {
        NumbersId(self.numbers.id(numbers.key(), || numbers))
    }

    /// The state once a value that stands has one of several values; none where it is known to be another.
    pub fn chosen(&mut self, state: StateId, datum: Datum, value: usize) -> Option<StateId> {
        match self.known(state, datum) {
            Known::Choice(Some(known)) if known as usize != value => None,
            _ => Some(self.with(state, datum, Known::Choice(Some(value as u32)))),
        }
    }

    /// Whether a value that stands can be one of several.
    pub fn may_be_one_of(&self, state: StateId, datum: Datum, values: &[usize]) -> bool {
        match self.known(state, datum) {
            Known::Choice(Some(known)) => values.contains(&(known as usize)),
            _ => true,
        }
    }

    /// The state once a number that stands was sorted into a band; none where it is known to lie elsewhere.
    pub fn sorted(&mut self, state: StateId, datum: Datum, band: &Band<Id<PlateField>>) -> Option<StateId> {
        let before = match self.known(state, datum) {
            Known::Number(id) => self.numbers[id.0].clone(),
            Known::Stale | Known::Choice(_) => Numbers::default(),
        };
        let after = before.and(band);
        if !self.is_possible(state, datum, &after) {
            return None;
        }
        if !self.tracks(datum) {
            return Some(state);
        }
        let known = Known::Number(self.number(after));
        Some(self.with(state, datum, known))
    }

    /// Whether a number can lie so, on some plate that fits what is known of it.
    fn is_possible(&self, state: StateId, datum: Datum, numbers: &Numbers) -> bool {
        if numbers.is_plainly_empty() {
            return false;
        }
        if numbers.is_fixed() && !matches!(datum, Datum::Field(_)) {
            return true;
        }
        let Some(mut joint) = self.joint(state, datum, numbers) else {
            return true;
        };
        // What cannot be decided may be.
        joint
            .know(datum, numbers)
            .and_then(|()| joint.is_possible())
            .unwrap_or(true)
    }

    /// What is known of the plate fields that a number was compared with.
    pub(super) fn joint(&self, state: StateId, of: Datum, numbers: &Numbers) -> Option<Joint<'l>> {
        let mut joint = Joint::new(self.library, self.library.scale_of(of)?);
        let fields = numbers.parts().filter_map(|(term, _)| term.0);
        for (_, field) in fields {
            if let Known::Number(id) = self.known(state, Datum::Field(field)) {
                joint.know(Datum::Field(field), &self.numbers[id.0]).ok()?;
            }
        }
        Some(joint)
    }

    /// Whether the first state knows nothing that the second does not: every way from the second is one from the first.
    pub fn knows_no_more(&mut self, first: StateId, second: StateId) -> bool {
        if first == second {
            return true;
        }
        for place in 0..self.data.len() {
            let pair = (self.states[first.0][place], self.states[second.0][place]);
            let no_more = match pair {
                (Known::Stale, _) => true,
                (Known::Choice(None), Known::Choice(_)) => true,
                (Known::Number(wide), Known::Number(narrow)) => {
                    let numbers = &self.numbers;
                    *self
                        .within
                        .entry((narrow, wide))
                        .or_insert_with(|| numbers[narrow.0].is_plainly_within(&numbers[wide.0]))
                }
                (one, other) => one == other,
            };
            if !no_more {
                return false;
            }
        }
        true
    }
}
