//! What carries the heat away and watches it: blowers and limits.

use super::Shows::{AtLeast, Below, Is};
use super::{OFF_SCALE, shows};

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
