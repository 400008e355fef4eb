//! What is written freely on the command line, and read before anything runs.

use std::fmt::Display;
use std::ops::RangeInclusive;
use std::str::FromStr;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use jiff::Timestamp;

use crate::library::FileKind;

/// Longest id of a technician, a site or equipment, in characters.
const LONGEST_ID: usize = 64;

pub(super) fn identity(text: &str) -> Result<String, String> {
    let plain = |c: char| c.is_alphanumeric() || " ._-/#@".contains(c);
    if text.trim().is_empty() || text.chars().count() > LONGEST_ID || !text.chars().all(plain) {
        return Err(format!(
            "write an id of at most {LONGEST_ID} letters, digits, spaces and . _ - / # @"
        ));
    }
    Ok(text.trim().to_owned())
}

pub(super) fn kind() -> impl TypedValueParser<Value = FileKind> {
    let names = FileKind::ALL.map(FileKind::name);
    PossibleValuesParser::new(names).try_map(|name| FileKind::named(&name).ok_or("this is no kind of file"))
}

pub(super) fn month(text: &str) -> Result<String, String> {
    let day: Result<jiff::civil::Date, _> = format!("{text}-01").parse();
    match day.map(|day| day.strftime("%Y-%m").to_string()) {
        Ok(month) if month == text => Ok(month),
        _ => Err("write a month like 2026-01".to_owned()),
    }
}

/// A whole number within bounds; of one that is none of them, the message says what is taken.
fn whole<N: FromStr + PartialOrd + Display>(
    text: &str,
    within: RangeInclusive<N>,
    such_as: N,
) -> Result<N, String> {
    let number = text.parse().ok().filter(|number| within.contains(number));
    let (least, most) = within.into_inner();
    number.ok_or_else(|| format!("write a whole number from {least} to {most}, such as {such_as}"))
}

pub(super) fn seed(text: &str) -> Result<u64, String> {
    whole(text, 0..=u64::MAX, 42)
}

/// How many calls are walked with each fault, or in a season.
pub(super) fn calls(text: &str) -> Result<u32, String> {
    whole(text, 1..=1_000_000, 100)
}

pub(super) fn level(text: &str) -> Result<u8, String> {
    text.parse()
        .ok()
        .filter(|level| (1..=3).contains(level))
        .ok_or_else(|| "take 1, 2 or 3; `practice --help` says how hard each is".to_owned())
}

/// How many steps on a picture goes.
pub(super) fn depth(text: &str) -> Result<usize, String> {
    text.parse()
        .map_err(|_| "write a whole number of steps, such as 5".to_owned())
}

pub(super) fn days(text: &str) -> Result<u32, String> {
    match text.parse() {
        Ok(0) => Err("nobody calls back within no days: write at least 1, or leave it out for 30".to_owned()),
        days => days.map_err(|_| "write a whole number of days, such as 30".to_owned()),
    }
}

pub(super) fn clock(text: &str) -> Result<Timestamp, String> {
    text.parse()
        .map_err(|_| "write a time like 2026-01-31T14:05:00Z".to_owned())
}
