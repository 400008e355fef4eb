//! Thermistors by the beta equation.

use super::formula::positive;
use super::unfit::Unfit;

/// 77 °F, for which thermistors are labelled, in kelvin.
const LABELLED: f64 = 298.15;

/// One thermistor.
pub(super) struct Curve {
    at_77: f64,
    beta: f64,
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
pub(super) fn beta(cold: f64, cold_at: f64, warm: f64, warm_at: f64) -> f64 {
    (cold / warm).ln() / (1.0 / kelvin(cold_at) - 1.0 / kelvin(warm_at))
}

impl Curve {
    /// The thermistor of a resistance at 77 °F and a beta.
    pub(super) fn new(at_77: f64, beta: f64) -> Result<Self, Unfit> {
        positive(at_77, "the resistance at 77 °F")?;
        if (1000.0..=10_000.0).contains(&beta) {
            return Ok(Self { at_77, beta });
        }
        Err(Unfit::new(
            format!("a beta of {beta:.0} K is none of a thermistor that falls as it warms"),
            "take the points, or beta itself, from the maker's table",
        ))
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

fn kelvin(fahrenheit: f64) -> f64 {
    (fahrenheit + 459.67) / 1.8
}
