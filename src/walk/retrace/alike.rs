//! Whether two events say the same.

use super::super::event::{End, Event};

/// How far numbers may lie apart, as a share of them: what is read back from a text, or worked out by another build, may differ in
/// its last digits. Values are compared on twelve digits everywhere.
const APART: f64 = 1e-9;

/// Whether what was recorded is what was decided, in all that decides anything.
///
/// Not compared is what the program words itself, since a later edition may word it otherwise: against which bound a value is
/// doubted, how a worked-out value is shown there, why a walk that goes on by itself ends unproven, and what a formula's warnings
/// say; whether it warns is compared. Nor is the order of what no longer counts.
pub(in crate::walk) fn alike(recorded: &Event, decided: &Event) -> bool {
    match (recorded, decided) {
        (
            Event::Measured {
                reading,
                typed,
                value,
                unit,
                margin,
                borderline,
                warnings,
            },
            Event::Measured {
                reading: other_reading,
                typed: other_typed,
                value: other_value,
                unit: other_unit,
                margin: other_margin,
                borderline: other_borderline,
                warnings: other_warnings,
            },
        ) => {
            reading == other_reading
                && typed == other_typed
                && is_near(*value, *other_value)
                && unit == other_unit
                && is_near(*margin, *other_margin)
                && borderline == other_borderline
                && warnings.is_empty() == other_warnings.is_empty()
        }
        (
            Event::Doubted { datum, why, .. },
            Event::Doubted {
                datum: other_datum,
                why: other_why,
                ..
            },
        ) => datum == other_datum && why == other_why,
        (
            Event::Voided { data, why },
            Event::Voided {
                data: other_data,
                why: other_why,
            },
        ) => why == other_why && sorted(data) == sorted(other_data),
        (Event::Ended(End::Unproven { .. }), Event::Ended(End::Unproven { .. })) => true,
        _ => recorded == decided,
    }
}

fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() <= APART * one.abs().max(other.abs())
}

fn sorted(names: &[String]) -> Vec<&String> {
    let mut names: Vec<_> = names.iter().collect();
    names.sort();
    names
}
