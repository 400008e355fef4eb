//! Pressures and inputs.

use super::call::{call, make, run};
use crate::bench::condition::Thermal;
use crate::bench::make::Make;
use crate::bench::process::Drive;
use crate::bench::thermal::Plant;
use crate::bench::thermal::condition::Shut;

fn steady(make: &Make, change: impl Fn(&mut Thermal)) -> crate::bench::thermal::Shown {
    let mut condition = Thermal::default();
    change(&mut condition);
    call(make, &condition).steady
}

/// Square-root law of orifice flow (elementary fluid mechanics): 3.2/3.5 in.w.c. → 0.956 of the input, as worked in the
/// register's `input_at_manifold_pressure`. Here by how far the regulator is set down, so to rounding.
#[test]
fn input_goes_with_the_root_of_the_pressure() {
    let right = steady(&make(), |_| ());
    let low = steady(&make(), |thermal| thermal.gas.regulator = 3.2 / 3.5 - 1.0);
    assert!((low.manifold / right.manifold - 3.2 / 3.5).abs() < 1e-9);
    assert!(
        (low.input / right.input - 0.956).abs() < 5e-4,
        "{}",
        low.input / right.input
    );
}

/// Common practice: propane through orifices for natural gas gives about 1.6 times the input at the same pressure, about
/// 2.8 times at its own 11 in.w.c. It burns 2.5 times the heat a cubic foot, and being 2.5 times as heavy it flows by the root
/// of that slower: 2.5 / sqrt(1.52 / 0.60) = 1.57; times sqrt(11 / 3.5) = 1.77. Heating value and density of natural gas vary,
/// so 5 %.
#[test]
fn propane_through_natural_gas_orifices_overfires() {
    let natural = make();
    let right = steady(&natural, |_| ());
    let same = steady(&natural, |thermal| thermal.gas.other_gas = true);
    let times = same.input / right.input;
    assert!((times / 1.57 - 1.0).abs() < 0.05, "{times}");

    let converted = Make {
        propane: true,
        manifold: 11.0,
        inlet_min: 11.5,
        inlet_max: 14.0,
        ..make()
    };
    let mut plant = Plant::new(&converted, &{
        let mut condition = Thermal::default();
        condition.burners.orifices_of_other_gas = true;
        condition
    });
    run(
        &mut plant,
        &Drive {
            inducer: 1.0,
            valve_fed: true,
            ..Drive::default()
        },
        10.0,
    );
    let right = steady(&converted, |_| ());
    // So much more flow costs pressure in pipe and valve; what the orifices do is told at the pressure that is left.
    let shown = plant.shown();
    let times = shown.input / right.input / (shown.manifold / right.manifold).sqrt();
    assert!((times / 2.78 - 1.0).abs() < 0.05, "{times}");
}

/// Common practice: a supply of 5 to 9 in.w.c. for natural gas, 11 to 14 for propane, and a drop of some tenths as gas flows.
#[test]
fn supplies_are_the_usual_ones() {
    for seed in 0..200 {
        let make = Make::random(seed);
        let mut plant = Plant::new(&make, &Thermal::default());
        let rest = plant.shown().inlet;
        let burning = Drive {
            inducer: 1.0,
            valve_fed: true,
            igniting: true,
            high_fed: true,
            pilot_fed: true,
            blower: 1.0,
        };
        run(&mut plant, &burning, 20.0);
        let flowing = plant.shown().inlet_lowest;
        let usual = if make.propane { 11.0..=14.0 } else { 5.0..=9.5 };
        assert!(
            usual.contains(&rest) && flowing < rest && rest - flowing < 0.8,
            "{rest} {flowing}"
        );
        assert!(flowing > make.inlet_min, "{flowing} {make:?}");
    }
}

/// A shut cock leaves the supply at the tap before the valve and takes it from the manifold; a shut main takes both.
#[test]
fn shut_gas_shows_where_it_is_shut() {
    let burning = Drive {
        inducer: 1.0,
        valve_fed: true,
        igniting: true,
        high_fed: true,
        pilot_fed: true,
        blower: 1.0,
    };
    for (shut, inlet) in [(Shut::AtFurnace, true), (Shut::Upstream, false)] {
        let mut condition = Thermal::default();
        condition.gas.shut = shut;
        let mut plant = Plant::new(&make(), &condition);
        run(&mut plant, &burning, 6.0);
        let shown = plant.shown();
        assert_eq!(
            (shown.inlet > 5.0, shown.manifold, shown.flame),
            (inlet, 0.0, 0.0),
            "{shut:?}"
        );
    }
}

/// A weak supply stands at rest and falls in flow; one that freezes falls in minutes; a valve that lets go falls while the
/// supply rises.
#[test]
fn supplies_and_valves_fail_in_their_own_ways() {
    let collapsed = steady(&make(), |thermal| thermal.gas.supply_drop = 40.0);
    assert!(collapsed.inlet_lowest < 4.5, "{collapsed:?}");

    let mut condition = Thermal::default();
    condition.gas.icing = 1.0;
    let frozen = call(&make(), &condition);
    assert!(
        frozen.before_blower.inlet > 4.0 && frozen.steady.inlet < 1.0,
        "{frozen:?}"
    );

    condition = Thermal::default();
    condition.gas.valve_lets_go = 0.5;
    let let_go = call(&make(), &condition);
    assert_eq!(let_go.before_blower.flame, 1.0);
    assert!(
        let_go.steady.manifold < 0.1 && let_go.steady.inlet > let_go.before_blower.inlet,
        "{let_go:?}"
    );
}
