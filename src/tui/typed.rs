//! What a number means while it is still being typed.

use std::cmp::Ordering;

use crate::measure::{Amount, Quantity, Scale};
use crate::source::{Safe, safe};
use crate::walk::{Question, ShownBand};

/// What is typed, as far as it can be read.
#[derive(Clone, Debug, PartialEq)]
pub enum Typed {
    /// Nothing.
    Nothing,
    /// Not readable, or not yet; how to mend it is said once it is answered so.
    Misread {
        /// What is wrong.
        message: Safe,
    },
    /// A value.
    Reads {
        /// The value.
        value: Quantity,
        /// The value as it will stand in the record, with its unit.
        shown: Safe,
        /// The band that takes it.
        band: Option<usize>,
        /// On which side of what is plausible it lies; equal where it lies within.
        beyond: Ordering,
    },
}

/// Reads what is typed for a number question.
pub fn typed(text: &str, question: &Question) -> Typed {
    let Question::Number {
        scale,
        bands,
        plausible,
        ..
    } = question
    else {
        return Typed::Nothing;
    };
    if text.trim().is_empty() {
        return Typed::Nothing;
    }
    match Amount::typed(text, *scale) {
        Err(misread) => Typed::Misread {
            message: safe(&misread.message),
        },
        Ok((amount, value)) => Typed::Reads {
            value,
            shown: shown(&amount, value, *scale),
            band: bands.iter().position(|band: &ShownBand| band.takes(value)),
            beyond: plausible.map_or(Ordering::Equal, |(low, high)| beyond(value, low, high)),
        },
    }
}

/// As it was typed; in the unit asked for as well, where it was typed in another.
fn shown(amount: &Amount, value: Quantity, scale: Scale) -> Safe {
    if amount.unit == Some(scale.unit) {
        safe(&amount.to_string())
    } else {
        safe(&format!("{amount} = {}", value.display(scale)))
    }
}

fn beyond(value: Quantity, low: Quantity, high: Quantity) -> Ordering {
    if value.compare(low) == Some(Ordering::Less) {
        Ordering::Less
    } else if value.compare(high) == Some(Ordering::Greater) {
        Ordering::Greater
    } else {
        Ordering::Equal
    }
}
