//! Gas as an uncompensated meter counts it.

use super::atmosphere::{self, RANKINE};
use super::limits::within;
use super::unfit::Unfit;

/// Standard gas in the trade of the United States, psia.
const STANDARD_PRESSURE: f64 = 14.73;
/// Standard gas in the trade of the United States, °F.
const STANDARD_TEMPERATURE: f64 = 60.0;
/// An inch of water (60 °F) in psi.
const PSI_PER_INCH: f64 = 248.84 / 6_894.757;

/// Standard cubic feet in a cubic foot at a gauge pressure in in.w.c., a temperature in °F and an altitude in ft.
pub(super) fn correction(pressure: f64, temperature: f64, altitude: f64) -> Result<f64, Unfit> {
    within(pressure, 0.0, 277.0, "the pressure in the meter", "in.w.c.")?;
    within(temperature, -60.0, 150.0, "the temperature of the gas", "°F")?;
    let absolute = atmosphere::pressure(altitude)? + pressure * PSI_PER_INCH;
    Ok(absolute / STANDARD_PRESSURE * (STANDARD_TEMPERATURE + RANKINE) / (temperature + RANKINE))
}
