//! How much of a clocked input hangs on the eye and the watch.
//!
//! # Equation
//!
//! `error = 100 * slip / time`, in per cent and s.
//!
//! # Arguments
//!
//! - `time`, s: how long the turns of the dial took.
//! - `slip`, s: how far start and stop may be off together; taken as 0.5 s where it is not given: a steady eye and a
//!   stop watch.
//!
//! # Range
//!
//! The slip well below the time: at a tenth of it the true error is already a tenth larger on the short side.
//!
//! # Warnings
//!
//! - Where the error is above 2 %: it hides what an adjustment would change; time more turns of the dial.
//!
//! # Example
//!
//! Arithmetic: 1.0 s in 22 s is 4.5 %.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::timing_error::FORMULA;
//! let error = formula.compute_typed(&["22 s", "1.0 s"])?;
//! assert_eq!((error.number_in(formula.result) * 10.0).round(), 45.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Arithmetic.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::metered::{MOST_ERROR, SLIP, SLIP_BECAUSE};
use super::unfit::Unfit;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "timing_error",
    group: Group::Gas,
    sentence: "How much of a clocked input hangs on the eye and the watch.",
    equation: "error = 100 * slip / time",
    arguments: &[
        Argument::new(
            "time",
            Scale::of(Unit::Second),
            "how long the turns of the dial took",
        ),
        Argument::new(
            "slip",
            Scale::of(Unit::Second),
            "how far start and stop may be off together",
        )
        .or(SLIP, SLIP_BECAUSE),
    ],
    result: Scale::of(Unit::Percent),
    range: "The slip well below the time: at a tenth of it the true error is already a tenth larger on the \
            short side.",
    warnings: &[Warning {
        when: "the error is above 2 %",
        reason: "it hides what an adjustment would change",
        help: "time more turns of the dial",
        applies: |_, error| error > MOST_ERROR,
    }],
    example: &["22 s", "1.0 s"],
    references: &["Arithmetic."],
    compute: |numbers| {
        let [time, slip] = each(numbers);
        positive(time, "the time")?;
        not_negative(slip, "the slip", "give it without a minus sign")?;
        if slip >= time {
            return Err(Unfit::new(
                "the slip is as long as the time",
                "time more turns of the dial",
            ));
        }
        Ok(100.0 * slip / time)
    },
};
