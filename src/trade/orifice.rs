//! Gas through an orifice.

use std::f64::consts::PI;

use super::formula::positive;
use super::limits::within;
use super::unfit::Unfit;

/// Of an ideal orifice: ft³/h for each in² at 1 in.w.c. and the specific gravity of air.
const IDEAL: f64 = 1_658.5;

/// The gas through a hole of a diameter in inches, in ft³/h; the pressure is in in.w.c.
pub(super) fn flow(
    diameter: f64,
    pressure: f64,
    specific_gravity: f64,
    coefficient: f64,
) -> Result<f64, Unfit> {
    positive(diameter, "the diameter")?;
    within(diameter, 0.0, 0.5, "the diameter", "in")?;
    Ok(PI / 4.0 * diameter.powi(2) * per_area(pressure, specific_gravity, coefficient)?)
}

/// The diameter in inches that gives a share of an input in BTU/h; the heating value is in BTU/ft³, the pressure in in.w.c.
pub(super) fn diameter_for_input(
    input: f64,
    orifices: f64,
    heating_value: f64,
    pressure: f64,
    specific_gravity: f64,
    coefficient: f64,
) -> Result<f64, Unfit> {
    positive(input, "the input")?;
    positive(orifices, "the number of orifices")?;
    positive(heating_value, "the heating value")?;
    if orifices.fract() != 0.0 {
        return Err(Unfit::new(
            format!("{orifices} orifices cannot be"),
            "count the orifices",
        ));
    }
    let flow = input / orifices / heating_value;
    let diameter = (4.0 / PI * flow / per_area(pressure, specific_gravity, coefficient)?).sqrt();
    within(diameter, 0.0, 0.5, "the diameter", "in")?;
    Ok(diameter)
}

/// The heat that flows through an orifice, against any other gas and pressure through the same one.
pub(super) fn heat(pressure: f64, heating_value: f64, specific_gravity: f64) -> Result<f64, Unfit> {
    positive(heating_value, "the heating value")?;
    Ok(heating_value * root(pressure, specific_gravity)?)
}

/// ft³/h for each in².
fn per_area(pressure: f64, specific_gravity: f64, coefficient: f64) -> Result<f64, Unfit> {
    within(coefficient, 0.5, 1.0, "the coefficient", "of the ideal flow")?;
    Ok(IDEAL * coefficient * root(pressure, specific_gravity)?)
}

fn root(pressure: f64, specific_gravity: f64) -> Result<f64, Unfit> {
    positive(pressure, "the manifold pressure")?;
    // Beyond a psi, a gas gets thinner on its way through the hole.
    within(pressure, 0.0, 27.7, "the manifold pressure", "in.w.c.")?;
    within(
        specific_gravity,
        0.35,
        2.1,
        "the specific gravity",
        "of that of air",
    )?;
    Ok((pressure / specific_gravity).sqrt())
}
