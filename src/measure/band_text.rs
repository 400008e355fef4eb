//! Reading a band: first its words, later, when the fields and the scale are known, its meaning.

use std::ops::Range;

use super::amount::Amount;
use super::band::Band;
use super::bound::{Condition, Relation};
use super::bound_text::BoundText;
use super::misread::{Misread, quoted, range_in};
use super::number::without_comma;
use super::scale::Scale;

const GRAMMAR: &str =
    "write `below B`, `at most B`, `above B`, `at least B` or `A to B`, several joined by commas";
const COMMA: &str = "join two conditions with one comma; inside `{…}` a comma ends the key, so write `bands` as a block, a line each";

/// A band as it was written.
#[derive(Clone, Debug, PartialEq)]
pub struct BandText {
    /// The conditions in the order they were written; `A to B` is two, `at least A` and `at most B`.
    pub conditions: Vec<ConditionText>,
}

/// One condition as it was written.
#[derive(Clone, Debug, PartialEq)]
pub struct ConditionText {
    /// On which side of the bound.
    pub relation: Relation,
    /// The bound.
    pub bound: BoundText,
}

impl BandText {
    /// Reads a band in words: `at least 0.5 uA, below 1.5 uA`.
    ///
    /// # Errors
    ///
    /// Where the words are not those of the small grammar, or a quantity in them cannot be read.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        if let Some(range) = comma_in_number(text) {
            let number = &text[range.clone()];
            let message = format!("{} has a comma, which can be read two ways", quoted(number));
            let help = format!(
                "{}, or put a space behind a comma that joins",
                without_comma(number)
            );
            return Err(Misread::new(range, message, help));
        }
        let mut conditions = Vec::new();
        for piece in text.split(',') {
            read_piece(text, piece, &mut conditions)?;
        }
        Ok(Self { conditions })
    }

    /// What the words mean for a value on `scale`.
    ///
    /// `field` is given each field's name (without `plate.`) and its bytes in the text, and answers what the field is and
    /// which scale it is in, or an error of the caller's own. The conditions of the band stand in the order of
    /// [`conditions`](Self::conditions), so that a bound's place in the text can be looked up there.
    ///
    /// # Errors
    ///
    /// What `field` answers; and a [`Misread`] where an amount or a field measures something else than the scale. An offset
    /// on a temperature is a difference.
    pub fn resolve<F, E: From<Misread>>(
        &self,
        scale: Scale,
        mut field: impl FnMut(&str, Range<usize>) -> Result<(F, Scale), E>,
    ) -> Result<Band<F>, E> {
        let conditions = self.conditions.iter().map(|condition| {
            Ok(Condition {
                relation: condition.relation,
                bound: condition.bound.resolve(scale, &mut field)?,
            })
        });
        Ok(Band {
            conditions: conditions.collect::<Result<_, E>>()?,
        })
    }
}

/// A comma between two digits, as in `80,000`: the stretch of digits and commas around the first.
fn comma_in_number(text: &str) -> Option<Range<usize>> {
    let bytes = text.as_bytes();
    let is_digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let comma = (1..bytes.len()).find(|&at| bytes[at] == b',' && is_digit(at - 1) && is_digit(at + 1))?;
    let belongs = |byte: &u8| byte.is_ascii_digit() || *byte == b',';
    let before = bytes[..comma].iter().rev().take_while(|byte| belongs(byte));
    let after = bytes[comma..].iter().take_while(|byte| belongs(byte));
    Some(comma - before.count()..comma + after.count())
}

/// Reads what stands between two commas.
fn read_piece(text: &str, piece: &str, conditions: &mut Vec<ConditionText>) -> Result<(), Misread> {
    let trimmed = piece.trim();
    if trimmed.is_empty() {
        let (message, help) = match text.contains(',') {
            true => ("a comma joins two conditions, and one is missing", COMMA),
            false => ("there is no band", GRAMMAR),
        };
        return Err(Misread::new(range_in(text, piece), message, help));
    }
    for relation in Relation::ALL {
        if let Some(rest) = after_words(trimmed, relation.words()) {
            conditions.push(read_condition(text, trimmed, relation, rest)?);
            return Ok(());
        }
    }
    match split_at_to(trimmed) {
        Some((low, high)) if !low.is_empty() && !high.is_empty() => {
            conditions.push(read_condition(text, trimmed, Relation::AtLeast, low)?);
            conditions.push(read_condition(text, trimmed, Relation::AtMost, high)?);
            Ok(())
        }
        _ => Err(not_a_condition(text, trimmed)),
    }
}

