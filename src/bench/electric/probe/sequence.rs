//! What is seen of the sequence from outside, doors on.

use super::{blower, door_open};
use crate::bench::furnace::Run;
use crate::bench::probe::SignProbe;

/// Seconds that a technician watches a flame before calling it one that holds.
const HOLDS: f64 = 180.0;

/// A flame that goes sooner is lost within seconds, s.
const SECONDS: f64 = 15.0;

/// Share of the burners that must burn for all of them to be lit.
const ALL: f64 = 0.99;

/// Share of the maker's airflow below which the air at the registers is called little.
const LITTLE: f64 = 0.75;

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "igniter_in_warm_up" => |furnace, run| {
            let glow = run.warm_up.map(|moment| moment.volts.glow);
            let seen = glow.is_some_and(|glow| glow.seen) && !door_open(furnace);
            Some(match (seen, furnace.make.spark) {
                (false, _) => "dark",
                (true, true) => "sparks",
                (true, false) => "glows",
            })
        },
        "flame_after_ignition" => |furnace, run| {
            let lit = run.lit >= ALL && !door_open(furnace);
            Some(match run.dropout {
                _ if !lit => "none",
                Some(dropout) if dropout.after < HOLDS => "drops_out",
                _ => "holds",
            })
        },
        "dropout_time" => |_, run| {
            let after = run.dropout?.after;
            Some(if after <= SECONDS {
                "within_seconds"
            } else {
                "later"
            })
        },
        "blower" => |furnace, run| {
            let moment = blower(run);
            let stage = match moment.volts.stage.told {
                true => 1.0,
                false => furnace.make.low_fire(),
            };
            let little = moment.shown.airflow < LITTLE * stage * furnace.make.airflow();
            Some(match moment.volts.blower.turns > 0.0 && !door_open(furnace) {
                false => "silent",
                true if little => "weak",
                true => "moves_air",
            })
        },
        "blower_as_limit_opens" => |_, run| {
            run.limit_opened?;
            let turns = run.dropout?.moment.volts.blower.turns > 0.0;
            Some(if turns { "runs" } else { "has_stopped" })
        },
        "full_run" => |furnace, run| {
            let through = runs_through(run) && !door_open(furnace);
            Some(if through { "runs_through" } else { "flame_cuts_out" })
        },
        "three_cycles" => |furnace, run| {
            let held = runs_through(run) && !run.limit_opened_after && !door_open(furnace);
            Some(if held { "all_held" } else { "one_failed" })
        },
        _ => return None,
    })
}

fn runs_through(run: &Run) -> bool {
    run.lit >= ALL && run.dropout.is_none()
}
