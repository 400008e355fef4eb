//! Practice of a class for another program.

use serde::Serialize;

use super::{Class, End, Practised, Tried, furnaces};
use crate::bench::practice::Mode;
use crate::source::safe;

/// For another program: each session, in the order of furnaces and apprentices.
pub fn json(class: &Class) -> String {
    let all: Vec<Session> = (furnaces(class).iter())
        .flat_map(|(_, tries)| tries)
        .map(session)
        .collect();
    // Texts and numbers in a struct: there is nothing here that JSON cannot say.
    serde_json::to_string_pretty(&all).unwrap_or_default() + "\n"
}

#[derive(Serialize)]
struct Session {
    session: String,
    apprentice: Option<String>,
    seed: u64,
    level: u8,
    guided: bool,
    drawn_with: String,
    /// Counted from 1.
    attempt: usize,
    closed: bool,
    came: Option<&'static str>,
    solved: Option<bool>,
    minutes: Option<f64>,
    tree_minutes: Option<f64>,
    misplaced: Option<usize>,
    condemned_for_nothing: Option<String>,
    dangers_overlooked: Option<usize>,
    left_open: Option<usize>,
    named_before: Option<usize>,
    /// Nothing as long as somebody is still at it.
    what_was_wrong: Option<String>,
}

fn session(tried: &Tried<'_>) -> Session {
    let Practised {
        session,
        apprentice,
        setup,
        drawn_with,
        end,
    } = tried.practised;
    let mark = end.mark();
    Session {
        session: safe(session).to_string(),
        apprentice: apprentice.as_ref().map(|name| safe(name).to_string()),
        seed: setup.seed,
        level: setup.level.number(),
        guided: setup.mode == Mode::Guided,
        drawn_with: safe(drawn_with).to_string(),
        attempt: tried.attempt,
        closed: *end != End::NotFinished,
        came: mark.map(|mark| mark.came.words()),
        solved: mark.map(|mark| mark.came.is_solved()),
        minutes: mark.map(|mark| mark.minutes),
        tree_minutes: mark.map(|mark| mark.tree_minutes),
        misplaced: mark.map(|mark| mark.misplaced),
        condemned_for_nothing: mark.map(|mark| safe(&mark.condemned).to_string()),
        dangers_overlooked: mark.map(|mark| mark.overlooked),
        left_open: mark.map(|mark| mark.left_open),
        named_before: mark.map(|mark| mark.named_before),
        what_was_wrong: mark
            .filter(|_| !tried.is_held_back)
            .map(|mark| safe(&mark.truth).to_string()),
    }
}
