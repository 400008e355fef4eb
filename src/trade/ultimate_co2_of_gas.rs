//! The most carbon dioxide that a gas can give when it burns, from what it is made of.
//!
//! # Equation
//!
//! `ultimate_co2 = 100 * co2 / (co2 + nitrogen)`, of what burning the gas with just enough dry air leaves: (3 n + 1) /
//! 2 volumes of oxygen for each volume of a paraffin of n carbon atoms, and n volumes of carbon dioxide.
//!
//! # Arguments
//!
//! - `methane`, %: CH4.
//! - `ethane`, %: C2H6.
//! - `propane`, %: C3H8.
//! - `butanes`, %: C4H10, and heavier.
//! - `nitrogen`, %: N2.
//! - `carbon_dioxide`, %: CO2 in the gas.
//!
//! # Range
//!
//! A gas of these alone, by volume, as the supplier states it; the shares add up to 98 to 102 %, and what is missing is
//! spread over all.
//!
//! # Example
//!
//! Computed: pure methane gives 11.7 %.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::ultimate_co2_of_gas::FORMULA;
//! let ultimate = formula.compute_typed(&["100 %", "0 %", "0 %", "0 %", "0 %", "0 %"])?;
//! assert_eq!(ultimate.display(formula.result).digits(3).to_string(), "11.7 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air. Dry air: 20.946 % oxygen, 0.04 % carbon dioxide.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::fuel::Gas;
use super::group::Group;
use super::unfit::Unfit;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "ultimate_co2_of_gas",
    group: Group::Combustion,
    sentence: "The most carbon dioxide that a gas can give when it burns, from what it is made of.",
    equation: "ultimate_co2 = 100 * co2 / (co2 + nitrogen)",
    arguments: &[
        Argument::new("methane", Scale::of(Unit::Percent), "CH4"),
        Argument::new("ethane", Scale::of(Unit::Percent), "C2H6"),
        Argument::new("propane", Scale::of(Unit::Percent), "C3H8"),
        Argument::new("butanes", Scale::of(Unit::Percent), "C4H10, and heavier"),
        Argument::new("nitrogen", Scale::of(Unit::Percent), "N2"),
        Argument::new("carbon_dioxide", Scale::of(Unit::Percent), "CO2 in the gas"),
    ],
    result: Scale::of(Unit::Percent),
    range: "A gas of these alone, by volume, as the supplier states it; the shares add up to 98 to 102 %, \
            and what is missing is spread over all.",
    warnings: &[],
    example: &["100 %", "0 %", "0 %", "0 %", "0 %", "0 %"],
    references: &[
        "Stoichiometry of complete combustion with dry air. Dry air: 20.946 % oxygen, 0.04 % carbon \
         dioxide.",
    ],
    compute: |numbers| {
        let [methane, ethane, propane, butanes, nitrogen, carbon_dioxide] = each(numbers);
        for share in numbers {
            not_negative(
                *share,
                "a share of the gas",
                "take the shares from the supplier's analysis",
            )?;
        }
        let whole: f64 = numbers.iter().sum();
        if !(98.0..=102.0).contains(&whole) {
            return Err(Unfit::new(
                format!("the shares add up to {whole:.1} %, not to 100 %"),
                "take all of them from one analysis, by volume",
            ));
        }
        positive(methane + ethane + propane + butanes, "what burns of the gas")?;
        let gas = Gas {
            methane,
            ethane,
            propane,
            butanes,
            nitrogen,
            carbon_dioxide,
        };
        Ok(100.0 * gas.burning().ultimate_carbon_dioxide())
    },
};
