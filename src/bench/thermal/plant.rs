//! The plant: what the electric half drives, and what it senses of it.

use super::condition::Thermal;
use super::shown::{Shape, Shown};
use crate::bench::make::Make;
use crate::bench::process::{Drive, Process};

/// Gas, flame, draft, air and heat of one furnace, in motion.
#[derive(Clone, Debug)]
pub struct Plant {
    condition: Thermal,
    shown: Shown,
    process: Process,
    manifold: f64,
    input: f64,
    set_point: f64,
    limit_opens: f64,
    rise: f64,
    indoor: f64,
}

impl Plant {
    /// A plant at rest and cold.
    pub fn new(make: &Make, condition: &Thermal) -> Self {
        Self {
            condition: *condition,
            shown: Shown::default(),
            process: Process::default(),
            manifold: make.manifold,
            input: make.input,
            set_point: make.switch_set_point,
            limit_opens: make.limit_opens,
            rise: (make.rise_min + make.rise_max) / 2.0,
            indoor: make.indoor,
        }
    }

    /// Goes on by some seconds.
    pub fn step(&mut self, drive: &Drive, seconds: f64) -> Process {
        let draft = 1.5 * self.set_point * drive.inducer * drive.inducer;
        let gas = drive.valve_fed && self.condition.gas.valve_stuck < 0.5;
        let lit = gas && (self.process.flame > 0.0 || drive.igniting);
        let flame = f64::from(u8::from(lit));
        let goal = match (lit, drive.blower > 0.0) {
            (true, true) => self.limit_opens - 30.0,
            (true, false) => 2.0 * self.limit_opens,
            _ => self.indoor,
        };
        let before = self.shown.limit.max(self.indoor);
        let limit = before + (goal - before) * (1.0 - (-seconds / 60.0).exp());
        self.shown = Shown {
            inlet: 7.0,
            inlet_lowest: 7.0,
            manifold: if gas { self.manifold } else { 0.0 },
            manifold_lowest: self.manifold,
            input: self.input * flame,
            flame,
            shape: if lit { Shape::Blue } else { Shape::None },
            draft_housing: draft,
            draft_switch: draft,
            draft_lowest: draft,
            oxygen: 7.5,
            co: 20.0,
            return_air: self.indoor,
            supply_air: self.indoor + self.rise * flame,
            limit,
            rollout: self.indoor,
            ..Shown::default()
        };
        self.process = Process {
            switch_draft: draft,
            flame,
            sensor_bathed: flame,
            limit_temperature: limit,
            rollout_temperature: self.indoor,
            return_air: self.shown.return_air,
            supply_air: self.shown.supply_air,
        };
        self.process
    }

    /// What could be seen and measured of it now.
    pub fn shown(&self) -> Shown {
        self.shown
    }
}
