//! A probe that was put elsewhere than asked, as the record of the call tells it.
//!
//! An ordinary call knows no such thing, so it stands there as a note, from which the score can be read again.

use super::score::Misplaced;
use crate::library::{Id, Library, Reading};
use crate::source::Safe;

const ASKED: &str = "Practice: asked for “";
const PUT: &str = "”, the probe was put at “";
const SHOWED: &str = "”, which showed ";

/// The note.
pub(super) fn note(library: &Library, misplaced: &Misplaced, shown: &Safe) -> String {
    let title = |id: Id<Reading>| library.readings[id].title.as_str();
    let Misplaced { asked, put, minutes } = misplaced;
    format!(
        "{ASKED}{}{PUT}{}{SHOWED}{shown} ({minutes} min)",
        title(*asked),
        title(*put)
    )
}

/// What a note says; none where it says something else.
pub(super) fn read(library: &Library, text: &str) -> Option<Misplaced> {
    let (asked, rest) = text.strip_prefix(ASKED)?.split_once(PUT)?;
    let (put, _) = rest.split_once(SHOWED)?;
    let called = |title: &str| {
        let mut readings = library.readings.iter();
        readings
            .find(|(_, reading)| reading.title == title)
            .map(|(id, _)| id)
    };
    let (asked, put) = (called(asked)?, called(put)?);
    Some(Misplaced {
        asked,
        put,
        minutes: library.readings[put].taking.minutes.unwrap_or_default(),
    })
}
