//! Condensate, from the secondary exchanger through the trap.
//!
//! # Equations
//!
//! Water condenses by how far below its dew point the gas leaves: the register's `condensed_share_natural` and `…_propane`
//! give the share, `condensate_natural` and `…_propane` the gallons. How cold the gas must leave for an efficiency follows from
//! the same share: of the gross heat about 10 % is latent, and what has not condensed is lost with the little sensible heat.
//!
//! # References
//!
//! - What collectors and traps hold and let off: memory, of the right order.

use super::condition::Flue;
use super::flame::right_oxygen;
use super::register::worked;
use crate::bench::make::Make;
use crate::trade::{
    condensate_natural, condensate_propane, condensed_share_natural, condensed_share_propane,
};

/// Flue gas at 7 % of oxygen leaves so warm, °F, where the whole keeps 92 % of the gross heat, and so much colder, °F, for each
/// further share that is kept: computed with the formulas named above.
const LEAVES: f64 = 115.0;
const COLDER: f64 = 540.0;
/// What a collector holds, gallons.
const HOLDS: f64 = 0.06;
/// What an open trap lets off, times what a furnace makes.
const LETS_OFF: f64 = 4.0;

/// Water in the collector.
#[derive(Clone, Copy, Debug)]
pub struct Water {
    /// Share of the collector that fills in a second of full fire.
    fills: f64,
    /// The same, that runs off.
    drains: f64,
    level: f64,
}

impl Water {
    /// The collector of a furnace, as its last call left it.
    pub fn new(make: &Make, flue: &Flue) -> Self {
        if !make.condensing {
            return Self {
                fills: 0.0,
                drains: 1.0,
                level: 0.0,
            };
        }
        let fills = made(make) / 3_600.0 / HOLDS;
        let drains = LETS_OFF * fills * (1.0 - flue.trap_blocked);
        // What earlier calls left, less what has seeped away between them.
        let backs_up = drains < fills;
        Self {
            fills,
            drains,
            level: if backs_up { 0.55 * flue.trap_blocked } else { 0.0 },
        }
    }

    /// Goes on by some seconds at a share of the rated fire; gives the share of the collector that is under water.
    pub fn step(&mut self, fire: f64, seconds: f64) -> f64 {
        let change = (self.fills * fire - self.drains * self.level.min(1.0).sqrt()) * seconds;
        self.level = (self.level + change).clamp(0.0, 0.95);
        self.level
    }
}

/// What a condensing furnace in order lets drip, gal/h.
pub fn made(make: &Make) -> f64 {
    let leaves = (LEAVES - COLDER * (make.efficiency - 0.92)).clamp(75.0, 140.0);
    let (share, condensate) = if make.propane {
        (&condensed_share_propane::FORMULA, &condensate_propane::FORMULA)
    } else {
        (&condensed_share_natural::FORMULA, &condensate_natural::FORMULA)
    };
    let share = worked(share, [right_oxygen(make), leaves], 50.0).max(5.0);
    worked(condensate, [make.input, share], 0.5)
}
