//! The burners: what lights, how it burns, what it leaves.
//!
//! # Equations
//!
//! `air = air when in order * drawn / fire`, in times what the gas needs; oxygen follows from it by the stoichiometry of the
//! register's `excess_air_natural`. Carbon monoxide free of air rises steeply as air gets short, with vitiated air, and where
//! flame meets metal; as read it is thinned by the excess air, as in `co_air_free`.
//!
//! # References
//!
//! - Oxygen of a furnace in order: 6 to 9 per cent (common practice).
//! - How carbon monoxide grows with want of air, and at which oxygen in the air a flame lifts and dies: memory, of the right
//!   order.

use super::condition::Burners;
use super::fuel::{FRESH, Fuel};
use super::shown::Shape;
use super::spread::{Own, spread};
use crate::bench::make::Make;

/// Seconds for a flame to cross to the next burner.
const CROSSES: f64 = 0.15;
/// Below these times its need of air, flue gas comes back out of the tubes, and the flame dies.
const ROLLS_BACK: f64 = 0.86;
const SMOTHERED: f64 = 0.5;
/// Oxygen in the air in which no burner flame holds, per cent.
const VITIATED: f64 = 16.5;
/// Of the house air that enters through the exchanger's wall, the share that the burners get less: the rest is drawn on top,
/// since what lies behind the wall is most of the way's resistance, not all of it.
const DISPLACES: f64 = 0.6;
/// Share of the plate's manifold pressure at which a flame dies or flashes back, and below which none lights.
const TOO_WEAK: f64 = 0.06;
const LIGHTS: f64 = 0.12;
/// Carbon monoxide free of air that no flame exceeds, ppm.
const MOST_CO: f64 = 30_000.0;

/// What comes to the burners.
#[derive(Clone, Copy, Debug)]
pub struct Fed {
    /// Heat of the gas, BTU/h.
    pub heat: f64,
    /// Manifold pressure, share of the plate's.
    pub pressure: f64,
    /// Whether the valve is fed: what leaks through it unfed burns at the orifices, without the burners' air.
    pub open: bool,
    /// Air drawn, against a furnace in order and hot.
    pub air: f64,
    /// Share of that air that is flue gas.
    pub flue_gas: f64,
    /// House air that comes through the exchanger's wall, share of the flue gas.
    pub house_air: f64,
    /// Room air that leaks in behind the exchanger, in the measure of `air`.
    pub leak: f64,
    /// Whether something hot enough to light it is there.
    pub igniting: bool,
}

/// How it burns at a moment.
#[derive(Clone, Copy, Debug, Default)]
pub struct Burns {
    /// Share of the burners that burn.
    pub lit: f64,
    /// Heat set free, BTU/h.
    pub heat: f64,
    /// Times the air that the gas needs.
    pub air: f64,
    /// What the flame does.
    pub shape: Shape,
    /// How well the sensor's place is bathed, 0 to 1.
    pub bathed: f64,
    /// Oxygen in the dry flue gas as sampled, per cent.
    pub oxygen: f64,
    /// Carbon monoxide as read, ppm.
    pub co: f64,
}

/// The burners of a furnace.
#[derive(Clone, Copy, Debug)]
pub struct Flame {
    fuel: Fuel,
    rated: f64,
    /// Times the air the gas needs when all is right and hot.
    air: f64,
    base_co: f64,
    count: f64,
    /// Share of the burners that the flame can reach from the igniter.
    reach: f64,
    primary: f64,
    airy: f64,
    off_seat: f64,
    can_light: bool,
    lit: f64,
}

impl Flame {
    /// The burners of a furnace, for the gas that comes and the input they take in order, BTU/h.
    pub fn new(make: &Make, burners: &Burners, fuel: Fuel, rated: f64) -> Self {
        let count = (make.input / 22_000.0).round().clamp(2.0, 8.0);
        let plugged = if burners.orifice_plugged > 0.7 {
            f64::from(burners.plugged_burner).min(count - 1.0)
        } else {
            count
        };
        let crossing = if burners.out_of_line > 0.4 { 1.0 } else { count };
        Self {
            fuel,
            rated,
            air: fuel.air_for_oxygen(right_oxygen(make)),
            base_co: spread(make.seed, Own::Monoxide, 8.0, 35.0),
            count,
            reach: plugged.min(crossing) / count,
            primary: 1.0 - burners.dirty - 0.5 * burners.orifice_plugged / count,
            airy: 1.0 + burners.airy,
            off_seat: burners.out_of_line,
            can_light: burners.igniter_away < 0.5 && plugged > 0.0,
            lit: 0.0,
        }
    }

