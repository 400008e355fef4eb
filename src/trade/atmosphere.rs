//! The standard atmosphere, and the air in it.

use super::limits::within;
use super::unfit::Unfit;

/// The standard atmosphere's pressure at sea level, psia.
pub(super) const SEA_LEVEL: f64 = 14.696;
/// 0 °F above absolute zero, in degrees Fahrenheit.
pub(super) const RANKINE: f64 = 459.67;
/// Inches of mercury in a psi.
pub(super) const INCH_MERCURY_PER_PSI: f64 = 2.03602;
/// Of dry air, BTU/(lb·°F).
pub(super) const SPECIFIC_HEAT: f64 = 0.24;
/// The gas constant of dry air, ft·lbf/(lb·°R).
const GAS_CONSTANT: f64 = 53.352;

/// The pressure at an altitude in ft, psia.
pub(super) fn pressure(altitude: f64) -> Result<f64, Unfit> {
    within(altitude, -1_500.0, 15_000.0, "the altitude", "ft")?;
    Ok(SEA_LEVEL * (1.0 - 6.8754e-6 * altitude).powf(5.2559))
}

/// The density of dry air at an altitude in ft and a temperature in °F, lb/ft³.
pub(super) fn density(altitude: f64, temperature: f64) -> Result<f64, Unfit> {
    within(temperature, -60.0, 300.0, "the temperature of the air", "°F")?;
    Ok(144.0 * pressure(altitude)? / (GAS_CONSTANT * (temperature + RANKINE)))
}
