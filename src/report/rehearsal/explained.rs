//! A walk that departed, in words: its steps, where it left the expected way, and what would have kept it there.

use crate::library::{By, ClaimKind, EdgeId, Fault, Id, Kind, Library, Scenario, Step};
use crate::measure::Band;
use crate::source::{Place, Span};
use crate::walk::{
    Departure, Doubt, Goal, Holding, Passed, Run, Said, Suggestion, answer_in, line_words, parting, passed,
    proof_lines, suggestion, takeable,
};

/// One step of the walk.
pub(super) struct Row {
    /// The step with its tree.
    pub step: String,
    pub place: Place,
    /// What was asked and answered there.
    pub said: String,
    /// The band, choice or other answer that was taken, and where it led.
    pub took: Option<Way>,
}

/// A way out of a step.
pub(super) struct Way {
    pub answer: String,
    pub go: String,
    pub place: Place,
}

/// Where the walk left the way to what was expected.
pub(super) struct Left {
    /// The step, by its position in the walk.
    pub at: usize,
    pub keeping: Vec<Way>,
}

/// A line of a proof that does not hold.
pub(super) struct Lack {
    pub words: String,
    pub why: &'static str,
    pub place: Place,
}

/// Why one expectation was not met.
pub(super) enum Why {
    /// A question left the way.
    Left(Left),
    /// No answer leads there; these steps would have.
    NoWay(Vec<String>),
    /// The walk came to the verdict, and it was not proven.
    Lacks(Vec<Lack>, Vec<Suggestion>),
    /// A question has no answer: what to add, and where each answer leads.
    Add(Option<Suggestion>, Vec<Way>),
    /// What stands on the job report: severity, words, where it comes from.
    Findings(Vec<(&'static str, String, Option<Place>)>),
    /// An end without a verdict was expected, and the walk came to one.
    Decided,
    /// There is no more to say.
    Plain,
}

/// A walk in words.
pub(super) struct Explained<'l> {
    library: &'l Library,
    passed: Vec<Passed>,
}

impl<'l> Explained<'l> {
    pub fn of(library: &'l Library, run: &Run) -> Self {
        // The events came from this library a moment ago, so they fit it.
        let passed = passed(library, &run.events).unwrap_or_default();
        Self { library, passed }
    }

    pub fn rows(&self) -> Vec<Row> {
        (self.passed.iter())
            .map(|at| {
                let step = &self.library[at.step];
                Row {
                    step: self.library.path_of(at.step),
                    place: self.library.files.place(step.at),
                    said: said(self.library, at),
                    took: at.by.and_then(|edge| way(self.library, at.step, edge)),
                }
            })
            .collect()
    }

    pub fn why(&self, scenario: &Scenario, run: &Run, departure: &Departure) -> Why {
        let library = self.library;
        if let Some(leaf) = departure.unanswered {
            let Some(at) = self.passed.last() else {
                return Why::Plain;
            };
            let step = &library[at.step];
            let ways = step.exits().into_iter().filter(|exit| exit.after == 0);
            let asks_own = own_name(library, step) == Some(library.name_of(leaf));
            let ways = match asks_own {
                true => ways
                    .filter_map(|exit| way(library, at.step, exit.edge.id))
                    .collect(),
                false => Vec::new(),
            };
            return Why::Add(suggestion(library, scenario, &run.state.moment, leaf), ways);
        }
        match departure.goal {
            Some(Goal::Verdict(fault)) if run.state.withheld.last() == Some(&fault) => self.lacks(run, fault),
            Some(goal) => match parting(library, &self.passed, goal) {
                Some(parting) => Why::Left(Left {
                    at: parting.at,
                    keeping: self.ways(parting.at, &parting.keeping),
                }),
                None => Why::NoWay(leading(library, goal)),
            },
            None => {
                let expect = &scenario.expect;
                let is_about = |at: Option<Span>| at == Some(departure.at);
                if is_about(expect.findings.as_ref().map(|findings| findings.at)) {
                    Why::Findings(noted(library, run))
                } else if is_about(expect.end.as_ref().map(|end| end.at)) {
                    Why::Decided
                } else {
                    Why::Plain
                }
            }
        }
    }

    fn ways(&self, at: usize, edges: &[EdgeId]) -> Vec<Way> {
        let step = self.passed[at].step;
        edges
            .iter()
            .filter_map(|edge| way(self.library, step, *edge))
            .collect()
    }

