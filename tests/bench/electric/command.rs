//! What asks and what answers: the call and the board.

use super::Shows::{AtLeast, Below, Is};
use super::shows;

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
