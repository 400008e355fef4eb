//! What is known of the plate fields that a step's bands lean on.

use std::collections::HashSet;

use crate::library::{FieldKind, Id, Library, PlateField};
use crate::measure::{Dimension, PlausibleRange, Scale};

/// The scale of a field with a number, and what is believed of it.
pub(in crate::check) fn number(library: &Library, field: Id<PlateField>) -> Option<(Scale, PlausibleRange)> {
    match library.plate[field].kind {
        FieldKind::Number { scale, plausible } => Some((scale, plausible)),
        FieldKind::Choices(_) => None,
    }
}

/// Whether a field is positive on every plate: its own plausible range lies at or above nothing, or that of a field that
/// `order:` puts below it.
pub(in crate::check) fn is_positive(library: &Library, field: Id<PlateField>) -> bool {
    let below = related(library, field, Side::Below);
    below.into_iter().chain([field]).any(|field| {
        // Nothing on a thermometer is no end of anything.
        number(library, field).is_some_and(|(scale, plausible)| {
            scale.dimension() != Dimension::Temperature && plausible.low.base() >= 0.0
        })
    })
}

/// The fields that `order:` puts above a field, along one chain or several.
pub(in crate::check) fn above(library: &Library, field: Id<PlateField>) -> HashSet<Id<PlateField>> {
    related(library, field, Side::Above)
}

#[derive(Clone, Copy)]
enum Side {
    Below,
    Above,
}

fn related(library: &Library, field: Id<PlateField>, side: Side) -> HashSet<Id<PlateField>> {
    let beside = |field: Id<PlateField>| match side {
        Side::Below => library.plate[field].smaller.iter(),
        Side::Above => library.plate[field].larger.iter(),
    };
    let mut found = HashSet::new();
    let mut waiting: Vec<_> = beside(field).collect();
    while let Some(&next) = waiting.pop() {
        if found.insert(next) {
            waiting.extend(beside(next));
        }
    }
    found
}
