//! The list of formulas, and the page that explains one.

use super::metric::for_reader;
use super::number::{DIGITS, of, other, over};
use super::{COLUMNS, Text};
use crate::measure::{Amount, Dimension, Quantity, Scale, System};
use crate::source::{safe, wrap};
use crate::trade::{Argument, Formula, Group};

/// All formulas by group, a line each.
pub fn list(formulas: &[&Formula], ascii: bool) -> String {
    by_group(formulas, ascii, |text, label, sentence| {
        let room = COLUMNS.saturating_sub(safe(label).width());
        let cut = text.width("…");
        text.line(&format!("{label}{}", first_line(sentence, room, cut)));
    })
}

/// A few formulas by group, each with its whole sentence.
pub fn found(formulas: &[&Formula], ascii: bool) -> String {
    by_group(formulas, ascii, Text::paragraph)
}

fn by_group(formulas: &[&Formula], ascii: bool, write: impl Fn(&mut Text, &str, &str)) -> String {
    let mut text = Text::new(ascii);
    for group in Group::ALL {
        let members = formulas.iter().filter(|formula| formula.group == group);
        let members: Vec<_> = members.collect();
        let Some(widest) = members.iter().map(|formula| formula.name.len()).max() else {
            continue;
        };
        text.line(&capital(group.name()));
        for formula in members {
            write(
                &mut text,
                &format!("  {:widest$}  ", formula.name),
                formula.sentence,
            );
        }
    }
    text.line("");
    text.line("`proofwalk formula NAME` explains one, and shows how it is given its numbers;");
    let groups: Vec<&str> = Group::ALL.iter().map(|group| group.name()).collect();
    let words = format!(
        "`proofwalk formula WORD` lists those with the word in them, or a group: {}.",
        groups.join(", ")
    );
    text.paragraph("", &words);
    text.lines
}

/// All that is known of a formula, its example in a system of units first.
///
/// What it takes to compute stands last: where a page is longer than the screen, that is the part which stays.
pub fn page(formula: &'static Formula, system: System, ascii: bool) -> String {
    let mut text = Text::new(ascii);
    text.line(&format!("{} ({})", formula.name, formula.group.name()));
    text.paragraph("", &for_reader(formula.sentence, system));
    text.line("");
    text.paragraph("Holds: ", &for_reader(formula.range, system));
    for warning in formula.warnings {
        let says = format!("where {}: {}; {}.", warning.when, warning.reason, warning.help);
        text.paragraph("Warns: ", &for_reader(&says, system));
    }
    for reference in formula.references {
        text.paragraph("From:  ", reference);
    }
    if let Some(caution) = formula.group.caution() {
        text.paragraph("Caution: ", caution);
    }
    text.line("");
    text.paragraph("  ", formula.equation);
    text.line("");
    let names = formula.arguments.iter().map(|argument| argument.name.len());
    let widest = names.chain(["gives".len()]).max().unwrap_or_default();
    for argument in formula.arguments {
        text.paragraph(
            &format!("  {:widest$}  ", argument.name),
            &about(argument, system),
        );
    }
    text.paragraph(
        &format!("  {:widest$}  ", "gives"),
        &gives(formula, formula.result.in_system(system)),
    );
    text.line("");
    text.paragraph("", &units_of_equation(formula, system));
    text.line("");
    example(&mut text, formula, system);
    text.lines
}

/// In which units the equation takes its numbers.
fn units_of_equation(formula: &Formula, system: System) -> String {
    let scales = formula.arguments.iter().map(|argument| argument.scale);
    let mut foreign: Vec<&str> = Vec::new();
    for scale in scales.filter(|scale| scale.in_system(system) != *scale) {
        if !foreign.contains(&scale.symbol()) {
            foreign.push(scale.symbol());
        }
    }
    if foreign.is_empty() {
        return "The equation takes each number in the unit that stands first. For instance:".to_owned();
    }
    format!(
        "The equation itself is in {}, and a number without a unit is taken in it: write the unit. For instance:",
        foreign.join(", ")
    )
}

