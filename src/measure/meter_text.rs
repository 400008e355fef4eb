//! What a meter's display shows beside a number and its unit: a bare prefix, or that it is over its range.

use super::amount::write_in;
use super::dimension::Dimension;
use super::misread::{Misread, quoted, range_in};
use super::number;
use super::scale::Scale;
use super::unit::Unit;

/// What a display shows where the value is more than it can show, in small letters.
const OVER_RANGE: &[&str] = &[
    "ol", "o.l", "o.l.", "0l", "0.l", "0.l.", "open", "over", "overload",
];

/// The unit without a prefix, where displays put a prefix alone.
fn stem(dimension: Dimension) -> Option<&'static str> {
    match dimension {
        Dimension::Resistance => Some("ohm"),
        Dimension::Voltage => Some("V"),
        Dimension::Current => Some("A"),
        Dimension::Capacitance => Some("F"),
        Dimension::Frequency => Some("Hz"),
        _ => None,
    }
}

/// The text with the unit that a bare prefix means on a scale: `2.00 M` is `2.00 MΩ` where ohms are asked for. `None` where
/// there is no bare prefix.
///
/// # Errors
///
/// Where no unit here has that prefix. An `m` is never taken for mega, nor an `M` for milli: between them lies a factor
/// of a thousand million.
pub(super) fn completed(text: &str, scale: Scale) -> Result<Option<String>, Misread> {
    let Some(stem) = stem(scale.dimension()) else {
        return Ok(None);
    };
    let Ok(leading) = number::leading(text) else {
        return Ok(None);
    };
    let prefix = match leading.rest {
        "k" | "K" => 'k',
        "M" => 'M',
        "m" => 'm',
        "u" | "U" | "\u{b5}" | "\u{3bc}" => 'u',
        "n" | "N" => 'n',
        _ => return Ok(None),
    };
    let body = text.trim();
    let number = body[..body.len() - leading.rest.len()].trim_end();
    if let Some(unit) = Unit::parse(&format!("{prefix}{stem}")) {
        return Ok(Some(format!("{number} {}", unit.symbol())));
    }
    let other = match prefix {
        'm' => Unit::parse(&format!("M{stem}")),
        'M' => Unit::parse(&format!("m{stem}")),
        _ => None,
    };
    let message = format!("{} would be {prefix}{stem}, which is no unit here", quoted(body));
    let help = match other {
        Some(unit) => format!(
            "m is milli and M is mega: write `{number} {}` if the meter shows that, or {}",
            unit.ascii(),
            write_in(scale).trim_start_matches("write ")
        ),
        None => write_in(scale),
    };
    Err(Misread::new(range_in(text, body), message, help))
}

/// What to say of a display that is over its range.
pub(super) fn over_range(text: &str, scale: Scale) -> Option<Misread> {
    let body = text.trim();
    if !OVER_RANGE.contains(&body.to_ascii_lowercase().as_str()) {
        return None;
    }
    let message = format!(
        "{} is no number: it is more than the meter can show",
        quoted(body)
    );
    let help = match scale.dimension() {
        Dimension::Resistance => {
            "once it is so in the highest range too, type the largest value of that range, for instance `20 Mohm`"
                .to_owned()
        }
        _ => format!("take it in a higher range and type the number; {}", write_in(scale)),
    };
    Some(Misread::new(range_in(text, body), message, help))
}
