//! Gas at low pressure in pipe and tube.
//!
//! The equation and its factors: International Fuel Gas Code, 402.4, and NFPA 54. Inside diameters: ASME B36.10M, schedule
//! 40, as the codes' tables print them.

use super::formula::positive;
use super::limits::within;
use super::unfit::Unfit;

/// What of a gas matters to its friction: its weight, its viscosity and 60 °F, in the code's factor.
pub(super) struct Gas(f64);

/// Natural gas of specific gravity 0.60.
pub(super) const NATURAL: Gas = Gas(0.6094);
/// Undiluted propane.
pub(super) const PROPANE: Gas = Gas(1.2462);

/// Nominal size and inside diameter, in inches.
const SCHEDULE_40: [(f64, f64); 11] = [
    (0.25, 0.364),
    (0.375, 0.493),
    (0.5, 0.622),
    (0.75, 0.824),
    (1.0, 1.049),
    (1.25, 1.380),
    (1.5, 1.610),
    (2.0, 2.067),
    (2.5, 2.469),
    (3.0, 3.068),
    (4.0, 4.026),
];

/// What the sizes are called in millimetres, in the same order: ISO 6708, as pipe tables print it (memory). They are names, not
/// measures: DN 20 is not 20 mm across anywhere.
const NOMINAL_DIAMETERS: [&str; 11] = ["8", "10", "15", "20", "25", "32", "40", "50", "65", "80", "100"];

/// The nominal size in inches of one that is named in millimetres, as `DN 20` or `20 mm`.
pub(super) fn named(text: &str) -> Option<String> {
    let lower = text.trim().to_lowercase();
    let name = lower
        .strip_prefix("dn")
        .or_else(|| lower.strip_suffix("mm"))?
        .trim();
    let at = NOMINAL_DIAMETERS.iter().position(|own| *own == name)?;
    Some(format!("{} in", SCHEDULE_40[at].0))
}

/// What a nominal size in inches is called in millimetres: `DN 20`.
pub(super) fn in_millimetres(size: f64) -> Option<String> {
    let at = SCHEDULE_40
        .iter()
        .position(|(nominal, _)| (nominal - size).abs() < 1e-6)?;
    Some(format!("DN {}", NOMINAL_DIAMETERS[at]))
}

/// The inside diameter of a nominal size, both in inches.
pub(super) fn inside_diameter(size: f64) -> Result<f64, Unfit> {
    // Sizes may come in mm, and are then no exact fractions of an inch.
    let found = SCHEDULE_40
        .iter()
        .find(|(nominal, _)| (nominal - size).abs() < 1e-6);
    found.map(|&(_, inside)| inside).ok_or_else(|| {
        Unfit::new(
            format!("no steel pipe has the nominal size {size:.4} in"),
            "give one of 0.25, 0.375, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3 and 4 in, or DN 8 to DN 100",
        )
    })
}

/// The inside diameter of a tube, in inches, where the equation is stated for it.
pub(super) fn tube(inside: f64) -> Result<f64, Unfit> {
    within(inside, 0.25, 4.1, "the inside diameter", "in")?;
    Ok(inside)
}

/// The smallest nominal size with at least this inside diameter, both in inches.
pub(super) fn nominal_size(inside: f64) -> Result<f64, Unfit> {
    let found = SCHEDULE_40.iter().find(|&&(_, diameter)| diameter >= inside);
    found.map(|&(size, _)| size).ok_or_else(|| {
        Unfit::new(
            format!("it wants {inside:.2} in inside, more than 4 in pipe has"),
            "check the inputs, split the load, or have the pipe laid out by an engineer",
        )
    })
}

/// The flow in ft³/h, for in, ft and in.w.c.
pub(super) fn capacity(inside: f64, length: f64, drop: f64, gas: Gas) -> Result<f64, Unfit> {
    Ok((19.17 * inside * slope(length, drop, gas)?).powf(1.0 / 0.381))
}

/// The inside diameter in inches, for ft³/h, ft and in.w.c.
pub(super) fn diameter(flow: f64, length: f64, drop: f64, gas: Gas) -> Result<f64, Unfit> {
    positive(flow, "the flow")?;
    Ok(flow.powf(0.381) / (19.17 * slope(length, drop, gas)?))
}

/// The drop in inches.w.c., for in, ft and ft³/h.
pub(super) fn pressure_drop(inside: f64, length: f64, flow: f64, gas: Gas) -> Result<f64, Unfit> {
    positive(length, "the length")?;
    positive(flow, "the flow")?;
    let drop = gas.0 * length * (flow.powf(0.381) / (19.17 * inside)).powf(1.0 / 0.206);
    low(drop)?;
    Ok(drop)
}

fn slope(length: f64, drop: f64, gas: Gas) -> Result<f64, Unfit> {
    positive(length, "the length")?;
    positive(drop, "the pressure drop")?;
    low(drop)?;
    Ok((drop / (gas.0 * length)).powf(0.206))
}

/// The equation is for supplies below 1.5 psi, and no pipe takes more than there is.
fn low(drop: f64) -> Result<(), Unfit> {
    within(drop, 0.0, 41.5, "the pressure drop", "in.w.c.")
}
