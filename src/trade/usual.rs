//! What an input usually is: one far from it may well be right, and may well be a slip.

use crate::measure::{Quantity, Scale, Unit};

use super::argument::Argument;
use super::formula::Formula;
use super::given::Given;
use super::group::Group;

/// An input that is larger or smaller than it is in houses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unusual {
    /// The input.
    pub argument: &'static Argument,
    /// Its value, without its sign.
    pub value: Quantity,
    /// The least and the most that is usual, in the argument's unit.
    pub usual: [Quantity; 2],
}

/// What is usual of the arguments of these names.
struct Usual {
    names: &'static [&'static str],
    /// In these groups alone, where a name means another thing elsewhere; all where there is none.
    groups: &'static [Group],
    least: f64,
    most: f64,
    unit: Unit,
}

const fn usual(names: &'static [&'static str], least: f64, most: f64, unit: Unit) -> Usual {
    Usual {
        names,
        groups: &[],
        least,
        most,
        unit,
    }
}

const fn of(groups: &'static [Group], usual: Usual) -> Usual {
    Usual { groups, ..usual }
}

/// By far, so that hardly a house lies outside (common practice). Zero means none, and is never unusual.
#[rustfmt::skip] // one kind a line, so that the table reads as a table
const USUAL: &[Usual] = &[
    usual(&["input", "plate_input", "output", "other_input", "fan_assisted_input"], 2_000.0, 600_000.0, Unit::BtuPerHour),
    usual(&["dial"], 0.25, 50.0, Unit::CubicFoot),
    usual(&["time"], 5.0, 1_200.0, Unit::Second),
    usual(&["slip"], 0.1, 5.0, Unit::Second),
    usual(&["flow"], 5.0, 1_000.0, Unit::CubicFootPerHour),
    usual(&["pressure_drop"], 0.05, 10.0, Unit::InchWaterColumn),
    of(&[Group::Gas], usual(&["pressure", "new_pressure", "plate_pressure"], 0.2, 60.0, Unit::InchWaterColumn)),
    of(&[Group::Gas], usual(&["diameter", "new_diameter"], 0.0135, 0.5, Unit::Inch)),
    usual(&["orifices"], 1.0, 12.0, Unit::Number),
    usual(&["altitude"], 0.0, 12_000.0, Unit::Foot),
    usual(&["length"], 1.0, 1_000.0, Unit::Foot),
    of(&[Group::Venting], usual(&["height"], 3.0, 100.0, Unit::Foot)),
    usual(&["airflow", "new_airflow"], 20.0, 6_000.0, Unit::CubicFootPerMinute),
    usual(&["speed", "new_speed", "motor_speed"], 100.0, 4_000.0, Unit::RevolutionPerMinute),
    usual(&["motor_pulley", "fan_pulley"], 1.0, 20.0, Unit::Inch),
    usual(&["velocity"], 50.0, 2_000.0, Unit::FootPerMinute),
    usual(&["velocity_pressure"], 0.001, 1.0, Unit::InchWaterColumn),
    of(&[Group::Air], usual(&["pressure", "static", "external_static", "losses"], 0.01, 5.0, Unit::InchWaterColumn)),
    of(&[Group::Air], usual(&["diameter", "width", "height"], 3.0, 48.0, Unit::Inch)),
    usual(&["roughness"], 0.000_005, 0.01, Unit::Foot),
    usual(&["rise"], 5.0, 150.0, Unit::DegreeFahrenheit),
    usual(&["o2"], 0.5, 20.9, Unit::Percent),
    usual(&["share", "free_share"], 5.0, 100.0, Unit::Percent),
    usual(&["air_changes"], 0.05, 0.60, Unit::Number),
    usual(&["free_area", "connector_area"], 1.0, 2_000.0, Unit::SquareInch),
    of(&[Group::Electrical], usual(&["current", "plate"], 0.01, 100.0, Unit::Ampere)),
    of(&[Group::Electrical], usual(&["plate"], 5.0, 500.0, Unit::VoltAmpere)),
    usual(&["voltage"], 5.0, 600.0, Unit::Volt),
    usual(&["dropout"], 0.05, 20.0, Unit::Microampere),
    usual(&["resistance_at_77"], 500.0, 500_000.0, Unit::Ohm),
    usual(&["suction"], 0.02, 10.0, Unit::InchWaterColumn),
    usual(&["margin"], 0.25, 6.0, Unit::Inch),
    usual(&["slope"], 0.06, 3.0, Unit::Inch),
    usual(&["drop"], 0.06, 60.0, Unit::Inch),
];

/// The inputs of a formula that are not as usual.
pub(super) fn unusual(formula: &Formula, inputs: &[Given]) -> Vec<Unusual> {
    let found = inputs.iter().filter_map(|given| {
        let argument = given.argument;
        let kind = argument.scale.dimension();
        let row = USUAL.iter().find(|row| {
            let is_here = row.groups.is_empty() || row.groups.contains(&formula.group);
            is_here
                && row.names.contains(&argument.name)
                && row.unit.dimension() == argument.scale.unit.dimension()
        })?;
        let scale = Scale {
            unit: row.unit,
            difference: argument.scale.difference,
        };
        let usual = [row.least, row.most].map(|number| Quantity::new(number, scale));
        let value = Quantity::new(given.value.number_in(scale).abs(), scale);
        let [least, most] = usual.map(Quantity::base);
        let is_usual = value.number_in(scale) == 0.0 || (least..=most).contains(&value.base());
        (!is_usual && value.dimension() == kind).then_some(Unusual {
            argument,
            value,
            usual,
        })
    });
    found.collect()
}
