//! Copper, as wire and as winding, and aluminium wire.

use std::f64::consts::PI;

use super::unfit::Unfit;

/// A wire's metal.
#[derive(Clone, Copy, Debug)]
pub(super) struct Metal {
    /// The resistance at 68 °F, in Ω m.
    resistivity: f64,
    /// How far below 0 °F a straight line through its resistance meets zero.
    no_resistance: f64,
}

/// Annealed.
pub(super) const COPPER: Metal = Metal {
    resistivity: 1.7241e-8,
    no_resistance: NO_RESISTANCE,
};
/// Of 61 % of copper's conductivity; its line meets zero 228.1 °C below freezing.
pub(super) const ALUMINIUM: Metal = Metal {
    resistivity: 2.8264e-8,
    no_resistance: 378.6,
};

/// How far below 0 °F a straight line through copper's resistance meets zero: 234.5 °C below freezing.
const NO_RESISTANCE: f64 = 390.1;
const FOOT: f64 = 0.3048;
/// The thinnest wire that is taken for one.
const THINNEST: f64 = 30.0;

/// Refuses temperatures, in °F, for which the straight line is not stated.
pub(super) fn in_range(temperature: f64) -> Result<(), Unfit> {
    if (-40.0..=392.0).contains(&temperature) {
        return Ok(());
    }
    Err(Unfit::new(
        format!("{temperature:.0} °F is no temperature of a winding or wire in a furnace"),
        "check the unit and the decimal point",
    ))
}

/// The resistance at a temperature in °F, relative to that at any other.
pub(super) fn relative(temperature: f64) -> f64 {
    NO_RESISTANCE + temperature
}

/// The temperature in °F of a relative resistance.
pub(super) fn temperature(relative: f64) -> f64 {
    relative - NO_RESISTANCE
}

/// What a wire of a gauge may well carry, in A, at 8 A for each mm²: house wire is fused at 6 to 7 (common practice).
pub(super) fn most_current(gauge: f64) -> f64 {
    8e6 * area(gauge)
}

/// The resistance of a foot of wire of a gauge, at a temperature in °F.
pub(super) fn ohms_per_foot(metal: Metal, gauge: f64, temperature: f64) -> Result<f64, Unfit> {
    in_range(temperature)?;
    if gauge.fract() != 0.0 || !(0.0..=THINNEST).contains(&gauge) {
        return Err(Unfit::new(
            format!("{gauge} is no wire gauge from 0 to 30"),
            "give the gauge that is printed on the cable, such as 18",
        ));
    }
    let cold = metal.resistivity / area(gauge) * FOOT;
    Ok(cold * (metal.no_resistance + temperature) / (metal.no_resistance + 68.0))
}

/// The section of a wire of a gauge, in m².
fn area(gauge: f64) -> f64 {
    let diameter = 0.127e-3 * 92_f64.powf((36.0 - gauge) / 39.0);
    PI / 4.0 * diameter * diameter
}
