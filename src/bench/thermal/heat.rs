//! Heat: from the flame through the exchanger into the air, and to the limit.
//!
//! # Equations
//!
//! The exchanger is one mass of metal. Air takes heat off it by `1 - exp(-NTU)` of the difference, where the NTU fall with the
//! flow to the power 0.2 (heat transfer in a turbulent stream grows with the power 0.8). In the steady state all of the output
//! is in the air: `rise = output / (1.08 * density * flow)`.
//!
//! The limit's disc lags behind a mixture of the air that passes it and of the metal it looks at. Its maker chose the place so
//! that the highest rise on the plate does not trip it; without a blower it sees mostly metal.
//!
//! # References
//!
//! - The power 0.8: Dittus and Boelter's equation, in any textbook of heat transfer.
//! - Metal, places and lags: memory, of the right order. Limits open within some minutes without a blower, and soak when it
//!   stops too early (common practice).

use super::condition::Air;
use super::spread::{Own, spread};
use crate::bench::make::Make;

/// Heat units of transfer when all is right.
const NTU: f64 = 0.25;
/// Metal for each BTU/h of input, BTU/°F.
const METAL: f64 = 8.5e-5;
/// Share of the right transfer that is left without a blower.
const STILL: f64 = 0.03;
/// Seconds by which a limit's disc and a probe in the duct lag.
const DISC: f64 = 25.0;
const DUCT: f64 = 12.0;
/// Seconds for which a blower should go on after the flame.
const GOES_ON: f64 = 75.0;

/// Times the air its gas needs at which a furnace has its plate's efficiency.
const RIGHT_AIR: f64 = 1.5;

/// Exchanger, limit and air temperatures.
#[derive(Clone, Copy, Debug)]
pub struct Heat {
    metal: f64,
    transfer: f64,
    made_for: f64,
    carries: f64,
    room: f64,
    bypass: f64,
    cold_return: f64,
    /// Share of the metal's excess over the air that the disc sees: in the stream, and without one.
    in_stream: f64,
    still: f64,
    /// Temperatures, °F.
    now: Temperatures,
}

/// Temperatures at a moment, °F.
#[derive(Clone, Copy, Debug, Default)]
pub struct Temperatures {
    /// Mean of the exchanger's metal.
    pub exchanger: f64,
    /// Return air at the furnace.
    pub return_air: f64,
    /// Supply air in the duct.
    pub supply_air: f64,
    /// The limit's disc.
    pub limit: f64,
}

impl Heat {
    /// A cold exchanger; the flow it is made for is in ft³/min, what a ft³/min carries in BTU/h for each °F.
    pub fn new(make: &Make, made_for: f64, carries: f64, wrong: &Air) -> Self {
        let taken = 1.0 - (-NTU).exp();
        let transfer = NTU * carries * made_for;
        let metal = METAL * make.input;
        let margin = spread(make.seed, Own::LimitMargin, 12.0, 24.0);
        let above_air = make.rise_max * (1.0 / taken - 1.0);
        let in_stream = (make.limit_opens - margin - 75.0 - make.rise_max) / above_air;
        let left = make.rise_max / taken * (-GOES_ON / 3_600.0 * carries * made_for * taken / metal).exp();
        let still = (make.limit_opens - margin - 75.0) / left;
        Self {
            metal,
            transfer,
            made_for,
            carries,
            room: make.indoor,
            bypass: wrong.bypass,
            cold_return: wrong.return_leaks * (make.indoor - make.outdoor),
            in_stream: in_stream.clamp(0.02, 0.6) + wrong.hot_spot,
            still: still.clamp(0.25, 0.85),
            now: Temperatures {
                exchanger: make.indoor,
                return_air: make.indoor,
                supply_air: make.indoor,
                limit: make.indoor,
            },
        }
    }

    /// Goes on by some seconds with so much heat into the metal, BTU/h, and so much air over it, ft³/min.
    pub fn step(&mut self, heat: f64, airflow: f64, seconds: f64) -> Temperatures {
        let before = self.now;
        let stream = self.carries * airflow;
        let taken = if airflow > 1.0 {
            1.0 - (-self.transfer * (airflow / self.made_for).powf(0.8) / stream).exp()
        } else {
            1.0
        };
        let return_air = if airflow > 1.0 {
            self.room - self.cold_return + self.bypass * (before.supply_air - self.room + self.cold_return)
        } else {
            self.room
        };
        let loses = if airflow > 1.0 {
            stream * taken
        } else {
            self.transfer * STILL
        };
        let steady = return_air + heat / loses;
        let exchanger = towards(before.exchanger, steady, seconds, 3_600.0 * self.metal / loses);
        let leaves = if airflow > 1.0 {
            return_air + taken * (exchanger - return_air)
        } else {
            self.room
        };
        let at_disc = if airflow > 1.0 {
            leaves + self.in_stream * (exchanger - leaves)
        } else {
            self.room + self.still * (exchanger - self.room)
        };
        self.now = Temperatures {
            exchanger,
            return_air,
            supply_air: towards(before.supply_air, leaves, seconds, DUCT),
            limit: towards(before.limit, at_disc, seconds, DISC),
        };
        self.now
    }
}

/// Where something that lags is after some seconds.
pub fn towards(from: f64, to: f64, seconds: f64, lag: f64) -> f64 {
    to + (from - to) * (-seconds / lag).exp()
}

/// The share of the fire's heat that reaches the air, of a furnace of this efficiency, burning with so many times the air that
/// its gas needs: half of its loss is sensible heat, which goes with the air, the other half latent.
pub fn kept(efficiency: f64, air: f64) -> f64 {
    let sensible = (1.0 - efficiency) / 2.0;
    efficiency - sensible * ((air / RIGHT_AIR).clamp(0.6, 3.0) - 1.0)
}
