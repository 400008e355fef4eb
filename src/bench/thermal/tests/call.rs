//! A call without an electric half: the sequence by the clock.

use crate::bench::condition::Thermal;
use crate::bench::make::{Blower, Kind, Make, Taps};
use crate::bench::process::{Drive, Process};
use crate::bench::thermal::{Plant, Shown};

/// A furnace of the trade's usual figures; tests change what they are about.
pub fn make() -> Make {
    Make {
        kind: Kind::OneStage,
        propane: false,
        condensing: false,
        input: 80_000.0,
        efficiency: 0.80,
        altitude: 0.0,
        outdoor: 30.0,
        indoor: 70.0,
        rise_min: 35.0,
        rise_max: 65.0,
        manifold: 3.5,
        inlet_min: 4.5,
        inlet_max: 10.5,
        static_max: 0.5,
        limit_opens: 170.0,
        switch_set_point: 0.6,
        switch_taps: Taps::CollectorToRoom,
        spark: false,
        igniter_volts: 120.0,
        igniter_ohm_min: 11.0,
        igniter_ohm_max: 18.0,
        igniter_amps: 1.2,
        inducer_commanded: false,
        inducer_uf: None,
        blower: Blower::Tapped,
        blower_uf: 10.0,
        blower_amps: 6.8,
        fuse: true,
        condensate_pump: false,
        seed: 7,
    }
}

/// The same, condensing.
pub fn condensing() -> Make {
    Make {
        condensing: true,
        efficiency: 0.95,
        ..make()
    }
}

/// What was seen at the moments of a call.
#[derive(Clone, Copy, Debug)]
pub struct Call {
    /// Just before the blower starts.
    pub before_blower: Shown,
    /// Half a minute after.
    pub after_blower: Shown,
    /// After ten minutes of fire.
    pub steady: Shown,
    /// Of those ten minutes, how long until the limit's disc reached its mark, s.
    pub trips_after: Option<f64>,
    /// What the electric half would sense at the end.
    pub sensed: Process,
}

/// Runs a call by the clock, with nothing that stops it.
pub fn call(make: &Make, condition: &Thermal) -> Call {
    let mut plant = Plant::new(make, condition);
    let purge = Drive {
        inducer: 1.0,
        ..Drive::default()
    };
    run(&mut plant, &purge, 30.0);
    let light = Drive {
        valve_fed: true,
        high_fed: true,
        pilot_fed: true,
        igniting: true,
        ..purge
    };
    run(&mut plant, &light, 4.0);
    let burn = Drive {
        igniting: false,
        ..light
    };
    run(&mut plant, &burn, 41.0);
    let before_blower = plant.shown();
    let heat = Drive { blower: 1.0, ..burn };
    run(&mut plant, &heat, 30.0);
    let after_blower = plant.shown();
    let mut trips_after = None;
    let mut sensed = Process::default();
    for second in 0..600 {
        sensed = plant.step(&heat, 1.0);
        if sensed.limit_temperature > make.limit_opens && trips_after.is_none() {
            trips_after = Some(f64::from(second));
        }
    }
    Call {
        before_blower,
        after_blower,
        steady: plant.shown(),
        trips_after,
        sensed,
    }
}

/// Goes on for some seconds, in steps of half a second.
pub fn run(plant: &mut Plant, drive: &Drive, seconds: f64) -> Process {
    let mut process = Process::default();
    for _ in 0..(2.0 * seconds) as usize {
        process = plant.step(drive, 0.5);
    }
    process
}
