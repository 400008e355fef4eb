//! The furnace answers, and the minutes are counted.

use super::ahead::Ahead;
use super::exercise::{Exercise, choose_first};
use super::places::places;
use super::score::Misplaced;
use crate::bench::machine::{Machine, Truth};
use crate::bench::meter;
use crate::bench::technician::taken;
use crate::bench::trials::cost;
use crate::library::{Datum, Id, Library, Reading};
use crate::source::safe;
use crate::walk::{Event, Refusal, State, Wanted, wanted};

/// A value is taken, once more where it is doubted, and then it stands.
const TAKINGS: usize = 3;

impl<M: Machine> Exercise<M> {
    /// Counts what answering the question of a state takes.
    pub(super) fn count(&mut self, library: &Library, state: &State) {
        self.score.minutes += cost(library, state).0;
    }

    /// The furnace answers for what is wanted. A value that is doubted is taken once more, where the probe still is.
    pub(super) fn answer(
        &mut self,
        library: &Library,
        ahead: &mut Ahead<'_>,
        leaf: Datum,
    ) -> Result<(), Refusal> {
        for _ in 0..TAKINGS {
            self.count(library, &ahead.state);
            let command = taken(&mut self.machine, &mut self.dice, library, &ahead.state, leaf);
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
        let minutes = reading.taking.minutes.unwrap_or_default();
        self.score.minutes += minutes;
        self.score.misplaced.push(Misplaced { asked, put, minutes });
        let shown = match self.machine.ask(Datum::Reading(put)) {
            Some(Truth::Number(truth)) => {
                let number = meter::typed(reading, truth, &mut self.dice);
                format!("{number} {}", reading.scale.symbol())
                    .trim_end()
                    .to_owned()
            }
            _ => "nothing".to_owned(),
        };
        self.elsewhere = Some((asked, safe(&shown)));
        if !reading.taking.leaves.is_empty() {
            let name = |id: &Id<_>| library.restores[*id].name.clone();
            let restores = reading.taking.leaves.iter().map(name).collect();
            ahead.emit(Event::LeftOpen { restores })?;
        }
        ahead.emit(Event::Noted {
            text: format!(
                "Practice: asked for “{}”, the probe was put at “{}”, which showed {shown} ({minutes} min)",
                library.readings[asked].title, reading.title
            ),
        })
    }
}
