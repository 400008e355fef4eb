//! Probes on flue gas, exchanger and room.

use super::{burning, burning_for, can_be_seen};
use crate::bench::furnace::{Furnace, Moment, Run};
use crate::bench::probe::{ReadingProbe, SignProbe};
use crate::bench::thermal::spread::Own;

/// Seconds of flame until an analyser shows a steady state.
const STEADY: f64 = 240.0;
/// Share of furnaces of which every cell can be seen.
const ALL_SEEN: f64 = 0.6;
/// The least opening that a camera finds, in the measure of the condition.
const CRACK_SEEN: f64 = 0.01;
/// Share of a passage that must be gone for eyes to see it, and of furnaces whose secondary can be looked into.
const SOOT_SEEN: f64 = 0.15;
const SECONDARY_SEEN: f64 = 0.5;
/// At this much carbon monoxide in the room people feel unwell, ppm: BPI-1200's level for leaving (memory).
const UNWELL: f64 = 70.0;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "room_co" => |_, run| Some(burning(run).unwrap_or(&run.end).shown.room_co),
        "flue_gas_co" => |_, run| burning_for(run, STEADY).map(|moment| moment.shown.co),
        "exhaust_oxygen" => |_, run| burning_for(run, STEADY).map(|moment| moment.shown.oxygen),
        "low_fire_co" => |furnace, run| low(furnace, run).map(|moment| moment.shown.co),
        "low_fire_oxygen" => |furnace, run| low(furnace, run).map(|moment| moment.shown.oxygen),
        "oxygen_shift" => |_, run| Some(run.after_blower?.shown.oxygen - run.before_blower?.shown.oxygen),
        _ => return None,
    })
}

/// The last moment on low fire of a furnace that has two stages.
fn low<'a>(furnace: &Furnace, run: &'a Run) -> Option<&'a Moment> {
    furnace.make.staging()?;
    run.low.as_ref()
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "co_trend" => |_, run| {
            let moment = burning_for(run, STEADY)?;
            Some(if moment.shown.co_rises { "rising" } else { "flat" })
        },
        "exchanger_look" => |furnace, _| {
            let cracked = furnace.condition.thermal.flue.cracked > CRACK_SEEN;
            Some(match (can_be_seen(furnace, Own::CellsSeen, ALL_SEEN), cracked) {
                (false, _) => "not_seen",
                (true, true) => "crack_seen",
                (true, false) => "nothing_seen",
            })
        },
        "combustion_room" => |furnace, _| {
            let room = &furnace.condition.thermal.room;
            Some(match room.starved > 0.3 || room.negative > 0.02 {
                _ if room.spills > 0.1 => "spills",
                true => "starved",
                false => "enough_air",
            })
        },
        "exchanger_test" => |furnace, _| {
            let cracked = furnace.condition.thermal.flue.cracked > CRACK_SEEN;
            Some(if cracked {
                "beyond_allowance"
            } else {
                "within_allowance"
            })
        },
        "secondary_look" => |furnace, _| {
            let plugged = furnace.condition.thermal.flue.secondary_plugged > SOOT_SEEN;
            let seen = can_be_seen(furnace, Own::PassagesSeen, SECONDARY_SEEN);
            Some(match (seen, plugged) {
                _ if !furnace.make.condensing => "not_fitted",
                (false, _) => "not_seen",
                (true, true) => "tubes_plugged",
                (true, false) => "open",
            })
        },
        "exchanger_signs" => |furnace, run| {
            let sooted = furnace.condition.thermal.flue.primary_sooted > SOOT_SEEN;
            let moves = super::fire::moves(run).unwrap_or(false);
            Some(if sooted || moves { "some" } else { "none" })
        },
        "people" => |_, run| {
            let unwell = burning(run).is_some_and(|moment| moment.shown.room_co >= UNWELL);
            Some(if unwell { "unwell" } else { "well" })
        },
        _ => return None,
    })
}
