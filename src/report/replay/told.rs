//! An event in words, as a replay shows it.

use crate::library::{Datum, FieldKind, Library};
use crate::measure::Quantity;
use crate::report::job::no_field_call;
use crate::source::{Safe, safe};
use crate::walk::{Doubt, Event, Opened, Role, State, end_words};

/// An event with its label, told before it is applied; none where it only moves the walk on.
pub(super) fn line(library: &Library, state: &State, event: &Event) -> Option<(&'static str, Safe)> {
    let title = |name: &str| match library.datum(name) {
        Some(datum) => library.title_of(datum).to_owned(),
        None => name.to_owned(),
    };
    let fault = |name: &str| match library.faults.find(name) {
        Some(fault) => library.faults[fault].title.clone(),
        None => name.to_owned(),
    };
    let restore = |name: &String| match library.restores.find(name) {
        Some(restore) => library.restores[restore].text.clone(),
        None => name.clone(),
    };
    let restores = |names: &[String]| names.iter().map(restore).collect::<Vec<_>>().join("; ");
    let (label, words) = match event {
        Event::Opened(opened) => {
            let who = opened.technician.as_deref().unwrap_or("nobody named");
            let at = opened
                .equipment
                .as_ref()
                .map(|equipment| format!(" at {equipment}"));
            let from = opened.answered_from.as_deref();
            let nobody_there = from.map(|from| format!(". NO FIELD CALL: {}", no_field_call(from)));
            let nobody_there = nobody_there.unwrap_or_default();
            (
                "Opened",
                format!(
                    "{}, by {who}{}{nobody_there}",
                    opened.tree,
                    at.unwrap_or_default()
                ),
            )
        }
        Event::Measured {
            reading,
            typed,
            value,
            unit,
            borderline,
            ..
        } => {
            let close = if *borderline { ", borderline" } else { "" };
            match typed {
                Some(typed) => ("Answer", format!("{typed}{close}")),
                None => {
                    let value = worked_out(library, reading, *value, unit);
                    ("Worked out", format!("{}: {value}{close}", title(reading)))
                }
            }
        }
        Event::Observed { sign, value } => ("Answer", choice(library, sign, value)),
        Event::ReadPlate { field, value } => ("Answer", choice(library, field, value)),
        Event::Doubted {
            value, why, against, ..
        } => {
            let why = match why {
                Doubt::Borderline => "too near to a bound",
                Doubt::Implausible => "outside what is plausible",
            };
            ("Asked again", format!("{value} is {why}, {against}"))
        }
        Event::CouldNot { why, .. } => ("Not taken", why.clone()),
        Event::WasUnsure { .. } => ("Answer", "not sure".to_owned()),
        Event::Did { .. } => ("Answer", "done".to_owned()),
        Event::Voided { data, .. } => {
            let titles: Vec<String> = data.iter().map(|name| title(name)).collect();
            ("Void now", titles.join("; "))
        }
        Event::Retaking { datum, for_proof } => {
            // In free practice all is taken out of turn, and mostly for the first time.
            if state.opened.as_ref().is_some_and(Opened::is_free_practice) {
                return Some(("Chosen", safe(&title(datum))));
            }
            let why = if *for_proof { ", for a proof" } else { "" };
            ("Taken again", format!("{}{why}", title(datum)))
        }
        Event::LeftOpen { restores: names } => ("To put back", restores(names)),
        Event::Restored { restores: names } => ("Put back", restores(names)),
        Event::Withheld { fault: name } => ("NOT PROVEN", fault(name)),
        Event::Stated { fault: name, .. } => ("Proven", fault(name)),
        Event::Ended(end) => ("Ended", end_words(library, end)),
        Event::WentBack { to } => {
            let back = state.trail.len().saturating_sub(*to);
            (
                "Went back",
                format!("{back} of {} answers taken back", state.trail.len()),
            )
        }
        Event::Noted { text } => ("Note", text.clone()),
        Event::PutBack { restore: name } => ("Put back", restore(name)),
        Event::KeptOpen { restore: name, why } => ("LEFT OPEN", format!("{}: {why}", restore(name))),
        Event::Closed => ("Closed", "by the technician".to_owned()),
        Event::TailCut { bytes, kept } => (
            "Cut off",
            format!("{bytes} bytes of a line that was never confirmed, kept as {kept}"),
        ),
        Event::Entered {
            tree,
            role: Role::Danger,
        } => {
            let tree = library
                .trees
                .find(tree)
                .map(|tree| library.trees[tree].title.clone());
            ("DANGER", tree.unwrap_or_default())
        }
        Event::Entered { .. } | Event::Took { .. } | Event::Returned { .. } | Event::Left { .. } => {
            return None;
        }
    };
    Some((label, safe(&words)))
}

/// A value that was worked out, with no more digits than anybody measures.
fn worked_out(library: &Library, reading: &str, value: f64, unit: &str) -> String {
    match library
        .readings
        .find(reading)
        .map(|reading| library.readings[reading].scale)
    {
        Some(scale) => Quantity::new(value, scale)
            .display(scale)
            .worked_out()
            .to_string(),
        None => format!("{value} {unit}"),
    }
}

/// What was seen, or read from the plate, in the library's words.
fn choice(library: &Library, of: &str, value: &str) -> String {
    let choices = match library.datum(of) {
        Some(Datum::Sign(sign)) => Some(&library.signs[sign].values),
        Some(Datum::Field(field)) => match &library.plate[field].kind {
            FieldKind::Choices(choices) => Some(choices),
            FieldKind::Number { .. } => None,
        },
        Some(Datum::Reading(_)) | None => None,
    };
    let named = choices.and_then(|choices| choices.iter().find(|choice| choice.name == value));
    named.map_or(value, |choice| choice.text.as_str()).to_owned()
}
