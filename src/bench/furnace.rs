//! A furnace: its two halves stepped through one call for heat.

mod run;
mod watch;

pub use run::{Dropout, Extremes, Moment, Run};

use super::condition::Condition;
use super::electric::{Controls, Latched, Phase, Sound};
use super::make::Make;
use super::process::Process;
use super::thermal::Plant;
use watch::Watch;

/// A furnace as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Furnace {
    /// What it was built and set up as.
    pub make: Make,
    /// What is broken in it.
    pub condition: Condition,
}

/// How long a call is kept up from the flame on, s: ten minutes and more, as a rise is measured.
const CALL: f64 = 900.0;

/// How long a stuck sequence is watched, s: a technician gives the inducer two minutes, and half a minute to full speed.
const PATIENCE: f64 = 45.0;

/// How long after the blower's stop heat may still open a limit, s.
const SOAK: f64 = 150.0;

impl Furnace {
    /// One call for heat from cold, door switch held, with what every probe would have shown.
    ///
    /// It was called for heat before, so what that call blew or tripped is blown or tripped. The run ends where the
    /// sequence first fails, or with the call.
    pub fn run(&self) -> Run {
        let sound = Sound::of(&self.make);
        let first = self.call(sound, Latched::default());
        match first.latched == Latched::default() {
            true => first,
            false => self.call(sound, first.latched),
        }
    }

    fn call(&self, sound: Sound, latched: Latched) -> Run {
        let mut controls = Controls::new(&self.make, &self.condition.electric, sound, latched);
        let mut plant = Plant::new(&self.make, &self.condition.thermal);
        let air = self.make.airflow();
        let mut process = plant.step(&Default::default(), 1.0);
        // What runs without a call has been running all the while.
        for _ in 0..3 {
            let flow = plant.shown().airflow / air;
            let drive = controls.step(&process, flow, false, 5.0);
            process = plant.step(&drive, 5.0);
        }
        let mut watch = Watch::new(sound);
        let mut seconds = 1.0;
        loop {
            let flow = plant.shown().airflow / air;
            let drive = controls.step(&process, flow, watch.wants_heat(), seconds);
            process = plant.step(&drive, seconds);
            let ended = watch.see(&controls, &process, plant.shown(), seconds);
            if ended || watch.is_over() {
                return watch.into_run(&controls);
            }
            seconds = pace(&controls, &process, watch.still());
        }
    }
}

/// How far the next step may go, s: short while things change, longer the longer nothing has.
fn pace(controls: &Controls, process: &Process, still: f64) -> f64 {
    match controls.phase() {
        Phase::Heat if process.flame > 0.0 => match still {
            ..60.0 => 2.0,
            60.0..150.0 => 5.0,
            150.0..300.0 => 10.0,
            _ => 15.0,
        },
        Phase::Trial | Phase::Heat => 1.0,
        Phase::WarmUp if controls.elapsed() > 2.0 => 2.0,
        Phase::Prepurge | Phase::Draft if controls.elapsed() > 2.0 => 3.0,
        Phase::Idle | Phase::Limit | Phase::Postpurge if controls.elapsed() > 2.0 => 10.0,
        _ => 1.0,
    }
}
