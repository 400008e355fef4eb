//! `proofwalk formula`: lists, explains and computes what the trade computes.

mod search;
mod spoken;
mod typed;

use std::io;

use super::arguments::{Compute, FormulaFormat, Units};
use super::failure::{Failure, WRONG_USE};
use super::look;
use crate::measure::System;
use crate::report::formulas;
use crate::source::safe;
use crate::trade::{self, Formula, Named, Unfit, Worked};

/// What is asked for.
enum Asked {
    /// Every formula.
    All,
    /// How formulas are asked for.
    Help,
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
        (Asked::Help, _) => super::usage_of("formula"),
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
        if let Some(accuracy) = how.accuracies.first() {
            let message = format!("`--accuracy {}` is of no formula", safe(accuracy).cut(64));
            return Err(
                Failure::new(WRONG_USE, message).help("name the formula first, and give it its numbers")
            );
        }
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
        return Err(search::unknown(name, &how.inputs));
    }
    // Words without numbers are those of a name or of a search: `formula orifice drill` needs no quotes.
    let words = [&[name.to_owned()], how.inputs.as_slice()].concat().join(" ");
    match words.to_lowercase().as_str() {
        "list" | "all" => return Ok(Asked::All),
        "help" => return Ok(Asked::Help),
        _ => {}
    }
    if let Some(formula) = called(&words) {
        return Ok(Asked::Page(formula));
    }
    search::by_words(&words).map(Asked::Found)
}

fn worked(formula: &'static Formula, how: &Compute) -> Result<Worked, Failure> {
    let inputs = typed::values(formula, &how.inputs)?;
    let accuracies = typed::accuracies(formula, &how.accuracies)?;
    let (inputs, accuracies) = (borrowed(&inputs), borrowed(&accuracies));
    Worked::out(formula, &inputs, &accuracies).map_err(|faults| {
        let mut failures: Vec<Failure> = faults.into_iter().map(failure).collect();
        // Nothing is refused without a fault.
        let last = failures
            .pop()
            .unwrap_or_else(|| search::unknown(formula.name, &[]));
        for failure in failures {
            super::tell(&failure.to_string());
        }
        last
    })
}

fn borrowed(named: &[(String, String)]) -> Vec<Named<'_>> {
    let borrowed = named.iter().map(|(name, text)| Named { name, text });
    borrowed.collect()
}

/// What was typed may be repeated in a fault.
fn failure(fault: Unfit) -> Failure {
    Failure::new(WRONG_USE, safe(&fault.message).to_string()).help(safe(&fault.help).to_string())
}
