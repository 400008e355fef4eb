//! What feeds the furnace: line, ground, control voltage.

use super::Shows::{AtLeast, Below, Is};
use super::shows;

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
