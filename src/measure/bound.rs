//! One end of a set of values.

use std::cmp::Ordering;

use super::quantity::Quantity;

/// A value to compare with: a fixed one, or one that leans on a field of the rating plate.
///
/// `F` is whatever names a field where the bound is used. The value is share × field + offset; at least one of the two
/// parts is there.
#[derive(Clone, Debug, PartialEq)]
pub struct Bound<F> {
    /// A field, and the share of it that is meant: 1 is the whole.
    pub share: Option<(f64, F)>,
    /// A fixed part; beside a temperature field it is a difference.
    pub offset: Option<Quantity>,
}

impl<F> Bound<F> {
    /// A bound that is the same on every furnace.
    pub fn fixed(value: Quantity) -> Self {
        Self {
            share: None,
            offset: Some(value),
        }
    }

    /// A bound that is what the rating plate says.
    pub fn field(field: F) -> Self {
        Self {
            share: Some((1.0, field)),
            offset: None,
        }
    }

    /// The value, once the fields are known; `None` where the field is not known, or its dimension does not fit.
    pub fn value(&self, fields: &impl Fn(&F) -> Option<Quantity>) -> Option<Quantity> {
        let Some((share, field)) = &self.share else {
            return self.offset;
        };
        let whole = fields(field)?;
        // A temperature is taken whole: its multiples mean nothing.
        let part = if *share == 1.0 { whole } else { whole.times(*share) };
        match self.offset {
            Some(offset) => part.plus(offset),
            None => Some(part),
        }
    }

    /// The field it leans on, if it does.
    pub fn leans_on(&self) -> Option<&F> {
        self.share.as_ref().map(|(_, field)| field)
    }

    /// The same bound with its field named otherwise.
    pub fn map_fields<G>(&self, mut name: impl FnMut(&F) -> G) -> Bound<G> {
        Bound {
            share: self.share.as_ref().map(|(share, field)| (*share, name(field))),
            offset: self.offset,
        }
    }
}

/// On which side of a bound a value must lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Relation {
    /// Smaller than the bound.
    Below,
    /// The bound itself, or smaller.
    AtMost,
    /// Larger than the bound.
    Above,
    /// The bound itself, or larger.
    AtLeast,
}

impl Relation {
    /// Every relation, as the small grammar lists them.
    pub const ALL: [Self; 4] = [Self::Below, Self::AtMost, Self::Above, Self::AtLeast];

    /// Whether the bound is the lower end of what it lets through.
    pub fn is_lower(self) -> bool {
        matches!(self, Self::Above | Self::AtLeast)
    }

    /// Whether the bound itself is left out.
    pub fn is_strict(self) -> bool {
        matches!(self, Self::Below | Self::Above)
    }

    /// The words of the small grammar for it.
    pub fn words(self) -> &'static str {
        match self {
            Self::Below => "below",
            Self::AtMost => "at most",
            Self::Above => "above",
            Self::AtLeast => "at least",
        }
    }

    /// Whether it holds of a value that compares so with its bound.
    pub fn holds(self, ordering: Ordering) -> bool {
        match self {
            Self::Below => ordering.is_lt(),
            Self::AtMost => ordering.is_le(),
            Self::Above => ordering.is_gt(),
            Self::AtLeast => ordering.is_ge(),
        }
    }
}

/// A relation and the bound it refers to.
#[derive(Clone, Debug, PartialEq)]
pub struct Condition<F> {
    /// On which side of the bound.
    pub relation: Relation,
    /// The bound.
    pub bound: Bound<F>,
}

impl<F> Condition<F> {
    /// Whether a value meets it; `None` where its bound has no value or another dimension.
    pub fn holds(&self, value: Quantity, fields: &impl Fn(&F) -> Option<Quantity>) -> Option<bool> {
        let bound = self.bound.value(fields)?;
        value.compare(bound).map(|ordering| self.relation.holds(ordering))
    }
}
