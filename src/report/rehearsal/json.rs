//! What came of the scenarios, as JSON.

use serde::Serialize;

use super::explained::{Explained, Way, Why};
use super::idle_words;
use crate::library::{Id, Library, Scenario};
use crate::source::{Place, safe};
use crate::walk::{Departure, Rehearsal, Run, Suggestion, Tally as Walked};

#[derive(Serialize)]
struct Rehearsed {
    library: String,
    scenarios: usize,
    as_expected: usize,
    failed: usize,
    failures: Vec<Failure>,
    notes: Vec<Note>,
    coverage: Coverage,
}

#[derive(Serialize)]
struct Failure {
    scenario: String,
    title: String,
    tree: String,
    file: String,
    line: usize,
    column: usize,
    expected: String,
    happened: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    left: Option<Left>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    lacks: Vec<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    add: Vec<Answer>,
    walk: Vec<Step>,
}

#[derive(Serialize)]
struct Left {
    step: String,
    file: String,
    line: usize,
    answered: String,
    keeping: Vec<Taken>,
}

#[derive(Serialize)]
struct Taken {
    answer: String,
    go: String,
    file: String,
    line: usize,
}

#[derive(Serialize)]
struct Answer {
    under: &'static str,
    name: String,
    value: String,
}

#[derive(Serialize)]
struct Step {
    step: String,
    file: String,
    line: usize,
    answered: String,
    took: Option<String>,
    go: Option<String>,
}

#[derive(Serialize)]
struct Note {
    file: String,
    line: usize,
    column: usize,
    message: String,
}

#[derive(Serialize)]
struct Coverage {
    steps: Tally,
    edges: Tally,
    trees: Vec<Tree>,
}

#[derive(Serialize)]
struct Tally {
    covered: usize,
    total: usize,
}

#[derive(Serialize)]
struct Tree {
    tree: String,
    steps: Tally,
    edges: Tally,
    uncovered_steps: Vec<UncoveredStep>,
    uncovered_edges: Vec<UncoveredEdge>,
}

#[derive(Serialize)]
struct UncoveredStep {
    step: String,
    file: String,
    line: usize,
    reachable: bool,
}

#[derive(Serialize)]
struct UncoveredEdge {
    step: String,
    answer: String,
    go: String,
    file: String,
    line: usize,
    reachable: bool,
}

/// For another program, as JSON. Texts are made safe here as well.
pub fn json(rehearsal: &Rehearsal<'_>) -> String {
    let library = rehearsal.library;
    let failed = rehearsal.failed.len();
    let rehearsed = Rehearsed {
        library: shown(&library.name),
        scenarios: rehearsal.walked,
        as_expected: rehearsal.walked - failed,
        failed,
        failures: (rehearsal.failed.iter())
            .flat_map(|(scenario, run)| failures(library, scenario, run))
            .collect(),
        notes: (rehearsal.idle.iter())
            .map(|idle| {
                let place = library.files.place(idle.at);
                Note {
                    file: shown(&place.file),
                    line: place.line,
                    column: place.column,
                    message: idle_words(library, idle.what),
                }
            })
            .collect(),
        coverage: coverage(rehearsal),
    };
    // Texts and numbers in a struct: there is nothing here that JSON cannot say.
    serde_json::to_string_pretty(&rehearsed).unwrap_or_default() + "\n"
}

fn failures(library: &Library, scenario: &Scenario, run: &Run) -> Vec<Failure> {
    let explained = Explained::of(library, run);
    let rows = explained.rows();
    let failure = |departure: &Departure| {
        let Place { file, line, column } = library.files.place(departure.at);
        let why = explained.why(scenario, run, departure);
        let left = match &why {
            Why::Left(left) => rows.get(left.at).map(|row| Left {
                step: shown(&row.step),
                file: shown(&row.place.file),
                line: row.place.line,
                answered: shown(&row.said),
                keeping: left.keeping.iter().map(taken).collect(),
            }),
            _ => None,
        };
        let (lacks, add) = match why {
            Why::Lacks(lacks, add) => {
                let words = lacks
                    .iter()
                    .map(|lack| shown(&format!("{}: {}", lack.words, lack.why)));
                (words.collect(), add)
            }
            Why::Add(add, _) => (Vec::new(), add.into_iter().collect()),
            _ => (Vec::new(), Vec::new()),
        };
        Failure {
            scenario: shown(&scenario.name),
            title: shown(&scenario.title),
            tree: shown(&library.trees[scenario.tree].name),
            file: shown(&file),
            line,
            column,
            expected: shown(&departure.expected),
            happened: shown(&departure.happened),
            left,
            lacks,
            add: add.iter().map(answer).collect(),
            walk: (rows.iter())
                .map(|row| Step {
                    step: shown(&row.step),
                    file: shown(&row.place.file),
                    line: row.place.line,
                    answered: shown(&row.said),
                    took: row.took.as_ref().map(|took| shown(&took.answer)),
                    go: row.took.as_ref().map(|took| shown(&took.go)),
                })
                .collect(),
        }
    };
    run.departures.iter().map(failure).collect()
}

fn coverage(rehearsal: &Rehearsal<'_>) -> Coverage {
    let library = rehearsal.library;
    let (mut steps, mut edges) = (Walked::default(), Walked::default());
    let trees = (0..library.trees.len()).map(|at| {
        let id = Id::new(at);
        let walked = rehearsal.coverage.of(id);
        steps += walked.steps;
        edges += walked.edges;
        Tree {
            tree: shown(&library.trees[id].name),
            steps: tally(walked.steps),
            edges: tally(walked.edges),
            uncovered_steps: (walked.missed_steps.iter())
                .map(|(step, reachable)| {
                    let step = &library[*step];
                    let place = library.files.place(step.at);
                    UncoveredStep {
                        step: shown(&step.name),
                        file: shown(&place.file),
                        line: place.line,
                        reachable: *reachable,
                    }
                })
                .collect(),
            uncovered_edges: (walked.missed_edges.iter())
                .map(|missed| {
                    let step = &library[missed.step];
                    let place = library.files.place(missed.exit.at());
                    UncoveredEdge {
                        step: shown(&step.name),
                        answer: shown(&missed.exit.words(library, step)),
                        go: shown(&library[missed.exit.edge.go].name),
                        file: shown(&place.file),
                        line: place.line,
                        reachable: missed.reachable,
                    }
                })
                .collect(),
        }
    });
    let trees = trees.collect();
    Coverage {
        steps: tally(steps),
        edges: tally(edges),
        trees,
    }
}

fn tally(walked: Walked) -> Tally {
    Tally {
        covered: walked.covered,
        total: walked.total,
    }
}

fn taken(way: &Way) -> Taken {
    Taken {
        answer: shown(&way.answer),
        go: shown(&way.go),
        file: shown(&way.place.file),
        line: way.place.line,
    }
}

fn answer(suggestion: &Suggestion) -> Answer {
    Answer {
        under: suggestion.under,
        name: shown(&suggestion.name),
        value: shown(&suggestion.value),
    }
}

pub(super) fn shown(text: &str) -> String {
    String::from(safe(text))
}
