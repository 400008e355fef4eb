//! What one layer of a library does to those below it.

use super::super::overlay::{Overlay, Replaceable, Replaced};
use super::Resolver;
use crate::source::{Layer, Span};

impl Resolver<'_> {
    /// Whether a place stands in a later layer than another.
    pub(super) fn is_laid_over(&self, at: Span, first: Span) -> bool {
        let number = |span: Span| self.files.get(span.file).layer().number();
        number(at) > number(first)
    }

    /// Notes that what stands at `by` counts in place of what stood first.
    pub(super) fn replaced(&mut self, what: Replaceable, name: &str, first: Span, by: Span) {
        let name = name.to_owned();
        self.library.replaced.push(Replaced {
            what,
            name,
            first,
            by,
        });
    }

    /// Every overlay that has a file, by the name of its folder: what it calls itself is not looked at yet.
    pub(super) fn overlays(&mut self) {
        let layers = self.files.iter().map(|(_, file)| file.layer());
        let mut overlays: Vec<Overlay> = Vec::new();
        for layer in layers.filter(|layer| layer.number() > 0) {
            if overlays.last().is_none_or(|last| last.number != layer.number()) {
                overlays.push(unnamed(layer));
            }
        }
        self.library.overlays = overlays;
    }
}

fn unnamed(layer: &Layer) -> Overlay {
    let number = layer.number();
    let parts = layer
        .folder()
        .rsplit('/')
        .find(|part| !["", ".", ".."].contains(part));
    let name = parts.map_or_else(|| format!("overlay {number}"), str::to_owned);
    Overlay {
        number,
        title: name.clone(),
        name,
        edition: String::new(),
        at: None,
    }
}
