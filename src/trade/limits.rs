//! Where a formula holds.

use super::unfit::Unfit;

/// Refuses a number outside of two others, all in a unit.
pub(super) fn within(number: f64, least: f64, most: f64, what: &str, unit: &str) -> Result<(), Unfit> {
    if (least..=most).contains(&number) {
        return Ok(());
    }
    Err(Unfit::new(
        format!("{what} lies outside {least} to {most} {unit}, for which this holds"),
        format!("check {what} for a slip of the decimal point or the unit"),
    ))
}
