//! What a formula comes to.

use super::Text;
use super::number::{other, shown};
use crate::measure::{Quantity, Scale, System};
use crate::trade::{Given, Origin, Slip, Warned, Warning, Worked};

/// What a formula comes to on its inputs, in a system of units, and all that a person must know to trust it.
pub fn worked(worked: &Worked, system: System, ascii: bool) -> String {
    let mut text = Text::new(ascii);
    let formula = worked.formula;
    let scale = formula.result.in_system(system);
    text.line(&format!("{} = {}", formula.name, result(worked, scale)));
    text.line("");
    text.paragraph("  ", formula.equation);
    for given in &worked.inputs {
        text.paragraph(&format!("  {} = ", given.argument.name), &understood(given));
    }
    text.line("");
    match &worked.margin {
        Some(Ok(_)) => text.paragraph("± ", "is at worst: every input off as far as it may be, all together."),
        Some(Err(unfit)) => text.paragraph(
            "± ",
            &format!(
                "cannot be told: off as far as they may be, the inputs reach where the formula does not hold: {}.",
                unfit.message
            ),
        ),
        None => {}
    }
    for slip in &worked.slips {
        text.paragraph("Slip:  ", &moved(worked, slip, scale));
    }
    for warned in &worked.warnings {
        text.paragraph("Warning: ", &said(warned));
    }
    text.paragraph("Holds: ", formula.range);
    if let Some(caution) = formula.group.caution() {
        text.paragraph("Caution: ", caution);
    }
    text.lines
}

/// The result on a scale, and behind it in the other system.
fn result(worked: &Worked, scale: Scale) -> String {
    let margin = worked.margin.as_ref().and_then(|margin| margin.as_ref().ok());
    let on = |scale| shown(worked.result, scale, margin.copied());
    match other(scale) {
        Some(other) => format!("{} ({})", on(scale), on(other)),
        None => on(scale),
    }
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

/// An input as it was understood: in the unit it was given in, and in the one that the equation takes.
fn understood(given: &Given) -> String {
    let own = given.argument.scale;
    let mut text = given.value.display(given.scale).to_string();
    if given.margin > 0.0 {
        let offsets = given.scale.of_offsets();
        let off = Quantity::from_base(given.margin, offsets.dimension());
        text.push_str(&format!(" ± {}", off.display(offsets)));
    }
    if given.scale != own {
        text.push_str(&format!(" ({})", given.value.display(own)));
    }
    match given.origin {
        Origin::Written => {}
        Origin::Bare => text.push_str(&format!(", given without a unit, so taken as {}", own.symbol())),
        Origin::Usual(because) => text.push_str(&format!(", not given, so taken as usual: {because}")),
    }
    text
}
