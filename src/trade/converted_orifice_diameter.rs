//! The orifice that gives the same input with another gas.
//!
//! # Equation
//!
//! `new_diameter = diameter * sqrt(heating_value / new_heating_value * sqrt(pressure / new_pressure *
//! new_specific_gravity / specific_gravity))`, in inches, in.w.c. and BTU/ft³.
//!
//! # Arguments
//!
//! - `diameter`, in: of the orifice for the old gas.
//! - `pressure`, in.w.c.: the manifold pressure for the old gas.
//! - `heating_value`, BTU/ft³: of the old gas; about 1000 for natural gas.
//! - `specific_gravity`: of the old gas against air; about 0.60 for natural gas.
//! - `new_pressure`, in.w.c.: the manifold pressure for the new gas.
//! - `new_heating_value`, BTU/ft³: of the new gas; about 2500 for propane.
//! - `new_specific_gravity`: of the new gas against air; about 1.52 for propane.
//!
//! # Range
//!
//! Two gases through orifices of one shape at sea level, pressures of at most 1 psi. A conversion is more than this:
//! burner, valve, regulator, air and label. Only the maker's conversion kit, put in by those licensed for it, makes a
//! furnace fit for another gas.
//!
//! # Example
//!
//! Arithmetic: 0.0820 in for natural gas at 3.5 in.w.c. become 0.0490 in for propane at 11 in.w.c.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::converted_orifice_diameter::FORMULA;
//! let diameter = formula.compute_typed(&["0.0820 in", "3.5 in.w.c.", "1000 BTU/ft3", "0.60", "11 in.w.c.", "2500 BTU/ft3", "1.50"])?;
//! assert_eq!((diameter.number_in(formula.result) * 1e4).round(), 490.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The square-root law of flow through an orifice: elementary fluid mechanics.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::limits::within;
use super::orifice::heat;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "converted_orifice_diameter",
    group: Group::Gas,
    sentence: "The orifice that gives the same input with another gas.",
    equation: "new_diameter = diameter * sqrt(heating_value / new_heating_value * sqrt(pressure / \
               new_pressure * new_specific_gravity / specific_gravity))",
    arguments: &[
        Argument::new(
            "diameter",
            Scale::of(Unit::Inch),
            "of the orifice for the old gas",
        )
        .drilled(),
        Argument::new(
            "pressure",
            Scale::of(Unit::InchWaterColumn),
            "the manifold pressure for the old gas",
        ),
        Argument::new(
            "heating_value",
            Scale::of(Unit::BtuPerCubicFoot),
            "of the old gas; about 1000 for natural gas",
        ),
        Argument::new(
            "specific_gravity",
            Scale::of(Unit::Number),
            "of the old gas against air; about 0.60 for natural gas",
        ),
        Argument::new(
            "new_pressure",
            Scale::of(Unit::InchWaterColumn),
            "the manifold pressure for the new gas",
        ),
        Argument::new(
            "new_heating_value",
            Scale::of(Unit::BtuPerCubicFoot),
            "of the new gas; about 2500 for propane",
        ),
        Argument::new(
            "new_specific_gravity",
            Scale::of(Unit::Number),
            "of the new gas against air; about 1.52 for propane",
        ),
    ],
    result: Scale::of(Unit::Inch),
    range: "Two gases through orifices of one shape at sea level, pressures of at most 1 psi. A conversion \
            is more than this: burner, valve, regulator, air and label. Only the maker's conversion kit, \
            put in by those licensed for it, makes a furnace fit for another gas.",
    warnings: &[],
    example: &[
        "0.0820 in",
        "3.5 in.w.c.",
        "1000 BTU/ft3",
        "0.60",
        "11 in.w.c.",
        "2500 BTU/ft3",
        "1.50",
    ],
    references: &["The square-root law of flow through an orifice: elementary fluid mechanics."],
    compute: |numbers| {
        let [
            diameter,
            pressure,
            heating_value,
            specific_gravity,
            new_pressure,
            new_heating_value,
            new_specific_gravity,
        ] = each(numbers);
        positive(diameter, "the diameter")?;
        within(diameter, 0.0, 0.5, "the diameter", "in")?;
        let old = heat(pressure, heating_value, specific_gravity)?;
        let new = heat(new_pressure, new_heating_value, new_specific_gravity)?;
        let new_diameter = diameter * (old / new).sqrt();
        within(new_diameter, 0.0, 0.5, "the new diameter", "in")?;
        Ok(new_diameter)
    },
};
