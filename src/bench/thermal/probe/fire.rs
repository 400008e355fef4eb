//! Probes on burners and flame.

use super::burning;
use crate::bench::furnace::Run;
use crate::bench::probe::SignProbe;
use crate::bench::thermal::Shape;

/// Share of the flue gas that must be house air for eyes to see the flame move.
const FLAME_MOVES: f64 = 0.03;

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "burners" => |furnace, _| {
            let burners = &furnace.condition.thermal.burners;
            let plugged = burners.orifice_plugged > 0.3 || burners.dirty > 0.2;
            Some(match (plugged, burners.out_of_line > 0.15) {
                (true, _) => "plugged",
                (_, true) => "out_of_place",
                _ if burners.igniter_away > 0.2 => "igniter_misplaced",
                _ => "in_order",
            })
        },
        "flame_shape" => |_, run| {
            Some(match burning(run)?.shown.shape {
                Shape::None => return None,
                Shape::Blue => "blue_drawn_in",
                Shape::Yellow => "yellow_lazy",
                Shape::Lifts => "lifts",
                Shape::RollsBack => "rolls_back",
            })
        },
        "flame_as_blower_starts" => |_, run| Some(if moves(run)? { "move" } else { "unchanged" }),
        // Soot and scorched paint tell of it afterwards.
        "site_condition" => |_, run| {
            let outside = burning(run).is_some_and(|moment| moment.shown.shape == Shape::RollsBack);
            Some(if outside { "flame_outside" } else { "sound" })
        },
        _ => return None,
    })
}

/// Whether eyes see the flame move as the blower starts; none where it does not come to that.
pub(super) fn moves(run: &Run) -> Option<bool> {
    let before = run.before_blower?.shown.house_air;
    let after = run.after_blower?.shown.house_air;
    Some(after - before > FLAME_MOVES)
}
