//! Second stages, pilots, twins and condensate pumps show what the trade says of them (common practice, where no other source is
//! named), and the trees find what is wrong with them.

use proofwalk::bench::condition::Condition;
use proofwalk::bench::faults::{self, Fault};
use proofwalk::bench::furnace::{Furnace, Run};
use proofwalk::bench::make::{Kind, Make, Pilot, StagedBy};
use proofwalk::bench::simulated::{Probes, Simulated};
use proofwalk::bench::trials::{Outcome, Subject, ending, play};

use crate::sound::{reading, sign};
use crate::told::with;

/// Sound furnaces of one kind, and a call of each.
pub fn sound(is: impl Fn(&Make) -> bool) -> impl Iterator<Item = (Furnace, Run)> {
    let makes = (0..600).map(Make::random).filter(move |make| is(make)).take(20);
    makes.map(|make| {
        let furnace = Furnace {
            make,
            condition: Condition::default(),
        };
        let run = furnace.run();
        (furnace, run)
    })
}

fn fault(name: &str) -> &'static Fault {
    faults::all()
        .find(|fault| fault.name == name)
        .unwrap_or_else(|| panic!("no fault {name}"))
}

/// Furnaces with a fault, and a call of each.
pub fn struck(name: &str) -> impl Iterator<Item = (Furnace, Run)> {
    let fault = fault(name);
    let makes = (0..900)
        .map(|seed| (seed, Make::random(seed)))
        .filter(|(_, make)| (fault.fits)(make));
    makes.take(12).map(|(seed, make)| {
        let mut condition = Condition::default();
        (fault.strike)(&mut condition, &make, (seed % 5) as f64 / 4.0);
        let furnace = Furnace { make, condition };
        let run = furnace.run();
        (furnace, run)
    })
}

#[test]
fn two_stages_light_on_low_and_go_high() {
    let mut timers = 0;
    for (furnace, run) in sound(|make| make.staging().is_some()) {
        let staging = furnace.make.staging().unwrap();
        let (low, high) = (run.low.unwrap(), run.steady.unwrap());
        assert_eq!(sign("stage_problem", &furnace, &run), Some("both_work"));
        // Set within some per cent of the plate, on either stage.
        let manifold = reading("low_fire_manifold", &furnace, &run).unwrap();
        assert!(
            (manifold / staging.low_manifold - 1.0).abs() < 0.05,
            "{manifold} {staging:?}"
        );
        let manifold = reading("manifold_pressure", &furnace, &run).unwrap();
        assert!(
            (manifold / furnace.make.manifold - 1.0).abs() < 0.05,
            "{manifold}"
        );
        // The square-root law: half of the pressure is seven tenths of the fire.
        let fire = low.shown.input / high.shown.input;
        assert!(
            (fire - furnace.make.low_fire()).abs() < 0.03,
            "{fire} of {:?}",
            furnace.make
        );
        // A rise within the plate's range on both stages, since the blower slows with the fire; two minutes of it are too short.
        let low_is_steady = staging.by == StagedBy::Timer;
        for moment in [Some(low).filter(|_| low_is_steady), Some(high)]
            .into_iter()
            .flatten()
        {
            let rise = moment.shown.supply_air - moment.shown.return_air;
            assert!(
                (furnace.make.rise_min..=furnace.make.rise_max).contains(&rise),
                "{rise} {furnace:?}"
            );
        }
        // Low fire burns leaner, if anything.
        assert!(low.shown.oxygen > high.shown.oxygen - 0.2, "{low:?} {high:?}");
        // Draft goes with the square of the inducer's speed (fan laws).
        assert!(
            high.shown.draft_switch > 1.5 * low.shown.draft_switch,
            "{furnace:?}"
        );
        let call = reading("second_stage_call", &furnace, &run).unwrap();
        match staging.by {
            StagedBy::Thermostat => assert!((20.4..26.4).contains(&call), "{call}"),
            StagedBy::Timer => {
                timers += 1;
                assert_eq!(call, 0.0);
            }
        }
        assert!(reading("high_switch_voltage", &furnace, &run).unwrap() < 2.0);
        assert!(reading("second_stage_valve", &furnace, &run).unwrap() >= 20.4);
    }
    assert!(timers > 2, "{timers}");
}

/// Low fire burns clean, and a little leaner than high: common practice.
#[test]
fn low_fire_has_a_flue_gas_of_its_own() {
    for (furnace, run) in sound(|make| make.staging().is_some()) {
        let of = |name| reading(name, &furnace, &run).unwrap();
        assert!(of("low_fire_co") < 100.0, "{furnace:?}");
        assert!(of("low_fire_oxygen") > of("exhaust_oxygen") - 0.5, "{furnace:?}");
    }
    for (furnace, run) in sound(|make| make.staging().is_none()) {
        assert_eq!(reading("low_fire_co", &furnace, &run), None);
    }
}

