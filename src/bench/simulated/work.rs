//! What the work of a step mends.

use crate::bench::condition::Condition;
use crate::bench::electric::condition::Thermostat;

/// A repair.
pub type Mend = fn(&mut Condition);

/// What a step of a tree mends; none where its work changes nothing about the furnace.
pub fn mend(tree: &str, step: &str) -> Option<Mend> {
    Some(match (tree, step) {
        ("airflow" | "limit-cause", "change_filter") | ("tune-up", "new_filter") => {
            |condition| condition.thermal.air.filter_loaded = 0.0
        }
        ("tune-up", "wheel_out") => |condition| condition.thermal.air.wheel_dirty = 0.0,
        ("tune-up", "burners_out") => |condition| {
            let burners = &mut condition.thermal.burners;
            burners.dirty = 0.0;
            burners.orifice_plugged = 0.0;
            burners.out_of_line = 0.0;
        },
        ("airflow", "open_registers") => |condition| condition.thermal.air.registers_closed = 0.0,
        ("first-look" | "venting" | "combustion-air", "clear_ends") => |condition| {
            condition.thermal.flue.intake_blocked = 0.0;
            condition.thermal.flue.terminal_blocked = 0.0;
        },
        ("flame-drops-out" | "tune-up", "clean") | ("pilot-furnace", "clean_rod") => {
            |condition| condition.electric.sensing.coated = 0.0
        }
        ("limit-cause" | "combustion-check", "vent_cleared") => {
            |condition| condition.thermal.gas.reference = 0.0
        }
        ("no-call", "pins") => |condition| condition.electric.call.base_ohms = 0.0,
        ("no-call", "wait") => |condition| {
            let thermostat = &mut condition.electric.call.thermostat;
            if *thermostat == Thermostat::Delaying {
                *thermostat = Thermostat::Sound;
            }
        },
        _ => return None,
    })
}
