//! Probes on the control side: transformer, fuse, circuits, call and board.

use crate::bench::electric::condition::{Interlock, Thermostat};
use crate::bench::electric::{OPEN, Phase, shown};
use crate::bench::probe::{ReadingProbe, SignProbe};

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    supply(name).or_else(|| circuit(name))
}

fn supply(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "control_supply" => |_, run| Some(run.whole.control),
        "control_supply_at_dropout" => |_, run| run.fire.map(|fire| fire.control),
        "transformer_primary" => |_, run| Some(run.rest.volts.control.primary),
        "transformer_secondary_unloaded" => |_, run| Some(run.rest.volts.control.unloaded),
        "call_voltage" => |_, run| Some(run.rest.volts.call.board),
        "call_at_dropout" => |_, run| run.fire.map(|fire| fire.call),
        "thermostat_supply" => |_, run| Some(run.rest.volts.call.base),
        "thermostat_r_to_w" => |_, run| Some(run.rest.volts.call.r_to_w),
        "interlock_voltage" => |_, run| Some(run.rest.volts.call.interlock),
        _ => return None,
    })
}

fn circuit(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "cable_resistance" => |furnace, _| {
            let short = furnace.condition.electric.control.cable_short;
            Some(shown(short.unwrap_or(OPEN)))
        },
        "cooling_circuit_resistance" => |furnace, run| {
            let short = furnace.condition.electric.control.cooling_short;
            Some(shown(short.or(run.sound.cooling_ohms).unwrap_or(OPEN)))
        },
        "accessory_circuit_resistance" => |furnace, run| {
            let short = furnace.condition.electric.control.accessory_short;
            Some(shown(short.or(run.sound.accessory_ohms).unwrap_or(OPEN)))
        },
        "valve_circuit_resistance" => |furnace, run| {
            let coil = &furnace.condition.electric.coil;
            Some(shown(coil.circuit_ohms(run.sound.coil_ohms)))
        },
        "valve_coil_resistance" => |furnace, run| {
            let coil = &furnace.condition.electric.coil;
            Some(shown(coil.ohms(run.sound.coil_ohms)))
        },
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "low_voltage_fuse" => |furnace, run| {
            Some(match (furnace.make.fuse, run.latched.control.fuse) {
                (false, _) => "not_fitted",
                (true, true) => "blown",
                (true, false) => "good",
            })
        },
        "transformer_tap" => |furnace, _| {
            let wrong = furnace.condition.electric.control.wrong_tap;
            Some(if wrong { "wrong" } else { "matches" })
        },
        "transformer_breaker" => |_, run| {
            let tripped = run.latched.control.breaker;
            Some(if tripped { "tripped" } else { "set_or_none" })
        },
        "board_connections" => |furnace, _| {
            let board = &furnace.condition.electric.board;
            Some(match (board.wet, board.loose) {
                (Some(_), _) => "water_marks",
                (None, Some(_)) => "bad_connection",
                (None, None) => "sound",
            })
        },
        // A board that takes something for a flame, or sees one that it did not ask for, shows a code and does not try.
        "board_ready" => |furnace, run| {
            let seeing = furnace.condition.electric.board.sees_things || run.phase == Phase::Uncalled;
            Some(if seeing { "locked_out" } else { "ready" })
        },
        // With no rod on it, what a board still sees it makes up itself.
        "flame_without_rod" => |furnace, _| {
            let seeing = furnace.condition.electric.board.sees_things;
            Some(if seeing { "still_seen" } else { "not_seen" })
        },
        "thermostat_screen" => |furnace, run| {
            Some(match furnace.condition.electric.call.thermostat {
                _ if !run.rest.volts.call.awake => "blank",
                Thermostat::NotCalling => "not_calling",
                Thermostat::Delaying => "delaying",
                _ => "calling",
            })
        },
        "thermostat_batteries" => |furnace, run| {
            let flat = furnace.condition.electric.call.thermostat == Thermostat::BatteriesFlat;
            Some(match (run.sound.batteries, flat) {
                (false, _) => "none_used",
                (true, true) => "flat",
                (true, false) => "fresh",
            })
        },
        "open_interlock" => |furnace, run| {
            let Some(interlock) = furnace.condition.electric.call.interlock else {
                // A pump's high-water switch, which stands in the same wire.
                return (run.rest.volts.call.interlock > 0.0).then_some("float_switch");
            };
            Some(match interlock {
                Interlock::FloatWet => "float_switch",
                Interlock::FloatDry => "float_switch_dry",
                Interlock::Alarm => "co_or_leak",
                Interlock::Panel => "panel_or_end_switch",
            })
        },
        _ => return None,
    })
}
