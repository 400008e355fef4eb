//! Probes on draft: hoses, ports, water, vent and the inducer's wheel and housing.

use super::{burning, can_be_seen};
use crate::bench::furnace::Run;
use crate::bench::probe::{ReadingProbe, SignProbe};
use crate::bench::thermal::spread::Own;

/// Share of the draft that comes and goes before a gauge is called unsteady.
const WAVERS: f64 = 0.08;
/// Share of a passage that must be gone for eyes to see it.
const SEEN: f64 = 0.15;
/// Share of furnaces whose flue passages can be seen without taking them apart.
const PASSAGES_SEEN: f64 = 0.5;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        // The weaker of cold and hot.
        "draft_at_switch" => |_, run| {
            let cold = run.draft.shown.draft_switch;
            let hot = burning(run).map(|moment| moment.shown.draft_lowest);
            Some(hot.map_or(cold, |hot| hot.min(cold)))
        },
        // With its hose off no switch closes, so no flame stands: always cold.
        "draft_at_housing" => |_, run| Some(run.draft.shown.draft_housing),
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    hoses(name).or_else(|| vent(name)).or_else(|| inducer(name))
}

fn hoses(name: &str) -> Option<SignProbe> {
    Some(match name {
        "draft_hoses" => |furnace, _| {
            let hoses = &furnace.condition.thermal.hoses;
            Some(match (hoses.split > SEEN, hoses.water > 0.05) {
                _ if hoses.swapped => "swapped",
                (true, _) => "split_or_off",
                (_, true) => "wet",
                (false, false) => "sound",
            })
        },
        "switch_ports" => |furnace, _| {
            let plugged = furnace.condition.thermal.hoses.switch_port_plugged > SEEN;
            Some(if plugged { "plugged" } else { "clear_and_drained" })
        },
        "draft_steadiness" => |_, run| Some(if wavers(run) > WAVERS { "wavers" } else { "steady" }),
        "drain_trap" => |furnace, run| {
            let flue = &furnace.condition.thermal.flue;
            let water = run.draft.shown.water.max(run.end.shown.water);
            Some(
                match (flue.trap_blocked > SEEN || water > 0.3, flue.trap_dry > SEEN) {
                    _ if !furnace.make.condensing => "not_fitted",
                    (true, _) => "blocked",
                    (_, true) => "dry",
                    (false, false) => "clear",
                },
            )
        },
        _ => return None,
    })
}

fn vent(name: &str) -> Option<SignProbe> {
    Some(match name {
        "vent_terminals" => |furnace, _| {
            let flue = &furnace.condition.thermal.flue;
            let intake = furnace.make.condensing && flue.intake_blocked > SEEN;
            Some(match flue.drawn_back > 0.02 || flue.wind > 0.1 {
                _ if intake || flue.terminal_blocked > SEEN => "blocked",
                true => "drawn_back",
                false => "clear",
            })
        },
        "vent_run" => |furnace, _| {
            let flue = &furnace.condition.thermal.flue;
            Some(match (flue.vent_parted > 0.03, flue.vent_sags > SEEN) {
                (true, _) => "parted",
                (_, true) => "sags",
                _ if flue.vent_overlong > 0.1 => "beyond_table",
                _ => "within_table",
            })
        },
        "vent_inside" => |furnace, _| {
            let obstructed = furnace.condition.thermal.flue.vent_obstructed > SEEN;
            Some(if obstructed { "obstructed" } else { "clear" })
        },
        "exchanger_passages" => |furnace, _| {
            let flue = &furnace.condition.thermal.flue;
            let plugged = flue.primary_sooted.max(flue.secondary_plugged) > SEEN;
            Some(
                match (can_be_seen(furnace, Own::PassagesSeen, PASSAGES_SEEN), plugged) {
                    (false, _) => "not_seen",
                    (true, true) => "plugged",
                    (true, false) => "open",
                },
            )
        },
        _ => return None,
    })
}

fn inducer(name: &str) -> Option<SignProbe> {
    Some(match name {
        "inducer_wheel" => |furnace, _| {
            let inducer = &furnace.condition.thermal.inducer;
            Some(match (inducer.wheel_loose > 0.05, inducer.wheel_dirty > SEEN) {
                (true, _) => "loose_or_broken",
                (_, true) => "dirty",
                (false, false) => "sound",
            })
        },
        "inducer_housing" => |furnace, _| {
            let inducer = &furnace.condition.thermal.inducer;
            let port = inducer.port_plugged.max(inducer.choke_wrong) > SEEN;
            Some(match (inducer.gasket_leaks > 0.05, port) {
                (true, _) => "leaks",
                (_, true) => "port_plugged",
                (false, false) => "sound",
            })
        },
        _ => return None,
    })
}

/// The share of the draft that comes and goes, cold or hot.
fn wavers(run: &Run) -> f64 {
    let cold = run.draft.shown.draft_wavers;
    burning(run).map_or(cold, |moment| moment.shown.draft_wavers.max(cold))
}
