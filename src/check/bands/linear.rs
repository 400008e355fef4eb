//! Whether some point satisfies a handful of linear inequalities, and which.
//!
//! Fourier–Motzkin elimination: a variable goes by pairing each of its upper bounds with each of its lower ones. It is exact
//! about strict and non-strict bounds, which is what bands that touch are about, and it leaves behind what is needed to
//! walk back to a point. It squares the inequalities with each variable, so it suits a value and a few plate fields, and
//! gives up beyond that.

/// How many variables a system may have: the value that is asked for, and the plate fields of one step.
pub(in crate::check) const VARIABLES: usize = 8;

/// What the arithmetic may lose, relative to the numbers that went in.
const LOST: f64 = 1e-10;

/// `factors · variables + constant` lies below nothing, or where it is not strict, at nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::check) struct Inequality {
    factors: [f64; VARIABLES],
    constant: f64,
    strict: bool,
    /// The size of the numbers that the constant was made from, to tell nothing from rounding.
    size: f64,
}

impl Inequality {
    /// From factors by variable; a variable that is named twice has the sum of both.
    pub fn new(factors: &[(usize, f64)], constant: f64, strict: bool) -> Self {
        let mut all = [0.0; VARIABLES];
        for &(variable, factor) in factors {
            all[variable] += factor;
        }
        Self {
            factors: all,
            constant,
            strict,
            size: constant.abs(),
        }
    }

    /// What holds exactly where this does not.
    pub fn negated(self) -> Self {
        Self {
            factors: self.factors.map(|factor| -factor),
            constant: -self.constant,
            strict: !self.strict,
            size: self.size,
        }
    }

    /// The same without its end point.
    pub fn strictly(self) -> Self {
        Self { strict: true, ..self }
    }

    /// Two bounds on a variable from either side, as one inequality that does not name it.
    fn without(&self, other: &Self, variable: usize) -> Self {
        let (mine, theirs) = (
            1.0 / self.factors[variable].abs(),
            1.0 / other.factors[variable].abs(),
        );
        let mut factors = [0.0; VARIABLES];
        for (at, factor) in factors.iter_mut().enumerate() {
            let (a, b) = (self.factors[at] * mine, other.factors[at] * theirs);
            let sum = a + b;
            // What is left of two equal factors is rounding.
            *factor = if at == variable || sum.abs() <= LOST * a.abs().max(b.abs()) {
                0.0
            } else {
                sum
            };
        }
        Self {
            factors,
            constant: self.constant * mine + other.constant * theirs,
            strict: self.strict || other.strict,
            size: self.size * mine + other.size * theirs,
        }
    }

    /// Whether it holds, where it names no variable.
    fn may_hold(&self) -> bool {
        below_nothing(self.constant, self.size, self.strict)
    }

    /// Whether `other` bounds the same sum of variables, and by how much this one then lies above it.
    fn above(&self, other: &Self) -> Option<f64> {
        let lead = self.factors.iter().position(|&factor| factor != 0.0)?;
        let share = other.factors[lead] / self.factors[lead];
        if share <= 0.0 {
            return None;
        }
        let pairs = self.factors.iter().zip(&other.factors);
        let same = pairs
            .into_iter()
            .all(|(a, b)| (a * share - b).abs() <= LOST * b.abs());
        same.then_some(self.constant * share - other.constant)
    }
}

fn below_nothing(sum: f64, size: f64, strict: bool) -> bool {
    let margin = LOST * size;
    if strict { sum < -margin } else { sum <= margin }
}

/// There is more to try than is worth the time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::check) struct Undecided;

/// How many more inequalities may be looked at.
///
/// A few bands on a few fields need some thousands; only a text made to be hard needs more than this.
#[derive(Debug)]
pub(in crate::check) struct Work(u64);

impl Default for Work {
    fn default() -> Self {
        Self(4_000_000)
    }
}

impl Work {
    fn spend(&mut self, inequalities: usize) -> Result<(), Undecided> {
        self.0 = self.0.checked_sub(inequalities as u64).ok_or(Undecided)?;
        Ok(())
    }
}

/// A system that some point satisfies.
#[derive(Debug)]
pub(in crate::check) struct Solution {
    /// Before each elimination, the inequalities that name the variable that goes.
    stages: Vec<Vec<Inequality>>,
}

/// The values that a variable may have, the others that were chosen before it being what they are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::check) struct Room {
    /// Its lower end; below every number where there is none.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
}

/// Eliminates the variables in their order, so that the first is the last to be chosen; none where no point satisfies
/// the system.
pub(in crate::check) fn solve(
    system: &[Inequality],
    variables: usize,
    work: &mut Work,
) -> Result<Option<Solution>, Undecided> {
    let mut stages = Vec::with_capacity(variables);
    let mut rest = system.to_vec();
    for variable in 0..variables {
        let Some(gone) = eliminate(rest, variable, work)? else {
            return Ok(None);
        };
        stages.push(gone.named);
        rest = gone.rest;
    }
    let possible = rest.iter().all(Inequality::may_hold);
    Ok(possible.then_some(Solution { stages }))
}

