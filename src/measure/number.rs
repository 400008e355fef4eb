//! Reading the number that a text starts with.

use std::ops::Range;

use super::misread::{Misread, quoted, range_in};
use super::significant::round_to;

/// How to mend a text without a number.
pub(super) const HELP: &str = "write a number and its unit, for instance `24 V`";

/// How to mend a time of day.
pub(super) const TIME_HELP: &str = "write one number in one unit, for instance `90 s`";

/// A number, and what follows it.
pub(super) struct Leading<'a> {
    pub value: f64,
    /// What follows, without surrounding space.
    pub rest: &'a str,
}

/// Reads the number that `text` starts with: digits, a point, a sign and an exponent, and no other way of writing one.
///
/// What other notations write is refused with its own help, since a number misread by a factor of ten hurts.
pub(super) fn leading(text: &str) -> Result<Leading<'_>, Misread> {
    let body = text.trim();
    let range = range_in(text, body);
    let end = end_of_number(body);
    let (number, rest) = body.split_at(end);
    if !number.contains(|letter: char| letter.is_ascii_digit()) {
        return Err(no_number(body, range));
    }
    if let Some(misread) = other_notation(body, number, rest, &range) {
        return Err(misread);
    }
    let value = number.replace('−', "-").parse().unwrap_or(f64::NAN);
    if let Some(fault) = out_of_reach(number, value) {
        let message = format!("{} is too {fault}", quoted(number));
        return Err(Misread::new(
            range_in(text, number),
            message,
            "write a number a meter can show",
        ));
    }
    Ok(Leading {
        value: value + 0.0,
        rest: rest.trim(),
    })
}

/// Where the number ends: sign, digits, point, digits, and an exponent if it is a whole one.
fn end_of_number(body: &str) -> usize {
    let after_sign = body.strip_prefix(['+', '-', '−']).unwrap_or(body);
    let after_whole = after_sign.trim_start_matches(|c: char| c.is_ascii_digit());
    let after_point = match after_whole.strip_prefix('.') {
        Some(decimals) => decimals.trim_start_matches(|c: char| c.is_ascii_digit()),
        None => after_whole,
    };
    let mantissa = body.len() - after_point.len();
    let Some(exponent) = after_point.strip_prefix(['e', 'E']) else {
        return mantissa;
    };
    let digits = exponent.strip_prefix(['+', '-']).unwrap_or(exponent);
    let rest = digits.trim_start_matches(|c: char| c.is_ascii_digit());
    if rest.len() == digits.len() {
        return mantissa;
    }
    body.len() - rest.len()
}

fn no_number(body: &str, range: Range<usize>) -> Misread {
    let bare = body.trim_start_matches(['+', '-', '−', '.']).to_ascii_lowercase();
    if bare.starts_with("inf") || bare.starts_with("nan") {
        let message = format!("{} is not a finite number", quoted(body));
        return Misread::new(range, message, "write the number a meter shows");
    }
    if body.is_empty() {
        return Misread::new(range, "there is no number", HELP);
    }
    Misread::new(
        range,
        format!("{} does not start with a number", quoted(body)),
        HELP,
    )
}

/// A notation that somebody could read in two ways, or that a person would not write on a form.
fn other_notation(body: &str, number: &str, rest: &str, range: &Range<usize>) -> Option<Misread> {
    let says = |message: &str, help: String| {
        Some(Misread::new(
            range.clone(),
            format!("{} {message}", quoted(body)),
            help,
        ))
    };
    let mut letters = rest.chars();
    let (first, second) = (letters.next()?, letters.next().unwrap_or(' '));
    let digit_follows = second.is_ascii_digit();
    match first {
        ',' => says("has a comma, which can be read two ways", without_comma(body)),
        '_' => says(
            "has an underscore in its number",
            "write the digits together, for instance `1000`".into(),
        ),
        ':' => says("is written like a time of day", TIME_HELP.into()),
        '.' if digit_follows => says("has two points", "write one number, for instance `3.5`".into()),
        '/' if digit_follows => says("is a fraction", worked_out(number, rest)),
        '-' | '–' if digit_follows => says("is two numbers", "write one number and its unit".into()),
        'o' | 'O' | 'x' | 'X' | 'b' if number.ends_with('0') && second.is_ascii_hexdigit() => {
            says("is not a decimal number", "write it in decimal digits".into())
        }
        _ if rest.trim_start().starts_with(|c: char| c.is_ascii_digit()) => says(
            "has a space in its number",
            "write the digits together, for instance `80000`".into(),
        ),
        _ => None,
    }
}

/// What to write instead of a number with commas: thousands if the groups are of three, else a decimal point.
pub(super) fn without_comma(body: &str) -> String {
    let number: String = body
        .chars()
        .take_while(|&c| c.is_ascii_digit() || c == ',' || c == '.' || c == '-')
        .take(24)
        .collect();
    let (whole, _) = number.split_once('.').unwrap_or((&number, ""));
    let mut groups = whole.split(',').skip(1);
    if groups.clone().count() > 0 && groups.all(|group| group.len() == 3) {
        format!("write `{}`", number.replace(',', ""))
    } else {
        format!("write a decimal point: `{}`", number.replacen(',', ".", 1))
    }
}

/// What to write instead of a fraction.
fn worked_out(above: &str, rest: &str) -> String {
    let below: String = rest.chars().skip(1).take_while(char::is_ascii_digit).collect();
    let quotient = above.parse::<f64>().ok().zip(below.parse::<f64>().ok());
    match quotient.map(|(above, below)| above / below) {
        Some(value) if value.is_finite() => format!("write it with a point: `{}`", round_to(value, 4)),
        _ => "nothing can be divided by it: write the number alone".to_owned(),
    }
}

fn out_of_reach(number: &str, value: f64) -> Option<&'static str> {
    let mantissa = number.split(['e', 'E']).next().unwrap_or(number);
    let written_zero = !mantissa.contains(|c: char| ('1'..='9').contains(&c));
    if !value.is_finite() {
        Some("large")
    } else if value == 0.0 && !written_zero {
        Some("small")
    } else {
        None
    }
}
