//! How `formula` is called.

use clap::Args;

use super::{FormulaFormat, Units};

/// What is computed.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Compute {
    /// The formula, to explain it; a group, a unit or some words, to list those with them. Without it, all are listed.
    pub name: Option<String>,
    /// What to compute it on. A bare number is in the argument's own unit; any unit of the kind is taken. How far a value
    /// may be off can stand behind it: `supply='128 °F ± 1 °F'`, also written `+-`.
    #[arg(value_name = "ARG=QUANTITY", allow_negative_numbers = true)]
    pub inputs: Vec<String>,
    /// How far an input may be off; may be given several times.
    #[arg(long = "accuracy", value_name = "ARG=±QUANTITY")]
    pub accuracies: Vec<String>,
    /// The system of units of the page, or of the result; without it, the one that the inputs are given in.
    #[arg(long, value_enum, ignore_case = true)]
    pub units: Option<Units>,
    /// How to print it.
    #[arg(long, value_enum, default_value_t = FormulaFormat::Text)]
    pub format: FormulaFormat,
}
