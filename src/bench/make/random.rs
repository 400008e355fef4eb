//! Furnaces as they might stand in any basement: drawn at random, each of them consistent in itself.

use super::{Blower, Kind, Make, Taps};
use crate::bench::dice::Dice;

/// Sets the dice of kind and drain apart: a kind more changes no plate.
const MORE: u64 = 0x51d;

impl Make {
    /// A furnace drawn by a seed. Its plate hangs together as a maker's does: pressures go with the gas, the limit lies above
    /// the hottest supply air that the plate allows, the motor is as large as the air it moves.
    ///
    /// The figures are common practice: what is printed on plates and labels of residential furnaces.
    pub fn random(seed: u64) -> Self {
        let mut dice = Dice::new(seed);
        let propane = dice.chance(0.2);
        let condensing = dice.chance(0.6);
        let spark = dice.chance(0.15);
        let input = dice.one_of([
            40e3, 45e3, 60e3, 66e3, 70e3, 80e3, 88e3, 90e3, 100e3, 110e3, 120e3,
        ]);
        let efficiency = match condensing {
            true => dice.between(0.92, 0.97),
            false => dice.between(0.78, 0.82),
        };
        let (rise_min, rise_max) = match condensing {
            // A large one with a low rise would need more air than one blower moves.
            true if input >= 100e3 => dice.one_of([(35.0, 65.0), (40.0, 70.0)]),
            true => dice.one_of([(30.0, 60.0), (35.0, 65.0), (40.0, 70.0)]),
            false => dice.one_of([(35.0, 65.0), (40.0, 70.0), (45.0, 75.0)]),
        };
        let (inlet_min, inlet_max, manifold) = match propane {
            true => dice.one_of([(11.0, 13.0, 10.0), (11.0, 14.0, 10.0), (11.0, 13.6, 10.5)]),
            false => dice.one_of([
                (4.5, 10.5, 3.5),
                (4.5, 13.6, 3.5),
                (5.0, 14.0, 3.5),
                (4.5, 10.5, 3.3),
            ]),
        };
        let switch_taps = match condensing {
            true => dice.one_of([
                Taps::CollectorToRoom,
                Taps::CollectorToBurnerBox,
                Taps::AcrossChoke,
                Taps::BetweenCells,
            ]),
            false => dice.one_of([Taps::CollectorToRoom, Taps::CollectorToRoom, Taps::AcrossChoke]),
        };
        let inducer_commanded = dice.chance(0.2);
        let blower = match dice.below(10) {
            0..=4 => Blower::Tapped,
            5..=7 => Blower::ConstantTorque,
            _ => Blower::ConstantAirflow,
        };
        let (igniter_volts, igniter_ohm_min, igniter_ohm_max, igniter_amps) = igniter(&mut dice);
        let (blower_uf, blower_amps) = motor(&mut dice, input);
        let one_stage = Self {
            kind: Kind::OneStage,
            propane,
            condensing,
            input,
            efficiency: round(efficiency, 0.001),
            altitude: altitude(&mut dice),
            outdoor: dice.between(-15.0, 45.0).round(),
            indoor: dice.between(60.0, 72.0).round(),
            rise_min,
            rise_max,
            manifold,
            inlet_min,
            inlet_max,
            static_max: dice.one_of([0.5, 0.5, 0.5, 0.8]),
            // Some 30 °F between the air past the coil and what the disc feels near the exchanger.
            limit_opens: round(70.0 + rise_max + dice.between(25.0, 45.0), 5.0),
            switch_set_point: round(dice.between(0.4, 1.2), 0.05),
            switch_taps,
            spark,
            igniter_volts,
            igniter_ohm_min,
            igniter_ohm_max,
            igniter_amps,
            inducer_commanded,
            inducer_uf: (!inducer_commanded && dice.chance(0.3)).then(|| dice.one_of([3.0, 4.0, 5.0])),
            blower,
            blower_uf,
            blower_amps,
            fuse: dice.chance(0.85),
            condensate_pump: false,
            seed: dice.whole(),
        };
        one_stage.with_kind_and_drain()
    }

    fn with_kind_and_drain(self) -> Self {
        let mut dice = Dice::of(&[MORE, self.seed]);
        let kind = Kind::drawn(&mut dice, self.condensing, self.manifold);
        Self {
            kind,
            spark: self.spark || matches!(kind, Kind::Pilot(_)),
            condensate_pump: self.condensing && dice.chance(0.25),
            ..self
        }
    }
}

/// Most people live low; some do not.
fn altitude(dice: &mut Dice) -> f64 {
    let feet = match dice.below(10) {
        0..=6 => dice.between(0.0, 1500.0),
        7..=8 => dice.between(1500.0, 4500.0),
        _ => dice.between(4500.0, 8000.0),
    };
    round(feet, 10.0)
}

/// An igniter's volts, least and most cold resistance, and warm-up current: nitride, silicon carbide, and one for 24 V.
fn igniter(dice: &mut Dice) -> (f64, f64, f64, f64) {
    match dice.below(10) {
        0..=4 => (120.0, 11.0, 18.0, 1.2),
        5..=7 => (120.0, 40.0, 90.0, 4.0),
        8 => (80.0, 37.0, 68.0, 1.1),
        _ => (24.0, 2.0, 5.0, 3.0),
    }
}

/// A blower motor's capacitor and full-load current, by the air that it must move.
fn motor(dice: &mut Dice, input: f64) -> (f64, f64) {
    match input {
        ..50e3 => (dice.one_of([5.0, 7.5]), dice.one_of([4.4, 5.0])),
        50e3..85e3 => (dice.one_of([7.5, 10.0]), dice.one_of([5.7, 6.8])),
        _ => (dice.one_of([10.0, 15.0]), dice.one_of([8.4, 10.3])),
    }
}

fn round(number: f64, step: f64) -> f64 {
    // Divided by the number of steps in one, 0.05 gives 0.65 and not 0.65000000000000002 times something.
    match step < 1.0 {
        true => (number / step).round() / (1.0 / step).round(),
        false => (number / step).round() * step,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_furnace_hangs_together() {
        for seed in 0..2_000 {
            let make = Make::random(seed);
            assert!(make.rise_min < make.rise_max, "{make:?}");
            assert!(
                make.inlet_min < make.inlet_max && make.manifold < make.inlet_min,
                "{make:?}"
            );
            assert!(make.limit_opens > make.indoor + make.rise_max + 20.0, "{make:?}");
            assert!(make.igniter_ohm_min < make.igniter_ohm_max, "{make:?}");
            assert!(
                make.condensing || make.switch_taps != Taps::BetweenCells,
                "{make:?}"
            );
            assert!(!make.inducer_commanded || make.inducer_uf.is_none(), "{make:?}");
            // Airflow at the middle of the range, ft³/min, by the sensible heat of standard air (1.08): within what
            // furnaces of this size move, 300 to 2200 (common practice).
            let airflow = make.input * make.efficiency / (1.08 * (make.rise_min + make.rise_max) / 2.0);
            assert!((300.0..2200.0).contains(&airflow), "{airflow} {make:?}");
        }
    }

    #[test]
    fn a_seed_draws_one_furnace_and_another_seed_another() {
        assert_eq!(Make::random(3), Make::random(3));
        assert_ne!(Make::random(3), Make::random(4));
    }
}
