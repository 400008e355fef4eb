//! A quantity of another kind than its place has.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::ProblemKind;

rule! {
    /// A band, an accuracy, an argument of a formula or a line of a proof is of another dimension than what it is compared
    /// with.
    ///
    /// Volts say nothing about microamperes. A number that is compared across the two would send every call one way.
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
    ///       below 1 V: weak
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
    UNIT_MISMATCH, "unit-mismatch", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for problem in subject.problems {
        if let ProblemKind::UnitMismatch(misread) = &problem.kind {
            findings.add(problem.span, &misread.message, &misread.help);
        }
    }
}
