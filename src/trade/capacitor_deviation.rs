//! How far a capacitor is from its label.
//!
//! # Equation
//!
//! `deviation = 100 * (capacitance / label - 1)`
//!
//! # Arguments
//!
//! - `capacitance`, µF: as measured, discharged and off its circuit, or worked out under load.
//! - `label`, µF: on the capacitor's label.
//!
//! # Range
//!
//! Below zero where it has lost capacitance. What is allowed stands on the label: plus or minus 6 % is common, some say
//! 5 or 10.
//!
//! # Warnings
//!
//! - Where it is further than 6 % from the label: most labels allow 6 %, and a motor runs hot on the wrong capacitance;
//!   read what this label allows; the new one has the old one's capacitance and at least its voltage.
//!
//! # Example
//!
//! Computed: 4.77 µF of 5 µF is 4.6 % short.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::capacitor_deviation::FORMULA;
//! let deviation = formula.compute_typed(&["4.77 µF", "5 µF"])?;
//! assert_eq!(deviation.display(formula.result).digits(2).to_string(), "-4.6 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition; the tolerances are common practice.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "capacitor_deviation",
    group: Group::Electrical,
    sentence: "How far a capacitor is from its label.",
    equation: "deviation = 100 * (capacitance / label - 1)",
    arguments: &[
        Argument::new(
            "capacitance",
            Scale::of(Unit::Microfarad),
            "as measured, discharged and off its circuit, or worked out under load",
        ),
        Argument::new("label", Scale::of(Unit::Microfarad), "on the capacitor's label"),
    ],
    result: Scale::of(Unit::Percent),
    range: "Below zero where it has lost capacitance. What is allowed stands on the label: plus or minus 6 \
            % is common, some say 5 or 10.",
    warnings: &[Warning {
        when: "it is further than 6 % from the label",
        reason: "most labels allow 6 %, and a motor runs hot on the wrong capacitance",
        help: "read what this label allows; the new one has the old one's capacitance and at least its voltage",
        applies: |_, deviation| deviation.abs() > 6.0,
    }],
    example: &["4.77 µF", "5 µF"],
    references: &["The definition; the tolerances are common practice."],
    compute: |numbers| {
        let [capacitance, label] = each(numbers);
        not_negative(
            capacitance,
            "the capacitance",
            "take it again, the leads on a discharged capacitor",
        )?;
        positive(label, "the capacitance on the label")?;
        Ok(100.0 * (capacitance / label - 1.0))
    },
};
