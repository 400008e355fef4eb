//! Probes on the two stages of a furnace that has them.

use super::{ReadingProbe, SignProbe};
use crate::bench::electric::StageVolts;
use crate::bench::furnace::{Furnace, Run};
use crate::bench::make::StagedBy;

/// Times the fire on low from which on eyes and ears tell that it has gone high.
const SEEN: f64 = 1.12;

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
        _ => return None,
    })
}

/// The second stage at the end of the fire, its delays run out.
fn late<'a>(furnace: &Furnace, run: &'a Run) -> Option<&'a StageVolts> {
    furnace.make.staging()?;
    Some(&run.fire_moment()?.volts.stage)
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
