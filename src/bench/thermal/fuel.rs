//! The two fuel gases.

use super::register::worked;
use super::spread::{Own, spread};
use crate::trade::{excess_air_natural, excess_air_propane};

/// Oxygen in dry air, per cent.
pub const FRESH: f64 = 20.946;

/// A fuel gas as it comes to a house.
#[derive(Clone, Copy, Debug)]
pub struct Fuel {
    /// Gross heating value, BTU/ft³ at sea level.
    pub heating_value: f64,
    /// Against air.
    pub specific_gravity: f64,
    /// Manifold pressure that orifices for it are sized for, where a plate does not say, in.w.c.
    pub usual_manifold: f64,
    /// Dry flue gas that burning it with just enough air leaves, for each volume of that air.
    pub dry: f64,
    /// Air that it takes for each BTU, against natural gas.
    pub air_per_heat: f64,
}

impl Fuel {
    /// Natural gas near a furnace of this seed; suppliers' heating values differ by place and season.
    pub fn natural(seed: u64) -> Self {
        Self {
            heating_value: spread(seed, Own::HeatingValue, 1_000.0, 1_050.0),
            specific_gravity: 0.60,
            usual_manifold: 3.5,
            dry: dry_for_air(worked(&excess_air_natural::FORMULA, [10.0], 81.6)),
            air_per_heat: 1.0,
        }
    }

    /// Propane.
    pub fn propane() -> Self {
        Self {
            heating_value: 2_500.0,
            specific_gravity: 1.52,
            usual_manifold: 10.0,
            dry: dry_for_air(worked(&excess_air_propane::FORMULA, [10.0], 84.0)),
            // Computed: 23.87 moles of air for 2,219 kJ a mole, against 9.56 for 901.
            air_per_heat: 1.014,
        }
    }

    /// Oxygen in the dry flue gas, per cent, at so many times the air that it needs (1 and more), with so much fresh air
    /// added behind the flame, in the same measure.
    pub fn oxygen(&self, air: f64, added: f64) -> f64 {
        let excess = (air - 1.0).max(0.0) + added;
        FRESH * excess / (self.dry + excess)
    }

    /// How many times the air that it needs leaves so much oxygen in the dry flue gas, per cent.
    pub fn air_for_oxygen(&self, oxygen: f64) -> f64 {
        1.0 + self.dry * oxygen / (FRESH - oxygen)
    }
}

/// From the excess air at 10 % of oxygen, per cent.
fn dry_for_air(excess: f64) -> f64 {
    excess / 100.0 * (FRESH - 10.0) / 10.0
}
