//! Probes with no call standing, and what the safeties do when they are tried.

use crate::bench::probe::{ReadingProbe, SignProbe};

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        // No thermostat here feeds W or G unasked.
        "fan_call" | "call_uncalled" => |_, _| Some(0.0),
        // A relay that is welded passes the line whether the board asks or not.
        "uncalled_output" => |furnace, run| {
            let welded = furnace.condition.electric.board.inducer_welded;
            Some(if welded { run.draft.volts.inducer_pin } else { 0.0 })
        },
        "valve_uncalled" => |_, run| Some(run.rest.volts.valve),
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        // Only what runs unasked can be seen to go on; of a furnace that is still it would say nothing that it stays off.
        "w_wire_off" | "thermostat_off_base" => |furnace, _| {
            let welded = furnace.condition.electric.board.inducer_welded;
            welded.then_some("runs_on")
        },
        // What holds a door switch or a flame's circuit on unasked is no fault of these furnaces: a safety that is tried answers.
        "door_switch_stops" => |_, run| (run.lit > 0.0).then_some("stops"),
        "draft_loss_stops" => |furnace, run| {
            let welded = furnace.condition.electric.switch.welded;
            (run.lit > 0.0).then_some(if welded { "burn_on" } else { "go_out" })
        },
        "flame_loss_stops" => |_, run| (run.lit > 0.0).then_some("in_time"),
        "limit_stops" => |_, run| (run.lit > 0.0).then_some("opens"),
        "blower_bearing" => |furnace, _| Some(bearing(furnace.condition.electric.blower.drag)),
        "inducer_bearing" => |furnace, _| Some(bearing(furnace.condition.electric.inducer.drag)),
        "buzz_source" => |_, run| Some(if run.resets > 0 { "relay" } else { "transformer" }),
        _ => return None,
    })
}

/// Friction that a hand feels, share of the load that a motor was built for.
const FELT: f64 = 0.3;

fn bearing(drag: f64) -> &'static str {
    if drag > FELT { "rough" } else { "smooth" }
}
