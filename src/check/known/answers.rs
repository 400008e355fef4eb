//! Values that lead along a way.

use super::epochs::{Answer, Epoch, Epochs};
use super::joint::Joint;
use super::range::{Range, short};
use crate::check::bands::Room;
use crate::library::{Datum, FieldKind, Id, Input, Library, Obtained, PlateField, Step};
use crate::measure::{
    Bound, Dimension, End, Interval, PlausibleRange, Quantity, Relation, Scale, borderline,
};

/// Something that is asked for, and what is answered.
#[derive(Clone, Debug)]
pub(in crate::check) struct Given {
    pub step: Id<Step>,
    pub datum: Datum,
    pub answer: String,
}

/// What is answered where a value cannot be taken.
pub(super) const UNABLE: &str = "could not be taken";
/// What is answered where the technician cannot tell.
pub(super) const UNSURE: &str = "not sure";

/// Answers that lead along a way; none where there are none, or none were found.
pub(super) fn answers(way: &Epochs<'_>) -> Option<Vec<Given>> {
    let mut values = Values {
        way,
        library: way.library,
        plate: Vec::new(),
        numbers: vec![None; way.all.len()],
    };
    values.read_plate()?;
    for at in 0..way.all.len() {
        if !way.all[at].inputs.is_empty() {
            values.work_out(at)?;
        }
    }
    for at in 0..way.all.len() {
        if values.numbers[at].is_none() && values.scale(at).is_some() {
            let free = values.free(at)?;
            values.numbers[at] = values.believable(at, free);
        }
        if values.scale(at).is_some() {
            values.fits(at).then_some(())?;
        }
    }
    let asked = way.asked.iter();
    let given = asked.map(|asked| {
        let answer = match asked.answer {
            Answer::Unable => UNABLE.to_owned(),
            Answer::Unsure => UNSURE.to_owned(),
            Answer::Value(epoch) => values.words(epoch)?,
        };
        Some(Given {
            step: asked.step,
            datum: asked.datum,
            answer,
        })
    });
    given.collect()
}

struct Values<'w, 'l> {
    way: &'w Epochs<'l>,
    library: &'l Library,
    plate: Vec<(Id<PlateField>, Quantity)>,
    /// The number of each epoch that has one, once it is chosen.
    numbers: Vec<Option<Quantity>>,
}

impl Values<'_, '_> {
    fn scale(&self, at: usize) -> Option<Scale> {
        self.library.scale_of(self.way.all[at].datum)
    }

    fn plausible(&self, at: usize) -> Option<PlausibleRange> {
        match self.way.all[at].datum {
            Datum::Reading(id) => self.library.readings[id].plausible,
            Datum::Field(id) => match self.library.plate[id].kind {
                FieldKind::Number { plausible, .. } => Some(plausible),
                FieldKind::Choices(_) => None,
            },
            Datum::Sign(_) => None,
        }
    }

    /// Finds a plate on which every value can be what the way says of it.
    fn read_plate(&mut self) -> Option<()> {
        let dimensions = self.way.all.iter().filter_map(|epoch| {
            let scale = self.library.scale_of(epoch.datum)?;
            matches!(epoch.datum, Datum::Field(_)).then(|| scale.dimension())
        });
        let mut dimensions: Vec<Dimension> = dimensions.collect();
        while let Some(dimension) = dimensions.pop() {
            dimensions.retain(|&other| other != dimension);
            self.read_fields(dimension)?;
        }
        Some(())
    }

