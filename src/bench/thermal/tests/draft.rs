//! Draft at the switch by where it taps, and the laws of fans.

use super::call::{condensing, make};
use crate::bench::condition::Thermal;
use crate::bench::make::{Make, Taps};
use crate::bench::thermal::condition::{Flue, Inducer, Room};
use crate::bench::thermal::draft::{Draft, density, draft_of};

const ALL_TAPS: [Taps; 4] = [
    Taps::CollectorToRoom,
    Taps::CollectorToBurnerBox,
    Taps::AcrossChoke,
    Taps::BetweenCells,
];

/// Facts of the trade, which follow from what lies between the ports (common practice): what weakens (-) and what strengthens
/// (+) the draft that a switch sees: vent, intake, primary, secondary.
#[test]
fn what_a_blockage_does_depends_on_the_taps() {
    let signs = ["-+++", "--++", "----", "-++-"];
    let strikes: [fn(&mut Flue); 4] = [
        |flue| flue.terminal_blocked = 0.6,
        |flue| flue.intake_blocked = 0.6,
        |flue| flue.primary_sooted = 0.6,
        |flue| flue.secondary_plugged = 0.6,
    ];
    for (switch_taps, signs) in ALL_TAPS.into_iter().zip(signs) {
        let make = Make {
            switch_taps,
            ..condensing()
        };
        let (_, right) = draft_of(&make, &Thermal::default());
        for (strike, sign) in strikes.iter().zip(signs.chars()) {
            let mut condition = Thermal::default();
            strike(&mut condition.flue);
            let (_, blocked) = draft_of(&make, &condition);
            assert_eq!(
                blocked > right,
                sign == '+',
                "{switch_taps:?} {sign} {right} {blocked}"
            );
        }
    }
}

/// Fan laws (the register's `fan_pressure_at_speed`): pressure goes with the square of the speed. Cold, so that no stack helps.
#[test]
fn draft_goes_with_the_square_of_the_speed() {
    let make = make();
    let at = |speed: f64| {
        let mut draft = Draft::new(&make, &Flue::default(), &Inducer::default(), &Room::default());
        draft.step(speed, 0.0, 0.0, 1.0).at_ports
    };
    assert!((at(0.5) / at(1.0) - 0.25).abs() < 1e-9);
    assert_eq!(at(0.0), 0.0);
}

/// Common practice: hot draft is weaker than cold where the gas leaves hot, and a furnace in order keeps clear of its switch.
#[test]
fn furnaces_in_order_hold_their_switches() {
    let (cold, hot) = draft_of(&make(), &Thermal::default());
    assert!(hot < cold, "{hot} {cold}");
    for seed in 0..300 {
        let make = Make::random(seed);
        let (cold, hot) = draft_of(&make, &Thermal::default());
        let least = 1.15 * make.switch_set_point;
        assert!(
            cold > least && hot > least && hot < 3.0 * make.switch_set_point,
            "{cold} {hot} {make:?}"
        );
    }
}

/// Published: US Bureau of Reclamation, HVAC design guide, table 6a: air weighs 0.801 of standard at 6,000 ft, 0.743 at
/// 8,000. Rounding there.
#[test]
fn air_is_thin_on_mountains() {
    assert!((density(6_000.0) - 0.801).abs() < 2e-3);
    assert!((density(8_000.0) - 0.743).abs() < 2e-3);
}

/// What leaks in behind the exchanger weakens the draft at the collector and strengthens it across the choke.
#[test]
fn a_leak_into_the_collector_weakens_what_is_before_it() {
    let mut condition = Thermal::default();
    condition.inducer.gasket_leaks = 0.5;
    for (switch_taps, stronger) in [(Taps::CollectorToRoom, false), (Taps::AcrossChoke, true)] {
        let make = Make {
            switch_taps,
            ..condensing()
        };
        let (_, right) = draft_of(&make, &Thermal::default());
        let (_, leaking) = draft_of(&make, &condition);
        assert_eq!(leaking > right, stronger, "{switch_taps:?}");
    }
}
