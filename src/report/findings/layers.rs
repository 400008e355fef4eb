//! Which overlays a library has, and what each of them replaced.

use serde::Serialize;

use crate::library::{Library, Overlay, Replaced};
use crate::source::{Span, safe};

/// An overlay, for another program.
#[derive(Serialize)]
pub(super) struct OverlayEntry {
    name: String,
    title: String,
    edition: String,
}

/// Something that was replaced, for another program: what counts, and in place of what.
#[derive(Serialize)]
pub(super) struct ReplacedEntry {
    kind: String,
    name: String,
    file: String,
    line: usize,
    instead_of: PlaceEntry,
}

#[derive(Serialize)]
struct PlaceEntry {
    file: String,
    line: usize,
}

pub(super) fn overlays(library: &Library) -> Vec<OverlayEntry> {
    let entry = |overlay: &Overlay| OverlayEntry {
        name: shown(&overlay.name),
        title: shown(&overlay.title),
        edition: shown(&overlay.edition),
    };
    library.overlays.iter().map(entry).collect()
}

pub(super) fn replaced(library: &Library) -> Vec<ReplacedEntry> {
    let entry = |replaced: &Replaced| {
        let (by, first) = (place(library, replaced.by), place(library, replaced.first));
        ReplacedEntry {
            kind: replaced.what.to_string(),
            name: shown(&replaced.name),
            file: by.file,
            line: by.line,
            instead_of: first,
        }
    };
    library.replaced.iter().map(entry).collect()
}

/// A line an overlay, and below it a line for everything that it replaced; nothing where there is no overlay.
pub(super) fn text(library: &Library) -> String {
    let mut text = String::new();
    for overlay in &library.overlays {
        let replaced: Vec<&Replaced> = library.replaced_by(overlay).collect();
        let count = match replaced.len() {
            0 => "replaces nothing".to_owned(),
            count => format!("replaces {count}"),
        };
        text.push_str(&format!("overlay {}: {count}\n", safe(&overlay.titled())));
        for replaced in replaced {
            let (by, first) = (place(library, replaced.by), place(library, replaced.first));
            text.push_str(&format!(
                "  {} `{}`: {}:{} instead of {}:{}\n",
                replaced.what,
                safe(&replaced.name),
                by.file,
                by.line,
                first.file,
                first.line
            ));
        }
    }
    if !text.is_empty() {
        text.push('\n');
    }
    text
}

fn place(library: &Library, span: Span) -> PlaceEntry {
    let place = library.files.place(span);
    PlaceEntry {
        file: shown(&place.file),
        line: place.line,
    }
}

fn shown(text: &str) -> String {
    String::from(safe(text))
}