#[test]
fn a_second_stage_that_never_comes_shows_where_it_is_held_up() {
    for (name, probe, bounds) in [
        ("second_stage_call_missing", "second_stage_call", 0.0..2.0),
        ("second_stage_draft", "high_switch_voltage", 20.4..26.4),
        ("inducer_stays_on_low", "high_switch_voltage", 20.4..26.4),
        ("second_stage_valve_wire", "second_stage_valve", 0.0..2.0),
        ("second_stage_valve_wire", "board_second_stage_output", 20.4..26.4),
        (
            "board_no_second_stage_output",
            "board_second_stage_output",
            0.0..2.0,
        ),
        ("second_stage_valve_stuck", "second_stage_valve", 20.4..26.4),
    ] {
        for (furnace, run) in struck(name) {
            assert_eq!(
                sign("stage_problem", &furnace, &run),
                Some("no_high"),
                "{name} {furnace:?}"
            );
            let volts = reading(probe, &furnace, &run).unwrap();
            assert!(bounds.contains(&volts), "{name}: {probe} {volts}");
            // It heats, by some seven tenths.
            assert_eq!(sign("full_run", &furnace, &run), Some("runs_through"), "{name}");
            let manifold = reading("manifold_pressure", &furnace, &run).unwrap();
            assert!(manifold < 0.6 * furnace.make.manifold, "{name}: {manifold}");
        }
    }
}

#[test]
fn a_flame_that_never_came_is_judged_by_the_figures_of_the_stage_it_should_light_on() {
    let library = with(None);
    let probes = Probes::of(&library);
    let manifold = library.datum("manifold").unwrap();
    for (furnace, _) in struck("igniter_open").filter(|(furnace, _)| furnace.make.staging().is_some()) {
        let low = furnace.make.staging().unwrap().low_manifold;
        let mut machine = Simulated::new(&probes, furnace);
        let printed = proofwalk::bench::machine::Machine::ask(&mut machine, manifold);
        assert_eq!(printed, Some(proofwalk::bench::machine::Truth::Number(low)));
    }
}

#[test]
fn pilots_in_order_burn_are_proved_and_light_the_burners() {
    for (furnace, run) in sound(|make| make.pilot().is_some()) {
        assert_eq!(sign("furnace_kind", &furnace, &run), Some("pilot"));
        assert_eq!(sign("pilot_flame", &furnace, &run), Some("steady"), "{furnace:?}");
        assert_eq!(
            sign("main_after_pilot", &furnace, &run),
            Some("light"),
            "{furnace:?}"
        );
        let connected = reading("pilot_signal", &furnace, &run);
        match furnace.make.pilot().unwrap() {
            Pilot::Standing => {
                // 10 mV and more connected, 25 to 35 mV alone.
                assert!((10.0..20.0).contains(&connected.unwrap()));
                let alone = reading("pilot_signal_open", &furnace, &run).unwrap();
                assert!((25.0..35.0).contains(&alone), "{alone}");
            }
            Pilot::OnCall => {
                assert_eq!(connected, None);
                assert_eq!(sign("pilot_spark", &furnace, &run), Some("sparks"));
            }
        }
    }
}

#[test]
fn a_pilot_that_is_not_held_gives_the_burners_no_gas_though_their_valve_is_fed() {
    for name in [
        "thermocouple_weak",
        "thermocouple_out_of_place",
        "pilot_circuit_bad",
        "pilot_valve_drops",
        "pilot_safety_open",
    ] {
        for (furnace, run) in struck(name) {
            assert_eq!(sign("pilot_flame", &furnace, &run), Some("goes_out"), "{name}");
            assert_eq!(
                sign("main_after_pilot", &furnace, &run),
                Some("nothing"),
                "{name}"
            );
            assert_eq!(run.lit, 0.0, "{name}");
        }
    }
    for (furnace, run) in struck("pilot_not_proved") {
        assert_eq!(sign("pilot_flame", &furnace, &run), Some("goes_out"));
        assert!(
            run.trial.is_none(),
            "the burners get gas over a pilot that is not proved"
        );
    }
    for (furnace, run) in struck("pilot_gas_short") {
        assert_eq!(sign("pilot_flame", &furnace, &run), Some("out"));
    }
}

