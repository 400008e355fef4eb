//! Probes on the two stages of a furnace that has them.

use super::{ReadingProbe, SignProbe};
use crate::bench::electric::StageVolts;
use crate::bench::furnace::{Furnace, Moment, Run};
use crate::bench::make::StagedBy;

/// Times the fire on low from which on eyes and ears tell that it has gone high.
const SEEN: f64 = 1.12;

/// Share of the draft that a hose or a port loses before eyes find it, or water that stands in it, in.w.c.
const LOST: f64 = 0.1;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "low_fire_manifold" => |furnace, run| {
            furnace.make.staging()?;
            run.low.map(|moment| moment.shown.manifold_lowest)
        },
        "second_stage_call" => |furnace, run| late(furnace, run).map(|stage| stage.call),
        "board_second_stage_output" => |furnace, run| late(furnace, run).map(|stage| stage.pin),
        "second_stage_valve" => |furnace, run| late(furnace, run).map(|stage| stage.valve),
        "high_switch_voltage" => |furnace, run| late(furnace, run).map(|stage| stage.switch),
        "high_draft" => |furnace, run| asked(furnace, run).map(|moment| moment.shown.draft_switch),
        "inducer_high_voltage" => |furnace, run| {
            let line = !furnace.make.inducer_commanded;
            line.then(|| asked(furnace, run).map(|moment| moment.volts.inducer_plug))?
        },
        _ => return None,
    })
}

/// The second stage at the end of the fire, its delays run out.
fn late<'a>(furnace: &Furnace, run: &'a Run) -> Option<&'a StageVolts> {
    furnace.make.staging()?;
    Some(&run.fire_moment()?.volts.stage)
}

/// The end of the fire, where the board asks for high.
fn asked<'a>(furnace: &Furnace, run: &'a Run) -> Option<&'a Moment> {
    let told = late(furnace, run)?.told;
    run.fire_moment().filter(|_| told)
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "stage_problem" => |furnace, run| {
            furnace.make.staging()?;
            Some(match (run.low, run.fire_moment()) {
                (Some(low), Some(late)) if late.shown.input > SEEN * low.shown.input => "both_work",
                (Some(_), Some(_)) => "no_high",
                _ => "no_low",
            })
        },
        "inducer_goes_high" => |furnace, run| {
            asked(furnace, run)?;
            let stays = furnace.condition.electric.stages.speed_stays_low;
            Some(if stays { "stays" } else { "rises" })
        },
        "high_switch_look" => |furnace, _| {
            furnace.make.staging()?;
            let hoses = &furnace.condition.thermal.hoses;
            let whole = hoses.split.max(hoses.switch_port_plugged) < LOST && hoses.water < LOST;
            Some(match whole && !hoses.swapped {
                true => "right",
                false => "hose_or_port",
            })
        },
        "stage_setting" => |furnace, _| {
            let staging = furnace.make.staging()?;
            Some(match staging.by {
                _ if furnace.condition.electric.stages.set_for_one => "not_meant",
                StagedBy::Thermostat => "by_thermostat",
                StagedBy::Timer => "by_timer",
            })
        },
        _ => return None,
    })
}
