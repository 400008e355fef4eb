//! Furnaces in order: they run through their calls, answer whatever is registered, and show what a good one shows.

use proofwalk::bench::condition::Condition;
use proofwalk::bench::furnace::{Furnace, Run};
use proofwalk::bench::machine::{Machine, Truth};
use proofwalk::bench::make::{Make, Pilot};
use proofwalk::bench::probe::{self, Printed};
use proofwalk::bench::simulated::{Probes, Simulated};
use proofwalk::library::{Datum, Library};
use proofwalk::trade;

use crate::told::with;

/// Sound furnaces of every kind.
pub fn furnaces() -> impl Iterator<Item = Furnace> {
    (0..60).map(|seed| Furnace {
        make: Make::random(seed),
        condition: Condition::default(),
    })
}

pub fn sign(name: &str, furnace: &Furnace, run: &Run) -> Option<&'static str> {
    probe::sign(name).unwrap()(furnace, run)
}

pub fn reading(name: &str, furnace: &Furnace, run: &Run) -> Option<f64> {
    probe::reading(name).unwrap()(furnace, run)
}

#[test]
fn sound_furnaces_run_through() {
    for furnace in furnaces() {
        let run = furnace.run();
        for (name, value) in [
            ("inducer", "runs"),
            ("flame_after_ignition", "holds"),
            ("blower", "moves_air"),
            ("full_run", "runs_through"),
            ("three_cycles", "all_held"),
        ] {
            assert_eq!(
                sign(name, &furnace, &run),
                Some(value),
                "{name} of {:?}",
                furnace.make
            );
        }
        assert!(run.dropout.is_none() && run.resets == 0, "{:?}", furnace.make);
    }
}

/// The plate is printed for sea level, and whoever clocks a furnace takes 4 % off it for each 1000 ft above 2000 ft.
#[test]
fn sound_furnaces_burn_what_their_plate_allows_where_they_stand() {
    let mut high_above = 0;
    for furnace in furnaces() {
        let run = furnace.run();
        let of = |name| reading(name, &furnace, &run);
        let (Some(dial), Some(time), Some(heat)) = (of("meter_dial"), of("meter_time"), of("heating_value"))
        else {
            continue;
        };
        let Some(Printed::Number(plate)) = probe::plate("input").unwrap()(&furnace, &run) else {
            panic!("no input on {furnace:?}");
        };
        let altitude = of("altitude").unwrap();
        high_above += usize::from(altitude > 2_000.0);
        let allowed = plate * (1.0 - 0.04 * (altitude - 2_000.0).max(0.0) / 1_000.0);
        let over = dial / time * 3_600.0 * heat / allowed - 1.0;
        assert!(over.abs() < 0.05, "{over} {furnace:?}");
    }
    assert!(high_above > 0);
}

/// The bounds are those that the readings' own instructions call good: common practice.
#[test]
fn sound_furnaces_measure_as_good_ones_do() {
    let good: [(&str, f64, f64); 22] = [
        ("line_voltage", 108.0, 132.0),
        ("hot_to_ground", 108.0, 132.0),
        ("neutral_to_ground", 0.0, 2.0),
        ("line_to_cabinet", 1e6, f64::INFINITY),
        ("control_supply", 20.4, 26.4),
        ("transformer_secondary_unloaded", 20.4, 27.5),
        ("call_voltage", 20.4, 26.4),
        ("thermostat_r_to_w", 0.0, 2.0),
        ("interlock_voltage", 0.0, 2.0),
        ("cable_resistance", 1e6, f64::INFINITY),
        ("valve_circuit_resistance", 20.0, 200.0),
        ("limit_chain_voltage", 0.0, 2.0),
        ("pressure_switch_voltage", 0.0, 2.0),
        ("pressure_switch_voltage_at_rest", 20.4, 26.4),
        ("pressure_switch_voltage_at_dropout", 0.0, 2.0),
        ("valve_voltage_in_trial", 20.4, 26.4),
        ("valve_voltage_at_dropout", 20.4, 26.4),
        ("flame_current", 2.0, 10.0),
        ("standing_flame_signal", 0.0, 0.5),
        ("burner_ground", 0.0, 1.0),
        ("sensor_lead_resistance", 0.0, 1.0),
        ("sensor_insulation", 1e6, f64::INFINITY),
    ];
    for furnace in furnaces() {
        let run = furnace.run();
        for (name, low, high) in good {
            let Some(value) = reading(name, &furnace, &run) else {
                // Over a standing pilot a thermocouple watches, and no rod.
                assert_eq!(furnace.make.pilot(), Some(Pilot::Standing), "{name}");
                continue;
            };
            assert!(
                (low..high).contains(&value),
                "{name} {value} of {:?}",
                furnace.make
            );
        }
    }
}

