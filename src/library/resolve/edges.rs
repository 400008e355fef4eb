//! Edges: where an answer leads.

use super::super::problem::What;
use super::super::raw;
use super::super::table::Id;
use super::super::tree::{Edge, EdgeId, Finding, Limit, Severity, Step};
use super::super::yaml::{At, Keyed};
use super::Resolver;
use super::scope::Names;
use crate::source::{FileId, Span};

/// The tree that a step stands in, for looking up where its edges lead.
pub(super) struct Within<'a> {
    pub file: FileId,
    pub steps: &'a Names<Step>,
    /// How many steps the library has before this tree's.
    pub first: usize,
}

impl Resolver<'_> {
    /// Resolves an edge; none where its name leads nowhere, which has then been reported.
    pub(super) fn edge(&mut self, edge: raw::Edge, within: &Within<'_>) -> Option<Edge> {
        let at = edge.span(within.file);
        match edge.value {
            raw::EdgeForm::Name(name) => {
                let go = self.step(&name, at, within)?;
                Some(self.plain_edge(at, go))
            }
            raw::EdgeForm::Map(map) => self.edge_map(*map, at, within),
            raw::EdgeForm::Nothing => {
                self.malformed(
                    at,
                    "no step is named here",
                    "name the step this leads to; inside {…} a comma ends a key, so write bands as a block, a line each",
                );
                None
            }
            raw::EdgeForm::Other => {
                self.malformed(at, "this is no step's name", "name the step this leads to");
                None
            }
        }
    }

    fn plain_edge(&mut self, at: Span, go: Id<Step>) -> Edge {
        Edge {
            id: self.next_edge(),
            at,
            go,
            limit: None,
            means: None,
            finding: None,
        }
    }

    fn next_edge(&mut self) -> EdgeId {
        let id = EdgeId(self.edges);
        self.edges += 1;
        id
    }

    fn edge_map(&mut self, map: Keyed<raw::EdgeMap>, at: Span, within: &Within<'_>) -> Option<Edge> {
        let file = within.file;
        self.stray(&map, file);
        let raw::EdgeMap {
            go,
            at_most,
            then,
            means,
            finding,
        } = map.value;
        let limit = self.limit(at_most, then, at, within);
        let finding = finding.and_then(|finding| self.finding(finding, at, file));
        let Some(go) = go else {
            self.missing(at, "the edge", "go");
            return None;
        };
        let place = go.span(file);
        let go = self.step(&go.value, place, within)?;
        let limit = limit?;
        Some(Edge {
            limit,
            means: means.map(|means| means.value),
            finding,
            ..self.plain_edge(place, go)
        })
    }

    /// The limit of an edge, if it has one; none at all where it has one that could not be read.
    fn limit(
        &mut self,
        at_most: Option<At<u32>>,
        then: Option<raw::Edge>,
        at: Span,
        within: &Within<'_>,
    ) -> Option<Option<Limit>> {
        match (at_most, then) {
            (None, None) => Some(None),
            (Some(at_most), Some(then)) => {
                let then = Box::new(self.edge(then, within)?);
                let place = at_most.span(within.file);
                let written = self.files.excerpt(place);
                // YAML reads `0o14` as 12, and people as something else.
                if !written.bytes().all(|byte| byte.is_ascii_digit()) {
                    let message = format!("`{written}` is not written as a plain whole number");
                    self.malformed(
                        place,
                        message,
                        "write it in decimal digits alone, for instance `12`",
                    );
                    return None;
                }
                if at_most.value == 0 {
                    self.malformed(
                        place,
                        "an edge that may be taken at most 0 times is none",
                        "write 1 or more, or let the answer lead to its `then`",
                    );
                    return None;
                }
                Some(Some(Limit {
                    at_most: at_most.value,
                    then,
                }))
            }
            (Some(_), None) => {
                self.missing(at, "the edge has `at_most`, and", "then");
                None
            }
            (None, Some(_)) => {
                self.missing(at, "the edge has `then`, and", "at_most");
                None
            }
        }
    }

    fn finding(&mut self, finding: Keyed<raw::Finding>, at: Span, file: FileId) -> Option<Finding> {
        self.stray(&finding, file);
        let raw::Finding { severity, text } = finding.value;
        if severity.is_none() {
            self.missing(at, "the finding", "severity");
        }
        if text.is_none() {
            self.missing(at, "the finding", "text");
        }
        let (severity, text) = (severity?, text?);
        Some(Finding {
            severity: self.severity(&severity, file)?,
            text: text.value,
        })
    }

    pub(super) fn severity(&mut self, name: &raw::Text, file: FileId) -> Option<Severity> {
        let found = Severity::ALL
            .into_iter()
            .find(|severity| severity.name() == name.value);
        if found.is_none() {
            self.malformed(
                name.span(file),
                format!("`{}` is no severity", name.value),
                "write note, advise, repair or danger",
            );
        }
        found
    }

    /// The step of a name in the same tree.
    pub(super) fn step(&mut self, name: &str, at: Span, within: &Within<'_>) -> Option<Id<Step>> {
        let found = within.steps.find(name);
        if found.is_none() {
            let nearest = self.suggest_of(name, within.steps.iter());
            self.unknown(What::Step, name, at, nearest);
        }
        found.map(|step| Id::new(within.first + step.index()))
    }
}
