//! Faults of line and control voltage.

use super::{any, between, decades, fused};
use crate::bench::electric::OPEN;
use crate::bench::electric::condition::{Feed, Ground};
use crate::bench::faults::Fault;
use crate::bench::make::{Blower, Make};

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "feed_dead",
        title: "No line voltage comes to the furnace",
        part: None,
        verdicts: &["feed_dead"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.feed = Feed::Dead,
    },
    Fault {
        name: "switched_off",
        title: "Somebody has turned the service switch off",
        part: None,
        verdicts: &["switched_off"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.feed = Feed::SwitchOpen,
    },
    Fault {
        name: "breaker_tripped",
        title: "The breaker has tripped for something that is over",
        part: None,
        verdicts: &["breaker_tripped"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.feed = Feed::Tripped,
    },
    Fault {
        name: "line_short",
        title: "Line voltage is shorted to the cabinet",
        part: None,
        verdicts: &["line_short"],
        fits: any,
        strike: |condition, _, severity| {
            condition.electric.line.short = Some(decades(0.2, 6.0, 1.0 - severity))
        },
    },
    Fault {
        name: "low_line_voltage",
        title: "The line sags under load",
        part: None,
        verdicts: &["low_line_voltage"],
        fits: any,
        strike: |condition, make, severity| condition.electric.line.hot_ohms = sagging(make, severity),
    },
    Fault {
        name: "supply_neutral",
        title: "The neutral is loose",
        part: None,
        verdicts: &["supply_neutral", "low_line_voltage"],
        fits: any,
        strike: |condition, make, severity| condition.electric.line.neutral_ohms = sagging(make, severity),
    },
    Fault {
        name: "generator_not_bonded",
        title: "A generator's neutral is not joined to ground",
        part: None,
        verdicts: &["supply_neutral"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.ground = Ground::NotBonded,
    },
    Fault {
        name: "ground_lost",
        title: "The furnace has lost its ground",
        part: None,
        verdicts: &["ground_lost"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.ground = Ground::Lost,
    },
    Fault {
        name: "polarity_reversed",
        title: "Line and neutral are swapped",
        part: None,
        verdicts: &["polarity_reversed"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.reversed = true,
    },
    Fault {
        name: "door_not_pressing",
        title: "The door does not press its switch",
        part: None,
        verdicts: &["door_not_pressing"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.door_bent = true,
    },
    Fault {
        name: "door_switch_open",
        title: "The door switch stays open while pressed",
        part: Some("door_safety_switch"),
        verdicts: &["door_switch_open"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.door_switch_ohms = OPEN,
    },
    Fault {
        name: "line_wire",
        title: "The wire between door switch and board is open",
        part: None,
        verdicts: &["line_wire"],
        fits: any,
        strike: |condition, _, _| condition.electric.line.inner_ohms = OPEN,
    },
    Fault {
        name: "transformer_dead",
        title: "The transformer gives nothing",
        part: Some("transformer"),
        verdicts: &["transformer_dead"],
        fits: any,
        strike: |condition, _, _| condition.electric.control.lost = 1.0,
    },
    Fault {
        name: "transformer_weak",
        title: "Turns of the transformer are shorted",
        part: Some("transformer"),
        verdicts: &["transformer_dead"],
        fits: any,
        strike: |condition, _, severity| condition.electric.control.lost = between(0.36, 0.8, severity),
    },
    Fault {
        name: "transformer_feed",
        title: "The transformer's primary gets no line voltage",
        part: None,
        verdicts: &["transformer_feed"],
        fits: any,
        strike: |condition, _, _| condition.electric.control.feed_open = true,
    },
    Fault {
        name: "transformer_wrong_tap",
        title: "The transformer is on the tap for another line voltage",
        part: None,
        verdicts: &["transformer_wrong_tap"],
        fits: any,
        strike: |condition, _, _| condition.electric.control.wrong_tap = true,
    },
    Fault {
        name: "secondary_overloaded",
        title: "More hangs on the transformer than it can feed",
        part: None,
        verdicts: &["secondary_overloaded"],
        fits: any,
        strike: |condition, _, severity| condition.electric.control.added = Some(between(2.0, 1.0, severity)),
    },
    Fault {
        name: "cable_shorted",
        title: "The thermostat's cable is shorted",
        part: None,
        verdicts: &["cable_shorted", "secondary_overloaded"],
        fits: any,
        strike: |condition, _, severity| condition.electric.control.cable_short = Some(shorted(severity)),
    },
    Fault {
        name: "cooling_circuit_shorted",
        title: "The wire to the outdoor unit, or its coil, is shorted",
        part: None,
        verdicts: &["cooling_circuit_shorted"],
        fits: fused,
        strike: |condition, _, severity| condition.electric.control.cooling_short = Some(shorted(severity)),
    },
    Fault {
        name: "accessory_shorted",
        title: "A humidifier's coil is shorted",
        part: None,
        verdicts: &["accessory_shorted", "secondary_overloaded"],
        fits: any,
        strike: |condition, _, severity| condition.electric.control.accessory_short = Some(shorted(severity)),
    },
    Fault {
        name: "fuse_blown_once",
        title: "The low-voltage fuse has blown for something that is over",
        part: None,
        verdicts: &["fuse_blown_once"],
        fits: fused,
        strike: |condition, _, _| condition.electric.control.fuse_blown = true,
    },
];

/// What a wire must resist with for the board to let its relays go at the heaviest load, Ω, and more.
fn sagging(make: &Make, severity: f64) -> f64 {
    let igniter = if make.spark {
        0.0
    } else {
        make.igniter_amps * make.igniter_volts / 120.0
    };
    let blower = match make.blower {
        Blower::Tapped => 4.0 * make.blower_amps,
        Blower::ConstantTorque | Blower::ConstantAirflow => 0.9 * make.blower_amps,
    };
    // Board and valve let go some 42 V below the line.
    42.0 / (0.8 + blower.max(igniter)) * between(1.0, 1.8, severity)
}

/// A short, Ω: what bare wires and burnt coils leave, below what a fuse holds.
fn shorted(severity: f64) -> f64 {
    decades(0.2, 2.0, 1.0 - severity)
}
