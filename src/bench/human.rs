//! What people and the house answer at a furnace whose fault is in the furnace: no danger stands before it is looked at.
//!
//! Dangers are found by noses, meters and eyes of people, and what they decide is no diagnosis; so a simulated call meets none
//! at its gate. Nor has anyone added, stored or set anything amiss. Where a fault of the furnace makes one (flame outside its path, carbon monoxide), its own probe tells.

use super::make::Kind;
use super::probe::SignProbe;

/// Signs that no fault changes.
pub fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "furnace_kind" => |furnace, _| {
            Some(match furnace.make.kind {
                Kind::OneStage => "one_stage",
                Kind::TwoStage(_) => "two_stage",
                Kind::Pilot(_) => "pilot",
                Kind::Twin(_) => "twinned",
            })
        },
        "gas_odour" => |_, _| Some("none"),
        "supplier_release" => |_, _| Some("released"),
        "water_reach" => |_, _| Some("floor_only"),
        "co_alarms" => |_, _| Some("working"),
        "everyone_out" => |_, _| Some("all_out"),
        "shock_victim" => |_, _| Some("talks"),
        "stored_things" => |_, _| Some("nothing_harmful"),
        "house_leaks" => |_, _| Some("usual"),
        "worst_case_done" => |_, _| Some("not_yet"),
        "accessory_wiring" => |_, _| Some("own_terminals"),
        "co_elsewhere" => |_, _| Some("none"),
        "safeties_bridged" => |_, _| Some("none"),
        "thermostat_place" => |_, _| Some("good"),
        "cycle_setting" => |_, _| Some("gas_furnace"),
        "fan_setting" => |_, _| Some("automatic"),
        "humidifier_state" => |_, _| Some("in_order"),
        "dust_smell" => |_, _| Some("goes"),
        _ => return None,
    })
}
