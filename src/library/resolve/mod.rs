//! From what the files say to a library in which every name is a number.
//!
//! Nothing stops at the first error. What cannot be resolved is reported and stands in the library as *unresolved*, so
//! that the rules can pass it by and still look at all the rest.

mod about;
mod answers;
mod bands;
mod edges;
mod kinds;
mod layers;
mod lookup;
mod plate;
mod proofs;
mod quantities;
mod readings;
mod registries;
mod report;
mod scenarios;
mod scope;
mod steps;
mod trees;
mod verdicts;
mod worked_out;

use super::Library;
use super::load::Raw;
use super::problem::{Problem, What};
use crate::measure::Scale;
use crate::source::{FileId, Files, Span};
use bands::Bands;
use scope::Scope;
pub(super) use steps::{ANY, KINDS};

/// Looks every name up. The problems come in no particular order.
pub(super) fn resolve(files: &Files, raw: Raw, problems: Vec<Problem>) -> (Library, Vec<Problem>) {
    let mut resolver = Resolver {
        files,
        problems,
        scope: Scope::default(),
        library: Library::default(),
        field_scales: Vec::new(),
        bands: Bands::default(),
        patience: PATIENCE,
        edges: 0,
    };
    resolver.all(raw);
    (resolver.library, resolver.problems)
}

struct Resolver<'a> {
    files: &'a Files,
    problems: Vec<Problem>,
    scope: Scope,
    library: Library,
    /// What each plate field is in; a field with choices is in nothing.
    field_scales: Vec<Option<Scale>>,
    bands: Bands,
    /// Names that may still be compared with unknown ones.
    patience: usize,
    /// Edges numbered so far.
    edges: u32,
}

/// How many registered names are compared with unknown ones to suggest what was meant.
///
/// One unknown name costs the length of a registry. Where there are more of both than anybody reads, the rest are reported
/// without.
const PATIENCE: usize = 300_000;

impl Resolver<'_> {
    fn all(&mut self, raw: Raw) {
        let Raw {
            library,
            plate,
            readings,
            signs,
            parts,
            faults,
            restores,
            cautions,
            sources,
            trees,
            scenarios,
        } = raw;

        self.overlays();
        // All names first: a reading may be worked out from a later one, a fault may name a part of another file.
        let sources = self.open(sources, |_, file| file.sources, What::Source, |s| &mut s.sources);
        let restores = self.open(
            restores,
            |_, file| file.restores,
            What::Restore,
            |s| &mut s.restores,
        );
        let cautions = self.open(
            cautions,
            |_, file| file.cautions,
            What::Caution,
            |s| &mut s.cautions,
        );
        let mut order = Vec::new();
        let plate = self.open(
            plate,
            |id, file| {
                let chains = file.order.unwrap_or_default();
                order.extend(chains.into_iter().map(|chain| (id, chain)));
                file.fields
            },
            What::PlateField,
            |s| &mut s.fields,
        );
        let readings = self.open(
            readings,
            |_, file| file.readings,
            What::Reading,
            |s| &mut s.readings,
        );
        let signs = self.open(signs, |_, file| file.signs, What::Sign, |s| &mut s.signs);
        let parts = self.open(parts, |_, file| file.parts, What::Part, |s| &mut s.parts);
        let faults = self.open(faults, |_, file| file.faults, What::Fault, |s| &mut s.faults);
        let trees = self.register_trees(trees);

        self.readings_and_signs_apart(&readings, &signs);
        self.sources(sources);
        self.restores(restores);
        self.cautions(cautions);
        self.plate(plate, order);
        self.readings(readings);
        self.signs(signs);
        self.parts(parts);
        self.faults(faults);
        self.trees(trees);
        self.about(library);
        self.scenarios(scenarios);
        self.library.replaced.sort_by_key(|replaced| replaced.by);
    }

    /// The start of a file, for what is wrong with it as a whole.
    fn top(&self, file: FileId) -> Span {
        Span {
            file,
            start: 0,
            end: 0,
        }
    }
}
