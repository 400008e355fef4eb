//! What burning takes: inducer, pressure switch, igniter, flame sensor.

use super::Shows::{AtLeast, Below, Is};
use super::{OFF_SCALE, shows};

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
