//! Each electric fault shows at the probes as the trade says: common practice, where no other source is named.

use proofwalk::bench::condition::Condition;
use proofwalk::bench::faults;
use proofwalk::bench::furnace::Furnace;
use proofwalk::bench::make::Make;

use crate::sound::{reading, sign};

/// What a probe must show.
enum Shows {
    /// A reading below so much.
    Below(&'static str, f64),
    /// A reading of at least so much.
    AtLeast(&'static str, f64),
    /// A sign's value.
    Is(&'static str, &'static str),
}

use Shows::{AtLeast, Below, Is};

/// Holds a fault, at many furnaces and severities, against what must be shown.
fn shows(name: &str, expected: &[Shows]) {
    let fault = faults::all().find(|fault| fault.name == name);
    let fault = fault.unwrap_or_else(|| panic!("no fault {name}"));
    let mut struck = 0;
    for seed in 0..60 {
        let make = Make::random(seed);
        // Behind a pilot the sequence is another, and what comes by way of a twin is cut off there: see `kinds`.
        let other = make.pilot().is_some() || make.link().is_some();
        if other || !(fault.fits)(&make) {
            continue;
        }
        struck += 1;
        let mut condition = Condition::default();
        (fault.strike)(&mut condition, &make, (seed % 5) as f64 / 4.0);
        let furnace = Furnace { make, condition };
        let run = furnace.run();
        for expected in expected {
            let holds = match *expected {
                Below(probe, bound) => reading(probe, &furnace, &run).is_some_and(|value| value < bound),
                AtLeast(probe, bound) => reading(probe, &furnace, &run).is_some_and(|value| value >= bound),
                Is(probe, value) => sign(probe, &furnace, &run) == Some(value),
            };
            let shown = match *expected {
                Below(probe, _) | AtLeast(probe, _) => {
                    format!("{probe} {:?}", reading(probe, &furnace, &run))
                }
                Is(probe, _) => format!("{probe} {:?}", sign(probe, &furnace, &run)),
            };
            assert!(holds, "{name}, furnace {seed}: {shown}");
        }
    }
    assert!(struck > 0, "no furnace can have {name}");
}

/// Off the scale of an ohmmeter, Ω.
const OFF_SCALE: f64 = 1e6;

#[test]
fn line_voltage_is_lost_where_it_is_cut() {
    let dead = [Below("line_voltage", 20.0), Is("inducer", "silent")];
    for name in ["feed_dead", "switched_off", "breaker_tripped", "line_short"] {
        shows(name, &dead);
        shows(name, &[Below("supply_at_furnace", 20.0)]);
    }
    shows("switched_off", &[Is("breaker", "switch_open")]);
    shows(
        "breaker_tripped",
        &[Is("breaker", "tripped"), AtLeast("line_to_cabinet", 1_000.0)],
    );
    shows(
        "line_short",
        &[Is("breaker", "tripped"), Below("line_to_cabinet", 1_000.0)],
    );
    shows("door_switch_open", &dead);
    shows(
        "door_switch_open",
        &[
            AtLeast("supply_at_furnace", 108.0),
            Below("door_switch_output", 20.0),
        ],
    );
    shows("line_wire", &dead);
    shows("line_wire", &[AtLeast("door_switch_output", 108.0)]);
    // With the switch held by hand everything runs; only the door shows it.
    shows(
        "door_not_pressing",
        &[
            AtLeast("line_voltage", 108.0),
            Is("inducer", "silent"),
            Is("door_fit", "short"),
        ],
    );
}

#[test]
fn a_sagging_line_takes_the_control_voltage_with_it() {
    for name in ["low_line_voltage", "supply_neutral"] {
        shows(
            name,
            &[Below("line_voltage", 108.0), Below("control_supply", 20.4)],
        );
        shows(name, &[Is("three_cycles", "one_failed")]);
    }
}

#[test]
fn without_a_way_back_by_ground_a_good_flame_gives_no_signal() {
    for name in [
        "generator_not_bonded",
        "ground_lost",
        "polarity_reversed",
        "burner_ground_bad",
    ] {
        shows(
            name,
            &[Below("flame_current", 1.5), Below("flame_current_good_rod", 1.5)],
        );
        shows(
            name,
            &[
                Is("dropout_time", "within_seconds"),
                AtLeast("line_voltage", 108.0),
            ],
        );
    }
    shows(
        "polarity_reversed",
        &[AtLeast("neutral_to_ground", 90.0), Below("hot_to_ground", 20.0)],
    );
    shows(
        "ground_lost",
        &[Below("hot_to_ground", 108.0), AtLeast("burner_ground", 1.0)],
    );
    shows(
        "generator_not_bonded",
        &[Below("hot_to_ground", 108.0), Below("burner_ground", 1.0)],
    );
    shows(
        "burner_ground_bad",
        &[AtLeast("hot_to_ground", 108.0), AtLeast("burner_ground", 1.0)],
    );
}

#[test]
fn control_voltage_is_lost_at_transformer_fuse_or_load() {
    for name in ["transformer_dead", "transformer_weak"] {
        shows(
            name,
            &[
                AtLeast("transformer_primary", 108.0),
                Below("transformer_secondary_unloaded", 20.4),
            ],
        );
        shows(name, &[Below("control_supply", 20.4)]);
    }
    shows(
        "transformer_feed",
        &[Below("transformer_primary", 20.0), AtLeast("line_voltage", 108.0)],
    );
    shows(
        "transformer_wrong_tap",
        &[Is("transformer_tap", "wrong"), Below("control_supply", 20.4)],
    );
    shows(
        "secondary_overloaded",
        &[
            AtLeast("transformer_secondary_unloaded", 20.4),
            Below("control_supply", 20.4),
        ],
    );
    for (name, circuit) in [
        ("cable_shorted", "cable_resistance"),
        ("cooling_circuit_shorted", "cooling_circuit_resistance"),
        ("accessory_shorted", "accessory_circuit_resistance"),
        ("valve_wire_shorted", "valve_circuit_resistance"),
        ("gas_valve_coil_shorted", "valve_coil_resistance"),
    ] {
        shows(name, &[Below(circuit, 3.0), Below("control_supply", 5.0)]);
    }
    shows("valve_wire_shorted", &[AtLeast("valve_coil_resistance", 3.0)]);
    shows(
        "fuse_blown_once",
        &[Is("low_voltage_fuse", "blown"), AtLeast("cable_resistance", 3.0)],
    );
}

#[test]
fn a_call_is_lost_at_thermostat_cable_or_interlock() {
    for name in [
        "thermostat_open",
        "thermostat_blank",
        "thermostat_settings",
        "batteries_flat",
        "cable_broken",
        "cable_joint",
    ] {
        shows(
            name,
            &[
                Below("call_voltage", 20.4),
                AtLeast("control_supply", 20.4),
                Is("inducer", "silent"),
            ],
        );
    }
    shows(
        "thermostat_open",
        &[
            Is("thermostat_screen", "calling"),
            AtLeast("thermostat_r_to_w", 15.0),
        ],
    );
    shows(
        "thermostat_blank",
        &[
            Is("thermostat_screen", "blank"),
            AtLeast("thermostat_supply", 20.4),
        ],
    );
    shows("thermostat_settings", &[Is("thermostat_screen", "not_calling")]);
    shows(
        "batteries_flat",
        &[
            Is("thermostat_batteries", "flat"),
            Is("thermostat_screen", "blank"),
        ],
    );
    shows(
        "thermostat_base_contact",
        &[
            Is("thermostat_screen", "calling"),
            AtLeast("thermostat_r_to_w", 2.0),
        ],
    );
    // Half of the joints sit in R, where the thermostat's own current shows them, and half in W.
    shows(
        "cable_joint",
        &[Below("call_voltage", 12.0), Is("inducer", "silent")],
    );
    for (name, device) in [
        ("drain_backs_up", "float_switch"),
        ("float_switch_bad", "float_switch_dry"),
        ("interlock_alarm", "co_or_leak"),
        ("zone_panel_open", "panel_or_end_switch"),
    ] {
        shows(
            name,
            &[AtLeast("interlock_voltage", 2.0), Is("open_interlock", device)],
        );
        shows(name, &[Below("thermostat_supply", 5.0)]);
    }
}

#[test]
fn a_board_that_fails_has_its_inputs_and_not_its_output() {
    let inputs = || {
        [
            AtLeast("call_voltage", 20.4),
            Below("limit_chain_voltage", 2.0),
            AtLeast("control_supply", 20.4),
        ]
    };
    shows("board_no_inducer_output", &inputs());
    shows(
        "board_no_inducer_output",
        &[Below("board_inducer_output", 90.0), Is("inducer", "silent")],
    );
    shows("board_no_igniter_output", &inputs());
    shows(
        "board_no_igniter_output",
        &[
            Below("pressure_switch_voltage", 2.0),
            Below("board_igniter_output", 10.0),
        ],
    );
    shows("board_no_valve_output", &inputs());
    shows(
        "board_no_valve_output",
        &[
            Below("board_valve_output_in_trial", 18.0),
            Is("flame_after_ignition", "none"),
        ],
    );
    shows(
        "board_no_blower_output",
        &[
            Below("board_blower_output", 18.0),
            Is("blower", "silent"),
            Is("blower_due", "due"),
        ],
    );
    for name in ["board_drops_valve_output", "board_drops_valve_late", "board_deaf"] {
        shows(
            name,
            &[
                Below("valve_voltage_at_dropout", 20.4),
                Below("board_valve_output_at_dropout", 18.0),
            ],
        );
        shows(
            name,
            &[AtLeast("flame_current", 1.5), AtLeast("call_at_dropout", 20.4)],
        );
        shows(
            name,
            &[
                Below("limit_voltage_at_dropout", 2.0),
                Below("pressure_switch_voltage_at_dropout", 2.0),
            ],
        );
    }
    shows(
        "board_no_sensing_voltage",
        &[
            Below("sensor_supply_voltage", 10.0),
            Below("flame_current_good_rod", 1.5),
        ],
    );
    shows(
        "board_sees_false_flame",
        &[
            Below("standing_flame_signal", 0.5),
            Is("board_ready", "locked_out"),
        ],
    );
    shows(
        "inducer_relay_welded",
        &[
            Is("inducer", "runs"),
            Is("igniter_in_warm_up", "dark"),
            Below("pressure_switch_voltage_at_rest", 2.0),
        ],
    );
    shows(
        "board_connection_bad",
        &[
            Is("board_connections", "bad_connection"),
            Is("three_cycles", "one_failed"),
        ],
    );
    shows(
        "board_wet",
        &[
            Is("board_connections", "water_marks"),
            Is("three_cycles", "one_failed"),
        ],
    );
    shows(
        "blower_off_delay_short",
        &[
            Is("full_run", "runs_through"),
            Is("limit_opens_when", "after_the_call"),
        ],
    );
}

#[test]
fn an_inducer_that_fails_is_fed_and_one_that_is_not_is_whole() {
    for (name, hand) in [
        ("inducer_seized", "seized"),
        ("inducer_blocked", "blocked"),
        ("inducer_dead", "turns_free"),
    ] {
        shows(
            name,
            &[
                AtLeast("inducer_plug_voltage", 108.0),
                Is("inducer", "hums"),
                Is("inducer_by_hand", hand),
            ],
        );
    }
    shows(
        "inducer_winding_open",
        &[AtLeast("inducer_winding", OFF_SCALE), Is("inducer", "silent")],
    );
    shows(
        "inducer_wire",
        &[
            Below("inducer_plug_voltage", 20.0),
            AtLeast("board_inducer_output", 108.0),
        ],
    );
    shows(
        "inducer_weak",
        &[
            AtLeast("inducer_plug_voltage", 108.0),
            Is("inducer", "runs"),
            Is("inducer_by_hand", "turns_free"),
        ],
    );
    shows("commanded_inducer", &[Is("inducer_by_hand", "turns_free")]);
}

#[test]
fn a_pressure_switch_that_fails_has_its_draft_or_needs_none() {
    for name in [
        "pressure_switch_open",
        "pressure_switch_drifted",
        "pressure_switch_wrong",
    ] {
        shows(
            name,
            &[
                AtLeast("pressure_switch_voltage", 20.0),
                Is("inducer", "runs"),
                Is("igniter_in_warm_up", "dark"),
            ],
        );
    }
    shows("pressure_switch_wrong", &[Is("switch_label", "wrong_part")]);
    shows("pressure_switch_drifted", &[Is("switch_label", "right_part")]);
    for name in ["pressure_switch_welded", "pressure_switch_held_closed"] {
        shows(
            name,
            &[
                Below("pressure_switch_voltage_at_rest", 2.0),
                Is("inducer", "silent"),
            ],
        );
    }
    shows(
        "pressure_switch_welded",
        &[Below("pressure_switch_resistance_bare", 10.0)],
    );
    shows(
        "pressure_switch_held_closed",
        &[AtLeast("pressure_switch_resistance_bare", OFF_SCALE)],
    );
    // A burnt contact lets the igniter come on; the valve's current is too much for it.
    shows(
        "pressure_switch_resistive",
        &[
            Is("flame_after_ignition", "none"),
            Below("valve_voltage_in_trial", 18.0),
        ],
    );
}

#[test]
fn igniter_and_spark_fail_by_ohms_by_amps_or_by_eye() {
    shows(
        "igniter_open",
        &[
            AtLeast("igniter_resistance", OFF_SCALE),
            Below("igniter_current", 0.01),
        ],
    );
    shows(
        "igniter_wire",
        &[
            Below("igniter_voltage", 1.0),
            AtLeast("board_igniter_output", 20.0),
        ],
    );
    shows(
        "igniter_connector_bad",
        &[
            Is("igniter_connector", "bad_connection"),
            Below("igniter_resistance", 100.0),
        ],
    );
    for name in ["igniter_aged", "igniter_opens_hot", "igniter_connector_bad"] {
        shows(
            name,
            &[
                Is("flame_after_ignition", "none"),
                AtLeast("igniter_voltage", 20.0),
            ],
        );
    }
    for (name, seen) in [
        ("spark_gap_wrong", "gap_wrong"),
        ("spark_electrode", "cracked"),
        ("spark_lead", "lead_bad"),
        ("spark_source", "right"),
    ] {
        shows(name, &[Is("spark_gap", seen), Is("igniter_in_warm_up", "dark")]);
    }
    shows(
        "gas_valve_coil_open",
        &[
            AtLeast("valve_coil_resistance", 1_000.0),
            AtLeast("valve_voltage_in_trial", 20.4),
        ],
    );
    shows(
        "valve_wire",
        &[
            Below("valve_voltage_in_trial", 18.0),
            AtLeast("board_valve_output_in_trial", 20.4),
        ],
    );
}

#[test]
fn a_flame_sensor_fails_on_a_good_flame_and_a_good_rod_tells() {
    for name in [
        "flame_sensor_dirty",
        "flame_sensor_weak",
        "flame_sensor_leaks",
        "flame_sensor_broken",
        "flame_sensor_out_of_place",
    ] {
        shows(
            name,
            &[
                Below("flame_current", 1.5),
                AtLeast("flame_current_good_rod", 1.5),
            ],
        );
        shows(name, &[Is("dropout_time", "within_seconds")]);
    }
    shows("flame_sensor_dirty", &[Is("sensor_rod", "coated")]);
    shows(
        "flame_sensor_weak",
        &[
            Is("sensor_rod", "clean_in_flame"),
            AtLeast("sensor_insulation", OFF_SCALE),
        ],
    );
    shows("flame_sensor_leaks", &[Below("sensor_insulation", OFF_SCALE)]);
    shows("flame_sensor_out_of_place", &[Is("sensor_rod", "out_of_flame")]);
    shows(
        "sensor_lead_bad",
        &[
            AtLeast("sensor_lead_resistance", 1.0),
            Below("flame_current", 1.5),
        ],
    );
    shows(
        "false_flame_signal",
        &[
            AtLeast("standing_flame_signal", 0.5),
            Is("flame_after_ignition", "none"),
        ],
    );
}

#[test]
fn limits_and_blowers_fail_as_they_do() {
    for name in ["limit_failed_open", "limit_wiring"] {
        shows(
            name,
            &[
                AtLeast("limit_chain_voltage", 20.0),
                Is("limit_opens_when", "when_cold"),
                Below("rollout_voltage", 2.0),
            ],
        );
    }
    shows(
        "limit_failed_open",
        &[AtLeast("limit_resistance_cold", OFF_SCALE)],
    );
    shows("limit_wiring", &[Below("limit_resistance_cold", 10.0)]);
    shows(
        "limit_opens_early",
        &[
            Is("limit_opens_when", "while_firing"),
            Is("full_run", "flame_cuts_out"),
        ],
    );
    shows(
        "rollout_switch_open",
        &[
            AtLeast("rollout_voltage", 20.0),
            Is("limit_opens_when", "manual_one"),
        ],
    );
    // Without a blower, the limit opens within minutes.
    for name in [
        "blower_motor_dead",
        "blower_motor_tight",
        "blower_blocked",
        "blower_wire",
        "blower_or_module",
    ] {
        shows(
            name,
            &[
                Is("blower", "silent"),
                Is("full_run", "flame_cuts_out"),
                Is("limit_opens_when", "while_firing"),
            ],
        );
    }
    shows("blower_motor_dead", &[AtLeast("blower_tap_voltage", 108.0)]);
    shows(
        "blower_motor_overdraws",
        &[AtLeast("blower_current", 3.0), Is("full_run", "flame_cuts_out")],
    );
    shows(
        "blower_airflow_module",
        &[AtLeast("blower_line_voltage", 108.0), Is("blower", "silent")],
    );
    shows(
        "board_no_blower_command",
        &[AtLeast("blower_line_voltage", 108.0), Is("blower", "silent")],
    );
}
