//! The plant: what the electric half drives, and what it senses of it.

use std::f64::consts::TAU;

use super::air::House;
use super::condition::Thermal;
use super::draft::Draft;
use super::flame::{Burns, Fed, Flame};
use super::gas::GasTrain;
use super::heat::{Heat, kept, towards};
use super::orifices::Orifices;
use super::pilot::PilotBurner;
use super::pump::Pump;
use super::room::Surroundings;
use super::shown::Shown;
use super::switch::Carried;
use super::water::Water;
use crate::bench::make::Make;
use crate::bench::process::{Drive, Process};

/// Seconds in which a rollout disc warms up.
const ROLLOUT: f64 = 12.0;
/// Times its need of air below which flame begins to come out of the tubes, and at which most of it does.
const OUT: f64 = 0.92;
const ALL_OUT: f64 = 0.75;
/// Seconds over which a technician watches whether the CO rises.
const WATCHES: f64 = 240.0;
/// Seconds for which a draft gauge swings after the inducer has started.
const GAUGE_SWINGS: f64 = 10.0;
/// Seconds after which a pulsing draft has come round: no multiple of the steps that a steady plant is stepped by.
const PULSE: f64 = 4.3;

/// Gas, flame, draft, air and heat of one furnace, in motion.
#[derive(Clone, Debug)]
pub struct Plant {
    gas: GasTrain,
    draft: Draft,
    carried: Carried,
    water: Water,
    pump: Pump,
    pilot: PilotBurner,
    surroundings: Surroundings,
    flame: Flame,
    house: House,
    heat: Heat,
    rated: f64,
    efficiency: f64,
    cracked: f64,
    room: f64,
    plate_manifold: f64,
    turning_for: f64,
    co_before: f64,
    burns: Burns,
    shown: Shown,
}

impl Plant {
    /// A plant at rest and cold.
    pub fn new(make: &Make, condition: &Thermal) -> Self {
        let Thermal {
            gas,
            burners,
            flue,
            inducer,
            hoses,
            air,
            room,
            pump,
        } = condition;
        let orifices = Orifices::new(make, gas, burners);
        let train = GasTrain::new(make, gas, &orifices);
        let house = House::new(make, orifices.rated * make.efficiency, air);
        Self {
            draft: Draft::new(make, flue, inducer, room),
            carried: Carried::new(hoses, inducer),
            water: Water::new(make, flue),
            pump: Pump::new(make, flue, pump),
            pilot: PilotBurner::new(make, gas, train.at_rest()),
            surroundings: Surroundings::new(make, flue, room),
            flame: Flame::new(make, burners, orifices.fuel, orifices.rated),
            heat: Heat::new(make, house.made_for, house.carries, air),
            rated: orifices.rated,
            efficiency: make.efficiency,
            cracked: flue.cracked,
            room: make.indoor,
            plate_manifold: make.manifold,
            turning_for: 0.0,
            co_before: 0.0,
            burns: Burns::default(),
            shown: Shown {
                inlet: train.at_rest(),
                inlet_lowest: train.at_rest(),
                return_air: make.indoor,
                supply_air: make.indoor,
                limit: make.indoor,
                rollout: make.indoor,
                exchanger: make.indoor,
                ..Shown::default()
            },
            gas: train,
            house,
        }
    }

