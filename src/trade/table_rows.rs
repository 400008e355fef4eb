//! The rows of a thermistor's own table, as several formulas ask for them.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::steinhart_hart::is_bent;
use super::thermistor::rows;
use super::warning::Warning;

/// The first row of three.
pub(super) const LOWEST_OF_THREE: Argument = Argument::new(
    "cold",
    Scale::of(Unit::Ohm),
    "its resistance at the lowest of three temperatures of its table",
);

/// Where it stands.
pub(super) const LOWEST_OF_THREE_AT: Argument = Argument::new(
    "cold_at",
    Scale::of(Unit::DegreeFahrenheit),
    "the lowest temperature",
);

/// The second row of three.
pub(super) const MIDDLE: Argument =
    Argument::new("middle", Scale::of(Unit::Ohm), "its resistance at the middle one");

/// Where it stands.
pub(super) const MIDDLE_AT: Argument = Argument::new(
    "middle_at",
    Scale::of(Unit::DegreeFahrenheit),
    "the middle temperature",
);

/// The third row of three.
pub(super) const HIGHEST: Argument =
    Argument::new("warm", Scale::of(Unit::Ohm), "its resistance at the highest");

/// Where it stands.
pub(super) const HIGHEST_AT: Argument = Argument::new(
    "warm_at",
    Scale::of(Unit::DegreeFahrenheit),
    "the highest temperature",
);

/// The first row of two.
pub(super) const LOWER: Argument = Argument::new(
    "cold",
    Scale::of(Unit::Ohm),
    "its resistance in the row of the lower temperature",
);

/// Where it stands.
pub(super) const LOWER_AT: Argument = Argument::new(
    "cold_at",
    Scale::of(Unit::DegreeFahrenheit),
    "the lower temperature",
);

/// The second row of two.
pub(super) const HIGHER: Argument = Argument::new(
    "warm",
    Scale::of(Unit::Ohm),
    "its resistance in the row of the higher temperature",
);

/// Where it stands.
pub(super) const HIGHER_AT: Argument = Argument::new(
    "warm_at",
    Scale::of(Unit::DegreeFahrenheit),
    "the higher temperature",
);

/// Of three rows from the second number on.
pub(super) const BENT: Warning = Warning {
    when: "the three points bend more than a thermistor does",
    reason: "one of them may be misread, or from another sensor's table",
    help: "hold the points against the table again",
    applies: |numbers, _| is_bent(rows(&numbers[1..])),
};

/// Of two rows from the second number on.
pub(super) const FAR_APART: Warning = Warning {
    when: "the two rows are more than 36 °F apart",
    reason: "between them a thermistor bends, and it may be some tenths of a degree off",
    help: "take the two rows of the table next to it",
    applies: |numbers, _| numbers[4] - numbers[2] > 36.0,
};
