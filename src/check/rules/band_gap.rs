//! A value that no band takes.

use crate::check::bands::{Question, Undecided, gaps, order_that_mends};
use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::words::list;
use crate::library::{Id, Library, PlateField};

rule! {
    /// A value lies in none of a step's bands, on some rating plate at least.
    ///
    /// The technician reads it off the meter, and the tree has no answer. There is no "otherwise": the author of the tree
    /// decides about every value. Where bands lean on the rating plate, the message names a plate that shows the gap; what
    /// holds on every plate is said under `order:` in `registry/plate.yaml`.
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
    ///       below 1 uA: weak
    ///       above 1 uA: done
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
    BAND_GAP, "band-gap", Error, needs Shape, look
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
        let at = step.answers_at.unwrap_or(step.at);
        if question.bands.is_empty() {
            findings.add(
                at,
                "no band takes any value",
                "write a band for each range of values, with the step it leads to",
            );
            continue;
        }
        let gaps = match gaps(question) {
            Ok(gaps) => gaps,
            Err(Undecided) => {
                findings.add(
                    at,
                    "whether these bands take every value cannot be decided",
                    UNDECIDED,
                );
                continue;
            }
        };
        let Some(first) = gaps.first() else {
            continue;
        };
        let values: Vec<String> = gaps.iter().map(|gap| gap.value(question.scale)).collect();
        let help = order_help(question).unwrap_or_else(|| {
            "add a band, or widen one beside it: together the bands must take every value".to_owned()
        });
        findings.add(
            at,
            format!("no band takes {}{}", list(&values, "or"), first.plate(library)),
            help,
        );
    }
}

/// What to do about bands that are beyond deciding.
pub(super) const UNDECIDED: &str = "lean on fewer plate fields in one step: ask for the value in two steps";

/// The order to state, where it would mend the bands of a question.
pub(super) fn order_help(question: Question<'_>) -> Option<String> {
    let order = order_that_mends(question)?;
    Some(format!(
        "if it is so on every plate, add [{}] to `order:` in registry/plate.yaml: then these bands are right",
        names(question.library, &order)
    ))
}

fn names(library: &Library, fields: &[Id<PlateField>]) -> String {
    let names: Vec<&str> = fields
        .iter()
        .map(|&field| library.plate[field].name.as_str())
        .collect();
    names.join(", ")
}
