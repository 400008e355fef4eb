//! Probes on the pilot of a furnace that has one.

use super::{ReadingProbe, SignProbe};
use crate::bench::electric::Held;
use crate::bench::electric::condition::Sensing;
use crate::bench::furnace::{Furnace, Run};
use crate::bench::make::Pilot;

/// Flames of a smaller size are called weak, share of a good one's.
const WEAK: f64 = 0.65;
/// Share of the burners that must burn for all of them to be lit.
const ALL: f64 = 0.99;
/// Share of a thermocouple's voltage that is lost before its place is seen to be the reason.
const OUT: f64 = 0.2;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "pilot_signal" => |furnace, run| held(furnace, run).map(|held| held.connected),
        "pilot_chain_drop" => |furnace, run| held(furnace, run).map(|held| held.on_the_way),
        "pilot_signal_open" => |furnace, run| held(furnace, run).map(|held| held.alone),
        _ => return None,
    })
}

/// A standing pilot's thermocouple, its knob held in; none without a flame.
fn held(furnace: &Furnace, run: &Run) -> Option<Held> {
    let standing = furnace.make.pilot() == Some(Pilot::Standing);
    (standing && run.pilot > 0.0).then(|| furnace.condition.electric.thermocouple.in_flame(run.pilot))
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "pilot_kind" => |furnace, _| {
            Some(match furnace.make.pilot()? {
                Pilot::Standing => "standing",
                Pilot::OnCall => "on_call",
            })
        },
        "pilot_flame" => |furnace, run| {
            let stays = match furnace.make.pilot()? {
                Pilot::Standing => held(furnace, run).is_some_and(|held| held.holds),
                // Its board opens the main valve only over a proved pilot.
                Pilot::OnCall => run.trial.is_some(),
            };
            Some(match run.pilot {
                0.0 => "out",
                ..WEAK => "weak",
                _ if stays => "steady",
                _ => "goes_out",
            })
        },
        "pilot_good_rod" => |furnace, run| {
            (furnace.make.pilot()? == Pilot::OnCall).then_some(())?;
            let electric = &furnace.condition.electric;
            let bathed = if run.pilot < WEAK { 0.0 } else { 1.0 };
            let returned = electric.line.flame_return();
            let seen = |sensing: &Sensing| {
                sensing.current(run.sound.flame_current, bathed, returned) >= run.sound.flame_seen
            };
            let hears = !electric.board.no_sensing && !electric.board.deaf;
            // Where its own rod gave enough, something else puts the pilot out, and a new rod changes nothing.
            let own_was_it = !seen(&electric.sensing) && seen(&electric.sensing.with_good_rod());
            let proved = run.trial.is_some() || (hears && own_was_it);
            Some(if proved { "proved" } else { "not_proved" })
        },
        "pilot_spark" => |furnace, run| {
            furnace.make.pilot()?;
            let sparks = run.warm_up.is_some_and(|moment| moment.volts.glow.seen);
            Some(if sparks { "sparks" } else { "no_spark" })
        },
        "main_after_pilot" => |furnace, run| {
            furnace.make.pilot()?;
            Some(match run.dropout {
                _ if run.lit < ALL => "nothing",
                Some(_) => "drop_out",
                None => "light",
            })
        },
        "thermocouple_place" => |furnace, _| {
            let out = furnace.condition.electric.thermocouple.out_of_flame > OUT;
            furnace.make.pilot()?;
            Some(if out { "out_of_flame" } else { "in_flame" })
        },
        "pilot_safety_chain" => |furnace, _| {
            let open = furnace.condition.electric.thermocouple.chain_open;
            furnace.make.pilot()?;
            Some(if open { "open" } else { "closed" })
        },
        _ => return None,
    })
}
