//! The furnace answers.

use super::ahead::Ahead;
use super::elsewhere;
use super::exercise::{Elsewhere, Exercise, choose_first};
use super::places::places;
use super::score::Misplaced;
use crate::bench::dice::Dice;
use crate::bench::machine::{Machine, Truth};
use crate::bench::meter;
use crate::bench::technician::taken;
use crate::library::{Datum, Id, Library, Reading};
use crate::source::safe;
use crate::walk::{Event, Refusal, State, Wanted, What, wanted};

/// A value is taken, once more where it is doubted, and then it stands.
const TAKINGS: usize = 3;

impl<M: Machine> Exercise<M> {
    /// The furnace answers for what is wanted. A value that is doubted is taken once more, where the probe still is.
    pub(super) fn answer(
        &mut self,
        library: &Library,
        ahead: &mut Ahead<'_>,
        leaf: Datum,
    ) -> Result<(), Refusal> {
        for _ in 0..TAKINGS {
            let mut dice = self.dice(&ahead.state, leaf);
            let command = taken(&mut self.machine, &mut dice, library, &ahead.state, leaf);
            ahead.carry_out(&command)?;
            let doubted = ahead.state.moment.doubted.as_ref();
            let again = doubted.is_some_and(|doubted| doubted.datum == leaf)
                && matches!(wanted(library, &ahead.state), Wanted::Value { leaf: next, .. } if next == leaf);
            if !again {
                break;
            }
        }
        Ok(())
    }

    /// The probe is put somewhere.
    pub(super) fn place(
        &mut self,
        library: &Library,
        ahead: &mut Ahead<'_>,
        asked: Id<Reading>,
        choice: usize,
    ) -> Result<(), Refusal> {
        let places = places(library, &self.groups, asked, self.setup.seed);
        let put = places.get(choice).ok_or_else(choose_first)?.reading;
        if put == asked {
            return self.answer(library, ahead, Datum::Reading(asked));
        }
        let reading = &library.readings[put];
        let misplaced = Misplaced {
            asked,
            put,
            minutes: reading.taking.minutes.unwrap_or_default(),
        };
        let mut dice = self.dice(&ahead.state, Datum::Reading(put));
        let shown = match self.machine.ask(Datum::Reading(put)) {
            Some(Truth::Number(truth)) => {
                let number = meter::typed(reading, truth, &mut dice);
                format!("{number} {}", reading.scale.symbol())
                    .trim_end()
                    .to_owned()
            }
            _ => "nothing".to_owned(),
        };
        let shown = safe(&shown);
        let text = elsewhere::note(library, &misplaced, &shown);
        self.elsewhere = Some(Elsewhere { asked, put, shown });
        if !reading.taking.leaves.is_empty() {
            let name = |id: &Id<_>| library.restores[*id].name.clone();
            let restores = reading.taking.leaves.iter().map(name).collect();
            ahead.emit(Event::LeftOpen { restores })?;
        }
        ahead.emit(Event::Noted { text })
    }

    /// How far a meter errs this time: the same for all who take the same thing for the first time at this furnace, in
    /// whatever order, and for whoever takes the call up again.
    fn dice(&self, state: &State, of: Datum) -> Dice {
        let (kind, at) = match of {
            Datum::Reading(id) => (0, id.index()),
            Datum::Sign(id) => (1, id.index()),
            Datum::Field(id) => (2, id.index()),
        };
        let taken = state
            .trail
            .iter()
            .filter(|answered| answered.what == What::Datum(of));
        let doubts = state.moment.raised.iter().filter(|(raised, _)| *raised == of);
        Dice::of(&[
            self.setup.seed,
            u64::from(b'm'),
            kind,
            at as u64,
            taken.count() as u64,
            doubts.count() as u64,
        ])
    }
}