/// Takes a variable out of a system; none where no point satisfies it.
pub(in crate::check) fn eliminate(
    system: Vec<Inequality>,
    variable: usize,
    work: &mut Work,
) -> Result<Option<Eliminated>, Undecided> {
    let (named, mut others): (Vec<_>, Vec<_>) = system.into_iter().partition(|i| i.factors[variable] != 0.0);
    let (upper, lower): (Vec<&Inequality>, Vec<&Inequality>) =
        named.iter().partition(|i| i.factors[variable] > 0.0);
    work.spend(named.len() + others.len())?;
    for above in &upper {
        for below in &lower {
            work.spend(1 + others.len())?;
            let pair = above.without(below, variable);
            if pair.factors.iter().all(|&factor| factor == 0.0) {
                if !pair.may_hold() {
                    return Ok(None);
                }
            } else {
                keep(&mut others, pair);
            }
        }
    }
    Ok(Some(Eliminated { named, rest: others }))
}

/// A system from which a variable has gone.
pub(in crate::check) struct Eliminated {
    /// The inequalities that named it.
    pub named: Vec<Inequality>,
    /// What the system says without it.
    pub rest: Vec<Inequality>,
}

/// Adds an inequality, unless one that stands there already says as much.
fn keep(system: &mut Vec<Inequality>, new: Inequality) {
    for old in system.iter_mut() {
        let Some(above) = new.above(old) else {
            continue;
        };
        let equal = above.abs() <= LOST * old.size.max(new.size);
        if (equal && new.strict && !old.strict) || (!equal && above > 0.0) {
            *old = new;
        }
        return;
    }
    system.push(new);
}

impl Solution {
    /// A point, each of whose values `choose` picks from the room there is for it.
    pub fn point(&self, mut choose: impl FnMut(usize, Room) -> f64) -> [f64; VARIABLES] {
        let mut point = [0.0; VARIABLES];
        for (variable, stage) in self.stages.iter().enumerate().rev() {
            let mut room = Room {
                low: f64::NEG_INFINITY,
                high: f64::INFINITY,
            };
            for inequality in stage {
                let factor = inequality.factors[variable];
                // The variables that went before this one have no value yet, and none of these names them.
                let terms = inequality.factors.iter().zip(&point).skip(variable + 1);
                let sum: f64 = inequality.constant + terms.map(|(factor, value)| factor * value).sum::<f64>();
                let end = -sum / factor;
                if factor > 0.0 {
                    room.high = room.high.min(end);
                } else {
                    room.low = room.low.max(end);
                }
            }
            point[variable] = choose(variable, room);
        }
        point
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn solved(system: &[Inequality], variables: usize) -> Option<Solution> {
        solve(system, variables, &mut Work::default()).unwrap()
    }

    impl Inequality {
        /// Whether a point satisfies it.
        fn holds(&self, point: &[f64; VARIABLES]) -> bool {
            let terms = self
                .factors
                .iter()
                .zip(point)
                .map(|(factor, value)| factor * value);
            let start = (self.constant, self.size);
            let (sum, size) = terms.fold(start, |(sum, size), term| (sum + term, size + term.abs()));
            below_nothing(sum, size, self.strict)
        }
    }

    fn below(variable: usize, bound: f64) -> Inequality {
        Inequality::new(&[(variable, 1.0)], -bound, true)
    }

    fn middle(_: usize, room: Room) -> f64 {
        match (room.low.is_finite(), room.high.is_finite()) {
            (true, true) => (room.low + room.high) / 2.0,
            (true, false) => room.low + 1.0,
            (false, true) => room.high - 1.0,
            (false, false) => 0.0,
        }
    }

    #[test]
    fn ends_that_touch_hold_a_point_only_where_both_are_in() {
        let at_most = Inequality::new(&[(0, 1.0)], -2.0, false);
        let at_least = Inequality::new(&[(0, -1.0)], 2.0, false);
        assert!(solved(&[at_most, at_least], 1).is_some());
        assert!(solved(&[at_most.strictly(), at_least], 1).is_none());
        assert!(solved(&[at_most, at_most.negated()], 1).is_none());
    }

    #[test]
    fn an_order_between_fields_is_used() {
        // value > high, value < low, low < high
        let value_above_high = Inequality::new(&[(0, -1.0), (2, 1.0)], 0.0, true);
        let value_below_low = Inequality::new(&[(0, 1.0), (1, -1.0)], 0.0, true);
        let ordered = Inequality::new(&[(1, 1.0), (2, -1.0)], 0.0, true);
        assert!(solved(&[value_above_high, value_below_low], 3).is_some());
        assert!(solved(&[value_above_high, value_below_low, ordered], 3).is_none());
    }

    #[test]
    fn a_thousandth_of_a_digit_is_rounding_and_not_a_gap() {
        // 0.1 + 0.2 as one end, 0.3 as the other.
        let system = [below(0, 0.1 + 0.2), Inequality::new(&[(0, -1.0)], 0.3, true)];
        assert!(solved(&system, 1).is_none());
    }

    proptest! {
        /// Elimination never loses a point that is there, and the point it walks back to is one.
        #[test]
        fn a_system_made_around_a_point_is_solved(
            point in prop::array::uniform3(-50i32..50),
            rows in prop::collection::vec((prop::array::uniform3(-3i32..4), 0i32..20, any::<bool>()), 1..12),
        ) {
            let system: Vec<Inequality> = rows.iter().map(|(factors, slack, strict)| {
                let sum: i32 = factors.iter().zip(&point).map(|(f, v)| f * v).sum();
                let factors: Vec<_> = factors.iter().map(|&f| f64::from(f)).enumerate().collect();
                Inequality::new(&factors, f64::from(-sum - slack), *strict && *slack > 0)
            }).collect();
            let Some(solution) = solved(&system, 3) else {
                return Err(TestCaseError::fail("the point was lost"));
            };
            let found = solution.point(middle);
            for row in &system {
                prop_assert!(row.holds(&found), "{row:?} at {found:?}");
            }
        }
    }
}