fn read_condition(
    text: &str,
    piece: &str,
    relation: Relation,
    bound: &str,
) -> Result<ConditionText, Misread> {
    let words = relation.words();
    if bound.trim().is_empty() {
        let message = format!("nothing follows `{words}`");
        return Err(Misread::new(
            range_in(text, piece),
            message,
            format!("write `{words} 24 V`, say"),
        ));
    }
    // Words that join would otherwise be taken for the unit's.
    for word in bound.split_whitespace() {
        let help = match word.to_ascii_lowercase().as_str() {
            "to" => "`A to B` stands alone, with both ends in; otherwise write `at least A, below B`",
            "and" => COMMA,
            "or" => "a band is one stretch of values; write a second band for the other",
            _ => continue,
        };
        let message = format!("{} cannot stand in a bound", quoted(word));
        return Err(Misread::new(range_in(text, word), message, help));
    }
    let bound = BoundText::parse(text, bound)?;
    Ok(ConditionText { relation, bound })
}

/// What follows `words`, whatever the case and the space between them.
fn after_words<'a>(text: &'a str, words: &str) -> Option<&'a str> {
    let mut rest = text;
    for word in words.split(' ') {
        rest = rest.trim_start();
        let head = rest.split_whitespace().next()?;
        if !head.eq_ignore_ascii_case(word) {
            return None;
        }
        rest = &rest[head.len()..];
    }
    Some(rest)
}

fn split_at_to(text: &str) -> Option<(&str, &str)> {
    let to = text
        .split_whitespace()
        .find(|word| word.eq_ignore_ascii_case("to"))?;
    let at = range_in(text, to);
    Some((&text[..at.start], &text[at.end..]))
}

/// `0 A to 60 A`, where `0-60 A` was written.
fn dashed(piece: &str) -> Option<String> {
    let (low, high) = (piece.char_indices().skip(1))
        .filter(|(_, letter)| matches!(letter, '-' | '–'))
        .map(|(at, dash)| (piece[..at].trim(), piece[at + dash.len_utf8()..].trim()))
        .find(|(low, high)| Amount::parse(low).is_ok() && Amount::parse(high).is_ok())?;
    let bare = |text| Amount::parse(text).is_ok_and(|amount| amount.unit.is_none());
    let unit = high.trim_start_matches(|letter: char| letter.is_ascii_digit() || "+-.".contains(letter));
    Some(match bare(low) && !bare(high) {
        true => format!("{low} {} to {high}", unit.trim()),
        false => format!("{low} to {high}"),
    })
}

/// Says what was probably meant.
fn not_a_condition(text: &str, piece: &str) -> Misread {
    let range = range_in(text, piece);
    let first = piece.split_whitespace().next().unwrap_or(piece);
    if let Some(range_meant) = dashed(piece) {
        let message = format!("{} is not a band", quoted(piece));
        return Misread::new(range, message, format!("write `{range_meant}`"));
    }
    let help = match first
        .to_ascii_lowercase()
        .trim_end_matches(|c: char| c.is_ascii_digit() || c == '.')
    {
        "otherwise" | "else" | "default" | "any" | "anything" | "rest" | "_" | "*" => {
            let message = format!("bands have no {}", quoted(piece));
            let help = "write the values that are left: the bands of a step must cover every value";
            return Misread::new(range, message, help);
        }
        "<" | "under" | "less" | "lower" => "write `below B`",
        ">" | "over" | "more" | "higher" | "greater" => "write `above B`",
        "<=" | "≤" | "max" | "maximum" | "up" => "write `at most B`",
        ">=" | "≥" | "min" | "minimum" => "write `at least B`",
        "between" | "from" => "write `A to B`, with both ends in",
        _ if piece.split_whitespace().any(|word| word == "to") => "write both ends: `18 V to 30 V`",
        _ if BoundText::parse(text, piece).is_ok() => {
            "one value is hardly ever met: write the range that counts as it, `A to B`"
        }
        _ => GRAMMAR,
    };
    Misread::new(range, format!("{} is not a band", quoted(piece)), help)
}
