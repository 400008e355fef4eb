//! What is written freely on the command line, and read before anything runs.

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

pub(super) fn seed(text: &str) -> Result<u64, String> {
    text.parse()
        .map_err(|_| "write a whole number from 0 up, such as 42".to_owned())
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
