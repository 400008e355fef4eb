//! The ways that leave a step, each in its author's words.

use super::lettering::short;
use crate::library::{Answers, Choice, Edge, FieldKind, Id, Kind, Library, Severity, Step};
use crate::source::Safe;

/// A way from a step to another.
pub(super) struct Way {
    /// Where it leads.
    pub go: Id<Step>,
    pub manner: Manner,
    /// The answer that takes it.
    pub answer: Safe,
    /// What the answer means.
    pub means: Option<Safe>,
    /// How often it may be taken, and where it leads after that.
    pub limit: Option<(u32, Id<Step>)>,
    /// What it puts on the job report.
    pub finding: Option<(Severity, Safe)>,
}

/// What kind of way it is: each has a line of its own kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Manner {
    /// An answer takes it.
    Answer,
    /// It is taken where there is no answer.
    Doubt,
    /// It is taken once another was taken as often as it may be.
    After,
}

impl Manner {
    /// As the drawing calls it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Answer => "answer",
            Self::Doubt => "doubt",
            Self::After => "after",
        }
    }
}

/// Every way that leaves a step, in the order of [`Step::edges`].
pub(super) fn ways(library: &Library, step: &Step) -> Vec<Way> {
    let mut ways = Ways(Vec::new());
    match &step.kind {
        Kind::Measure { answers, unable, .. } => {
            ways.answers(answers, &[], "whatever it is");
            ways.doubt(unable, "cannot be measured");
        }
        Kind::Observe {
            sign,
            answers,
            unsure,
            unable,
            ..
        } => {
            ways.answers(answers, &library.signs[*sign].values, "whatever it is");
            ways.doubt(unsure, "cannot tell");
            ways.doubt(unable, "cannot be seen");
        }
        Kind::Plate {
            field,
            answers,
            unable,
        } => {
            let choices: &[Choice] = match &library.plate[*field].kind {
                FieldKind::Choices(choices) => choices,
                FieldKind::Number { .. } => &[],
            };
            ways.answers(answers, choices, "whatever it says");
            ways.doubt(unable, "cannot be read");
        }
        Kind::Do { go, .. } => ways.push(go, Manner::Answer, "done"),
        Kind::Visit {
            tree,
            returns,
            on_verdict,
        } => {
            let outcomes = &library.trees[*tree].outcomes;
            for (outcome, edge) in returns {
                let name = outcomes.get(*outcome).map_or("", |outcome| &outcome.name);
                ways.push(
                    edge,
                    Manner::Answer,
                    &format!("comes back: {}", name.replace('_', " ")),
                );
            }
            if let Some(edge) = on_verdict {
                ways.push(edge, Manner::Answer, "a verdict inside is noted");
            }
        }
        Kind::Unresolved { edges, .. } => {
            for edge in edges {
                ways.push(edge, Manner::Answer, "not known when");
            }
        }
        Kind::Verdict { .. } | Kind::Return { .. } => {}
    }
    ways.0
}

struct Ways(Vec<Way>);

impl Ways {
    fn answers(&mut self, answers: &Answers, choices: &[Choice], whatever: &str) {
        match answers {
            Answers::Go(edge) => self.push(edge, Manner::Answer, whatever),
            Answers::Bands(bands) => {
                for band in bands {
                    self.push(&band.edge, Manner::Answer, &band.text);
                }
            }
            Answers::Choices(answers) => {
                for answer in answers {
                    let text = choices.get(answer.value).map_or("", |choice| &choice.text);
                    self.push(&answer.edge, Manner::Answer, text);
                }
            }
        }
    }

    fn doubt(&mut self, edge: &Option<Edge>, words: &str) {
        if let Some(edge) = edge {
            self.push(edge, Manner::Doubt, words);
        }
    }

    fn push(&mut self, edge: &Edge, manner: Manner, answer: &str) {
        let (mut edge, mut manner, mut answer) = (edge, manner, answer.to_owned());
        loop {
            let limit = edge.limit.as_ref();
            self.0.push(Way {
                go: edge.go,
                manner,
                answer: short(&answer),
                means: edge.means.as_deref().map(short),
                limit: limit.map(|limit| (limit.at_most, limit.then.go)),
                finding: (edge.finding.as_ref()).map(|finding| (finding.severity, short(&finding.text))),
            });
            let Some(limit) = limit else { break };
            edge = &limit.then;
            manner = Manner::After;
            answer = format!("{answer}, after {}", times(limit.at_most));
        }
    }
}

/// A count in words.
pub(super) fn times(count: u32) -> String {
    match count {
        1 => "1 time".to_owned(),
        count => format!("{count} times"),
    }
}
