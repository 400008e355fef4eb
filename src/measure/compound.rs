//! Two units that belong together: `1 min 12 s`, `5 ft 6 in`, `5'-6"`.

use super::fraction::decimal;
use super::number;
use super::unit::Unit;

/// The larger unit, the smaller one, and how many of these it has.
const PAIRS: [(Unit, Unit, f64); 3] = [
    (Unit::Hour, Unit::Minute, 60.0),
    (Unit::Minute, Unit::Second, 60.0),
    (Unit::Foot, Unit::Inch, 12.0),
];

/// The text as a number of the smaller unit: `1 min 12 s` is `72 s`. `None` where it does not start with a whole number of a larger
/// unit, or does not go on with less than one of it.
pub(super) fn in_the_smaller(text: &str) -> Option<String> {
    let text = text.trim();
    let (whole, rest) = text.split_at(text.find(|letter: char| !letter.is_ascii_digit())?);
    let (large, rest) = rest.split_at(
        rest.find(|letter: char| letter.is_ascii_digit() || !letter.is_ascii() && letter.is_numeric())?,
    );
    let large = Unit::parse(large.trim_end().trim_end_matches('-'))?;
    let rest = decimal(rest).unwrap_or_else(|| rest.to_owned());
    let part = number::leading(&rest).ok()?;
    let small = Unit::parse(part.rest)?;
    let (.., ratio) = PAIRS
        .iter()
        .find(|&&(one, other, _)| (one, other) == (large, small))?;
    // No more digits than a person counts: a sum beyond them would not be exact.
    let whole: u32 = whole.parse().ok()?;
    (part.value < *ratio).then(|| format!("{} {}", f64::from(whole) * ratio + part.value, small.ascii()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_units_that_belong_together_are_one_number() {
        for (written, read) in [
            ("1 min 12 s", "72 s"),
            ("1min12.5s", "72.5 s"),
            ("1 h 5 min", "65 min"),
            ("5' 6\"", "66 in"),
            ("5'-6 1/2\"", "66.5 in"),
            ("5 ft 6½ in", "66.5 in"),
        ] {
            assert_eq!(in_the_smaller(written).as_deref(), Some(read), "{written}");
        }
    }

    #[test]
    fn what_does_not_belong_together_is_left_alone() {
        for written in [
            "1 m 12 s",
            "1 min 72 s",
            "1.5 min 12 s",
            "1 ft 12 in",
            "-5 ft 6 in",
            "5 in 6 ft",
            "100 ft2",
            "20 ft3/h",
            "1/2 in",
            "12",
            "1:12",
            "1 min 12",
            "99999999999 min 1 s",
            "",
        ] {
            assert_eq!(in_the_smaller(written), None, "{written}");
        }
    }
}
