//! The range in which a reading is believed at once.

use super::band_text::BandText;
use super::bound::Relation;
use super::misread::{Misread, quoted};
use super::quantity::Quantity;
use super::scale::Scale;

/// The range in which a reading is believed at once; outside, it is asked for again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlausibleRange {
    /// The smallest value that is believed.
    pub low: Quantity,
    /// The largest value that is believed.
    pub high: Quantity,
}

impl PlausibleRange {
    /// Reads `0 V to 150 V`.
    ///
    /// # Errors
    ///
    /// Where it is not two fixed quantities of the scale's dimension, the smaller first.
    pub fn parse(text: &str, scale: Scale) -> Result<Self, Misread> {
        let range = 0..text.len();
        let help = "write both ends, the smaller first, for instance `0 V to 150 V`";
        let band = BandText::parse(text)?.resolve(scale, |name, range| {
            let message = format!(
                "a plausible range may not lean on {}",
                quoted(&format!("plate.{name}"))
            );
            Err::<((), Scale), _>(Misread::new(range, message, "write a quantity"))
        })?;
        let ends = match band.conditions.as_slice() {
            [low, high] if (low.relation, high.relation) == (Relation::AtLeast, Relation::AtMost) => {
                low.bound.offset.zip(high.bound.offset)
            }
            _ => None,
        };
        let Some((low, high)) = ends else {
            return Err(Misread::new(
                range,
                format!("{} is not a range", quoted(text.trim())),
                help,
            ));
        };
        if low.base() >= high.base() {
            let message = format!("{} holds no range of values", quoted(text.trim()));
            return Err(Misread::new(range, message, help));
        }
        Ok(Self { low, high })
    }

    /// Whether a value is believed at once; not if it measures something else.
    pub fn contains(&self, value: Quantity) -> bool {
        value.compare(self.low).is_some_and(|ordering| ordering.is_ge())
            && value.compare(self.high).is_some_and(|ordering| ordering.is_le())
    }
}
