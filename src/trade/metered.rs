//! Gas as a meter counts it, and how well it can be clocked.

use super::atmosphere::{self, RANKINE};
use super::limits::within;
use super::unfit::Unfit;
use super::warning::Warning;

/// How far start and stop of a clocking may well be off together, in s.
pub(super) const SLIP: f64 = 0.5;
/// Why so much.
pub(super) const SLIP_BECAUSE: &str = "a steady eye and a stop watch";
/// The share of an input, in per cent, that a slip of the hand may be: what an adjustment changes is little more.
pub(super) const MOST_ERROR: f64 = 2.0;
/// The time, in s, in which the slip is as much as that.
const SHORTEST: f64 = 100.0 * SLIP / MOST_ERROR;

/// Of an input in which the time stands second: the dial went round too fast to be timed well.
pub(super) const TOO_SHORT: Warning = Warning {
    when: "the time is below 25 s",
    reason: "half a second is more than 2 % of it, and hides what an adjustment would change",
    help: "time more turns of the dial",
    applies: |numbers, _| numbers[1] < SHORTEST,
};
/// Of an input beyond all furnaces of houses.
pub(super) const TOO_MUCH: Warning = Warning {
    when: "the input is above 400000 BTU/h",
    reason: "no furnace of a house burns so much (common practice)",
    help: "look again at the size of the dial and its turns, and whether other appliances burned",
    applies: |_, input| input > 400_000.0,
};
/// Of an input below all furnaces.
pub(super) const TOO_LITTLE: Warning = Warning {
    when: "the input is below 10000 BTU/h",
    reason: "no furnace burns so little (common practice)",
    help: "look again at the size of the dial and its turns, and whether the burner was lit",
    applies: |_, input| input < 10_000.0,
};

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
