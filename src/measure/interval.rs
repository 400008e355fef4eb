//! Sets of values in base units, once every bound is known.

use super::bound::Relation;
use super::quantity::Quantity;
use super::scale::Scale;

/// One end of an [`Interval`], in the dimension's base unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum End {
    /// The value itself is left out; an infinite end is open.
    Open(f64),
    /// The value itself is in.
    Closed(f64),
}

impl End {
    /// Where it lies.
    pub fn value(self) -> f64 {
        match self {
            Self::Open(value) | Self::Closed(value) => value,
        }
    }

    fn is_open(self) -> bool {
        matches!(self, Self::Open(_))
    }
}

/// The values between two ends, in the dimension's base unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// The lower end.
    pub low: End,
    /// The upper end.
    pub high: End,
}

impl Interval {
    /// All values.
    pub fn everything() -> Self {
        Self {
            low: End::Open(f64::NEG_INFINITY),
            high: End::Open(f64::INFINITY),
        }
    }

    /// The values on one side of a bound.
    pub fn of(relation: Relation, bound: Quantity) -> Self {
        let value = bound.base();
        let end = if relation.is_strict() {
            End::Open(value)
        } else {
            End::Closed(value)
        };
        let everything = Self::everything();
        if relation.is_lower() {
            Self {
                low: end,
                ..everything
            }
        } else {
            Self {
                high: end,
                ..everything
            }
        }
    }

    /// The values that meet every condition; all of one dimension.
    pub fn from_conditions(conditions: impl IntoIterator<Item = (Relation, Quantity)>) -> Self {
        conditions
            .into_iter()
            .map(|(relation, bound)| Self::of(relation, bound))
            .fold(Self::everything(), Self::intersect)
    }

    /// The values in both.
    pub fn intersect(self, other: Self) -> Self {
        Self {
            low: tighter(self.low, other.low, |a, b| a > b),
            high: tighter(self.high, other.high, |a, b| a < b),
        }
    }

    /// Whether no value is in it.
    pub fn is_empty(self) -> bool {
        let (low, high) = (self.low.value(), self.high.value());
        low > high || (low == high && (self.low.is_open() || self.high.is_open()))
    }

    /// The words of the small grammar for it, in numbers on a scale; nothing where it has no end.
    pub fn words(self, scale: Scale) -> String {
        let shown = |end: End| {
            let value = Quantity::from_base(end.value(), scale.dimension());
            end.value().is_finite().then(|| value.display(scale).to_string())
        };
        let (low, high) = (shown(self.low), shown(self.high));
        if let (Some(low), Some(high), false, false) = (&low, &high, self.low.is_open(), self.high.is_open())
        {
            return format!("{low} to {high}");
        }
        let above = if self.low.is_open() {
            Relation::Above
        } else {
            Relation::AtLeast
        };
        let below = if self.high.is_open() {
            Relation::Below
        } else {
            Relation::AtMost
        };
        let ends = [(above, low), (below, high)].into_iter();
        let words = ends.filter_map(|(relation, end)| Some(format!("{} {}", relation.words(), end?)));
        words.collect::<Vec<_>>().join(", ")
    }

    /// Whether a value, in the dimension's base unit, is in it.
    pub fn contains(self, value: f64) -> bool {
        let above = value > self.low.value() || self.low == End::Closed(value);
        let below = value < self.high.value() || self.high == End::Closed(value);
        above && below
    }

    /// Whether every value of it is in the other.
    pub fn is_within(self, other: Self) -> bool {
        self.is_empty() || self.intersect(other) == self
    }
}

/// The end that lets fewer values through; of two at one place, the open one.
fn tighter(one: End, two: End, beyond: impl Fn(f64, f64) -> bool) -> End {
    if beyond(two.value(), one.value()) || (two.value() == one.value() && two.is_open()) {
        two
    } else {
        one
    }
}
