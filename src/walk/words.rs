//! Proofs, remedies, ends and answers in words, for a screen and for a report.

use super::event::End;
use super::state::{Answered, State, What};
use crate::library::{Datum, Fault, FieldKind, Id, Library, PlateField, Remedy, Status};
use crate::measure::{Quantity, Scale, Shown};

/// Over the faults that a walk no longer comes to after an answer. No more than that: none of them was shown to be absent.
pub const NO_LONGER: &str = "no longer reached";

/// A value that was worked out, and why it is to be trusted less.
pub(super) fn worked_out_words(value: Quantity, scale: Scale, warnings: &[String]) -> String {
    let value = worked_out_shown(value, scale);
    match warnings {
        [] => value.to_string(),
        warnings => format!("{value} (to be trusted less: {})", warnings.join("; ")),
    }
}

/// A value that was worked out, with no more digits than anybody measures.
pub(super) fn worked_out_shown(value: Quantity, scale: Scale) -> Shown {
    value.display(scale).worked_out()
}

/// How far a tree is trusted, in words; a draft is not to be overlooked.
pub fn status_words(status: Status) -> &'static str {
    match status {
        Status::Draft => "DRAFT",
        Status::FieldTrial => "field trial",
        Status::Approved => "approved",
    }
}

/// A line of a proof in words.
pub fn line_words(library: &Library, line: &crate::library::ProofLine) -> String {
    let alternatives = line.alternatives.iter().map(|claims| {
        let claims = claims.iter().map(|claim| claim_words(library, claim));
        claims.collect::<Vec<_>>().join(" and ")
    });
    alternatives.collect::<Vec<_>>().join(", or ")
}

/// A claim in words.
pub fn claim_words(library: &Library, claim: &crate::library::Claim) -> String {
    use crate::library::ClaimKind;
    let field_name = |field: &Id<PlateField>| format!("“{}” on the plate", library.plate[*field].title);
    let title = library.title_of(claim.datum());
    let values = |choices: &[crate::library::Choice], values: &[usize]| {
        let texts = values
            .iter()
            .filter_map(|value| choices.get(*value))
            .map(|choice| choice.text.as_str());
        texts.collect::<Vec<_>>().join(", or ")
    };
    match &claim.what {
        ClaimKind::Reading(id, band) => {
            format!(
                "{title}: {}",
                band.display(library.readings[*id].scale, field_name)
            )
        }
        ClaimKind::Sign(id, chosen) => format!("{title} {}", values(&library.signs[*id].values, chosen)),
        ClaimKind::FieldNumber(id, band) => match &library.plate[*id].kind {
            FieldKind::Number { scale, .. } => format!("{title}: {}", band.display(*scale, field_name)),
            FieldKind::Choices(_) => title.to_owned(),
        },
        ClaimKind::FieldChoice(id, chosen) => match &library.plate[*id].kind {
            FieldKind::Choices(choices) => format!("{title}: {}", values(choices, chosen)),
            FieldKind::Number { .. } => title.to_owned(),
        },
    }
}

/// What is done about a fault, in words.
pub fn remedy_words(library: &Library, fault: Id<Fault>) -> String {
    let mut what = remedy_alone(library, fault);
    let fault = &library.faults[fault];
    if fault.remedy == Remedy::ShutDown {
        what = format!("SHUT DOWN: {}", what.to_lowercase());
    }
    match &fault.text {
        Some(text) => format!("{what}. {text}"),
        None => what,
    }
}

/// The same without the fault's own words; of a shut-down only what it means, for whoever says `SHUT DOWN` before it.
pub(super) fn remedy_alone(library: &Library, fault: Id<Fault>) -> String {
    let fault = &library.faults[fault];
    let title = |part: Id<crate::library::Part>| library.parts[part].title.as_str();
    match fault.remedy {
        Remedy::Replace(_) if !fault.group.is_empty() => {
            let parts: Vec<&str> = fault.group.iter().map(|part| title(*part)).collect();
            format!(
                "Replace one of these, which no field measurement tells apart: {}",
                parts.join(", ")
            )
        }
        Remedy::Replace(part) => format!("Replace: {}", title(part)),
        Remedy::Correct => "Set right".to_owned(),
        Remedy::ShutDown => "It must not run".to_owned(),
        Remedy::Refer => "Refer to others".to_owned(),
        Remedy::None => "Nothing to do".to_owned(),
        Remedy::Unresolved => "Unknown".to_owned(),
    }
}

/// How a walk ended, in words.
pub fn end_words(library: &Library, end: &End) -> String {
    let title = |name: &str| {
        let fault = library.faults.find(name);
        fault.map_or_else(|| name.to_owned(), |fault| library.faults[fault].title.clone())
    };
    match end {
        End::Verdict { fault, .. } => format!("Verdict, proven: {}", title(fault)),
        End::Outcome { outcome } => format!("No verdict; it came out as: {}", outcome.replace('_', " ")),
        End::Unproven { why } => format!("Unproven, no verdict: {why}"),
        End::Insisted { fault, words } => {
            format!(
                "The technician's own verdict, not proven ({}): {words}",
                title(fault)
            )
        }
    }
}

/// An answer in words: one outside what is plausible, given a second time, says so.
pub(super) fn answer_words(library: &Library, state: &State, answered: &Answered) -> String {
    let given = match answered.what {
        What::Datum(datum) => state
            .value(datum)
            .filter(|standing| standing.typed == answered.answer),
        What::Work(_) => None,
    };
    let range = match answered.what {
        What::Datum(Datum::Reading(id)) => library.readings[id].plausible,
        What::Datum(Datum::Field(id)) => match &library.plate[id].kind {
            FieldKind::Number { plausible, .. } => Some(*plausible),
            FieldKind::Choices(_) => None,
        },
        What::Datum(Datum::Sign(_)) | What::Work(_) => None,
    };
    let number = given.and_then(|standing| standing.value.number());
    match (number, range) {
        (Some(number), Some(range)) if !range.contains(number) => {
            format!("{} (outside what is plausible)", answered.answer)
        }
        _ => answered.answer.clone(),
    }
}
