//! What a formula comes to.

use super::metric::for_reader;
use super::number::{of, other, shown};
use super::{COLUMNS, Text};
use crate::measure::{Quantity, Scale, System};
use crate::trade::{Formula, Given, Origin, Slip, Unfit, Unusual, Warned, Warning, Worked};

/// What a formula comes to on its inputs, in a system of units, and all that a person must know to trust it.
pub fn worked(worked: &Worked, system: System, ascii: bool) -> String {
    let mut text = Text::new(ascii);
    let formula = worked.formula;
    let scale = formula.result.in_system(system);
    headline(&mut text, worked, scale);
    text.line("");
    text.paragraph("  ", formula.equation);
    for given in &worked.inputs {
        text.paragraph(
            &format!("  {} = ", given.argument.name),
            &understood(given, system),
        );
    }
    text.line("");
    if let Some(margin) = &worked.margin {
        text.paragraph("± ", &reach(formula, margin, scale));
    }
    for slip in &worked.slips {
        text.paragraph("Slip:  ", &moved(worked, slip, scale));
    }
    for warned in &worked.warnings {
        text.paragraph("Warning: ", &for_reader(&said(warned), system));
    }
    for unusual in &worked.unusual {
        text.paragraph("Warning: ", &for_reader(&far_off(unusual), system));
    }
    if let Some(foreign) = without_unit(&worked.inputs, system) {
        text.paragraph("Warning: ", &foreign);
    }
    text.paragraph("Holds: ", &for_reader(formula.range, system));
    if let Some(caution) = formula.group.caution() {
        text.paragraph("Caution: ", caution);
    }
    text.lines
}

/// What the accuracies make of the result.
fn reach(formula: &Formula, margin: &Result<f64, Unfit>, scale: Scale) -> String {
    match margin {
        Err(unfit) => format!(
            "cannot be told: off as far as they may be, the inputs reach where the formula does not hold: {}.",
            unfit.message
        ),
        Ok(margin) if *margin == 0.0 => {
            "changes nothing: off as far as they may be, the inputs ask for the same.".to_owned()
        }
        Ok(margin) if formula.is_of_sizes() => {
            let off = Quantity::from_base(*margin, scale.dimension());
            format!(
                "off as far as they may be, the inputs reach sizes up to {} from this one: take the safe one.",
                shown(off, scale, None)
            )
        }
        Ok(_) => "is at worst: every input off as far as it may be, all together.".to_owned(),
    }
}

/// The result on a scale, and behind it in the other system, or below where one line has no room for both.
fn headline(text: &mut Text, worked: &Worked, scale: Scale) {
    let margin = worked.margin.as_ref().and_then(|margin| margin.as_ref().ok());
    // Between two sizes that are made there is none, so that one has no ±.
    let margin = margin.filter(|_| !worked.formula.is_of_sizes());
    let on = |scale| of(worked.formula, worked.result, scale, margin.copied());
    let here = format!("{} = {}", worked.formula.name, on(scale));
    let Some(there) = other(scale).map(|other| format!("({})", on(other))) else {
        return text.line(&here);
    };
    if text.width(&here) + 1 + text.width(&there) <= COLUMNS {
        return text.line(&format!("{here} {there}"));
    }
    text.line(&here);
    text.line(&format!("  {there}"));
}

/// What a slip of the hand does: by how much, on a scale and behind it in the other system, and how much of the result that is.
fn moved(worked: &Worked, slip: &Slip, scale: Scale) -> String {
    let own = slip.argument.scale.of_offsets();
    let off = Quantity::new(slip.off.number, own).display(own);
    let by = |scale: Scale| {
        let offsets = scale.of_offsets();
        shown(
            Quantity::from_base(slip.moves, offsets.dimension()),
            offsets,
            None,
        )
    };
    let there = other(scale).map(|scale| format!(" ({})", by(scale)));
    format!(
        "{off} more or less of {} moves it by up to {}{}, {:.1} % of it: {}.",
        slip.argument.name,
        by(scale),
        there.unwrap_or_default(),
        100.0 * slip.moves / worked.result.base().abs(),
        slip.off.because
    )
}

/// What a warning says; of a limit that the accuracy reaches across, that it may hold.
fn said(warned: &Warned) -> String {
    let Warning {
        when, reason, help, ..
    } = warned.warning;
    if warned.is_borderline {
        return format!(
            "whether {when} cannot be told, since the limit lies within the accuracy: read again, or with a better meter. \
             Until then take it that it is so: {reason}; {help}."
        );
    }
    format!("{when}: {reason}; {help}.")
}

/// What to say of an input that is far from what it usually is.
fn far_off(unusual: &Unusual) -> String {
    let Unusual {
        argument,
        value,
        usual: [least, most],
    } = unusual;
    let scale = argument.scale;
    let name = argument.name;
    format!(
        "{name} is {}; in houses it is {} to {}. Check it for a slip of the decimal point or the unit.",
        value.display(scale),
        least.display(scale),
        most.display(scale)
    )
}

/// What to say where metric units are wanted and numbers without a unit were taken in others: whoever thinks in °C may mean those.
fn without_unit(inputs: &[Given], system: System) -> Option<String> {
    let is_foreign =
        |given: &&Given| given.origin == Origin::Bare && given.scale.in_system(system) != given.scale;
    let foreign = inputs.iter().filter(is_foreign).map(|given| {
        let name = given.argument.name;
        format!("{name} is taken in {}", given.scale.symbol())
    });
    let foreign: Vec<String> = foreign.collect();
    (!foreign.is_empty()).then(|| {
        format!(
            "{}, since no unit was given. Write the unit where another is meant.",
            foreign.join(", ")
        )
    })
}

/// An input as it was understood: in the unit it was given in, and in the one that the equation takes.
fn understood(given: &Given, system: System) -> String {
    let own = given.argument.scale;
    let scale = match given.origin {
        Origin::Usual(_) => given.scale.in_system(system),
        Origin::Written | Origin::Bare => given.scale,
    };
    let mut text = given.value.display(scale).to_string();
    if given.margin > 0.0 {
        let offsets = scale.of_offsets();
        let off = Quantity::from_base(given.margin, offsets.dimension());
        text.push_str(&format!(" ± {}", off.display(offsets)));
    }
    if scale != own {
        text.push_str(&format!(" ({})", given.value.display(own)));
    }
    match given.origin {
        Origin::Written => {}
        Origin::Bare => text.push_str(&format!(", given without a unit, so taken as {}", own.symbol())),
        Origin::Usual(because) => text.push_str(&format!(", not given, so taken as usual: {because}")),
    }
    text
}
