//! Faults of the control board.

use super::{any, between, decades, hot_surface, line_inducer, with_rod};
use crate::bench::electric::Output;
use crate::bench::faults::Fault;
use crate::bench::make::{Blower, Make};

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "board_no_inducer_output",
        title: "The board does not feed the inducer",
        part: Some("control_board"),
        verdicts: &["board_no_inducer_output"],
        fits: line_inducer,
        strike: |condition, _, _| condition.electric.board.no_inducer = true,
    },
    Fault {
        name: "board_no_igniter_output",
        title: "The board does not feed the igniter",
        part: Some("control_board"),
        verdicts: &["board_no_igniter_output"],
        fits: hot_surface,
        strike: |condition, _, _| condition.electric.board.no_igniter = true,
    },
    Fault {
        name: "board_no_valve_output",
        title: "The board does not feed the gas valve",
        part: Some("control_board"),
        verdicts: &["board_no_valve_output"],
        fits: any,
        strike: |condition, _, _| condition.electric.board.no_valve = true,
    },
    Fault {
        name: "board_no_blower_output",
        title: "The board does not start the blower",
        part: Some("control_board"),
        verdicts: &["board_no_blower_output"],
        fits: metered_blower,
        strike: |condition, _, _| condition.electric.board.no_blower = true,
    },
    Fault {
        name: "board_no_blower_command",
        title: "The board sends the blower no command that a meter could read",
        part: Some("control_board"),
        verdicts: &["board_no_blower_output"],
        fits: constant_airflow,
        strike: |condition, _, _| condition.electric.board.no_blower = true,
    },
    Fault {
        name: "board_drops_valve_output",
        title: "A relay of the board lets the valve go once it is warm",
        part: Some("control_board"),
        verdicts: &["board_drops_valve_output"],
        fits: any,
        strike: |condition, _, severity| {
            condition.electric.board.valve_lets_go = Some(decades(20.0, 170.0, 1.0 - severity))
        },
    },
    Fault {
        name: "board_drops_valve_late",
        title: "A relay of the board lets the valve go after minutes",
        part: Some("control_board"),
        verdicts: &["board_drops_valve_output"],
        fits: any,
        strike: |condition, _, severity| {
            condition.electric.board.valve_lets_go = Some(between(600.0, 200.0, severity))
        },
    },
    Fault {
        name: "board_no_sensing_voltage",
        title: "The board puts no voltage on the flame sensor",
        part: Some("control_board"),
        verdicts: &["board_no_sensing_voltage"],
        fits: with_rod,
        strike: |condition, _, _| condition.electric.board.no_sensing = true,
    },
    Fault {
        name: "board_deaf",
        title: "The board takes no notice of the flame signal",
        part: Some("control_board"),
        verdicts: &["board_drops_valve_output"],
        fits: with_rod,
        strike: |condition, _, _| condition.electric.board.deaf = true,
    },
    Fault {
        name: "board_sees_false_flame",
        title: "The board sees a flame where none is, with no signal at its input",
        part: Some("control_board"),
        verdicts: &["board_sees_false_flame"],
        fits: with_rod,
        strike: |condition, _, _| condition.electric.board.sees_things = true,
    },
    Fault {
        name: "inducer_relay_welded",
        title: "The board's inducer relay is welded shut",
        part: Some("control_board"),
        verdicts: &["board_locked_out"],
        fits: line_inducer,
        strike: |condition, _, _| condition.electric.board.inducer_welded = true,
    },
    Fault {
        name: "board_connection_bad",
        title: "A crimp in one of the board's plugs is burnt",
        part: None,
        verdicts: &[
            "board_connection_bad",
            "inducer_wire",
            "igniter_wire",
            "valve_wire",
            "blower_wire",
        ],
        fits: metered_outputs,
        strike: |condition, make, _| condition.electric.board.loose = Some(an_output(make)),
    },
    Fault {
        name: "board_wet",
        title: "Water has run onto the board and taken one of its outputs",
        part: Some("control_board"),
        verdicts: &["board_wet"],
        fits: metered_outputs,
        strike: |condition, make, _| condition.electric.board.wet = Some(an_output(make)),
    },
    Fault {
        name: "blower_off_delay_short",
        title: "The blower stops too soon after the call",
        part: None,
        verdicts: &["blower_off_delay_short"],
        fits: any,
        strike: |condition, _, severity| {
            condition.electric.board.off_delay = Some(between(25.0, 5.0, severity))
        },
    },
];

/// Which of the outputs it is, by furnace.
fn an_output(make: &Make) -> Output {
    let outputs = [Output::Inducer, Output::Igniter, Output::Valve, Output::Blower];
    outputs[(make.seed % 4) as usize]
}

/// Whether a meter can tell that the output is missing.
fn metered_outputs(make: &Make) -> bool {
    match an_output(make) {
        Output::Inducer => line_inducer(make),
        Output::Igniter => hot_surface(make),
        Output::Valve => true,
        Output::Blower => metered_blower(make),
    }
}

fn metered_blower(make: &Make) -> bool {
    !constant_airflow(make)
}

fn constant_airflow(make: &Make) -> bool {
    make.blower == Blower::ConstantAirflow
}
