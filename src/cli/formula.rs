//! `proofwalk formula`: lists, explains and computes what the trade computes.

use std::io;

use super::arguments::{Compute, FormulaFormat, Units};
use super::failure::{Failure, WRONG_USE};
use super::look;
use crate::measure::System;
use crate::report::formulas;
use crate::source::{nearest, safe};
use crate::trade::{self, Formula, Named, Unfit, Worked};

/// What is asked for.
enum Asked {
    /// Every formula.
    All,
    /// Those that a search found.
    Found(Vec<&'static Formula>),
    /// What one says of itself.
    Page(&'static Formula),
    /// What one comes to.
    Result(&'static Formula),
}

/// Prints the list, the page of a formula, or what it comes to.
pub(super) fn run(how: &Compute) -> Result<u8, Failure> {
    let ascii = look::of_findings(&io::stdout()).ascii;
    let is_json = how.format == FormulaFormat::Json;
    let system = how.units.map(|units| match units {
        Units::Us => System::Us,
        Units::Si => System::Si,
    });
    let text = match (asked(how)?, is_json) {
        (Asked::All, true) => formulas::listed_json(trade::all()),
        (Asked::All, false) => formulas::list(trade::all(), ascii),
        (Asked::Found(found), true) => formulas::listed_json(&found),
        (Asked::Found(found), false) => formulas::found(&found, ascii),
        (Asked::Page(formula), true) => formulas::page_json(formula),
        (Asked::Page(formula), false) => formulas::page(formula, system.unwrap_or(System::Us), ascii),
        (Asked::Result(formula), _) => {
            let worked = worked(formula, how)?;
            let system = system.unwrap_or_else(|| worked.system());
            match is_json {
                true => formulas::worked_json(&worked, system),
                false => formulas::worked(&worked, system, ascii),
            }
        }
    };
    super::print(&text)?;
    Ok(0)
}

fn asked(how: &Compute) -> Result<Asked, Failure> {
    let Some(name) = how.name.as_deref() else {
        return Ok(Asked::All);
    };
    let called = |name: &str| trade::find(&name.to_lowercase().replace(['-', ' '], "_"));
    if let Some(formula) = called(name) {
        let is_given = !how.inputs.is_empty() || !how.accuracies.is_empty();
        return Ok(if is_given {
            Asked::Result(formula)
        } else {
            Asked::Page(formula)
        });
    }
    if !how.accuracies.is_empty() || how.inputs.iter().any(|word| word.contains('=')) {
        return Err(unknown(name));
    }
    // Words without numbers are those of a name or of a search: `formula orifice drill` needs no quotes.
    let words = [&[name.to_owned()], how.inputs.as_slice()].concat().join(" ");
    if let Some(formula) = called(&words) {
        return Ok(Asked::Page(formula));
    }
    match with_words(&words) {
        found if found.is_empty() => Err(unknown(&words)),
        found => Ok(Asked::Found(found)),
    }
}

/// The formulas of a group, or with every word of some in what they say of themselves.
fn with_words(words: &str) -> Vec<&'static Formula> {
    let plain = |text: &str| text.to_lowercase().replace(['_', '-'], " ");
    let words = plain(words);
    let chosen = |is_chosen: &dyn Fn(&Formula) -> bool| -> Vec<&'static Formula> {
        (trade::all().iter().copied())
            .filter(|formula| is_chosen(formula))
            .collect()
    };
    let group = chosen(&|formula| formula.group.name() == words);
    if !group.is_empty() {
        return group;
    }
    chosen(&|formula| {
        let said = [formula.name, formula.sentence, formula.group.name()].map(plain);
        (words.split_whitespace()).all(|word| said.iter().any(|text| text.contains(word)))
    })
}

fn unknown(name: &str) -> Failure {
    let names = || trade::all().iter().map(|formula| formula.name);
    let words = names().flat_map(|name| name.split('_'));
    let help = match nearest(name, names()).or_else(|| nearest(name, words)) {
        Some(meant) => format!("did you mean `{meant}`?"),
        None => "`proofwalk formula` lists them".to_owned(),
    };
    Failure::new(
        WRONG_USE,
        format!("no formula is called `{}`", safe(name).cut(64)),
    )
    .help(help)
}

fn worked(formula: &'static Formula, how: &Compute) -> Result<Worked, Failure> {
    let inputs = named(formula, &how.inputs)?;
    let accuracies = named(formula, &how.accuracies)?;
    let (inputs, accuracies) = (borrowed(&inputs), borrowed(&accuracies));
    Worked::out(formula, &inputs, &accuracies).map_err(|faults| {
        let mut failures: Vec<Failure> = faults.into_iter().map(failure).collect();
        // Nothing is refused without a fault.
        let last = failures.pop().unwrap_or_else(|| unknown(formula.name));
        for failure in failures {
            super::tell(&failure.to_string());
        }
        last
    })
}

/// What was typed, as names and what they are given as. Words without `=` belong to what stands before them, so that
/// `supply=128 °F` needs no quotes.
fn named(formula: &'static Formula, typed: &[String]) -> Result<Vec<(String, String)>, Failure> {
    let mut named: Vec<(String, String)> = Vec::new();
    for word in typed {
        if let Some((name, text)) = word.split_once('=') {
            named.push((name.trim().to_owned(), text.to_owned()));
        } else if let Some((_, text)) = named.last_mut() {
            text.push(' ');
            text.push_str(word);
        } else {
            let first = formula.arguments.first().map(|argument| argument.name);
            let example = formula.example.first().copied().unwrap_or_default();
            let message = format!("`{}` does not say which argument it is", safe(word).cut(64));
            return Err(Failure::new(WRONG_USE, message).help(format!(
                "write ARG=QUANTITY, for instance {}='{example}'",
                first.unwrap_or_default()
            )));
        }
    }
    Ok(named)
}

fn borrowed(named: &[(String, String)]) -> Vec<Named<'_>> {
    let borrowed = named.iter().map(|(name, text)| Named { name, text });
    borrowed.collect()
}

/// What was typed may be repeated in a fault.
fn failure(fault: Unfit) -> Failure {
    Failure::new(WRONG_USE, safe(&fault.message).to_string()).help(safe(&fault.help).to_string())
}
