//! What stands on rating plate, labels and diagrams.

use super::{PlateProbe, Printed};
use crate::bench::electric::ABOVE;
use crate::bench::make::{Blower, Taps};

/// The probe of a plate field.
pub fn plate(name: &str) -> Option<PlateProbe> {
    let number = plate_number(name);
    number.or_else(|| plate_word(name))
}

fn plate_number(name: &str) -> Option<PlateProbe> {
    use Printed::Number;
    Some(match name {
        "input" => |furnace, run| {
            let fire = if run.is_tested_on_low() {
                furnace.make.low_fire()
            } else {
                1.0
            };
            // As printed, for sea level: whoever clocks it allows for the altitude.
            Some(Number(furnace.make.input * fire))
        },
        "rise_min" => |furnace, _| Some(Number(furnace.make.rise_min)),
        "rise_max" => |furnace, _| Some(Number(furnace.make.rise_max)),
        "manifold" => |furnace, run| {
            let low = furnace.make.staging().filter(|_| run.is_tested_on_low());
            Some(Number(
                low.map_or(furnace.make.manifold, |staging| staging.low_manifold),
            ))
        },
        // Where low fire is what is tested, its figure has already been given.
        "low_manifold" => |furnace, run| {
            let staging = furnace.make.staging().filter(|_| !run.is_tested_on_low());
            staging.map(|staging| Number(staging.low_manifold))
        },
        "inlet_min" => |furnace, _| Some(Number(furnace.make.inlet_min)),
        "inlet_max" => |furnace, _| Some(Number(furnace.make.inlet_max)),
        "static_max" => |furnace, _| Some(Number(furnace.make.static_max)),
        "limit_opens" => |furnace, _| Some(Number(furnace.make.limit_opens)),
        "switch_set_point" => |furnace, _| Some(Number(furnace.make.switch_set_point)),
        "high_switch_set_point" => |furnace, _| {
            let make = &furnace.make;
            make.staging()?;
            Some(Number(make.switch_set_point * ABOVE / make.low_speed().powi(2)))
        },
        "igniter_volts" => |furnace, _| (!furnace.make.spark).then_some(Number(furnace.make.igniter_volts)),
        "igniter_ohm_min" => {
            |furnace, _| (!furnace.make.spark).then_some(Number(furnace.make.igniter_ohm_min))
        }
        "igniter_ohm_max" => {
            |furnace, _| (!furnace.make.spark).then_some(Number(furnace.make.igniter_ohm_max))
        }
        "igniter_amps" => |furnace, _| (!furnace.make.spark).then_some(Number(furnace.make.igniter_amps)),
        "inducer_rpm" => |furnace, _| {
            let line = !furnace.make.inducer_commanded;
            line.then(|| Number(furnace.make.inducer_rpm()))
        },
        "inducer_uf" => |furnace, _| furnace.make.inducer_uf.map(Number),
        "blower_uf" => {
            |furnace, _| (furnace.make.blower == Blower::Tapped).then_some(Number(furnace.make.blower_uf))
        }
        "blower_amps" => |furnace, _| Some(Number(furnace.make.blower_amps)),
        _ => return None,
    })
}

fn plate_word(name: &str) -> Option<PlateProbe> {
    use Printed::Word;
    Some(match name {
        "gas" => |furnace, _| {
            Some(Word(if furnace.make.propane {
                "propane"
            } else {
                "natural"
            }))
        },
        "vent_kind" => |furnace, _| {
            Some(Word(if furnace.make.condensing {
                "plastic"
            } else {
                "metal"
            }))
        },
        "air_source" => |furnace, _| Some(Word(if furnace.make.condensing { "piped" } else { "room" })),
        "meter_fuel" => |furnace, _| Some(Word(if furnace.make.propane { "tank" } else { "metered" })),
        "switch_taps" => |furnace, _| {
            Some(Word(match furnace.make.switch_taps {
                Taps::CollectorToRoom => "collector_to_room",
                Taps::CollectorToBurnerBox => "collector_to_burner_box",
                Taps::AcrossChoke => "across_choke",
                Taps::BetweenCells => "between_cells",
            }))
        },
        "igniter_kind" => |furnace, _| {
            let at_burners = furnace.make.pilot().is_none();
            at_burners.then_some(Word(if furnace.make.spark {
                "spark"
            } else {
                "hot_surface"
            }))
        },
        "inducer_kind" => |furnace, _| {
            Some(Word(if furnace.make.inducer_commanded {
                "commanded"
            } else {
                "line"
            }))
        },
        "inducer_capacitor" => |furnace, _| {
            let fitted = furnace.make.inducer_uf.is_some();
            Some(Word(if fitted { "fitted" } else { "not_fitted" }))
        },
        "blower_kind" => |furnace, _| {
            Some(Word(match furnace.make.blower {
                Blower::Tapped => "tapped",
                Blower::ConstantTorque => "constant_torque",
                Blower::ConstantAirflow => "constant_airflow",
            }))
        },
        _ => return None,
    })
}
