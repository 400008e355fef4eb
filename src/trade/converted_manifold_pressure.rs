//! The manifold pressure that gives the same input with another gas and other orifices.
//!
//! # Equation
//!
//! `new_pressure = pressure * (diameter / new_diameter)^4 * (heating_value / new_heating_value)^2 *
//! new_specific_gravity / specific_gravity`, in in.w.c., in and BTU/ft³.
//!
//! # Arguments
//!
//! - `pressure`, in.w.c.: the manifold pressure for the old gas.
//! - `diameter`, in: of the orifices for the old gas.
//! - `heating_value`, BTU/ft³: of the old gas; about 1000 for natural gas.
//! - `specific_gravity`: of the old gas against air; about 0.60 for natural gas.
//! - `new_diameter`, in: of the orifices for the new gas.
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
//! Arithmetic: 3.5 in.w.c. at 0.0820 in of natural gas become 10.9 in.w.c. at 0.0491 in of propane.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::converted_manifold_pressure::FORMULA;
//! let pressure = formula.compute_typed(&["3.5 in.w.c.", "0.0820 in", "1000 BTU/ft3", "0.60", "0.0491 in", "2500 BTU/ft3", "1.50"])?;
//! assert_eq!((pressure.number_in(formula.result) * 10.0).round(), 109.0);
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
    name: "converted_manifold_pressure",
    group: Group::Gas,
    sentence: "The manifold pressure that gives the same input with another gas and other orifices.",
    equation: "new_pressure = pressure * (diameter / new_diameter)^4 * (heating_value / \
               new_heating_value)^2 * new_specific_gravity / specific_gravity",
    arguments: &[
        Argument::new(
            "pressure",
            Scale::of(Unit::InchWaterColumn),
            "the manifold pressure for the old gas",
        ),
        Argument::new(
            "diameter",
            Scale::of(Unit::Inch),
            "of the orifices for the old gas",
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
            "new_diameter",
            Scale::of(Unit::Inch),
            "of the orifices for the new gas",
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
    result: Scale::of(Unit::InchWaterColumn),
    range: "Two gases through orifices of one shape at sea level, pressures of at most 1 psi. A conversion \
            is more than this: burner, valve, regulator, air and label. Only the maker's conversion kit, \
            put in by those licensed for it, makes a furnace fit for another gas.",
    warnings: &[],
    example: &[
        "3.5 in.w.c.",
        "0.0820 in",
        "1000 BTU/ft3",
        "0.60",
        "0.0491 in",
        "2500 BTU/ft3",
        "1.50",
    ],
    references: &["The square-root law of flow through an orifice: elementary fluid mechanics."],
    compute: |numbers| {
        let [
            pressure,
            diameter,
            heating_value,
            specific_gravity,
            new_diameter,
            new_heating_value,
            new_specific_gravity,
        ] = each(numbers);
        positive(diameter, "the old diameter")?;
        positive(new_diameter, "the new diameter")?;
        within(diameter, 0.0, 0.5, "the old diameter", "in")?;
        within(new_diameter, 0.0, 0.5, "the new diameter", "in")?;
        // What a hole of one size passes at a unit of pressure grows with the root of it: squared, the pressure.
        let old = heat(1.0, heating_value, specific_gravity)? * diameter.powi(2);
        let new = heat(1.0, new_heating_value, new_specific_gravity)? * new_diameter.powi(2);
        positive(pressure, "the manifold pressure")?;
        within(pressure, 0.0, 27.7, "the manifold pressure", "in.w.c.")?;
        let new_pressure = pressure * (old / new).powi(2);
        within(new_pressure, 0.0, 27.7, "the new manifold pressure", "in.w.c.")?;
        Ok(new_pressure)
    },
};
