//! What the fan laws share.

use super::formula::positive;
use super::unfit::Unfit;

/// How many times the old a new speed or airflow is.
pub(super) fn ratio(new: f64, old: f64) -> Result<f64, Unfit> {
    positive(old, "the old speed or airflow")?;
    positive(new, "the new speed or airflow")?;
    Ok(new / old)
}

/// Whether two lie so far apart that the laws no longer hold well.
pub(super) fn stretched(old: f64, new: f64) -> bool {
    new < old / 2.0 || new > old * 2.0
}
