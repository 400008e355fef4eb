//! A value that no choice takes.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::words::{list, quoted};
use crate::library::{Answers, Choice, FieldKind, Kind, Step};

rule! {
    /// A question leaves out a value of its sign or plate field.
    ///
    /// The technician sees what the tree has no answer for, and stands there.
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
    ///     choices: { steady: done }
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is steady.
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
    ///     choices: { steady: done, lazy: air }
    ///   air:
    ///     verdict: rod_dirty
    ///     because: The flame is lazy.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is steady.
    /// ```
    CHOICE_GAP, "choice-gap", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for step in &subject.library.steps {
        let Some((values, Answers::Choices(choices))) = question(subject, step) else {
            continue;
        };
        let mut taken = vec![false; values.len()];
        for choice in choices {
            taken[choice.value] = true;
        }
        let missing = values.iter().zip(taken).filter(|(_, taken)| !taken);
        let missing: Vec<String> = missing.map(|(value, _)| quoted(&value.name)).collect();
        if !missing.is_empty() {
            findings.add(
                step.answers_at.unwrap_or(step.at),
                format!("no choice takes {}", list(&missing, "or")),
                "say where each value leads; several may lead to one step",
            );
        }
    }
}

/// The values that a step's question can be answered with, and where they lead.
fn question<'a>(subject: &'a Subject<'_>, step: &'a Step) -> Option<(&'a [Choice], &'a Answers)> {
    match &step.kind {
        Kind::Observe { sign, answers, .. } => Some((&subject.library.signs[*sign].values, answers)),
        Kind::Plate { field, answers, .. } => match &subject.library.plate[*field].kind {
            FieldKind::Choices(values) => Some((values, answers)),
            FieldKind::Number { .. } => None,
        },
        _ => None,
    }
}
