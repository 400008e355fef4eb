//! Fractions as the trade writes sizes: `1/2 in`, `1-1/4 in`, `1 1/4"`.

use std::borrow::Cow;

use super::compound;

/// What the trade divides by: an inch, a foot of gas on a meter's dial, a foot's fall.
const DIVISORS: [u32; 6] = [2, 4, 8, 16, 32, 64];

/// Fractions that are one letter, with how they are written else.
const LETTERS: [(char, &str); 7] = [
    ('½', " 1/2 "),
    ('¼', " 1/4 "),
    ('¾', " 3/4 "),
    ('⅛', " 1/8 "),
    ('⅜', " 3/8 "),
    ('⅝', " 5/8 "),
    ('⅞', " 7/8 "),
];

/// The text with the fraction that it starts with written as a decimal, which those here have exactly: `1-1/4 in` is `1.25 in`;
/// and with two units that belong together as one: `1 min 12 s` is `72 s`.
/// The text itself where it starts with none that can be read in only one way: `5/4` and `1/3` are none.
///
/// ```
/// use proofwalk::measure::as_decimal;
/// assert_eq!(as_decimal("1-1/4 in"), "1.25 in");
/// assert_eq!(as_decimal("1¼ in"), "1.25 in");
/// assert_eq!(as_decimal("5' 6\""), "66 in");
/// assert_eq!(as_decimal("1.25 in"), "1.25 in");
/// ```
pub fn as_decimal(text: &str) -> Cow<'_, str> {
    compound::in_the_smaller(text)
        .or_else(|| decimal(text))
        .map_or(Cow::Borrowed(text), Cow::Owned)
}

/// The same for a fraction alone.
pub(super) fn decimal(text: &str) -> Option<String> {
    let found = LETTERS.iter().find(|(letter, _)| text.contains(*letter));
    match found {
        Some((letter, written)) => fraction(&text.replacen(*letter, written, 1)),
        None => fraction(text),
    }
}

fn fraction(text: &str) -> Option<String> {
    let (before, after) = text.trim().split_once('/')?;
    let (whole, above) = match before.rsplit_once([' ', '-']) {
        Some((whole, above)) => (number(whole.trim_end())?, number(above)?),
        None => (0, number(before)?),
    };
    let end = after
        .find(|letter: char| !letter.is_ascii_digit())
        .unwrap_or(after.len());
    let (below, rest) = after.split_at(end);
    let below = number(below)?;
    let is_fraction = DIVISORS.contains(&below) && (1..below).contains(&above);
    let goes_on = rest.starts_with(['/', '.', ',']);
    // The space keeps a unit a unit: without it, `1/2e3` would be a number.
    (is_fraction && !goes_on).then(|| {
        format!(
            "{} {}",
            f64::from(whole) + f64::from(above) / f64::from(below),
            rest.trim()
        )
    })
}

/// A whole number of few digits, and nothing else.
fn number(text: &str) -> Option<u32> {
    let is_plain = (1..=4).contains(&text.len()) && text.bytes().all(|letter| letter.is_ascii_digit());
    if is_plain { text.parse().ok() } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_as_they_stand_in_the_tables_of_the_trade_are_read() {
        for (written, decimal) in [
            ("1/2 in", "0.5 in"),
            (" 3/4in ", "0.75 in"),
            ("1-1/4 in", "1.25 in"),
            ("2 1/2\"", "2.5 \""),
            ("63/64", "0.984375 "),
            ("1/4 in/ft", "0.25 in/ft"),
            ("1/2e3", "0.5 e3"),
            ("½", "0.5 "),
            ("1½\"", "1.5 \""),
            ("2 ⅞ in", "2.875 in"),
        ] {
            assert_eq!(as_decimal(written), decimal, "{written}");
        }
    }

    #[test]
    fn what_can_be_read_in_two_ways_is_no_fraction() {
        for written in [
            "0.5 in",
            "5/4 in",
            "11/4 in",
            "1/3 in",
            "0/2",
            "2/2",
            "1/2/4",
            "-1/2 in",
            "1--1/2",
            "1/",
            "/2",
            "BTU/h",
            "20 BTU/h",
            "1.1/2",
            "99999 1/2",
            "1/2.5 in",
            "⅓ in",
            "1.5½",
            "",
        ] {
            assert_eq!(as_decimal(written), written, "{written}");
        }
    }
}
