//! The overlays that a call is walked with, in words.

use super::state::State;
use crate::library::Library;
use crate::source::{Safe, safe};

/// How many replaced things are named; the check names them all.
const NAMED: usize = 3;

/// A text for each overlay: what it is called, and what it replaced.
pub fn overlay_words(library: &Library, state: &State) -> Vec<Safe> {
    let marks = state.opened.as_ref().map(|opened| &opened.library.overlays);
    let overlays = library.overlays.iter().enumerate().map(|(at, overlay)| {
        let mark = marks.and_then(|marks| marks.get(at));
        // Without a title of its own it goes by its folder, which only the call's opening still tells.
        let title = match (overlay.at, mark) {
            (None, Some(mark)) => mark.name.clone(),
            _ => overlay.titled(),
        };
        let replaced = library.replaced_by(overlay);
        let names: Vec<String> = replaced
            .map(|replaced| format!("the {} {}", replaced.what, replaced.name))
            .collect();
        let what = match names.len().checked_sub(NAMED) {
            _ if names.is_empty() => "nothing".to_owned(),
            Some(more @ 1..) => format!("{}, and {more} more", names[..NAMED].join(", ")),
            _ => names.join(", "),
        };
        safe(&format!("{title}; it replaces {what}"))
    });
    overlays.collect()
}
