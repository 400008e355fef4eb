//! What can be asked of a furnace: each reading, sign and plate field by its registered name.

pub mod absent;
mod owner;

use super::electric;
use super::furnace::{Furnace, Run};
use super::human;
use super::make::{Blower, Make, Taps};
use super::thermal;

/// What a reading is, in the unit it is registered in; none where the state in which it is taken does not come up, or
/// this furnace has no such part.
pub type ReadingProbe = fn(&Furnace, &Run) -> Option<f64>;

/// Which of its registered values a sign shows.
pub type SignProbe = fn(&Furnace, &Run) -> Option<&'static str>;

/// What stands in a plate field.
pub type PlateProbe = fn(&Make) -> Option<Printed>;

/// What is printed on a plate, a label or a diagram.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Printed {
    /// A number in the field's unit.
    Number(f64),
    /// The name of one of the field's values.
    Word(&'static str),
}

/// The probe of a reading.
pub fn reading(name: &str) -> Option<ReadingProbe> {
    let half = electric::probe::reading(name).or_else(|| thermal::probe::reading(name));
    half.or_else(|| owner::reading(name))
}

/// The probe of a sign.
pub fn sign(name: &str) -> Option<SignProbe> {
    let half = electric::probe::sign(name).or_else(|| thermal::probe::sign(name));
    half.or_else(|| owner::sign(name)).or_else(|| human::sign(name))
}

/// The probe of a plate field.
pub fn plate(name: &str) -> Option<PlateProbe> {
    let number = plate_number(name);
    number.or_else(|| plate_word(name))
}

fn plate_number(name: &str) -> Option<PlateProbe> {
    use Printed::Number;
    Some(match name {
        "input" => |make| Some(Number(make.input)),
        "rise_min" => |make| Some(Number(make.rise_min)),
        "rise_max" => |make| Some(Number(make.rise_max)),
        "manifold" => |make| Some(Number(make.manifold)),
        "inlet_min" => |make| Some(Number(make.inlet_min)),
        "inlet_max" => |make| Some(Number(make.inlet_max)),
        "static_max" => |make| Some(Number(make.static_max)),
        "limit_opens" => |make| Some(Number(make.limit_opens)),
        "switch_set_point" => |make| Some(Number(make.switch_set_point)),
        "igniter_volts" => |make| (!make.spark).then_some(Number(make.igniter_volts)),
        "igniter_ohm_min" => |make| (!make.spark).then_some(Number(make.igniter_ohm_min)),
        "igniter_ohm_max" => |make| (!make.spark).then_some(Number(make.igniter_ohm_max)),
        "igniter_amps" => |make| (!make.spark).then_some(Number(make.igniter_amps)),
        "inducer_uf" => |make| make.inducer_uf.map(Number),
        "blower_uf" => |make| (make.blower == Blower::Tapped).then_some(Number(make.blower_uf)),
        "blower_amps" => |make| Some(Number(make.blower_amps)),
        _ => return None,
    })
}

fn plate_word(name: &str) -> Option<PlateProbe> {
    use Printed::Word;
    Some(match name {
        "gas" => |make| Some(Word(if make.propane { "propane" } else { "natural" })),
        "vent_kind" => |make| Some(Word(if make.condensing { "plastic" } else { "metal" })),
        "air_source" => |make| Some(Word(if make.condensing { "piped" } else { "room" })),
        "meter_fuel" => |make| Some(Word(if make.propane { "tank" } else { "metered" })),
        "switch_taps" => |make| {
            Some(Word(match make.switch_taps {
                Taps::CollectorToRoom => "collector_to_room",
                Taps::CollectorToBurnerBox => "collector_to_burner_box",
                Taps::AcrossChoke => "across_choke",
                Taps::BetweenCells => "between_cells",
            }))
        },
        "igniter_kind" => |make| Some(Word(if make.spark { "spark" } else { "hot_surface" })),
        "inducer_kind" => |make| {
            Some(Word(if make.inducer_commanded {
                "commanded"
            } else {
                "line"
            }))
        },
        "inducer_capacitor" => |make| {
            let fitted = make.inducer_uf.is_some();
            Some(Word(if fitted { "fitted" } else { "not_fitted" }))
        },
        "blower_kind" => |make| {
            Some(Word(match make.blower {
                Blower::Tapped => "tapped",
                Blower::ConstantTorque => "constant_torque",
                Blower::ConstantAirflow => "constant_airflow",
            }))
        },
        _ => return None,
    })
}