#[test]
fn a_capacitor_under_load_works_out_to_its_label() {
    let formula = &trade::capacitance_under_load::FORMULA;
    let mut seen = 0;
    for furnace in furnaces() {
        let run = furnace.run();
        let (Some(amps), Some(volts)) = (
            reading("capacitor_current", &furnace, &run),
            reading("capacitor_voltage", &furnace, &run),
        ) else {
            continue;
        };
        let inputs = [format!("{amps} A"), format!("{volts} V"), "60 Hz".to_owned()];
        let inputs: Vec<&str> = inputs.iter().map(String::as_str).collect();
        let worked_out = formula.compute_typed(&inputs).unwrap().number_in(formula.result);
        // Run capacitors are made to within six per cent of their label, common practice.
        let label = furnace.make.blower_uf;
        assert!(
            (0.94 * label..1.06 * label).contains(&worked_out),
            "{worked_out} of {label}"
        );
        seen += 1;
    }
    assert!(seen > 10, "{seen}");
}

/// Every registered reading, sign and plate field can be asked of a simulated furnace, or it is said why none has it.
#[test]
fn whatever_the_library_registers_can_be_asked() {
    let library = with(None);
    let missing: Vec<&str> = (Probes::of(&library).missing())
        .filter(|name| probe::absent::reason(name).is_none())
        .collect();
    assert!(missing.is_empty(), "no probe for {missing:?}");
}

/// What is said to be absent is registered, and is never answered.
#[test]
fn what_no_furnace_has_is_registered_and_not_answered() {
    let library = with(None);
    let missing: Vec<&str> = Probes::of(&library).missing().collect();
    for name in probe::absent::names() {
        assert!(
            missing.contains(&name),
            "{name} is answered, or is not registered"
        );
    }
}

/// Every value that a probe gives for a sign is one that the library registers, at furnaces in order and at broken ones.
#[test]
fn signs_are_answered_in_the_librarys_own_words() {
    let library = with(None);
    let words = |sign: &str| -> Vec<&str> {
        let id = library.signs.find(sign).unwrap();
        library.signs[id]
            .values
            .iter()
            .map(|value| value.name.as_str())
            .collect()
    };
    for (index, fault) in proofwalk::bench::faults::all().enumerate() {
        let Some(make) = (0..1_000).map(Make::random).find(|make| (fault.fits)(make)) else {
            panic!("no furnace can have {}", fault.name);
        };
        let mut condition = Condition::default();
        (fault.strike)(&mut condition, &make, (index % 3) as f64 / 2.0);
        let furnace = Furnace { make, condition };
        let run = furnace.run();
        for name in library.signs.names() {
            let Some(probe) = probe::sign(name) else {
                continue;
            };
            if let Some(said) = probe(&furnace, &run) {
                assert!(words(name).contains(&said), "{name}: {said} with {}", fault.name);
            }
        }
    }
}

fn answered(library: &Library, machine: &mut impl Machine, name: &str) -> Option<Truth> {
    machine.ask(library.datum(name).unwrap())
}

#[test]
fn a_worked_out_reading_is_worked_out_by_its_formula() {
    let library = with(None);
    let probes = Probes::of(&library);
    for furnace in furnaces().take(5) {
        let mut machine = Simulated::new(&probes, furnace);
        let [supply, back, rise] = [
            "supply_air_temperature",
            "return_air_temperature",
            "temperature_rise",
        ]
        .map(|name| answered(&library, &mut machine, name));
        let (Some(Truth::Number(supply)), Some(Truth::Number(back)), Some(Truth::Number(rise))) =
            (supply, back, rise)
        else {
            panic!("{supply:?} {back:?} {rise:?}");
        };
        assert!(
            (supply - back - rise).abs() < 1e-6,
            "{supply} - {back} is not {rise}"
        );
    }
}

#[test]
fn work_mends_and_a_new_call_shows_it() {
    let library = with(None);
    let probes = Probes::of(&library);
    let mut furnace = furnaces().next().unwrap();
    furnace.condition.electric.sensing.coated = 0.95;
    let mut machine = Simulated::new(&probes, furnace);
    let signal = |machine: &mut Simulated| match answered(&library, machine, "flame_current") {
        Some(Truth::Number(current)) => current,
        other => panic!("{other:?}"),
    };
    assert!(signal(&mut machine) < 0.5);
    let clean = library
        .steps
        .iter()
        .position(|step| library.trees[step.tree].name == "flame-drops-out" && step.name == "clean");
    machine.work(proofwalk::library::Id::new(clean.unwrap()));
    assert!(signal(&mut machine) > 2.0);
    assert!(matches!(
        machine.ask(Datum::Sign(library.signs.find("full_run").unwrap())),
        Some(Truth::Value(_))
    ));
}
