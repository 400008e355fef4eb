//! Rise, limit and exchanger.

use super::call::{call, condensing, make, run};
use crate::bench::condition::Thermal;
use crate::bench::make::{Blower, Make};
use crate::bench::process::Drive;
use crate::bench::thermal::Plant;
use crate::bench::thermal::register::worked;
use crate::trade::airflow_from_rise;

/// Published: sensible heat of standard air, 1.08 BTU/h per ft³/min and °F (ASHRAE Handbook, Fundamentals; memory). The
/// input's efficiency may stray from the plate's by what excess air and an off-centre regulator do: 3 %.
#[test]
fn the_steady_rise_is_the_output_over_the_air() {
    for make in [
        make(),
        condensing(),
        Make {
            altitude: 5_000.0,
            ..make()
        },
    ] {
        let shown = call(&make, &Thermal::default()).steady;
        let rise = shown.supply_air - shown.return_air;
        let output = shown.input * make.efficiency;
        let airflow = worked(
            &airflow_from_rise::FORMULA,
            [output, rise, make.altitude, 70.0],
            0.0,
        );
        let off = (airflow / shown.airflow - 1.0).abs();
        assert!(off < 0.03, "{airflow} {shown:?}");
    }
}

/// Common practice: a furnace in order heats the air within the plate's range and does not trip its limit.
#[test]
fn furnaces_in_order_stay_within_their_plates() {
    for seed in 0..300 {
        let make = Make::random(seed);
        let call = call(&make, &Thermal::default());
        let shown = call.steady;
        let rise = shown.supply_air - shown.return_air;
        assert!(
            (make.rise_min..=make.rise_max).contains(&rise),
            "{make:?} {shown:?}"
        );
        assert!(call.trips_after.is_none(), "{make:?} {shown:?}");
        assert!(
            shown.return_static + shown.supply_static <= make.static_max,
            "{shown:?}"
        );
    }
}

/// Common practice: with little air the limit opens after some minutes, and without any within a few.
#[test]
fn limits_trip_where_the_air_fails() {
    for blower in [Blower::Tapped, Blower::ConstantTorque, Blower::ConstantAirflow] {
        let make = Make { blower, ..make() };
        let mut condition = Thermal::default();
        condition.air.filter_loaded = 0.93;
        let loaded = call(&make, &condition);
        assert!(
            loaded.trips_after.is_some_and(|after| after > 60.0),
            "{blower:?} {loaded:?}"
        );
    }
    let mut plant = Plant::new(&make(), &Thermal::default());
    let light = Drive {
        inducer: 1.0,
        valve_fed: true,
        igniting: true,
        high_fed: true,
        pilot_fed: true,
        blower: 0.0,
    };
    let mut after = 0.0;
    while run(&mut plant, &light, 1.0).limit_temperature < make().limit_opens {
        after += 1.0;
        assert!(after < 300.0, "{:?}", plant.shown());
    }
    assert!(
        after > 45.0,
        "a blower that starts after 30 to 45 s comes in time, not after {after} s"
    );
}

/// Common practice: an off-delay of 90 s and more carries the heat off; one of some seconds lets it soak into the limit.
#[test]
fn heat_soaks_into_the_limit_where_the_blower_stops_too_soon() {
    let hottest_after = |delay: f64| {
        let make = Make {
            limit_opens: 155.0,
            ..make()
        };
        let mut plant = Plant::new(&make, &Thermal::default());
        let heat = Drive {
            inducer: 1.0,
            valve_fed: true,
            igniting: true,
            high_fed: true,
            pilot_fed: true,
            blower: 1.0,
        };
        run(&mut plant, &heat, 600.0);
        run(
            &mut plant,
            &Drive {
                blower: 1.0,
                ..Drive::default()
            },
            delay,
        );
        let soak = (0..120).map(|_| run(&mut plant, &Drive::default(), 1.0).limit_temperature);
        soak.fold(0.0, f64::max)
    };
    assert!(hottest_after(120.0) < 155.0, "{}", hottest_after(120.0));
    assert!(hottest_after(5.0) > 155.0, "{}", hottest_after(5.0));
}

/// Arithmetic: the heat in steps of any length comes to the same, since each lag is carried over by its own exponential.
#[test]
fn long_steps_come_to_the_same() {
    let heat = Drive {
        inducer: 1.0,
        valve_fed: true,
        igniting: true,
        high_fed: true,
        pilot_fed: true,
        blower: 1.0,
    };
    let end = |step: f64| {
        let mut plant = Plant::new(&make(), &Thermal::default());
        run(&mut plant, &heat, 5.0);
        (0..(1_200.0 / step) as usize).for_each(|_| _ = plant.step(&heat, step));
        plant.shown()
    };
    let (fine, coarse) = (end(0.5), end(15.0));
    assert!(
        (fine.supply_air - coarse.supply_air).abs() < 0.5,
        "{fine:?} {coarse:?}"
    );
    assert!((fine.oxygen - coarse.oxygen).abs() < 0.05, "{fine:?} {coarse:?}");
}

/// A limit in a hot spot opens while rise, input and static are in range.
#[test]
fn turbulence_at_the_limit_leaves_the_rise_in_range() {
    let mut condition = Thermal::default();
    condition.air.hot_spot = 0.6;
    let call = call(&make(), &condition);
    let rise = call.steady.supply_air - call.steady.return_air;
    assert!(call.trips_after.is_some() && rise < make().rise_max, "{call:?}");
}
