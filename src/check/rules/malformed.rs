//! A file that cannot be read as the format.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::ProblemKind;

rule! {
    /// A file is not readable as this format: broken YAML, a key that the format does not have or that is missing, a value of
    /// another type, a name that is none, or something beyond a limit.
    ///
    /// A tree that is half read asks half its questions. So no call is walked from such a library, and of the other rules only
    /// `duplicate-name` and `unsafe-text` have their say until it is mended: the rest would report what the missing lines
    /// would have put right.
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
    ///     wy: A weak signal closes the valve on a good flame.
    ///     go: done
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
    ///     why: A weak signal closes the valve on a good flame.
    ///     go: done
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    MALFORMED, "malformed", Error, needs Text, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for problem in subject.problems {
        if let ProblemKind::Malformed { message, help } = &problem.kind {
            findings.add(problem.span, message, help);
        }
    }
}