#[test]
fn twins_hear_their_call_by_way_of_each_other() {
    for (furnace, run) in sound(|make| make.link().is_some()) {
        assert_eq!(sign("twin_state", &furnace, &run), Some("both_run"));
        assert!(reading("phase_voltage", &furnace, &run).unwrap() < 4.0);
    }
    for (furnace, run) in struck("twin_phase_wrong") {
        // About 48 V.
        let volts = reading("phase_voltage", &furnace, &run).unwrap();
        assert!((44.0..54.0).contains(&volts), "{volts}");
        assert_eq!(sign("twin_state", &furnace, &run), Some("one_runs"));
    }
    // What is common to both keeps both still.
    let twin = (0..600)
        .map(Make::random)
        .find(|make| matches!(make.kind, Kind::Twin(_)));
    let mut condition = Condition::default();
    (fault("thermostat_open").strike)(&mut condition, twin.as_ref().unwrap(), 0.5);
    let furnace = Furnace {
        make: twin.unwrap(),
        condition,
    };
    let run = furnace.run();
    assert_eq!(sign("twin_state", &furnace, &run), Some("none_runs"));
}

#[test]
fn a_pump_that_does_not_pump_opens_r_and_one_whose_switch_is_not_wired_runs_over() {
    for name in [
        "condensate_pump_dead",
        "condensate_pump_unfed",
        "condensate_line_plugged",
    ] {
        for (furnace, run) in struck(name) {
            assert_eq!(
                sign("inducer", &furnace, &run),
                Some("silent"),
                "{name} {furnace:?}"
            );
            assert_eq!(
                sign("open_interlock", &furnace, &run),
                Some("float_switch"),
                "{name}"
            );
            let across = reading("interlock_voltage", &furnace, &run).unwrap();
            assert!((20.4..26.4).contains(&across), "{name}: {across}");
        }
    }
    for (furnace, run) in struck("condensate_pump_overflows") {
        assert_eq!(sign("full_run", &furnace, &run), Some("runs_through"));
        assert_eq!(sign("condensate_place", &furnace, &run), Some("under_trap"));
    }
    for (furnace, run) in struck("condensate_pump_unwired") {
        // Nobody notices while it works.
        assert_eq!(sign("condensate_place", &furnace, &run), Some("none"));
        assert_eq!(sign("condensate_pump", &furnace, &run), Some("no_stop"));
    }
}

/// Every fault of these kinds, and how many of ten calls must end in the truth; the rest are handed on or not felt by anyone.
const FOUND: [(&str, usize); 31] = [
    ("second_stage_call_missing", 10),
    ("second_stage_setting", 10),
    ("second_stage_valve_wire", 10),
    ("second_stage_draft", 10),
    ("inducer_stays_on_low", 10),
    ("second_stage_valve_stuck", 10),
    ("board_no_second_stage_output", 10),
    ("low_fire_set_high", 9),
    ("low_fire_set_low", 9),
    ("pilot_dirty", 9),
    ("pilot_gas_short", 10),
    ("thermocouple_out_of_place", 10),
    ("thermocouple_weak", 10),
    ("pilot_valve_drops", 10),
    ("pilot_circuit_bad", 10),
    ("pilot_no_spark", 9),
    ("pilot_safety_open", 10),
    ("pilot_chain_contact", 10),
    ("pilot_spark_lead", 10),
    ("pilot_spark_gap", 10),
    ("pilot_not_proved", 10),
    ("twin_phase_wrong", 10),
    ("twin_link_broken", 10),
    ("twin_boards_differ", 10),
    ("twin_kit_dead", 10),
    ("condensate_pump_dead", 9),
    ("condensate_pump_unfed", 9),
    ("condensate_line_plugged", 9),
    ("condensate_pump_unwired", 9),
    ("condensate_pump_overflows", 10),
    ("condensate_pump_leaks", 10),
];

#[test]
fn a_tree_finds_each_of_them_and_condemns_nothing_else() {
    let library = with(None);
    let probes = Probes::of(&library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    for (name, least) in FOUND {
        let subject = Subject::One(fault(name));
        let calls: Vec<_> = (0..10)
            .map(|seed| play(&library, subject, seed, build).unwrap().unwrap())
            .collect();
        let count = |outcome| calls.iter().filter(|call| call.outcome == outcome).count();
        let ended: Vec<_> = calls
            .iter()
            .map(|call| ending(&library, &call.walked).name().to_owned())
            .collect();
        assert_eq!(count(Outcome::Wrong), 0, "{name}: {ended:?}");
        assert!(count(Outcome::Right) >= least, "{name}: {ended:?}");
    }
}
