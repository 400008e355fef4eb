//! How much water a furnace on propane lets drip in an hour of burning.
//!
//! # Equation
//!
//! `condensate = input * (share / 100) * water / gross heating value / density`, where the gas leaves 0.1169 kg of
//! water for each kWh of gross heat, of 998 kg/m³.
//!
//! # Arguments
//!
//! - `input`, BTU/h: what the burner takes, as clocked at the meter or on the rating plate.
//! - `share`, %: how much of the water condenses; taken as 100 % where it is not given: the most there can be.
//!
//! # Range
//!
//! A share from 0 to 100 %, and burning without a pause. Water of the combustion air is not counted, which in humid
//! weather adds some. The maker's instructions and local codes govern where the water goes; it is acid.
//!
//! # Example
//!
//! Computed: 100,000 BTU/h in full, 0.907 gallons an hour.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::condensate_propane::FORMULA;
//! let condensate = formula.compute_typed(&["100000 BTU/h", "100 %"])?;
//! assert_eq!(condensate.display(formula.result).digits(3).to_string(), "0.907 gal/h");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - Pure propane, C3H8.
//! - Heats of combustion: ISO 6976 (memory).

use super::condensate_natural;
use super::formula::{Formula, each, positive};
use super::fuel;
use super::unfit::Unfit;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "condensate_propane",
    sentence: "How much water a furnace on propane lets drip in an hour of burning.",
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "Pure propane, C3H8.",
        "Heats of combustion: ISO 6976 (memory).",
    ],
    compute: |numbers| {
        let [input, share] = each(numbers);
        positive(input, "the input")?;
        if !(0.0..=100.0).contains(&share) {
            return Err(Unfit::new(
                format!("{share} % of the water is no share of it"),
                "give a share from 0 to 100 %",
            ));
        }
        Ok(input * share / 100.0 * fuel::PROPANE.gallons_of_water_per_btu())
    },
    ..condensate_natural::FORMULA
};
