//! A question's bands as inequalities between the value and the plate fields they lean on.

use super::fields;
use super::linear::{Inequality, Room, Solution, VARIABLES};
use super::question::Question;
use super::round;
use super::witness::Witness;
use crate::library::{Id, PlateField};
use crate::measure::{Condition, End, Interval, PlausibleRange, Quantity, Scale};

/// The value is always the first variable, and the last to be chosen.
const VALUE: usize = 0;

/// A question's bands as inequalities.
#[derive(Clone)]
pub(super) struct System<'a> {
    question: Question<'a>,
    /// The size of one of the scale's units in base units: numbers near one lose least.
    unit: f64,
    /// The fields, each by its variable's position less one.
    fields: Vec<Id<PlateField>>,
    /// What holds on every plate.
    pub axioms: Vec<Inequality>,
    /// What each band asks of a value.
    pub bands: Vec<Vec<Inequality>>,
}

impl<'a> System<'a> {
    /// The system of a question; none where it leans on more fields than can be decided.
    pub fn of(question: Question<'a>) -> Option<Self> {
        let conditions = question.bands.iter().flat_map(|answer| &answer.band.conditions);
        let mut fields: Vec<_> = conditions
            .filter_map(|condition| condition.bound.leans_on().copied())
            .collect();
        fields.sort_unstable();
        fields.dedup();
        fields.retain(|&field| question.asked != Some(field));
        if fields.len() >= VARIABLES {
            return None;
        }
        let zero = Quantity::new(0.0, question.scale).base();
        let mut system = Self {
            question,
            unit: Quantity::new(1.0, question.scale).base() - zero,
            fields,
            axioms: Vec::new(),
            bands: Vec::new(),
        };
        system.axioms = system.known_of_plates();
        let bands = question.bands.iter().map(|answer| &answer.band.conditions);
        system.bands = bands
            .map(|all| all.iter().map(|one| system.inequality(one)).collect())
            .collect();
        Some(system)
    }

    /// The plate fields it leans on.
    pub fn fields(&self) -> &[Id<PlateField>] {
        &self.fields
    }

    /// The same system, with these fields in this order on every plate.
    pub fn with_order(&self, order: &[Id<PlateField>]) -> Self {
        let mut ordered = self.clone();
        for pair in order.windows(2) {
            ordered.axioms.push(self.below(pair[0], pair[1]));
        }
        ordered
    }

    /// How many variables there are.
    pub fn variables(&self) -> usize {
        self.fields.len() + 1
    }

    /// What a plausible plate satisfies, and with it what a plausible value does.
    pub fn plausible(&self) -> (Vec<Inequality>, Vec<Inequality>) {
        let known = |field: &Id<PlateField>| fields::number(self.question.library, *field);
        let plate = self
            .fields
            .iter()
            .enumerate()
            .filter_map(|(at, field)| Some((at + 1, known(field)?.1)));
        let plate = plate
            .flat_map(|(variable, range)| self.within(variable, range))
            .collect();
        let value = self
            .question
            .plausible
            .into_iter()
            .flat_map(|range| self.within(VALUE, range))
            .collect();
        (plate, value)
    }

    /// A point as quantities, each as short a number as its room allows.
    pub fn witness(&self, solution: &Solution) -> Witness {
        let plausible = |variable: usize| match variable {
            VALUE => self.question.plausible,
            _ => fields::number(self.question.library, self.fields[variable - 1]).map(|(_, range)| range),
        };
        let point = solution.point(|variable, room| {
            let scale = self.scale(variable);
            let ranged = plausible(variable).map_or(room, |range| Room {
                low: room.low.max(range.low.base() / self.unit),
                high: room.high.min(range.high.base() / self.unit),
            });
            let room = if ranged.low < ranged.high { ranged } else { room };
            self.short(room, scale)
        });
        let quantity = |variable: usize| self.quantity(point[variable], self.scale(variable));
        Witness {
            value: quantity(VALUE),
            plate: self
                .fields
                .iter()
                .enumerate()
                .map(|(at, &field)| (field, quantity(at + 1)))
                .collect(),
        }
    }

