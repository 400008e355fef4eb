//! Probes on what joins a furnace to its twin, which is in order and runs where it is called.

use super::{ReadingProbe, SignProbe};
use crate::bench::electric::condition::Thermostat;
use crate::bench::furnace::{Furnace, Run};
use crate::bench::make::Link;

/// What two transformers in phase may differ by, V.
const DIFFERS: f64 = 0.8;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "phase_voltage" => |furnace, run| {
            furnace.make.link()?;
            let own = run.rest.volts.control.board;
            let other = (run.sound.source / 120.0).mul_add(24.0, DIFFERS);
            // A dead transformer's winding still joins R to C; a blown fuse leaves R hanging free.
            let latches = run.latched.control;
            Some(match latches.fuse || latches.breaker {
                true => 0.0,
                false => furnace.condition.electric.twin.between(own, other),
            })
        },
        "twin_kit_coil" => |furnace, run| by_kit(furnace).then(|| called(furnace, run)),
        "twin_kit_contact" => |furnace, run| {
            let open = furnace.condition.electric.twin.link_open;
            by_kit(furnace).then(|| if open { called(furnace, run) } else { 0.0 })
        },
        _ => return None,
    })
}

/// Whether a relay of its own joins it to its twin.
fn by_kit(furnace: &Furnace) -> bool {
    furnace.make.link() == Some(Link::Kit)
}

/// The call before it comes to what joins the two, V.
fn called(furnace: &Furnace, run: &Run) -> f64 {
    let call = &furnace.condition.electric.call;
    call.volts(run.rest.volts.control.board, true, run.sound.batteries, false)
        .board
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "twin_link" => |furnace, _| {
            Some(match furnace.make.link()? {
                Link::Kit => "relay",
                Link::Wire if furnace.condition.electric.twin.link_open => "broken",
                Link::Wire => "sound",
            })
        },
        "twin_boards" => |furnace, _| {
            furnace.make.link()?;
            let differ = furnace.condition.electric.twin.boards_differ;
            Some(if differ { "differ" } else { "match" })
        },
        "twin_state" => |furnace, run| {
            furnace.make.link()?;
            Some(match run.lit > 0.0 && run.dropout.is_none() {
                _ if !is_called(furnace) => "none_runs",
                true if furnace.condition.electric.twin.boards_differ => "blowers_apart",
                true => "both_run",
                false => "one_runs",
            })
        },
        _ => return None,
    })
}

/// Whether the thermostat's call comes to the twin, which hears it first.
fn is_called(furnace: &Furnace) -> bool {
    let call = &furnace.condition.electric.call;
    let through = call.volts(24.0, true, true, false).board > 12.0;
    through && !matches!(call.thermostat, Thermostat::Blank | Thermostat::BatteriesFlat)
}
