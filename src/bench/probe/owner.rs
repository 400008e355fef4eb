//! What an owner sees, hears or smells of a whole furnace, doors on.

use super::{ReadingProbe, SignProbe};
use crate::bench::furnace::{Furnace, Run};
use crate::bench::thermal::{Shape, delivered};

/// Share of the heat it is made for below which a furnace burns on through a cold day.
const SHORT: f64 = 0.85;
/// Volts across a switch from which on it stands open.
const OPEN: f64 = 12.0;
/// Share of the collector under water at which it is heard.
const GURGLES: f64 = 0.3;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "run_minutes" => |_, run| (run.burned > 0.0).then_some(run.burned / 60.0),
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "lack_of_heat" => |furnace, run| {
            Some(match run.dropout {
                _ if run.lit == 0.0 => return None,
                Some(_) if run.limit_opened.is_some() => "cycles_hot",
                Some(_) => "off_often",
                None if is_short(furnace, run) => "burns_on",
                None => "stops_early",
            })
        },
        "cold_rooms" => |furnace, run| {
            let air = &furnace.condition.thermal.air;
            let ends = air.registers_closed.max(air.supply_tight) > 0.2;
            Some(match is_short(furnace, run) {
                true => "all",
                false if ends => "far_ones",
                false => "one_side",
            })
        },
        "end_of_cycle" => |_, run| {
            let open = |volts: fn(&crate::bench::furnace::Extremes) -> f64| {
                run.fire.is_some_and(|fire| volts(&fire) > OPEN)
            };
            Some(match run.dropout {
                _ if run.lit == 0.0 => return None,
                None => "thermostat",
                Some(_) if run.resets > 0 => "power",
                Some(_) if run.limit_opened.is_some() || open(|fire| fire.rollout) => "limit",
                Some(_) if open(|fire| fire.switch) => "draft",
                Some(_) if run.fire.is_some_and(|fire| fire.call < OPEN) => "thermostat",
                Some(_) => "flame",
            })
        },
        "screen_at_cycle_end" => |_, run| {
            Some(match run.rest.volts.call.awake {
                false => "blank",
                true if run.dropout.is_none() => "not_calling",
                true => "calling",
            })
        },
        "never_stops" => |furnace, run| {
            let leaks = super::sign("flame_uncalled").and_then(|seen| seen(furnace, run));
            Some(match leaks == Some("flame_seen") {
                true => "burners",
                false if furnace.condition.electric.board.inducer_welded => "inducer",
                false => "nothing",
            })
        },
        "when_noise" => |furnace, run| Some(noise(furnace, run)),
        // What flue gas in the room makes itself known by.
        "smell_kind" => |furnace, run| {
            let flue = &furnace.condition.thermal.flue;
            let out = run
                .steady
                .is_some_and(|moment| moment.shown.shape == Shape::RollsBack);
            Some(if out || flue.vent_parted > 0.03 {
                "flue"
            } else {
                "dust"
            })
        },
        _ => return None,
    })
}

/// Whether less heat comes into the house than the furnace is made for.
fn is_short(furnace: &Furnace, run: &Run) -> bool {
    run.steady
        .is_some_and(|moment| delivered(&furnace.make, &moment.shown).is_some_and(|share| share < SHORT))
}

/// When a furnace makes most noise: metal ticks as it cools in any of them.
fn noise(furnace: &Furnace, run: &Run) -> &'static str {
    let heard = |sign: &str| super::sign(sign).and_then(|heard| heard(furnace, run));
    let flame = run.steady.as_ref().map(|moment| moment.shown.shape);
    if heard("light_sound").is_some_and(|sound| sound != "smooth") {
        return "at_light";
    }
    if run.end.shown.water > GURGLES {
        return "water_runs";
    }
    if heard("inducer_sound").is_some_and(|sound| sound != "even") {
        return "inducer_runs";
    }
    if matches!(flame, Some(Shape::Lifts)) {
        return "while_burning";
    }
    if heard("blower_sound").is_some() {
        return "blower_runs";
    }
    if run.resets > 0 {
        return "buzz";
    }
    "cooling_down"
}
