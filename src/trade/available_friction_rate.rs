//! The pressure that 100 ft of duct may take, so that the blower still delivers its air.
//!
//! # Equation
//!
//! `friction_rate = (external_static - losses) * 100 / length`, in in.w.c. per 100 ft, in.w.c. and ft.
//!
//! # Arguments
//!
//! - `external_static`, in.w.c.: what the blower gives outside the furnace at the airflow wanted, from its table.
//! - `losses`, in.w.c.: what all that is not duct takes: coil, filter if outside, registers, grilles, dampers.
//! - `length`, ft: the longest way, return and supply together, each fitting counted as the length of duct it equals.
//!
//! # Range
//!
//! The equation counts 100 ft of duct. Losses below the external static; a length that counts its fittings. The local code may
//! ask for a method of its own.
//!
//! # Warnings
//!
//! - Where the rate is below 0.06 in.w.c. per 100 ft: ducts of a sensible size do not do; shorten the longest way, or
//!   lower the losses.
//! - Where the rate is above 0.18 in.w.c. per 100 ft: ducts that small are noisy; size the ducts for 0.18 in.w.c. per
//!   100 ft or less, and damp the rest.
//!
//! # Example
//!
//! Arithmetic: 0.50 in.w.c., of which 0.26 are lost elsewhere, over 300 ft are 0.08 in.w.c. per 100 ft.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::available_friction_rate::FORMULA;
//! let rate = formula.compute_typed(&["0.50 in.w.c.", "0.26 in.w.c.", "300 ft"])?;
//! assert_eq!((rate.number_in(formula.result) * 1e3).round(), 80.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition, as in ACCA Manual D (memory); the limits of the warnings are its wedge, 0.06 to 0.18 in.w.c. per
//!   100 ft (memory).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::unfit::Unfit;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "available_friction_rate",
    group: Group::Air,
    sentence: "The pressure that 100 ft of duct may take, so that the blower still delivers its air.",
    equation: "friction_rate = (external_static - losses) * 100 / length",
    arguments: &[
        Argument::new(
            "external_static",
            Scale::of(Unit::InchWaterColumn),
            "what the blower gives outside the furnace at the airflow wanted, from its table",
        ),
        Argument::new(
            "losses",
            Scale::of(Unit::InchWaterColumn),
            "what all that is not duct takes: coil, filter if outside, registers, grilles, dampers",
        ),
        Argument::new(
            "length",
            Scale::of(Unit::Foot),
            "the longest way, return and supply together, each fitting counted as the length of duct it \
             equals",
        ),
    ],
    result: Scale::of(Unit::InchWaterColumn),
    range: "The equation counts 100 ft of duct. Losses below the external static; a length that counts its fittings. \
            The local code may ask for a method of its own.",
    warnings: &[
        Warning {
            when: "the rate is below 0.06 in.w.c. per 100 ft",
            reason: "ducts of a sensible size do not do",
            help: "shorten the longest way, or lower the losses",
            applies: |_, rate| rate < 0.06,
        },
        Warning {
            when: "the rate is above 0.18 in.w.c. per 100 ft",
            reason: "ducts that small are noisy",
            help: "size the ducts for 0.18 in.w.c. per 100 ft or less, and damp the rest",
            applies: |_, rate| rate > 0.18,
        },
    ],
    example: &["0.50 in.w.c.", "0.26 in.w.c.", "300 ft"],
    references: &[
        "The definition, as in ACCA Manual D (memory); the limits of the warnings are its wedge, 0.06 to \
         0.18 in.w.c. per 100 ft (memory).",
    ],
    compute: |numbers| {
        let [external_static, losses, length] = each(numbers);
        positive(external_static, "the external static pressure")?;
        not_negative(
            losses,
            "the loss",
            "give each loss as a drop, without a minus sign",
        )?;
        positive(length, "the length")?;
        if losses >= external_static {
            return Err(Unfit::new(
                "coil, filter and registers take all that the blower gives, and nothing is left for the ducts",
                "take parts with a lower loss, less air, or a stronger blower",
            ));
        }
        Ok((external_static - losses) * 100.0 / length)
    },
};
