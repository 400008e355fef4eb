//! Probes on the line: supply, door switch, ground.

use super::loaded;
use crate::bench::electric::condition::Feed;
use crate::bench::electric::{OPEN, shown};
use crate::bench::probe::{ReadingProbe, SignProbe};

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "line_voltage" => |_, run| Some(run.whole.line),
        "hot_to_ground" => |_, run| Some(loaded(run).volts.line.hot_to_ground),
        "neutral_to_ground" => |_, run| Some(loaded(run).volts.line.neutral_to_ground),
        "equipment_ground" => |furnace, _| Some(shown(furnace.condition.electric.line.ground_ohms())),
        "supply_at_furnace" => |_, run| Some(run.rest.volts.line.at_furnace),
        "door_switch_output" => |_, run| Some(run.rest.volts.line.behind_door),
        "line_to_cabinet" => |furnace, _| {
            let short = furnace.condition.electric.line.short;
            Some(shown(short.unwrap_or(OPEN)))
        },
        "line_voltage_at_dropout" => |_, run| run.fire.map(|fire| fire.line),
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "breaker" => |furnace, run| {
            let line = &furnace.condition.electric.line;
            Some(match line.feed {
                _ if line.is_tripped(run.sound.source) => "tripped",
                Feed::SwitchOpen => "switch_open",
                Feed::Live | Feed::Dead | Feed::Tripped => "all_set",
            })
        },
        "door_fit" => |furnace, _| {
            let bent = furnace.condition.electric.line.door_bent;
            Some(if bent { "short" } else { "presses" })
        },
        _ => return None,
    })
}