    /// A short number in the room, where there is more than one point in it.
    fn short(&self, room: Room, scale: Scale) -> f64 {
        if room.low >= room.high {
            return room.low;
        }
        let number = |end: f64| {
            if end.is_finite() {
                self.quantity(end, scale).number_in(scale)
            } else {
                end
            }
        };
        let chosen = round::between(number(room.low), number(room.high));
        Quantity::new(chosen, scale).base() / self.unit
    }

    fn quantity(&self, point: f64, scale: Scale) -> Quantity {
        Quantity::from_base(point * self.unit, scale.dimension())
    }

    fn scale(&self, variable: usize) -> Scale {
        let scale = match variable {
            VALUE => None,
            _ => fields::number(self.question.library, self.fields[variable - 1]).map(|(scale, _)| scale),
        };
        scale.unwrap_or(self.question.scale)
    }

    fn known_of_plates(&self) -> Vec<Inequality> {
        let library = self.question.library;
        let named: Vec<Id<PlateField>> = self.fields.iter().copied().chain(self.question.asked).collect();
        let positive = named.iter().filter(|&&field| fields::is_positive(library, field));
        let mut known: Vec<Inequality> = positive
            .map(|&field| Inequality::new(&[(self.variable(field), -1.0)], 0.0, true))
            .collect();
        for &low in &named {
            let above = fields::above(library, low);
            known.extend(
                named
                    .iter()
                    .filter(|high| above.contains(high))
                    .map(|&high| self.below(low, high)),
            );
        }
        known
    }

    fn below(&self, low: Id<PlateField>, high: Id<PlateField>) -> Inequality {
        Inequality::new(
            &[(self.variable(low), 1.0), (self.variable(high), -1.0)],
            0.0,
            true,
        )
    }

    fn variable(&self, field: Id<PlateField>) -> usize {
        self.fields
            .iter()
            .position(|&known| known == field)
            .map_or(VALUE, |at| at + 1)
    }

    fn inequality(&self, condition: &Condition<Id<PlateField>>) -> Inequality {
        let side = if condition.relation.is_lower() { -1.0 } else { 1.0 };
        let offset = condition
            .bound
            .offset
            .map_or(0.0, |offset| offset.base() / self.unit);
        let mut factors = vec![(VALUE, side)];
        if let Some((share, field)) = condition.bound.share {
            factors.push((self.variable(field), -side * share));
        }
        Inequality::new(&factors, -side * offset, condition.relation.is_strict())
    }

    /// A stretch of values as inequalities.
    pub fn inside(&self, stretch: Interval) -> Vec<Inequality> {
        let ends = [(stretch.low, -1.0), (stretch.high, 1.0)];
        let bounded = ends.into_iter().filter(|(end, _)| end.value().is_finite());
        let inequality = |(end, side): (End, f64)| {
            let strict = matches!(end, End::Open(_));
            Inequality::new(&[(VALUE, side)], -side * end.value() / self.unit, strict)
        };
        bounded.map(inequality).collect()
    }

    /// The plate fields that some of the bands lean on.
    pub fn fields_of(&self, bands: &[usize]) -> Vec<Id<PlateField>> {
        let bounds = bands
            .iter()
            .flat_map(|&band| self.question.bands[band].band.bounds());
        bounds.filter_map(|bound| bound.leans_on().copied()).collect()
    }

    fn within(&self, variable: usize, range: PlausibleRange) -> [Inequality; 2] {
        let (low, high) = (range.low.base() / self.unit, range.high.base() / self.unit);
        [
            Inequality::new(&[(variable, -1.0)], low, false),
            Inequality::new(&[(variable, 1.0)], -high, false),
        ]
    }
}
