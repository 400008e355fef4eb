//! What a furnace shows: told afterwards, it keeps from ways of proving that this furnace does not have.

use std::sync::Arc;

use crate::bench::machine::{Machine, Truth};
use crate::bench::technician::NOT_HERE;
use crate::library::{Claim, Datum, Library};
use crate::measure::Quantity;
use crate::walk::{Holding, StandingValue, State, Value, claim_holds};

/// All that a furnace shows as it is found, before any meter errs.
#[derive(Clone, Debug)]
pub(super) struct Here(State);

impl Here {
    /// Asks everything of a furnace that nobody has worked upon.
    pub fn of(library: &Library, machine: &mut impl Machine) -> Self {
        let mut state = State::default();
        let readings = library.readings.iter().map(|(id, _)| Datum::Reading(id));
        let signs = library.signs.iter().map(|(id, _)| Datum::Sign(id));
        let fields = library.plate.iter().map(|(id, _)| Datum::Field(id));
        for datum in readings.chain(signs).chain(fields) {
            let value = match (machine.ask(datum), library.scale_of(datum)) {
                (Some(Truth::Number(number)), Some(scale)) => {
                    Some(Value::Number(Quantity::new(number, scale)))
                }
                (Some(Truth::Value(value)), _) => Some(Value::Choice(value)),
                _ => None,
            };
            match value {
                Some(value) => {
                    let standing = StandingValue {
                        value,
                        typed: String::new(),
                        margin: 0.0,
                        borderline: false,
                        answer: 0,
                    };
                    state.moment.values.insert(datum, Arc::new(standing));
                }
                None => {
                    state.could_not.insert(datum, NOT_HERE.to_owned());
                }
            }
        }
        Self(state)
    }

    /// Whether there is something to be taken.
    pub fn shows(&self, datum: Datum) -> bool {
        self.0.value(datum).is_some()
    }

    /// Whether a claim could not hold here, whoever takes it.
    pub fn rules_out(&self, claim: &Claim) -> bool {
        !self.shows(claim.datum()) || claim_holds(&self.0, claim) == Holding::Contradicted
    }
}
