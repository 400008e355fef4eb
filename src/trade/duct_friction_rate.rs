//! The pressure that 100 ft of straight round duct take, for standard air.
//!
//! # Equation
//!
//! `friction_rate = f * 1200 / diameter * density * velocity^2 / 2, 1 / sqrt(f) = -2 * log10(roughness / (3.7 *
//! diameter) + 2.51 / (reynolds * sqrt(f)))`, the first in consistent units, given in in.w.c. per 100 ft; the second
//! is solved by iteration.
//!
//! # Arguments
//!
//! - `airflow`, CFM: the air through this duct.
//! - `diameter`, in: inside, of a round duct; see `equivalent_round_diameter` for others.
//! - `roughness`, ft: of the wall; taken as 0.0003 ft where it is not given: galvanised sheet steel of medium
//!   smoothness.
//!
//! # Range
//!
//! The equation counts 100 ft of duct. Turbulent flow of standard air (0.075 lb/ft³), which is all that happens in a duct at
//! work; below a Reynolds number of 4,000 it is refused. Flexible duct is rougher, 0.003 ft and more when pulled
//! tight, and takes several times as much where it is slack. At altitude the friction falls nearly with the density.
//!
//! # Warnings
//!
//! - Where the air is faster than 900 ft/min: in a house such a duct is heard; take a larger duct or less air (common
//!   practice).
//!
//! # Example
//!
//! Computed with a library of fluid mechanics: 400 CFM in a 10 in duct of galvanised steel take 0.085 in.w.c. per 100
//! ft.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::duct_friction_rate::FORMULA;
//! let friction = formula.compute_typed(&["400 CFM", "10 in", "0.0003 ft"])?;
//! assert_eq!((friction.number_in(formula.result) * 1e3).round(), 85.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - C. F. Colebrook, 1939, with the law of Darcy and Weisbach: elementary fluid mechanics.
//! - ASHRAE Handbook, Fundamentals, chapter Duct Design: standard air and 0.0003 ft, as in its friction chart.

use std::f64::consts::PI;

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::unfit::Unfit;
use super::warning::Warning;

/// Standard air, lb/ft³.
const DENSITY: f64 = 0.075;
/// Of air at 70 °F, lb/(ft·s): 1.82e-5 Pa·s.
const VISCOSITY: f64 = 1.22e-5;
/// The Reynolds number above which flow in a pipe is turbulent.
const TURBULENT: f64 = 4000.0;
/// An inch of water in lb/(ft·s²): 248.84 Pa.
const POUNDAL_PER_INCH: f64 = 167.21;

/// In ft/s, for CFM and a diameter in ft.
fn velocity(airflow: f64, diameter: f64) -> f64 {
    airflow / 60.0 / (PI / 4.0 * diameter.powi(2))
}

/// By Colebrook. In 1/sqrt(f) the equation draws together by a factor of ten a round, so that a dozen are plenty.
fn friction_factor(reynolds: f64, relative_roughness: f64) -> f64 {
    let mut root: f64 = 7.0;
    for _ in 0..12 {
        root = -2.0 * (relative_roughness / 3.7 + 2.51 * root / reynolds).log10();
    }
    root.powi(-2)
}

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "duct_friction_rate",
    group: Group::Air,
    sentence: "The pressure that 100 ft of straight round duct take, for standard air.",
    equation: "friction_rate = f * 1200 / diameter * density * velocity^2 / 2, 1 / sqrt(f) = -2 * \
               log10(roughness / (3.7 * diameter) + 2.51 / (reynolds * sqrt(f)))",
    arguments: &[
        Argument::new(
            "airflow",
            Scale::of(Unit::CubicFootPerMinute),
            "the air through this duct",
        ),
        Argument::new(
            "diameter",
            Scale::of(Unit::Inch),
            "inside, of a round duct; see `equivalent_round_diameter` for others",
        ),
        Argument::new("roughness", Scale::of(Unit::Foot), "of the wall")
            .or(0.0003, "galvanised sheet steel of medium smoothness"),
    ],
    result: Scale::of(Unit::InchWaterColumn),
    range: "The equation counts 100 ft of duct. Turbulent flow of standard air (0.075 lb/ft³), which is all that \
            happens in a duct at work; below a Reynolds number of 4,000 it is refused. Flexible duct is \
            rougher, 0.003 ft and more when pulled tight, and takes several times as much where it is \
            slack. At altitude the friction falls nearly with the density.",
    warnings: &[Warning {
        when: "the air is faster than 900 ft/min",
        reason: "in a house such a duct is heard",
        help: "take a larger duct or less air (common practice)",
        applies: |numbers, _| 60.0 * velocity(numbers[0], numbers[1] / 12.0) > 900.0,
    }],
    example: &["400 CFM", "10 in", "0.0003 ft"],
    references: &[
        "C. F. Colebrook, 1939, with the law of Darcy and Weisbach: elementary fluid mechanics.",
        "ASHRAE Handbook, Fundamentals, chapter Duct Design: standard air and 0.0003 ft, as in its friction \
         chart.",
    ],
    compute: |numbers| {
        let [airflow, diameter, roughness] = each(numbers);
        positive(airflow, "the airflow")?;
        positive(diameter, "the diameter")?;
        not_negative(
            roughness,
            "the roughness",
            "look it up for this duct; galvanised steel has 0.0003 ft",
        )?;
        let diameter = diameter / 12.0;
        if roughness > diameter / 20.0 {
            return Err(Unfit::new(
                "the roughness is more than a twentieth of the diameter",
                "give the roughness in ft; galvanised steel has 0.0003 ft",
            ));
        }
        let velocity = velocity(airflow, diameter);
        let reynolds = DENSITY * velocity * diameter / VISCOSITY;
        if reynolds < TURBULENT {
            return Err(Unfit::new(
                "the air is too slow to be turbulent, and this equation does not hold",
                "check airflow and diameter for a slip of the decimal point",
            ));
        }
        let factor = friction_factor(reynolds, roughness / diameter);
        Ok(factor * 100.0 / diameter * DENSITY * velocity.powi(2) / 2.0 / POUNDAL_PER_INCH)
    },
};
