//! What is known of a number and of the plate fields it is compared with, taken together.

use super::numbers::Numbers;
use crate::check::bands::{Inequality, Room, Solution, Undecided, VARIABLES, Work, eliminate, fields, solve};
use crate::library::{Datum, Id, Library, PlateField};
use crate::measure::{Condition, End, Scale};

/// Inequalities between numbers and plate fields; each number and each field is a variable.
pub(super) struct Joint<'l> {
    library: &'l Library,
    /// The size of one of the scale's units in base units: numbers near one lose least.
    unit: f64,
    variables: Vec<Variable>,
    system: Vec<Inequality>,
}

#[derive(Clone, Copy, PartialEq)]
enum Variable {
    /// The number that it is all about, where it is no plate field.
    Value,
    Field(Id<PlateField>),
}

impl<'l> Joint<'l> {
    /// A system about numbers on a scale, before anything is known.
    pub fn new(library: &'l Library, scale: Scale) -> Self {
        let size = |number| crate::measure::Quantity::new(number, scale).base();
        Self {
            library,
            unit: size(1.0) - size(0.0),
            variables: Vec::new(),
            system: Vec::new(),
        }
    }

    /// Adds what is known of a number.
    ///
    /// # Errors
    ///
    /// Where it leans on more plate fields than can be decided.
    pub fn know(&mut self, of: Datum, numbers: &Numbers) -> Result<(), Undecided> {
        for (term, interval) in numbers.parts() {
            for (end, side) in [(interval.low, -1.0), (interval.high, 1.0)] {
                if end.value().is_finite() {
                    let strict = matches!(end, End::Open(_));
                    let bound = self.bound(of, term.0, end.value(), side, strict)?;
                    self.system.push(bound);
                }
            }
        }
        Ok(())
    }

    /// Adds a plate field of which nothing is known but what holds on every plate.
    ///
    /// # Errors
    ///
    /// Where there are more plate fields than can be decided.
    pub fn read(&mut self, field: Id<PlateField>) -> Result<(), Undecided> {
        self.variable(Variable::Field(field)).map(|_| ())
    }

    /// Whether something fits everything that is known.
    pub fn is_possible(&self) -> Result<bool, Undecided> {
        Ok(self.solve(&[])?.is_some())
    }

    /// Whether a condition on a number holds whatever else fits what is known.
    ///
    /// # Errors
    ///
    /// Where it leans on more plate fields than can be decided.
    pub fn implies(&mut self, of: Datum, condition: &Condition<Id<PlateField>>) -> Result<bool, Undecided> {
        let negated = self.condition(of, condition)?.negated();
        Ok(self.solve(&[negated])?.is_none())
    }

    /// Adds that a condition on a number does not hold.
    ///
    /// # Errors
    ///
    /// Where it leans on more plate fields than can be decided.
    pub fn deny(&mut self, of: Datum, condition: &Condition<Id<PlateField>>) -> Result<(), Undecided> {
        let negated = self.condition(of, condition)?.negated();
        self.system.push(negated);
        Ok(())
    }

    /// Leaves the number out, and keeps what it says of the plate: then the system is ready for the next number.
    ///
    /// # Errors
    ///
    /// Where there is too much to combine; where nothing fits, the system has no solution from here on.
    pub fn let_go(&mut self) -> Result<(), Undecided> {
        let Some(at) = self.variables.iter().position(|&known| known == Variable::Value) else {
            return Ok(());
        };
        let system = std::mem::take(&mut self.system);
        self.system = match eliminate(system, at, &mut Work::default())? {
            Some(gone) => gone.rest,
            None => vec![Inequality::new(&[], 1.0, true)],
        };
        Ok(())
    }

    fn condition(
        &mut self,
        of: Datum,
        condition: &Condition<Id<PlateField>>,
    ) -> Result<Inequality, Undecided> {
        let side = if condition.relation.is_lower() { -1.0 } else { 1.0 };
        let end = condition.bound.offset.map_or(0.0, |offset| offset.base());
        self.bound(
            of,
            condition.bound.share,
            end,
            side,
            condition.relation.is_strict(),
        )
    }

    /// `side × (number − share × field − end)` below nothing.
    fn bound(
        &mut self,
        of: Datum,
        share: Option<(f64, Id<PlateField>)>,
        end: f64,
        side: f64,
        strict: bool,
    ) -> Result<Inequality, Undecided> {
        let mut factors = vec![(self.variable(variable(of))?, side)];
        if let Some((share, field)) = share {
            factors.push((self.variable(Variable::Field(field))?, -side * share));
        }
        Ok(Inequality::new(&factors, -side * end / self.unit, strict))
    }

    fn variable(&mut self, of: Variable) -> Result<usize, Undecided> {
        if let Some(known) = self.variables.iter().position(|&known| known == of) {
            return Ok(known);
        }
        if self.variables.len() == VARIABLES {
            return Err(Undecided);
        }
        self.variables.push(of);
        Ok(self.variables.len() - 1)
    }

    fn solve(&self, also: &[Inequality]) -> Result<Option<Solution>, Undecided> {
        let all = [&self.system[..], &self.plates(), also].concat();
        solve(&all, self.variables.len(), &mut Work::default())
    }

    /// What holds on every plate.
    fn plates(&self) -> Vec<Inequality> {
        let mut known = Vec::new();
        for (at, &low) in self.variables.iter().enumerate() {
            let Variable::Field(low) = low else { continue };
            if fields::is_positive(self.library, low) {
                known.push(Inequality::new(&[(at, -1.0)], 0.0, true));
            }
            let above = fields::above(self.library, low);
            for (other, &high) in self.variables.iter().enumerate() {
                if matches!(high, Variable::Field(high) if above.contains(&high)) {
                    known.push(Inequality::new(&[(at, 1.0), (other, -1.0)], 0.0, true));
                }
            }
        }
        known
    }

    /// Values of the plate fields that fit; `choose` picks each from the room there is for it, all in base units.
    pub fn plate(
        &self,
        mut choose: impl FnMut(Id<PlateField>, Room) -> f64,
    ) -> Result<Option<Plate>, Undecided> {
        let Some(solution) = self.solve(&[])? else {
            return Ok(None);
        };
        let unit = self.unit;
        let point = solution.point(|at, room| {
            let room = Room {
                low: room.low * unit,
                high: room.high * unit,
            };
            let chosen = match self.variables[at] {
                Variable::Field(field) => choose(field, room),
                // A number is chosen once the plate is.
                Variable::Value => within(room),
            };
            chosen / unit
        });
        let fields = self
            .variables
            .iter()
            .zip(point)
            .filter_map(|(variable, value)| match variable {
                Variable::Field(field) => Some((*field, value * unit)),
                Variable::Value => None,
            });
        Ok(Some(fields.collect()))
    }
}

/// Plate fields, each with its value in base units.
type Plate = Vec<(Id<PlateField>, f64)>;

/// Some number in a room.
fn within(room: Room) -> f64 {
    match (room.low.is_finite(), room.high.is_finite()) {
        (true, true) => room.low + (room.high - room.low) / 2.0,
        (true, false) => room.low + 1.0,
        (false, true) => room.high - 1.0,
        (false, false) => 0.0,
    }
}

fn variable(of: Datum) -> Variable {
    match of {
        Datum::Field(field) => Variable::Field(field),
        Datum::Reading(_) | Datum::Sign(_) => Variable::Value,
    }
}
