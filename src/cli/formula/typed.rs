//! What goes into a formula, as it was typed.

use crate::cli::failure::{Failure, WRONG_USE};
use crate::source::safe;
use crate::trade::Formula;

/// Values by name.
pub(super) fn values(formula: &'static Formula, typed: &[String]) -> Result<Vec<(String, String)>, Failure> {
    named(formula, typed, |name, example| {
        format!("write ARG=QUANTITY, for instance {name}='{example}'")
    })
}

/// Accuracies by name.
pub(super) fn accuracies(
    formula: &'static Formula,
    typed: &[String],
) -> Result<Vec<(String, String)>, Failure> {
    let unit = formula
        .arguments
        .first()
        .map_or("", |argument| argument.scale.unit.ascii());
    named(formula, typed, |name, _| {
        let off = format!("1 {unit}");
        format!(
            "say of which argument, for instance --accuracy {name}='{}'",
            off.trim_end()
        )
    })
}

/// What was typed, as names and what they are given as. Words without `=` belong to what stands before them, so that
/// `supply=128 °F` needs no quotes; a comma before the next name parts two, since no number has one there.
fn named(
    formula: &'static Formula,
    typed: &[String],
    help: impl Fn(&str, &str) -> String,
) -> Result<Vec<(String, String)>, Failure> {
    let mut named: Vec<(String, String)> = Vec::new();
    for word in typed.iter().flat_map(|word| parted(formula, word)) {
        if let Some((name, text)) = word.split_once('=') {
            if let Some((_, before)) = named.last_mut() {
                before.truncate(before.trim_end().trim_end_matches([',', ';']).len());
            }
            named.push((known(formula, name.trim()), text.to_owned()));
        } else if let Some((_, text)) = named.last_mut() {
            text.push(' ');
            text.push_str(word);
        } else {
            let first = formula.arguments.first().map(|argument| argument.name);
            let example = formula.example.first().copied().unwrap_or_default();
            let message = format!("`{}` does not say which argument it is", safe(word).cut(64));
            return Err(Failure::new(WRONG_USE, message).help(help(first.unwrap_or_default(), example)));
        }
    }
    Ok(named)
}

/// A word, cut at the commas that stand before the name of an argument and its `=`.
fn parted<'t>(formula: &Formula, word: &'t str) -> Vec<&'t str> {
    let mut parts = Vec::new();
    let mut start = 0;
    for (at, _) in word.match_indices([',', ';']) {
        let name = word[at + 1..]
            .split_once('=')
            .map(|(name, _)| known(formula, name.trim()));
        if name.is_some_and(|name| formula.argument(&name).is_some()) {
            parts.push(&word[start..at]);
            start = at + 1;
        }
    }
    parts.push(&word[start..]);
    parts
}

/// The name of an argument, whatever its case; what is none stays as it was typed.
fn known(formula: &Formula, name: &str) -> String {
    let plain = name.to_lowercase().replace(['-', ' '], "_");
    match formula.argument(&plain) {
        Some(argument) => argument.name.to_owned(),
        None => name.to_owned(),
    }
}