    fn lacks(&self, run: &Run, fault: Id<Fault>) -> Why {
        let library = self.library;
        let mut lacks = Vec::new();
        let mut add = Vec::new();
        for (line, holding) in proof_lines(library, &run.state, fault) {
            let why = match holding {
                Holding::Holds => continue,
                Holding::Missing => "not taken",
                Holding::Borderline => "borderline, which proves nothing",
                Holding::Contradicted => "not so",
            };
            lacks.push(Lack {
                words: line_words(library, line),
                why,
                place: library.files.place(line.at),
            });
            if holding == Holding::Missing {
                let claims = line.alternatives.first().into_iter().flatten();
                let takeable = takeable(&run.state, line);
                for claim in claims.filter(|claim| takeable.contains(&claim.datum())) {
                    let band: Option<&Band<_>> = match &claim.what {
                        ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => Some(band),
                        _ => None,
                    };
                    let choice = match &claim.what {
                        ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values) => {
                            values.first().copied()
                        }
                        _ => None,
                    };
                    add.extend(answer_in(library, &run.state.moment, claim.datum(), band, choice));
                }
            }
        }
        Why::Lacks(lacks, add)
    }
}

fn noted(library: &Library, run: &Run) -> Vec<(&'static str, String, Option<Place>)> {
    let findings = run.state.moment.findings.iter();
    findings
        .map(|(edge, finding)| {
            let at = (library.steps.iter())
                .flat_map(Step::exits)
                .find(|exit| exit.edge.id == *edge)
                .map(|exit| library.files.place(exit.at()));
            (finding.severity.name(), finding.text.clone(), at)
        })
        .collect()
}

/// The steps that lead to a goal, wherever they stand.
fn leading(library: &Library, goal: Goal) -> Vec<String> {
    let steps = library.steps.iter().enumerate();
    steps
        .filter(|(_, step)| goal.is_met_by(library, step))
        .map(|(at, _)| library.path_of(Id::new(at)))
        .collect()
}

fn own_name<'l>(library: &'l Library, step: &Step) -> Option<&'l str> {
    match step.kind {
        Kind::Measure { reading, .. } => Some(&library.readings[reading].name),
        Kind::Observe { sign, .. } => Some(&library.signs[sign].name),
        Kind::Plate { field, .. } => Some(&library.plate[field].name),
        _ => None,
    }
}

fn way(library: &Library, step: Id<Step>, edge: EdgeId) -> Option<Way> {
    let step = &library[step];
    let exit = step.exits().into_iter().find(|exit| exit.edge.id == edge)?;
    let words = exit.words(library, step);
    Some(Way {
        answer: match exit.by {
            By::Outcome(_) => format!("returned {words}"),
            _ => words,
        },
        go: library[exit.edge.go].name.clone(),
        place: library.files.place(exit.at()),
    })
}

/// What was asked at a step and answered, or what stood from before.
fn said(library: &Library, at: &Passed) -> String {
    let step = &library[at.step];
    let words = at.said.iter().map(|said| match said {
        Said::Value {
            datum,
            value,
            worked_out,
        } => {
            let how = if *worked_out { " (worked out)" } else { "" };
            format!("{}: {value}{how}", library.name_of(*datum))
        }
        Said::Again { datum, value, why } => {
            let why = match why {
                Doubt::Borderline => "borderline",
                Doubt::Implausible => "implausible",
            };
            format!("{}: {value} ({why}, asked again)", library.name_of(*datum))
        }
        Said::Unable(datum) => format!("{}: cannot be taken", library.name_of(*datum)),
        Said::Unsure(datum) => format!("{}: not sure", library.name_of(*datum)),
    });
    let mut words: Vec<String> = words.collect();
    if words.is_empty()
        && let Some(name) = own_name(library, step)
        && let Some(standing) = library.datum(name).and_then(|datum| at.before.values.get(&datum))
    {
        words.push(format!("{name}: {} (stands from before)", standing.typed));
    }
    if words.is_empty() {
        words.push(match &step.kind {
            Kind::Do { .. } => "done".to_owned(),
            Kind::Verdict { fault, .. } => {
                let stated = if at.stated.is_some() {
                    "proven"
                } else {
                    "not proven"
                };
                format!("verdict {}, {stated}", library.faults[*fault].name)
            }
            Kind::Visit { tree, .. } => format!("visit {}", library.trees[*tree].name),
            Kind::Return { .. } => "return".to_owned(),
            _ => match own_name(library, step) {
                Some(name) => format!("{name}: no answer"),
                None => String::new(),
            },
        });
    }
    words.join("; ")
}
