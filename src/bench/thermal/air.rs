//! House air: what the blower moves, and what it loses on the way.
//!
//! # Equations
//!
//! Every part of the way loses pressure with the square of the flow (the register's `static_at_airflow`). The blower of a
//! tapped or a constant-torque motor gives `pressure = shut_off * speed² - inner * flow²`, steeper for constant torque, so
//! that `flow = speed * sqrt(shut_off / (inner + losses))`; a constant-airflow motor holds its flow up to its most pressure.
//! Sensible heat: `rise = output / (1.08 * density * flow)`, the register's `airflow_from_rise`.
//!
//! # References
//!
//! - Of the static pressure on the plate, ducts made to measure lose: filter 20, coil 40, return 20 and supply 20 per cent at
//!   most (common practice).
//! - A tapped blower that gives 1600 ft³/min free, 1200 at 0.5 and 900 at 0.8 in.w.c.: memory, of the right order.

use super::condition::Air as Wrong;
use super::draft::density;
use super::register::worked;
use super::spread::{Own, spread};
use super::way::narrowed;
use crate::bench::make::{Blower, Make};
use crate::trade::standard_airflow_from_rise;

/// The most pressure at which a constant-airflow motor holds its flow, times the plate's static.
const HOLDS: f64 = 1.7;
/// What a wheel that turns the wrong way gives: share of its pressure.
const BACKWARD: f64 = 0.15;

/// Blower, filter, coil and ducts of a house.
#[derive(Clone, Copy, Debug)]
pub struct House {
    kind: Blower,
    /// Flow when all is right, ft³/min.
    pub made_for: f64,
    shut_off: f64,
    inner: f64,
    most: f64,
    filter: f64,
    coil: f64,
    return_duct: f64,
    supply_duct: f64,
    speed: f64,
    /// Heat that a ft³/min takes away, BTU/h for each °F.
    pub carries: f64,
}

/// Flow and static pressures at a moment.
#[derive(Clone, Copy, Debug, Default)]
pub struct Moved {
    /// ft³/min.
    pub airflow: f64,
    /// Suction between filter and blower, in.w.c.
    pub return_static: f64,
    /// Suction before the filter, in.w.c.
    pub return_duct_static: f64,
    /// Pressure between furnace and coil, in.w.c.
    pub supply_static: f64,
    /// Pressure after the coil, in.w.c.
    pub supply_duct_static: f64,
}

impl House {
    /// The air side of a furnace in a house made to measure for it, with what has become wrong.
    pub fn new(make: &Make, output: f64, wrong: &Wrong) -> Self {
        let seed = make.seed;
        let range = make.rise_max - make.rise_min;
        let rise = make.rise_min + spread(seed, Own::Rise, 0.35, 0.6) * range;
        let dense = density(make.altitude);
        let standard = worked(
            &standard_airflow_from_rise::FORMULA,
            [output, rise],
            output / (1.08 * rise),
        );
        let made_for = standard / dense;
        let of = |what: Own, share: f64| share * make.static_max * spread(seed, what, 0.55, 0.9);
        let (filter, coil) = (of(Own::FilterLoss, 0.2), of(Own::CoilLoss, 0.4));
        let (return_duct, supply_duct) = (of(Own::ReturnLoss, 0.2), of(Own::SupplyLoss, 0.2));
        let right = filter + coil + return_duct + supply_duct;
        let steep = if make.blower == Blower::Tapped { 2.3 } else { 3.5 };
        let shut_off = (steep * make.static_max).max(1.5 * right);
        let dirty = 1.0 - wrong.wheel_dirty;
        let per_flow = made_for.powi(2);
        let registers = 0.6 + 0.4 * narrowed(wrong.registers_closed);
        let (pressure, inner) = if wrong.wheel_backward {
            (BACKWARD, 2.0)
        } else {
            (1.0, 1.0)
        };
        Self {
            kind: make.blower,
            made_for,
            shut_off: shut_off * dirty * pressure,
            inner: (shut_off - right) / per_flow * inner / (dirty * dirty).max(0.01),
            most: HOLDS * make.static_max * dirty * pressure,
            filter: filter / per_flow * narrowed(wrong.filter_loaded) * narrowed(wrong.filter_small),
            coil: coil / per_flow * narrowed(wrong.coil_loaded),
            return_duct: return_duct / per_flow * narrowed(wrong.return_tight),
            supply_duct: supply_duct / per_flow * narrowed(wrong.supply_tight) * registers,
            speed: (1.0 - wrong.speed_low) * (1.0 - wrong.wheel_loose),
            carries: 1.08 * dense,
        }
    }

    /// What the blower moves at a share of what its motor can give.
    pub fn moves(&self, drive: f64) -> Moved {
        let losses = self.filter + self.coil + self.return_duct + self.supply_duct;
        let airflow = match self.kind {
            Blower::Tapped => self.speed * drive * (self.shut_off / (self.inner + losses)).sqrt(),
            // Pressure goes with torque, and speed with its root.
            Blower::ConstantTorque => self.speed * (drive * self.shut_off / (self.inner + losses)).sqrt(),
            Blower::ConstantAirflow => (self.made_for * drive * self.speed).min((self.most / losses).sqrt()),
        };
        let squared = airflow * airflow;
        Moved {
            airflow,
            return_static: (self.return_duct + self.filter) * squared,
            return_duct_static: self.return_duct * squared,
            supply_static: (self.coil + self.supply_duct) * squared,
            supply_duct_static: self.supply_duct * squared,
        }
    }
}
