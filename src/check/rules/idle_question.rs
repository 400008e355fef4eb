//! A question whose answer decides nothing.

use crate::check::bands::{Question, gaps};
use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::{Answers, Edge, FieldKind, Id, Kind, Step, What};

rule! {
    /// Every answer to this question leads to the same step, and none notes a finding.
    ///
    /// The technician opens the furnace, takes a reading, and the walk goes on as if they had not: it costs minutes, and it
    /// teaches that answers do not matter. Most often one of the answers was meant to lead elsewhere. Where the value is only
    /// wanted for the record, say so with `go` in place of `bands` or `choices`.
    ///
    /// What follows when it cannot be taken (`unable`, `unsure`) is no answer.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: shape
    /// steps:
    ///   shape:
    ///     observe: flame_shape
    ///     choices: { steady: done, lazy: done }
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is there.
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: shape
    /// steps:
    ///   shape:
    ///     observe: flame_shape
    ///     choices:
    ///       steady: done
    ///       lazy: { go: done, finding: { severity: advise, text: The flame is lazy } }
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is there.
    /// ```
    IDLE_QUESTION, "idle-question", Warning, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for step in &subject.library.steps {
        let Some(target) = only_target(step) else {
            continue;
        };
        let target = &subject.library[target];
        // What is missing, or was left out, may be the answer that leads elsewhere.
        if has_gap(subject, step) || subject.is_doubled(What::Step, &target.name, target.at.file) {
            continue;
        }
        findings.add(
            step.at,
            format!("every answer to `{}` leads to `{}`", step.name, target.name),
            help(step, &target.name),
        );
    }
}

/// The one step that every answer of a question leads to, where that is so and no answer notes anything.
fn only_target(step: &Step) -> Option<Id<Step>> {
    let answers = answers(step)?;
    if matches!(answers, Answers::Go(_)) || answers.edges().count() < 2 {
        return None;
    }
    let mut edges = answers.edges().flat_map(Edge::chain);
    let first = edges.next().filter(|edge| edge.finding.is_none())?.go;
    edges
        .all(|edge| edge.go == first && edge.finding.is_none())
        .then_some(first)
}

fn answers(step: &Step) -> Option<&Answers> {
    match &step.kind {
        Kind::Measure { answers, .. } | Kind::Observe { answers, .. } | Kind::Plate { answers, .. } => {
            Some(answers)
        }
        _ => None,
    }
}

fn has_gap(subject: &Subject<'_>, step: &Step) -> bool {
    let library = subject.library;
    if let Some(question) = Question::of(library, step) {
        return gaps(question).map_or(true, |gaps| !gaps.is_empty());
    }
    let values = match &step.kind {
        Kind::Observe { sign, .. } => library.signs[*sign].values.len(),
        Kind::Plate { field, .. } => match &library.plate[*field].kind {
            FieldKind::Choices(values) => values.len(),
            FieldKind::Number { .. } => 0,
        },
        _ => 0,
    };
    answers(step).is_some_and(|answers| answers.edges().count() < values)
}

fn help(step: &Step, target: &str) -> String {
    match step.kind {
        // A plate is never read for the record alone: it is read where it is needed.
        Kind::Plate { .. } => {
            "lead one of them elsewhere, note a finding on one, or take the step out".to_owned()
        }
        _ => format!(
            "lead one of them elsewhere, note a finding on one, or write `go: {target}` to record it only"
        ),
    }
}
