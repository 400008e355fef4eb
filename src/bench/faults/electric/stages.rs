//! Faults of the second stage, electrically.

use super::between;
use crate::bench::faults::Fault;
use crate::bench::make::{Make, StagedBy};

fn two_stage(make: &Make) -> bool {
    make.staging().is_some()
}

fn by_thermostat(make: &Make) -> bool {
    make.staging()
        .is_some_and(|staging| staging.by == StagedBy::Thermostat)
}

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "second_stage_call_missing",
        title: "The thermostat's second call does not come to the board",
        part: None,
        verdicts: &["second_stage_call_missing"],
        fits: by_thermostat,
        strike: |condition, _, _| condition.electric.stages.call_lost = true,
    },
    Fault {
        name: "second_stage_setting",
        title: "Thermostat or board is set for one stage",
        part: None,
        verdicts: &["second_stage_setting"],
        fits: two_stage,
        strike: |condition, _, _| condition.electric.stages.set_for_one = true,
    },
    Fault {
        name: "second_stage_draft",
        title: "The second stage's pressure switch stays open on a draft that should close it",
        part: Some("pressure_switch"),
        verdicts: &["second_stage_draft", "second_stage_switch_open"],
        fits: two_stage,
        strike: |condition, _, severity| condition.electric.stages.switch_drift = between(1.0, 2.5, severity),
    },
    Fault {
        name: "inducer_stays_on_low",
        title: "The inducer does not come to its high speed",
        part: Some("inducer_motor"),
        verdicts: &["inducer_no_high_speed"],
        fits: two_stage,
        strike: |condition, _, _| condition.electric.stages.speed_stays_low = true,
    },
    Fault {
        name: "second_stage_valve_wire",
        title: "The wire to the valve's second stage is open",
        part: None,
        verdicts: &["second_stage_valve_wire"],
        fits: two_stage,
        strike: |condition, _, _| condition.electric.stages.wire_open = true,
    },
    Fault {
        name: "board_no_second_stage_output",
        title: "The board does not feed the valve's second stage",
        part: Some("control_board"),
        verdicts: &["board_no_second_stage_output"],
        fits: two_stage,
        strike: |condition, _, _| condition.electric.stages.no_output = true,
    },
];
