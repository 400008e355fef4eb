//! Thermistors by the beta equation, and what holds of every thermistor.

use super::formula::positive;
use super::unfit::Unfit;

/// 77 °F, for which thermistors are labelled, in kelvin.
const LABELLED: f64 = 298.15;

/// One thermistor.
pub(super) struct Curve {
    at_77: f64,
    beta: f64,
}

/// A row of a maker's table.
#[derive(Clone, Copy)]
pub(super) struct Row {
    /// In Ω.
    pub resistance: f64,
    /// In °F.
    pub temperature: f64,
}

/// Rows from numbers: a resistance, its temperature, the next resistance and so on.
pub(super) fn rows<const N: usize>(numbers: &[f64]) -> [Row; N] {
    std::array::from_fn(|at| Row {
        resistance: numbers[2 * at],
        temperature: numbers[2 * at + 1],
    })
}

/// Refuses rows that are out of range, not as far apart as `least` °F, or not in order: the coldest comes first.
pub(super) fn in_order(rows: &[Row], least: f64) -> Result<(), Unfit> {
    for row in rows {
        positive(row.resistance, "a resistance of the table")?;
        in_range(row.temperature)?;
    }
    for pair in rows.windows(2) {
        if pair[1].temperature - pair[0].temperature < least {
            return Err(Unfit::new(
                format!(
                    "two temperatures of the table are less than {least} °F apart, or the wrong way round"
                ),
                format!("give the lowest temperature first, and each other at least {least} °F higher"),
            ));
        }
        plausible(beta(pair[0], pair[1]))?;
    }
    Ok(())
}

/// Refuses temperatures, in °F, at which no thermistor of a furnace is read.
pub(super) fn in_range(temperature: f64) -> Result<(), Unfit> {
    if (-40.0..=302.0).contains(&temperature) {
        return Ok(());
    }
    Err(Unfit::new(
        format!("{temperature:.0} °F is beyond what the equation follows"),
        "check the resistance and its unit, kΩ or Ω; the thermistor may be open or shorted",
    ))
}

/// Whether a temperature, in °F, is so far from the label's that one beta does not follow the thermistor closely.
pub(super) fn is_far(temperature: f64) -> bool {
    !(32.0..=122.0).contains(&temperature)
}

/// The beta of two points, in kelvin.
pub(super) fn beta(cold: Row, warm: Row) -> f64 {
    (cold.resistance / warm.resistance).ln()
        / (1.0 / kelvin(cold.temperature) - 1.0 / kelvin(warm.temperature))
}

fn plausible(beta: f64) -> Result<(), Unfit> {
    if (1000.0..=10_000.0).contains(&beta) {
        return Ok(());
    }
    Err(Unfit::new(
        format!("a beta of {beta:.0} K is none of a thermistor that falls as it warms"),
        "take the points, or beta itself, from the maker's table",
    ))
}

impl Curve {
    /// The thermistor of a resistance at 77 °F and a beta.
    pub(super) fn new(at_77: f64, beta: f64) -> Result<Self, Unfit> {
        positive(at_77, "the resistance at 77 °F")?;
        plausible(beta)?;
        Ok(Self { at_77, beta })
    }

    /// The thermistor between two rows of its table that stand close together.
    pub(super) fn between(cold: Row, warm: Row) -> Result<Self, Unfit> {
        in_order(&[cold, warm], 0.5)?;
        let beta = beta(cold, warm);
        let at_77 = cold.resistance * (beta * (1.0 / LABELLED - 1.0 / kelvin(cold.temperature))).exp();
        Ok(Self { at_77, beta })
    }

    /// Its resistance at a temperature in °F.
    pub(super) fn resistance(&self, temperature: f64) -> f64 {
        self.at_77 * (self.beta * (1.0 / kelvin(temperature) - 1.0 / LABELLED)).exp()
    }

    /// The temperature in °F at which it has a resistance.
    pub(super) fn temperature(&self, resistance: f64) -> f64 {
        1.8 / (1.0 / LABELLED + (resistance / self.at_77).ln() / self.beta) - 459.67
    }
}

/// A temperature in °F, in kelvin.
pub(super) fn kelvin(fahrenheit: f64) -> f64 {
    (fahrenheit + 459.67) / 1.8
}
