//! What a number is: units, quantities, bands, accuracy.
//!
//! - [`Unit`] and [`Scale`]: what a number is written in; a temperature is not a temperature difference.
//! - [`System`]: the two systems of units, and which unit stands for which.
//! - [`Quantity`]: a value, comparable whatever unit it was written in.
//! - [`Amount`]: a number and its unit as somebody wrote or typed them.
//! - [`as_decimal`]: fractions of an inch, feet and inches, minutes and seconds, where a person types; trees are written in decimals.
//! - [`Bound`], [`Condition`], [`Band`]: sets of values, whose ends may lean on the rating plate; [`BandText`] reads them.
//! - [`Interval`]: sets of values once the plate is known.
//! - [`Accuracy`]: how far a meter may be off, and when a reading is too close to a bound to decide.
//!
//! Everything read from text answers a [`Misread`] when it cannot be read: where, what is wrong, how to mend it.

mod accuracy;
mod amount;
mod band;
mod band_text;
mod bound;
mod bound_text;
mod compound;
mod dimension;
mod fraction;
mod interval;
mod meter_text;
mod misread;
mod number;
mod plausible;
mod quantity;
mod scale;
mod shown;
mod significant;
mod spelling;
mod system;
mod unit;
mod unit_table;

pub use accuracy::{Accuracy, borderline};
pub use amount::Amount;
pub use band::{Band, BandShown};
pub use band_text::{BandText, ConditionText};
pub use bound::{Bound, Condition, Relation};
pub use bound_text::BoundText;
pub use dimension::Dimension;
pub use fraction::as_decimal;
pub use interval::{End, Interval};
pub use misread::Misread;
pub use plausible::PlausibleRange;
pub use quantity::Quantity;
pub use scale::Scale;
pub use shown::Shown;
pub use system::System;
pub use unit::Unit;

#[cfg(test)]
mod tests;
