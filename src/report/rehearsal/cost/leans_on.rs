//! What all figures lean on: one fault, the minutes, the weights, and whose they are.

use super::Page;
use crate::bench::cost::Cost;
use crate::library::Library;
use crate::report::findings::counted;

pub(super) fn write(page: &mut Page, cost: &Cost<'_>) {
    page.line(0, "WHAT EVERY FIGURE LEANS ON");
    let library = cost.library;
    let weights = weights(cost);
    let minutes = format!(
        "Minutes: written by the authors of {} as `minutes`, and measured by nobody here: a step's own ({} of {}), else \
         those of what it asks for ({} of {} readings and signs). A wait counts where its author has put it into them. What stands already is not \
         taken again. The plate, and putting back, count nothing.",
        whose(library),
        library.steps.iter().filter(|step| step.minutes.is_some()).count(),
        counted(library.steps.len(), "step"),
        timed(library),
        library.readings.iter().count() + library.signs.iter().count(),
    );
    for line in [
        "One fault: a single one is there, and one that the tree can end in.",
        &minutes,
        &weights,
        "Ways: those to one fault share its weight as if each answer on them were as likely as another.",
    ] {
        page.hanging(2, 2, line);
    }
    if !cost.unpriced.is_empty() {
        let names = cost.unpriced.iter().map(|datum| library.name_of(*datum));
        let names = names.collect::<Vec<_>>().join(", ");
        page.hanging(2, 2, &format!("Without minutes, so they count nothing: {names}."));
    }
    page.blank();
}

/// The library, and what is laid over it: the later one has written what stands.
fn whose(library: &Library) -> String {
    let overlays = library.overlays.iter().map(|overlay| overlay.name.as_str());
    let all: Vec<&str> = std::iter::once(library.name.as_str()).chain(overlays).collect();
    all.join(" and ")
}

/// How many readings and signs have minutes.
fn timed(library: &Library) -> usize {
    let readings = library
        .readings
        .iter()
        .filter(|(_, reading)| reading.taking.minutes.is_some());
    let signs = library
        .signs
        .iter()
        .filter(|(_, sign)| sign.taking.minutes.is_some());
    readings.count() + signs.count()
}

fn weights(cost: &Cost<'_>) -> String {
    let faults = cost.library.faults.len();
    match cost.weighted {
        0 => format!(
            "Weights: all faults count alike, however often each is met, since none of the {faults} has a `weight` in the \
             registry. `proofwalk audit DIR --format weights` learns them from closed calls."
        ),
        some if some == faults => {
            "Weights: how often each fault is met, as its author wrote it in the registry.".to_owned()
        }
        some => format!(
            "Weights: how often a fault is met, as its author wrote it in the registry for {some} of {faults} faults; the others \
             count as 1."
        ),
    }
}