    /// Goes on by some seconds: at most a few while things change, more when they are steady.
    pub fn step(&mut self, drive: &Drive, seconds: f64) -> Process {
        let fire = self.burns.heat / self.rated;
        let water = self.water.step(fire, seconds);
        let drawn = self.draft.step(drive.inducer, fire, water, seconds);
        let moved = self.house.moves(drive.blower);
        let high_water = self.pump.step(fire, seconds);
        let pilot = self.pilot.step(drive);
        let fed = drive.valve_fed && self.pilot.lets_gas();
        let flow = self.gas.step(fed, drive.high_fed, seconds);
        // House air is pressed through a crack by the blower, and drawn through it by the inducer.
        let through = self.cracked * (moved.supply_static + 0.25 * drawn.suction).max(0.0).sqrt();
        let fed = Fed {
            heat: flow.heat,
            pressure: flow.manifold / self.plate_manifold,
            open: drive.valve_fed,
            air: drawn.air,
            flue_gas: self.surroundings.step(self.burns.lit > 0.0, seconds),
            house_air: through.min(0.6),
            leak: drawn.leak,
            igniting: self.pilot.lights(drive.igniting),
        };
        let burns = self.flame.step(&fed, seconds);
        let kept = burns.heat * kept(self.efficiency, burns.air);
        let temperatures = self.heat.step(kept, moved.airflow, seconds);
        let turns = drive.inducer > 0.0;
        self.turning_for = if turns { self.turning_for + seconds } else { 0.0 };
        self.co_before = towards(self.co_before, burns.co, seconds, WATCHES);
        let rollout = towards(
            self.shown.rollout,
            self.at_rollout(&burns, fire),
            seconds,
            ROLLOUT,
        );
        let (draft_housing, draft_switch, felt) = self.carried.of(drawn.at_ports);
        self.burns = burns;
        self.shown = Shown {
            inlet: flow.inlet,
            inlet_lowest: flow.inlet_lowest,
            manifold: flow.manifold,
            manifold_lowest: flow.manifold_lowest,
            input: flow.heat,
            // What leaks through an unfed valve burns at the orifices, out of sight of the sensor.
            flame: if drive.valve_fed { burns.lit } else { 0.0 },
            shape: burns.shape,
            draft_housing,
            draft_switch,
            draft_lowest: self.lowest(draft_switch),
            draft_wavers: drawn.wavers,
            oxygen: burns.oxygen,
            co: burns.co,
            co_rises: burns.co > 100.0 && burns.co > 1.1 * self.co_before,
            house_air: fed.house_air,
            airflow: moved.airflow,
            return_static: moved.return_static,
            return_duct_static: moved.return_duct_static,
            supply_static: moved.supply_static,
            supply_duct_static: moved.supply_duct_static,
            return_air: temperatures.return_air,
            supply_air: temperatures.supply_air,
            limit: temperatures.limit,
            rollout,
            exchanger: temperatures.exchanger,
            water,
            pilot,
            runs_over: self.pump.runs_over(),
            room_co: self.surroundings.co(&burns),
        };
        self.sensed(felt, high_water)
    }

    /// What could be seen and measured of it now.
    pub fn shown(&self) -> Shown {
        self.shown
    }

    /// What the electric half senses, where the switch feels so much draft, in.w.c.
    fn sensed(&self, felt: f64, high_water: bool) -> Process {
        let swing = (self.turning_for * TAU / PULSE).sin();
        Process {
            switch_draft: felt * (1.0 + self.shown.draft_wavers * swing),
            flame: self.shown.flame,
            sensor_bathed: self.pilot.bathes(self.burns.bathed),
            pilot: self.shown.pilot,
            high_water,
            limit_temperature: self.shown.limit,
            rollout_temperature: self.shown.rollout,
            return_air: self.shown.return_air,
            supply_air: self.shown.supply_air,
        }
    }

    /// What the rollout disc comes to, °F: it sees the burners, and flame that comes out of the tubes.
    fn at_rollout(&self, burns: &Burns, fire: f64) -> f64 {
        let out = ((OUT - burns.air) / (OUT - ALL_OUT)).clamp(0.0, 1.0) * burns.lit;
        self.room + 60.0 * fire.min(3.0) + 400.0 * out * (fire / 0.3).min(1.0)
    }

    /// The lowest draft at the tees since the gauge came to rest.
    fn lowest(&self, draft: f64) -> f64 {
        if self.turning_for <= GAUGE_SWINGS {
            draft
        } else {
            self.shown.draft_lowest.min(draft)
        }
    }
}
