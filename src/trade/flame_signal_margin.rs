//! How many times the flame signal is what the control lets go at.
//!
//! # Equation
//!
//! `margin = signal / dropout`
//!
//! # Arguments
//!
//! - `signal`, µA: the flame signal, meter in series, burner lit.
//! - `dropout`, µA: where the control lets go, from the maker's instructions.
//!
//! # Range
//!
//! Below 1 the flame is lost. Common practice wants 2 and more. Controls that show volts instead of microamperes are
//! compared in volts, by their maker's table.
//!
//! # Warnings
//!
//! - Where the margin is below 2: a little dirt or a gust may lose the flame (common practice); clean the rod, and look
//!   at its place, its wire, the ground and the flame.
//! - Where the flame signal is above 100 µA: no flame carries so much; look whether the meter shows nA or µA, and
//!   stands in series.
//!
//! # Example
//!
//! Arithmetic: 2.4 µA on a control that lets go at 0.8 µA.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::flame_signal_margin::FORMULA;
//! let margin = formula.compute_typed(&["2.4 µA", "0.8 µA"])?;
//! assert_eq!(margin.display(formula.result).digits(2).to_string(), "3");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition; the margins are common practice.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "flame_signal_margin",
    group: Group::Electrical,
    sentence: "How many times the flame signal is what the control lets go at.",
    equation: "margin = signal / dropout",
    arguments: &[
        Argument::new(
            "signal",
            Scale::of(Unit::Microampere),
            "the flame signal, meter in series, burner lit",
        ),
        Argument::new(
            "dropout",
            Scale::of(Unit::Microampere),
            "where the control lets go, from the maker's instructions",
        ),
    ],
    result: Scale::of(Unit::Number),
    range: "Below 1 the flame is lost. Common practice wants 2 and more. Controls that show volts instead \
            of microamperes are compared in volts, by their maker's table.",
    warnings: &[
        Warning {
            when: "the margin is below 2",
            reason: "a little dirt or a gust may lose the flame (common practice)",
            help: "clean the rod, and look at its place, its wire, the ground and the flame",
            applies: |_, margin| margin < 2.0,
        },
        Warning {
            when: "the flame signal is above 100 µA",
            reason: "no flame carries so much",
            help: "look whether the meter shows nA or µA, and stands in series",
            applies: |numbers, _| numbers[0] > 100.0,
        },
    ],
    example: &["2.4 µA", "0.8 µA"],
    references: &["The definition; the margins are common practice."],
    compute: |numbers| {
        let [signal, dropout] = each(numbers);
        not_negative(signal, "the flame signal", "turn the meter's leads round")?;
        positive(dropout, "the dropout")?;
        Ok(signal / dropout)
    },
};
