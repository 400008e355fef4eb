//! What both pages show, worked out of an audit.

mod curve;
mod found_later;
mod months;
mod standing;
mod ways;

pub(super) use curve::{Curve, Day, curve};
pub(super) use found_later::{FoundLater, found_later};
pub(super) use months::{Month, Months, months};
pub(super) use standing::{Place, Standing, Standings, standings};
pub(super) use ways::{Way, Ways, ways};

use crate::audit::Audit;
use crate::audit::statistics::Count;
use crate::source::{Safe, safe};

/// A registered name as it is spoken.
pub(super) fn spoken(name: &str) -> Safe {
    safe(&name.replace('_', " "))
}

/// A share in per cent, one place: `8.5 %`.
pub(super) fn percent(share: f64) -> String {
    format!("{:.1} %", 100.0 * share)
}

/// From one share to another: `6.1 to 11.7 %`.
pub(super) fn percents(low: f64, high: f64) -> String {
    format!("{:.1} to {:.1} %", 100.0 * low, 100.0 * high)
}

/// A number to four digits that matter, as few as it needs.
pub(super) fn number(value: f64) -> String {
    let before = value.abs().log10().floor().clamp(-6.0, 3.0) as i32;
    let text = format!("{value:.0$}", (3 - before) as usize);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

/// All calls that could come back, and those that did.
pub(super) fn all(audit: &Audit) -> Count {
    Count::new(audit.callbacks.rate.count, audit.callbacks.rate.of)
}

/// A number with its noun, `1 call`, `2 calls`.
pub(super) fn counted(count: u64, one: &str, more: &str) -> String {
    match count {
        1 => format!("1 {one}"),
        _ => format!("{count} {more}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_as_short_as_they_may_be() {
        let shown = [
            0.0,
            3.5,
            -0.350_000_01,
            123.456,
            98_765.4,
            0.000_123_456,
            f64::NAN,
        ]
        .map(number);
        assert_eq!(shown, ["0", "3.5", "-0.35", "123.5", "98765", "0.0001235", "NaN"]);
        assert_eq!(
            (percent(0.0854), percents(0.061, 0.1166)),
            ("8.5 %".into(), "6.1 to 11.7 %".into())
        );
    }
}