    /// Fields of one dimension: a number is never compared with one of another.
    fn read_fields(&mut self, dimension: Dimension) -> Option<()> {
        let of_dimension = |epoch: &&Epoch<'_>| {
            self.library
                .scale_of(epoch.datum)
                .is_some_and(|scale| scale.dimension() == dimension)
        };
        let epochs: Vec<&Epoch<'_>> = self.way.all.iter().filter(of_dimension).collect();
        let mut joint = Joint::new(self.library, self.library.scale_of(epochs.first()?.datum)?);
        for epoch in epochs {
            match epoch.datum {
                Datum::Field(field) => joint.read(field).ok()?,
                _ if epoch.numbers.is_fixed() && epoch.denied.is_empty() => continue,
                _ => {}
            }
            joint.know(epoch.datum, &epoch.numbers).ok()?;
            for denied in &epoch.denied {
                joint.deny(epoch.datum, denied).ok()?;
            }
            joint.let_go().ok()?;
        }
        let library = self.library;
        let plate = joint.plate(|field, room| {
            let FieldKind::Number { scale, plausible } = library.plate[field].kind else {
                return room.low;
            };
            short(room, scale, Some(plausible)).base()
        });
        for (field, base) in plate.ok()?? {
            let quantity = Quantity::from_base(base, dimension);
            self.plate.push((field, quantity));
            for (at, epoch) in self.way.all.iter().enumerate() {
                if epoch.datum == Datum::Field(field) {
                    self.numbers[at] = Some(quantity);
                }
            }
        }
        Some(())
    }

    fn field(&self, field: Id<PlateField>) -> Option<Quantity> {
        let read = self.plate.iter().find(|(known, _)| *known == field);
        read.map(|(_, value)| *value)
    }

    /// The numbers that an epoch may have, the plate being what it is.
    fn free(&self, at: usize) -> Option<Interval> {
        let epoch = &self.way.all[at];
        let fields = |field: &Id<PlateField>| self.field(*field);
        let mut free = Interval::everything();
        for band in &epoch.bands {
            free = free.intersect(band.interval(&fields)?);
        }
        for denied in &epoch.denied {
            let against = match denied.relation {
                Relation::Below => Relation::AtLeast,
                Relation::AtMost => Relation::Above,
                Relation::Above => Relation::AtMost,
                Relation::AtLeast => Relation::Below,
            };
            free = free.intersect(Interval::of(against, denied.bound.value(&fields)?));
        }
        (!free.is_empty()).then_some(free)
    }

    fn believable(&self, at: usize, free: Interval) -> Option<Quantity> {
        let room = Room {
            low: free.low.value(),
            high: free.high.value(),
        };
        Some(short(room, self.scale(at)?, self.plausible(at)))
    }

    /// Whether the number that was chosen for an epoch is what the way says of it.
    fn fits(&self, at: usize) -> bool {
        let epoch = &self.way.all[at];
        let Some(number) = self.numbers[at] else {
            return false;
        };
        let fields = |field: &Id<PlateField>| self.field(*field);
        let in_bands = epoch
            .bands
            .iter()
            .all(|band| band.contains(number, &fields) == Some(true));
        let denied = epoch
            .denied
            .iter()
            .all(|denied| denied.holds(number, &fields) == Some(false));
        let clear = epoch.clear.iter().flat_map(|band| band.bounds());
        in_bands && denied && self.is_clear_of(at, clear)
    }

    /// Chooses what a number is worked out from, so that it is what the way says of it.
    fn work_out(&mut self, at: usize) -> Option<()> {
        let leaves = self.open_leaves(at);
        let mut ranges = Vec::with_capacity(leaves.len());
        for &leaf in &leaves {
            ranges.push(self.range(leaf)?);
        }
        // A result close to a bound would be asked for once more: better one that is not, where there is one.
        for clear in [true, false] {
            for active in 0..leaves.len().max(1) {
                for others in 0..=GRID {
                    let share = f64::from(others) / f64::from(GRID);
                    for (leaf, range) in leaves.iter().zip(&ranges) {
                        self.numbers[*leaf] = Some(range.at(share));
                    }
                    let moving = leaves.get(active).copied().zip(ranges.get(active).copied());
                    if self.settle(at, moving, clear) {
                        return Some(());
                    }
                }
            }
        }
        None
    }

    /// Tries what is chosen, then other values of one input.
    fn settle(&mut self, at: usize, moving: Option<(usize, Range)>, clear: bool) -> bool {
        let fits = |values: &mut Self| values.computes(at) && (!clear || values.is_clear(at));
        if fits(self) {
            return true;
        }
        let Some((leaf, range)) = moving else { return false };
        (0..=FINE).any(|step| {
            self.numbers[leaf] = Some(range.at(f64::from(step) / f64::from(FINE)));
            fits(self)
        })
    }

    /// Whether no bound that an epoch, or one it is worked out from, is compared with lies within what the meters leave open.
    fn is_clear(&self, at: usize) -> bool {
        self.chain(at).into_iter().all(|at| {
            let epoch = &self.way.all[at];
            let bounds = epoch.bands.iter().flat_map(|band| band.bounds());
            self.is_clear_of(at, bounds.chain(epoch.denied.iter().map(|denied| &denied.bound)))
        })
    }

    fn is_clear_of<'b>(&self, at: usize, bounds: impl Iterator<Item = &'b Bound<Id<PlateField>>>) -> bool {
        let fields = |field: &Id<PlateField>| self.field(*field);
        let (Some(number), Some(margin)) = (self.numbers[at], self.margin(at)) else {
            return false;
        };
        let mut bounds = bounds;
        !bounds.any(|bound| {
            let bound = bound.value(&fields);
            bound.is_some_and(|bound| borderline(number, margin, bound))
        })
    }

    /// How far off a number may be, in base units.
    fn margin(&self, at: usize) -> Option<f64> {
        // Results are worked out from results at most a few levels down: the library's reader sees to that.
        let epoch = &self.way.all[at];
        let Datum::Reading(id) = epoch.datum else {
            return Some(0.0);
        };
        let reading = &self.library.readings[id];
        match &reading.source_of_value {
            Obtained::Measured(accuracy) => Some(accuracy.margin(self.numbers[at]?, reading.scale)),
            Obtained::WorkedOut { formula, inputs } => {
                let mut taken = epoch.inputs.iter();
                let numbers = inputs.iter().map(|input| match input {
                    Input::Fixed(quantity) => Some((*quantity, 0.0)),
                    Input::Reading(_) | Input::Field(_) => {
                        let input = *taken.next()?;
                        Some((self.numbers[input]?, self.margin(input)?))
                    }
                });
                let numbers: Vec<_> = numbers.collect::<Option<_>>()?;
                formula.margin(&numbers).ok()
            }
        }
    }

    /// The inputs, all the way down, that have no number yet.
    fn open_leaves(&self, at: usize) -> Vec<usize> {
        let mut leaves = Vec::new();
        let mut waiting = vec![at];
        while let Some(epoch) = waiting.pop() {
            let inputs = &self.way.all[epoch].inputs;
            if inputs.is_empty() && self.numbers[epoch].is_none() && !leaves.contains(&epoch) {
                leaves.push(epoch);
            }
            waiting.extend(inputs);
        }
        leaves
    }

    fn range(&self, at: usize) -> Option<Range> {
        let free = self.free(at)?;
        let (mut low, mut high) = (free.low.value(), free.high.value());
        if let Some(plausible) = self.plausible(at) {
            let (from, to) = (low.max(plausible.low.base()), high.min(plausible.high.base()));
            if from < to {
                (low, high) = (from, to);
            }
        }
        let scale = self.scale(at)?;
        let open = |end| matches!(end, End::Open(_));
        let finite = low.is_finite() && high.is_finite() && low <= high;
        finite.then(|| Range {
            low,
            high,
            scale,
            open: open(free.low) || open(free.high),
        })
    }

    /// Computes an epoch and all it is worked out from; whether all of them fit.
    fn computes(&mut self, at: usize) -> bool {
        self.chain(at).into_iter().all(|epoch| {
            if !self.way.all[epoch].inputs.is_empty() {
                self.numbers[epoch] = self.compute(epoch);
            }
            self.fits(epoch)
        })
    }

    /// An epoch and all it is worked out from, each behind its own inputs.
    fn chain(&self, at: usize) -> Vec<usize> {
        let mut chain = vec![at];
        let mut next = 0;
        while let Some(&epoch) = chain.get(next) {
            chain.extend(&self.way.all[epoch].inputs);
            next += 1;
        }
        // An input was taken before what is worked out from it.
        chain.sort_unstable();
        chain.dedup();
        chain
    }

    fn compute(&self, at: usize) -> Option<Quantity> {
        let epoch = &self.way.all[at];
        let Datum::Reading(id) = epoch.datum else {
            return None;
        };
        let Obtained::WorkedOut { formula, inputs } = &self.library.readings[id].source_of_value else {
            return None;
        };
        let mut taken = epoch.inputs.iter();
        let numbers = inputs.iter().map(|input| match input {
            Input::Fixed(quantity) => Some(*quantity),
            Input::Reading(_) | Input::Field(_) => self.numbers[*taken.next()?],
        });
        let numbers: Vec<Quantity> = numbers.collect::<Option<_>>()?;
        formula.compute(&numbers).ok()
    }

    fn words(&self, at: usize) -> Option<String> {
        let epoch = &self.way.all[at];
        if let (Some(scale), Some(number)) = (self.scale(at), self.numbers[at]) {
            return Some(number.display(scale).to_string());
        }
        let values = match epoch.datum {
            Datum::Sign(id) => &self.library.signs[id].values,
            Datum::Field(id) => match &self.library.plate[id].kind {
                FieldKind::Choices(values) => values,
                FieldKind::Number { .. } => return None,
            },
            Datum::Reading(_) => return None,
        };
        let free = || (0..values.len()).find(|value| !epoch.not.contains(value));
        let value = epoch.choice.or_else(free)?;
        let right = !epoch.not.contains(&value);
        right
            .then(|| values.get(value).map(|value| value.name.clone()))
            .flatten()
    }
}

/// In how many steps the inputs that stand still are moved.
const GRID: u8 = 10;
/// In how many steps the one that moves is.
const FINE: u16 = 200;
