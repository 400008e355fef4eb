//! What leaves by the stack, and what therefore stays in the house.

use super::enthalpy::REFERENCE;
use super::flue::FlueGas;
use super::unfit::Unfit;

/// More than any flue gas is warmer than its air, in °F; the heat capacities hold up to there.
const HOTTEST: f64 = 1200.0;
/// How near its dew point flue gas may condense after all, in kelvin: humid air raises the dew point, cold air cools the stack.
const NEAR: f64 = 15.0;

/// The share of the heat that does not leave by the stack, in per cent; `net` is how much warmer the flue gas is than the air,
/// in °F.
pub(super) fn efficiency(flue: &FlueGas, net: f64) -> Result<f64, Unfit> {
    if net > HOTTEST {
        return Err(Unfit::new(
            format!("{net} °F above the air is no stack temperature"),
            "check the unit and the decimal point",
        ));
    }
    if temperature(net) <= flue.dew_point() {
        return Err(Unfit::new(
            format!("at {net} °F above the air, water condenses and gives up heat that is not counted here"),
            "take the stack temperature less the air's; judge a condensing furnace by its maker's instructions",
        ));
    }
    Ok(100.0 * (1.0 - flue.lost(net / 1.8)))
}

/// Whether flue gas that is `net` °F warmer than the air may condense somewhere, though on the whole it does not.
pub(super) fn is_near_dew_point(flue: &FlueGas, net: f64) -> bool {
    temperature(net) <= flue.dew_point() + NEAR
}

/// The flue gas of air at the reference temperature, in kelvin.
fn temperature(net: f64) -> f64 {
    REFERENCE + net / 1.8
}
