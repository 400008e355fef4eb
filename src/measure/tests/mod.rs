//! Checks of what a number is, by feature; the spellings of units and the table are checked beside them.

mod accuracy;
mod amount;
mod band;
mod band_errors;
mod hostile;
mod interval;
mod properties;
mod quantity;
mod shown;

use super::{Amount, Band, BandText, Misread, Quantity, Scale, Unit};

/// A scale by its unit's spelling.
#[track_caller]
fn scale(unit: &str) -> Scale {
    Scale::of(Unit::parse(unit).unwrap())
}

/// A quantity as an author writes it, on the scale of its own unit.
#[track_caller]
fn quantity(text: &str) -> Quantity {
    let amount = Amount::parse(text).unwrap();
    amount
        .quantity(Scale::of(amount.unit.unwrap_or(Unit::Number)))
        .unwrap()
}

/// A difference of two temperatures.
#[track_caller]
fn difference(text: &str) -> Quantity {
    let amount = Amount::parse(text).unwrap();
    amount.quantity(Scale::difference(amount.unit.unwrap())).unwrap()
}

/// A band for a value on a scale, with fields kept by name; every field is in the scale that is given for it.
fn band_of(text: &str, on: Scale, fields: Scale) -> Result<Band<String>, Misread> {
    BandText::parse(text)?.resolve(on, |name, _| Ok((name.to_owned(), fields)))
}
