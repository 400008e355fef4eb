//! A set of values.

use std::fmt;

use super::bound::{Bound, Condition, Relation};
use super::interval::Interval;
use super::quantity::Quantity;
use super::scale::Scale;
use super::significant::round;

/// A set of values: those that meet all its conditions.
#[derive(Clone, Debug, PartialEq)]
pub struct Band<F> {
    /// The conditions, in the order they were written; `A to B` is two.
    pub conditions: Vec<Condition<F>>,
}

impl<F> Band<F> {
    /// Whether a value is in it; `None` where a bound that would decide has no value yet.
    pub fn contains(&self, value: Quantity, fields: &impl Fn(&F) -> Option<Quantity>) -> Option<bool> {
        let mut all_known = true;
        for condition in &self.conditions {
            match condition.holds(value, fields) {
                Some(false) => return Some(false),
                Some(true) => {}
                None => all_known = false,
            }
        }
        all_known.then_some(true)
    }

    /// Its bounds, in the order they were written.
    pub fn bounds(&self) -> impl Iterator<Item = &Bound<F>> {
        self.conditions.iter().map(|condition| &condition.bound)
    }

    /// The values it lets through, once the fields are known; `None` while one of its bounds has no value.
    pub fn interval(&self, fields: &impl Fn(&F) -> Option<Quantity>) -> Option<Interval> {
        let mut interval = Interval::everything();
        for condition in &self.conditions {
            let bound = condition.bound.value(fields)?;
            interval = interval.intersect(Interval::of(condition.relation, bound));
        }
        Some(interval)
    }

    /// The same band with its fields named otherwise.
    pub fn map_fields<G>(&self, mut name: impl FnMut(&F) -> G) -> Band<G> {
        let conditions = self.conditions.iter().map(|condition| Condition {
            relation: condition.relation,
            bound: condition.bound.map_fields(&mut name),
        });
        Band {
            conditions: conditions.collect(),
        }
    }

    /// The band in the words of the small grammar, with numbers on a scale and fields by the name that is given.
    pub fn display<N: Fn(&F) -> String>(&self, scale: Scale, name_of_field: N) -> BandShown<'_, F, N> {
        BandShown {
            band: self,
            scale,
            name_of_field,
        }
    }
}

/// A band in words: see [`Band::display`].
pub struct BandShown<'a, F, N> {
    band: &'a Band<F>,
    scale: Scale,
    name_of_field: N,
}

impl<F, N: Fn(&F) -> String> BandShown<'_, F, N> {
    fn bound(&self, bound: &Bound<F>) -> String {
        let Some((share, field)) = &bound.share else {
            return bound
                .offset
                .map_or_else(String::new, |value| value.display(self.scale).to_string());
        };
        let mut words = (self.name_of_field)(field);
        if *share != 1.0 {
            words = format!("{} % of {words}", round(share * 100.0));
        }
        if let Some(offset) = bound.offset {
            let sign = if offset.base() < 0.0 { "-" } else { "+" };
            let size = offset.times(if offset.base() < 0.0 { -1.0 } else { 1.0 });
            words = format!("{words} {sign} {}", size.display(self.scale.of_offsets()));
        }
        words
    }
}

impl<F, N: Fn(&F) -> String> fmt::Display for BandShown<'_, F, N> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let [low, high] = self.band.conditions.as_slice()
            && (low.relation, high.relation) == (Relation::AtLeast, Relation::AtMost)
        {
            return write!(f, "{} to {}", self.bound(&low.bound), self.bound(&high.bound));
        }
        for (at, condition) in self.band.conditions.iter().enumerate() {
            let comma = if at == 0 { "" } else { ", " };
            let words = condition.relation.words();
            write!(f, "{comma}{words} {}", self.bound(&condition.bound))?;
        }
        Ok(())
    }
}
