//! The many ways a unit is spelled.

use std::collections::HashMap;
use std::sync::LazyLock;

use super::unit::Unit;
use super::unit_table::ROWS;

/// Longest text that can be a unit, in bytes; anything longer is not worth reducing.
const LONGEST: usize = 64;

/// Every spelling, reduced by [`plain`].
static EXACT: LazyLock<HashMap<String, Unit>> = LazyLock::new(|| {
    let mut spellings = HashMap::new();
    for row in ROWS {
        for spelling in [row.symbol, row.ascii].iter().chain(row.others) {
            spellings.insert(plain(spelling), row.unit);
        }
    }
    // A number's unit is named, never merely left out: what is left out is for the caller to judge.
    spellings.remove("");
    spellings
});

/// Every spelling in small letters; no unit where two units differ by case alone.
static SMALL: LazyLock<HashMap<String, Option<Unit>>> = LazyLock::new(|| {
    let mut spellings = HashMap::new();
    for (spelling, &unit) in EXACT.iter() {
        spellings
            .entry(fold(spelling))
            .and_modify(|known| {
                if *known != Some(unit) {
                    *known = None;
                }
            })
            .or_insert(Some(unit));
    }
    spellings
});

/// The unit that a text names; the case of letters is forgiven where it can mean only one thing.
pub(super) fn find(text: &str) -> Option<Unit> {
    if text.len() > LONGEST {
        return None;
    }
    let text = plain(text);
    let exact = EXACT.get(&text).copied();
    exact.or_else(|| SMALL.get(&fold(&text)).copied().flatten())
}

/// The unit that was meant, where only the case of a leading m is off: for a message, never for a value.
pub(super) fn meant(text: &str) -> Option<Unit> {
    let mut letters = text.trim().chars();
    let first = letters.next()?;
    let swapped = match first {
        'm' => 'M',
        'M' => 'm',
        _ => return None,
    };
    find(&format!("{swapped}{}", letters.as_str()))
}

/// One code point for each look: the two micros, ohms and degrees, raised digits, marks of inches and feet; no spaces or full stops.
fn plain(text: &str) -> String {
    let mut reduced = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            ' ' | '\t' | '\u{a0}' | '\u{202f}' | '.' => {}
            '\u{b5}' | '\u{3bc}' => reduced.push('u'),
            '\u{2126}' | '\u{3a9}' => reduced.push_str("ohm"),
            '\u{ba}' => reduced.push('°'),
            '²' => reduced.push('2'),
            '³' => reduced.push('3'),
            '"' | '″' | '”' => reduced.push_str("in"),
            '\'' | '′' | '’' => reduced.push_str("ft"),
            other => reduced.push(other),
        }
    }
    reduced
}

/// Small letters, except a leading m, whose case means milli or mega.
fn fold(plain: &str) -> String {
    match plain.strip_prefix('M') {
        Some(rest) => format!("M{}", rest.to_ascii_lowercase()),
        None => plain.to_ascii_lowercase(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads(unit: Unit, spellings: &[&str]) {
        for spelling in spellings {
            assert_eq!(Unit::parse(spelling), Some(unit), "{spelling:?}");
        }
    }

    #[test]
    fn symbols_twins_and_names_are_read() {
        for unit in Unit::all().filter(|&unit| unit != Unit::Number) {
            reads(unit, &[unit.symbol(), unit.ascii()]);
        }
        reads(Unit::Number, &["number", "none"]);
        reads(Unit::Microampere, &["µA", "μA", "uA", "ua", "UA"]);
        reads(Unit::Ohm, &["Ω", "Ω", "ohm", "Ohms", "OHM"]);
        reads(
            Unit::DegreeFahrenheit,
            &["°F", "ºF", "F", "f", "degF", "deg f", "° F", "℉"],
        );
        reads(
            Unit::InchWaterColumn,
            &[
                "in.w.c.", "inwc", "in wc", "in. w.c.", "inH2O", "IN WC", "\"wc", "\" W.C.", "wc", "W.C.",
            ],
        );
        reads(
            Unit::BtuPerHour,
            &["BTU/h", "BTUH", "Btu/h", "btu/h", "BTU/hr", "btuh"],
        );
        reads(
            Unit::KilobtuPerHour,
            &["kBTU/h", "kBtu/h", "kbtuh", "MBH", "Mbh", "mbh"],
        );
        reads(Unit::CubicFootPerHour, &["ft³/h", "ft3/h", "cfh", "CFH", "scfh"]);
        reads(Unit::CubicFootPerMinute, &["CFM", "cfm"]);
        reads(Unit::Percent, &["%", "percent"]);
        reads(Unit::Microfarad, &["uF", "μF", "MFD", "mfd"]);
        reads(Unit::Inch, &["in", "in.", "\"", "″"]);
        reads(Unit::Foot, &["ft", "ft.", "'", "′"]);
    }

    #[test]
    fn no_spelling_names_two_units() {
        let mut seen: HashMap<String, Unit> = HashMap::new();
        for row in ROWS {
            for spelling in [row.symbol, row.ascii].iter().chain(row.others) {
                let other = seen.insert(plain(spelling), row.unit);
                assert!(
                    other.is_none_or(|unit| unit == row.unit),
                    "{spelling} is also {other:?}"
                );
            }
        }
    }

    /// Millimetres of water, a thousand or a million: what could be read in two ways is no unit.
    #[test]
    fn what_could_be_two_units_is_none() {
        for text in ["mm wc", "cm w.c.", "MBTU/h", "mbtu/h", "MMBtu/h", "'wc", "scfm"] {
            assert_eq!(Unit::parse(text), None, "{text}");
        }
    }

    #[test]
    fn milli_is_never_taken_for_mega() {
        for text in ["MV", "MA", "Mbar", "mohm", "mΩ", "MM", "mJ/m3"] {
            assert_eq!(Unit::parse(text), None, "{text}");
        }
        assert_eq!(meant("MV"), Some(Unit::Millivolt));
        assert_eq!(meant("mohm"), Some(Unit::Megohm));
        assert_eq!(meant("furlong"), None);
        reads(Unit::Milliampere, &["mA", "ma"]);
        reads(Unit::Minute, &["min", "MIN"]);
    }

    #[test]
    fn what_is_no_unit_is_none() {
        for text in ["", " ", ".", "volt s", "K", "J", "%%", "0x", "°", "\u{1b}V"] {
            assert_ne!(Unit::parse(text), Some(Unit::Number), "{text:?}");
        }
        assert_eq!(Unit::parse(&"V".repeat(1_000_000)), None);
        assert_eq!(Unit::parse("furlong"), None);
    }
}
