//! What texts look like, as regular expressions of ECMA 262, which JSON Schema uses.
//!
//! They let pass whatever the measure room reads, so that no editor complains of what the loader takes. What they cannot
//! say without growing out of hand, for instance which units there are in the middle of a band, they leave to the loader.

use crate::measure::{Relation, Unit};

/// A name in snake case: see [`is_snake`](super::super::name::is_snake).
pub(super) const SNAKE_NAME: &str = "^(?!(?:yes|no|on|off|true|false|null)$)(?=[^a-z]*[a-z])(?=.{1,64}$)\
                                     [a-z0-9](?:[a-z0-9_]*[a-z0-9])?$";

/// A name in kebab case: see [`is_kebab`](super::super::name::is_kebab).
pub(super) const KEBAB_NAME: &str = "^(?!(?:yes|no|on|off|true|false|null)$)(?=[^a-z]*[a-z])(?=.{1,64}$)\
                                     [a-z0-9](?:[a-z0-9-]*[a-z0-9])?$";

/// A name inside a longer text.
const NAME: &str = "[a-z0-9](?:[a-z0-9_]*[a-z0-9])?";

/// A number in plain decimal digits.
const NUMBER: &str = "[+−-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?";

/// What follows a number, up to a word that joins: a unit begins with none of the signs that other notations use.
const UNIT: &str =
    "(?:[\\s.]*[^\\s0-9.,:_/+−–-](?:(?!\\s(?:[tT][oO]|[oO][rR]|[aA][nN][dD])(?:\\s|$))[^,])*)?\\s*";

/// A bound of a band begins like a quantity, or names a field.
const BOUND: &str = "(?:[+−-]?\\.?[0-9]|plate\\.[a-z0-9])\
                     (?:(?!\\s(?:[tT][oO]|[oO][rR]|[aA][nN][dD])(?:\\s|$))[^,])*";

/// A quantity.
pub(super) fn quantity() -> String {
    format!("^\\s*{NUMBER}{UNIT}$")
}

/// A quantity, or the name of a value.
pub(super) fn quantity_or_name() -> String {
    format!("^(?:\\s*{NUMBER}{UNIT}|{NAME})$")
}

/// A reading, a plate field or a quantity: what goes into a formula.
pub(super) fn input() -> String {
    format!("^\\s*(?:(?:plate\\.)?{NAME}\\s*|{NUMBER}{UNIT})$")
}

/// A band: one condition, or several joined by commas.
pub(super) fn band() -> String {
    format!("^{}$", conditions())
}

/// A band, or the name of a value of a sign or a plate field.
pub(super) fn band_or_name() -> String {
    format!("^(?:{}|{NAME})$", conditions())
}

fn conditions() -> String {
    let relations = Relation::ALL.map(|relation| any_case(relation.words())).join("|");
    format!("(?:\\s*(?:(?:{relations})\\s+|{BOUND}\\s+[tT][oO]\\s+){BOUND}(?:,(?=[^,]*\\S)|$))+")
}

/// Two fixed ends.
pub(super) fn plausible() -> String {
    let (least, most) = (
        any_case(Relation::AtLeast.words()),
        any_case(Relation::AtMost.words()),
    );
    format!("^\\s*(?:{NUMBER}{UNIT}\\s+[tT][oO]\\s+|{least}\\s+{NUMBER}{UNIT},\\s*{most}\\s+){NUMBER}{UNIT}$")
}

/// Shares and amounts, joined by plus signs.
pub(super) fn accuracy() -> String {
    format!("^\\s*±*\\s*{NUMBER}{UNIT}$")
}

/// What is done about a fault.
pub(super) fn remedy() -> String {
    format!("^\\s*(?:replace\\s+{NAME}|correct|shut_down|refer|none)\\s*$")
}

/// The name of what a proof speaks of; a plate field may stand with its `plate.`.
pub(super) fn claim() -> String {
    format!("^(?:plate\\.)*{NAME}$")
}

/// Every spelling of every unit, in capital or small letters, with spaces and full stops anywhere.
pub(super) fn unit() -> String {
    let mut spellings: Vec<String> = Unit::all().flat_map(Unit::spellings).map(spelled).collect();
    spellings.sort();
    spellings.dedup();
    format!("^[\\s.]*(?:{})$", spellings.join("|"))
}

/// A spelling with what a reader of units takes for the same letters.
fn spelled(spelling: &str) -> String {
    let plain = spelling.replace('Ω', "ohm").replace(['.', ' '], "");
    let letters = plain.chars().map(|letter| {
        let same = match letter {
            'µ' | 'u' => "[uU\u{b5}\u{3bc}]".to_owned(),
            '°' => "[°º]".to_owned(),
            '2' | '²' => "[2²]".to_owned(),
            '3' | '³' => "[3³]".to_owned(),
            letter if letter.is_ascii_alphabetic() => either_case(letter),
            other => other.to_string(),
        };
        same + GAP
    });
    let (ohm, inch) = (
        ["o", "h", "m"].map(gapped).concat(),
        ["i", "n"].map(gapped).concat(),
    );
    let whole = letters.collect::<String>();
    whole
        .replace(&ohm, &format!("(?:{ohm}|[\u{2126}\u{3a9}]{GAP})"))
        .replace(&inch, &format!("(?:{inch}|[\"″]{GAP})"))
}

/// What may stand between the letters of a unit.
const GAP: &str = "[\\s.]*";

fn gapped(letter: &str) -> String {
    any_case(letter) + GAP
}

fn either_case(letter: char) -> String {
    format!("[{}{}]", letter.to_ascii_lowercase(), letter.to_ascii_uppercase())
}

/// Words in capital or small letters, with any space between them.
fn any_case(words: &str) -> String {
    let letters = words.chars().map(|letter| match letter {
        ' ' => "\\s+".to_owned(),
        letter => either_case(letter),
    });
    letters.collect()
}