fn about(argument: &Argument, system: System) -> String {
    let scale = argument.scale.in_system(system);
    let mut about = format!("{}: {}", units(scale), for_reader(argument.meaning, system));
    if let (Some(default), Some(usual)) = (argument.default, argument.usual()) {
        let usual = usual.display(scale).digits(DIGITS);
        about.push_str(&format!(
            "; taken as {usual} where it is not given: {}",
            default.because
        ));
    }
    if let Some(slip) = argument.slip {
        let off = Quantity::new(slip.number, argument.scale.of_offsets()).display(scale.of_offsets());
        about.push_str(&format!(
            "; what {off} more or less does is told with the result: {}",
            slip.because
        ));
    }
    about
}

/// What comes out, and what it is in.
fn gives(formula: &Formula, result: Scale) -> String {
    match result.dimension() {
        Dimension::Number => units(result),
        dimension => format!("{}, {}{}", dimension.name(), units(result), over(formula, result)),
    }
}

/// The unit of a scale, and those that are taken in its place.
fn units(scale: Scale) -> String {
    let own = match scale.symbol() {
        "" => "a plain number",
        symbol => symbol,
    };
    let others: Vec<&str> = scale.units().skip(1).map(|unit| unit.symbol()).collect();
    match others.as_slice() {
        [] => own.to_owned(),
        others => format!("{own} (or {})", others.join(", ")),
    }
}

/// The worked example, to be typed again, and what it gives.
fn example(text: &mut Text, formula: &'static Formula, system: System) {
    let start = format!("  proofwalk formula {}", formula.name);
    let mut line = start;
    let inputs = example_in(formula, system);
    for (argument, value) in formula.arguments.iter().zip(&inputs) {
        let next = format!(" {}='{value}'", argument.name);
        // Two more for the sign that the line goes on.
        if text.width(&line) + text.width(&next) + 2 > COLUMNS {
            text.line(&format!("{line} \\"));
            line = "   ".to_owned();
        }
        line.push_str(&next);
    }
    text.line(&line);
    let typed: Vec<&str> = inputs.iter().map(String::as_str).collect();
    if let Ok(result) = formula.compute_typed(&typed) {
        let scale = formula.result.in_system(system);
        let there = other(scale).map(|scale| format!(" ({})", of(formula, result, scale, None)));
        let here = of(formula, result, scale, None);
        text.line(&format!("  = {here}{}", there.unwrap_or_default()));
    }
}

/// The example's inputs in a system of units, to as few digits as a person reads; to more where the formula does not take those,
/// as with sizes that are made in inches.
fn example_in(formula: &'static Formula, system: System) -> Vec<String> {
    let few = example_to(formula, system, 3);
    let typed: Vec<&str> = few.iter().map(String::as_str).collect();
    match formula.compute_typed(&typed) {
        Ok(_) => few,
        Err(_) => example_to(formula, system, 6),
    }
}

/// The same to so many digits; what is in that system, or in none, stays as the formula has it.
fn example_to(formula: &'static Formula, system: System, digits: u8) -> Vec<String> {
    let inputs = formula.example.iter().zip(formula.arguments);
    let inputs = inputs.map(|(text, argument)| {
        let there = argument.scale.in_system(system);
        let read = Amount::typed(text, argument.scale).ok();
        let foreign =
            read.filter(|(amount, _)| amount.unit.is_some_and(|unit| unit.in_system(system) != unit));
        match foreign {
            Some((_, value)) => value.display(there).significant(digits).to_string(),
            None => (*text).to_owned(),
        }
    });
    inputs.collect()
}

/// As much of a text as one line holds, cut between words with room for the sign that tells of it.
fn first_line(text: &str, columns: usize, cut: usize) -> String {
    let lines = wrap(&safe(text), columns);
    match lines.as_slice() {
        [only] => only.to_string(),
        _ => wrap(&safe(text), columns.saturating_sub(cut))
            .first()
            .map(|line| format!("{}…", line.as_str().trim_end_matches([',', ';', ':'])))
            .unwrap_or_default(),
    }
}

fn capital(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().map(|letter| letter.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}
