//! What burners, blower and inducer sound like.

use super::burning;
use crate::bench::probe::SignProbe;
use crate::bench::thermal::Shape;

/// Share of the burners that must burn for all of them to be lit.
const ALL: f64 = 0.99;
/// How far the igniter stands off before gas waits for it.
const LATE: f64 = 0.2;
/// Share of its turning that a wheel slips, and of its pressure that dirt takes, before it is heard.
const SLIPS: f64 = 0.05;
const SHAKES: f64 = 0.3;
/// Friction at which a bearing squeals.
const SQUEALS: f64 = 0.3;
/// Share of a motor's plate for static pressure at which ducts whistle.
const WHISTLES: f64 = 1.5;

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "light_sound" => |furnace, run| {
            let late = furnace.condition.thermal.burners.igniter_away > LATE;
            Some(match run.lit {
                0.0 => return None,
                ..ALL => "part",
                _ if late => "late",
                _ => "smooth",
            })
        },
        "flame_sound" => |furnace, run| {
            let airy = furnace.condition.thermal.burners.airy > 0.3;
            Some(match burning(run)?.shown.shape {
                Shape::None => return None,
                Shape::Lifts if airy => "howls",
                Shape::Lifts | Shape::RollsBack => "flutters",
                Shape::Blue | Shape::Yellow => "roar_even",
            })
        },
        // A blower that is merely heard is none that makes a noise.
        "blower_sound" => |furnace, run| {
            let air = &furnace.condition.thermal.air;
            let moment = burning(run)?.shown;
            let tight =
                moment.return_static.abs() + moment.supply_static > WHISTLES * furnace.make.static_max;
            match furnace.condition.electric.blower.drag > SQUEALS {
                _ if air.wheel_loose > SLIPS || air.wheel_dirty > SHAKES => Some("rumble"),
                true => Some("squeal"),
                false => tight.then_some("whistle"),
            }
        },
        "inducer_sound" => |furnace, run| {
            let inducer = &furnace.condition.thermal.inducer;
            let water = run.draft.shown.water > 0.3;
            let grinds = furnace.condition.electric.inducer.drag > SQUEALS;
            Some(match water || inducer.wheel_loose > SLIPS {
                _ if run.draft.volts.inducer_turns == 0.0 => return None,
                true => "rattles",
                false if grinds => "grinds",
                false => "even",
            })
        },
        _ => return None,
    })
}
