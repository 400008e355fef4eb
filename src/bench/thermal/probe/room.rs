//! Probes on the vent as it hangs, on the room and on what else burns in it.

use super::{burning_for, spread};
use crate::bench::furnace::Furnace;
use crate::bench::probe::{ReadingProbe, SignProbe};
use crate::bench::thermal::draft::vent_suction;
use crate::bench::thermal::spread::Own;

/// Pa in an inch of water.
const PASCALS: f64 = 249.1;
/// Seconds after which a vent is warm.
const VENT_WARMS: f64 = 300.0;
/// Share of a water heater's flue gas that comes back before smoke shows it.
const SPILLS: f64 = 0.1;
/// Suction of the room against which no draft hood draws, in.w.c.: 5 Pa, as the short test of rooms has it.
const STALLS: f64 = 0.02;
/// Share of the openings that is lacking before a rule says so.
const LACKS: f64 = 0.3;
/// Share of furnace rooms in which a water heater stands too, and its input, BTU/h.
const HEATERS: f64 = 0.5;
const HEATER: f64 = 40_000.0;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        // The vent of one that condenses is plastic and is not drilled.
        "vent_draft" => |furnace, run| {
            burning_for(run, VENT_WARMS).filter(|_| !furnace.make.condensing)?;
            Some(-vent_suction(&furnace.make, &furnace.condition.thermal))
        },
        "room_pressure" => |furnace, _| Some(-furnace.condition.thermal.room.negative * PASCALS),
        "other_burners_input" => |furnace, _| {
            let own = if furnace.make.condensing {
                0.0
            } else {
                furnace.make.input
            };
            let heater = if has_heater(furnace) { HEATER } else { 0.0 };
            Some(own + heater)
        },
        "humidity" => |furnace, _| Some(spread(furnace.make.seed, Own::Humidity, 25.0, 40.0)),
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "other_burners" => |furnace, _| Some(if has_heater(furnace) { "own_vent" } else { "none" }),
        "spillage" => |furnace, _| {
            let room = &furnace.condition.thermal.room;
            let spills = room.spills > SPILLS || room.negative > STALLS;
            Some(match has_heater(furnace) {
                false => "no_hood",
                true if spills => "spills",
                true => "drawn_in",
            })
        },
        "exhaust_fans" => |furnace, _| {
            let large = furnace.condition.thermal.room.negative > STALLS;
            Some(if large { "large" } else { "small" })
        },
        "room_air" => |furnace, _| {
            let lacks = furnace.condition.thermal.room.starved > LACKS;
            Some(if lacks { "too_little" } else { "openings_right" })
        },
        "vent_material" => |_, _| Some("right"),
        "vent_support" => |furnace, _| {
            let flue = &furnace.condition.thermal.flue;
            Some(match (flue.vent_parted > 0.03, flue.vent_sags > 0.15) {
                (true, _) => "loose",
                (_, true) => "flat",
                (false, false) => "right",
            })
        },
        "vent_corrosion" => |_, _| Some("clean"),
        _ => return None,
    })
}

/// Whether a water heater with a hood stands in the room: one that spills must be there.
fn has_heater(furnace: &Furnace) -> bool {
    let spills = furnace.condition.thermal.room.spills > SPILLS;
    spills || spread(furnace.make.seed, Own::WaterHeater, 0.0, 1.0) < HEATERS
}
