//! The commonest values among many, counted in bounded memory.

/// Most different values that are kept of one reading and technician; rarer ones give way to new ones.
const VALUES: usize = 48;

/// Most calls that are kept with one value.
const CALLS: usize = 200;

/// The commonest values among many, in bounded memory: those that are more than one in [`VALUES`] are sure to be kept, and
/// counted too low by no more than that share (Misra and Gries, Finding repeated elements, 1982). All are exact as long as
/// there are no more different ones.
#[derive(Debug, Default)]
pub(super) struct Common {
    /// How many there are in all.
    pub of: u64,
    values: Vec<Value>,
}

/// A value, with the first calls that gave it: nearly all are given in one, so that takes no list.
#[derive(Debug)]
pub(super) struct Value {
    /// Which.
    pub value: f64,
    /// How often it was given, at least.
    pub times: u32,
    call: u32,
    /// The same call and those after it, where there are several.
    #[allow(
        clippy::box_collection,
        reason = "nearly all are empty, and a list that is not there takes a third so"
    )]
    calls: Option<Box<Vec<u32>>>,
}

const _: () = assert!(
    size_of::<Value>() == 24,
    "there are many for each technician and reading"
);

impl Value {
    /// One more call that gave it; given twice in a call, that is named once.
    fn again(&mut self, call: u32) {
        self.times = self.times.saturating_add(1);
        if self.calls().len() < CALLS && self.calls().last() != Some(&call) {
            self.calls
                .get_or_insert_with(|| Box::new(vec![self.call]))
                .push(call);
        }
    }

    /// The first calls that gave it.
    pub fn calls(&self) -> &[u32] {
        match &self.calls {
            None => std::slice::from_ref(&self.call),
            Some(calls) => calls,
        }
    }
}

impl Common {
    /// One more value, given in a call; how often it was given so far, at least.
    pub fn add(&mut self, value: f64, call: u32) -> u64 {
        self.of += 1;
        if let Some(known) = self.values.iter_mut().find(|known| known.value == value) {
            known.again(call);
            return known.times.into();
        }
        if self.values.len() < VALUES {
            if self.values.len() == self.values.capacity() {
                let more = self.values.len().max(3).min(VALUES - self.values.len());
                self.values.reserve_exact(more);
            }
            self.values.push(Value {
                value,
                times: 1,
                call,
                calls: None,
            });
        } else {
            self.values.iter_mut().for_each(|known| known.times -= 1);
            self.values.retain(|known| known.times > 0);
        }
        1
    }

    /// The one that was given most often.
    pub fn commonest(&self) -> Option<&Value> {
        self.values.iter().max_by_key(|value| value.times)
    }

    /// The largest share that one value may have with whoever takes the reading so: the root of the share of alike pairs of takings, as
    /// a value given half the time makes a quarter of the pairs alike. Of few takings the commonest value has a large share by
    /// chance alone, and alike pairs have not. Those of values that gave way to others are taken for unlike.
    pub fn own(&self) -> f64 {
        let pairs = |times: u64| (times * times.saturating_sub(1)) as f64;
        let alike: f64 = self.values.iter().map(|value| pairs(value.times.into())).sum();
        (alike / pairs(self.of).max(1.0)).sqrt()
    }

    /// How often a value was given, at least.
    pub fn times(&self, value: f64) -> u64 {
        self.values
            .iter()
            .find(|known| known.value == value)
            .map_or(0, |known| known.times.into())
    }
}

#[cfg(test)]
mod tests {
    use super::Common;

    fn of(values: &[f64]) -> Common {
        let mut common = Common::default();
        values.iter().for_each(|value| {
            common.add(*value, 0);
        });
        common
    }

    #[test]
    fn the_share_of_a_value_of_ones_own_is_found_in_few_takings_and_in_many() {
        assert_eq!(of(&[2.0; 8]).own(), 1.0);
        assert_eq!(of(&[1.0, 2.0, 3.0, 4.0]).own(), 0.0);
        let half: Vec<f64> = (0..400)
            .map(|at| if at % 2 == 0 { 7.0 } else { f64::from(at) })
            .collect();
        assert!((of(&half).own() - 0.5).abs() < 0.01);
        assert_eq!((of(&[]).own(), of(&[1.0]).own()), (0.0, 0.0));
    }
}