    /// Goes on by some seconds.
    pub fn step(&mut self, fed: &Fed, seconds: f64) -> Burns {
        let fire = fed.heat / self.rated;
        let fresh = fed.air * (1.0 - fed.flue_gas) * (1.0 - DISPLACES * fed.house_air);
        let air = self.air * fresh / (fire * self.fuel.air_per_heat).max(1e-3);
        let oxygen = self.fuel.oxygen(air, 0.0);
        let breathed = FRESH - fed.flue_gas * (FRESH - oxygen);
        if fire < 0.02
            || (fed.open && fed.pressure < TOO_WEAK)
            || (air < SMOTHERED && fire > 0.2)
            || breathed < VITIATED
        {
            self.lit = 0.0;
        } else if self.lit > 0.0 {
            self.lit = (self.lit + seconds / CROSSES / self.count).min(self.reach);
        } else if fed.igniting && self.can_light && fire > 0.08 && (fed.pressure > LIGHTS || !fed.open) {
            self.lit = (1.0 / self.count).min(self.reach);
        }
        if self.lit <= 0.0 {
            return Burns {
                oxygen: FRESH,
                air,
                ..Burns::default()
            };
        }
        let shape = self.shape(air, breathed, fed.pressure);
        let added = self.air * (fed.leak + fed.air * fed.house_air) / fire.max(1e-3);
        let sampled = self.fuel.oxygen(air, added);
        let heat = fed.heat * self.lit * air.min(1.0);
        Burns {
            lit: self.lit,
            heat,
            air,
            shape,
            bathed: self.bathed(shape, fire),
            oxygen: sampled,
            co: self.co_air_free(air, breathed, shape, fed.house_air) * (FRESH - sampled) / FRESH,
        }
    }

    fn shape(&self, air: f64, breathed: f64, pressure: f64) -> Shape {
        // A flame lifts where the gas leaves the ports faster than it burns: with much pressure, or slowed by flue gas.
        let lift = pressure.max(0.0).sqrt()
            * (FRESH / breathed).powi(4)
            * (self.primary / 0.95).min(1.0)
            * self.airy;
        if air < ROLLS_BACK {
            Shape::RollsBack
        } else if lift > 1.45 && air > 1.2 {
            Shape::Lifts
        } else if air < 1.12 || self.primary < 0.72 {
            Shape::Yellow
        } else {
            Shape::Blue
        }
    }

    fn bathed(&self, shape: Shape, fire: f64) -> f64 {
        // The sensor stands at the burner farthest from the igniter.
        if self.lit < 1.0 - 0.5 / self.count {
            return 0.0;
        }
        let high = ((fire - 0.3) / 0.3).clamp(0.0, 1.0);
        high * match shape {
            Shape::None => 0.0,
            Shape::Blue => 1.0,
            Shape::Yellow => 0.75,
            Shape::Lifts => 0.3,
            Shape::RollsBack => 0.5,
        }
    }

    fn co_air_free(&self, air: f64, breathed: f64, shape: Shape, house_air: f64) -> f64 {
        let short = 60.0 * ((1.22 - air) / 0.055).exp();
        let lazy = 900.0 * (1.0 - self.primary).max(0.0).powi(2);
        let metal = 700.0 * self.off_seat + 1_500.0 * house_air;
        let lifted = if shape == Shape::Lifts { 200.0 } else { 0.0 };
        let vitiated = (0.8 * (FRESH - breathed)).exp();
        ((self.base_co + short + lazy + metal + lifted) * vitiated).min(MOST_CO)
    }
}

/// Oxygen in the dry flue gas of this furnace in order and hot, per cent.
pub fn right_oxygen(make: &Make) -> f64 {
    spread(make.seed, Own::Oxygen, 6.2, 8.6)
}
