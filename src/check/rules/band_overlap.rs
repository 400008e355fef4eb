//! A value that two bands take.

use super::band_gap::{UNDECIDED, order_help};
use crate::check::bands::{Overlap, Question, Undecided, overlaps};
use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;

rule! {
    /// A value lies in two bands of a step, on some rating plate at least.
    ///
    /// Which way the call went would depend on the order in which the bands are written, and nobody would see it.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: current
    /// steps:
    ///   current:
    ///     measure: flame_current
    ///     source: common_practice
    ///     bands:
    ///       at most 1 uA: weak
    ///       at least 1 uA: done
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The signal is weak.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: current
    /// steps:
    ///   current:
    ///     measure: flame_current
    ///     source: common_practice
    ///     bands:
    ///       below 1 uA: weak
    ///       at least 1 uA: done
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The signal is weak.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    BAND_OVERLAP, "band-overlap", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let library = subject.library;
    for step in subject.doubtful_bands().iter().map(|step| &library[*step]) {
        let Some(question) = Question::of(library, step) else {
            continue;
        };
        if question.leans_on_several_fields() && !subject.knows_order() {
            continue;
        }
        match overlaps(question) {
            Ok(overlaps) => {
                for overlap in overlaps {
                    report(question, &overlap, findings);
                }
            }
            Err(Undecided) => {
                let at = step.answers_at.unwrap_or(step.at);
                findings.add(
                    at,
                    "whether two of these bands take one value cannot be decided",
                    UNDECIDED,
                );
            }
        }
    }
}

fn report(question: Question<'_>, overlap: &Overlap, findings: &mut Findings) {
    let (first, second) = (&question.bands[overlap.first], &question.bands[overlap.second]);
    let help = order_help(question).unwrap_or_else(|| {
        let help = if overlap.touching {
            "they meet there: write `below` or `above` in one of the two"
        } else {
            "narrow one of the two: each value must lead one way"
        };
        help.to_owned()
    });
    let Overlap { witness, .. } = overlap;
    let (value, plate) = (witness.value(question.scale), witness.plate(question.library));
    findings.add(
        second.at,
        format!("`{}` and `{}` both take {value}{plate}", first.text, second.text),
        help,
    );
}
