//! A visit that does not say where an outcome goes.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::words::{list, quoted};
use crate::library::Kind;

rule! {
    /// A visit does not say where one of the visited tree's outcomes leads.
    ///
    /// The visit would come back, and the call would have nowhere to go.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: flame
    /// steps:
    ///   flame:
    ///     visit: flame-check
    ///     returns: { flame_holds: done }
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame holds.
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: flame
    /// steps:
    ///   flame:
    ///     visit: flame-check
    ///     returns: { flame_holds: done, flame_drops: weak }
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The flame drops out.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame holds.
    /// ```
    UNMAPPED_OUTCOME, "unmapped-outcome", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for step in &subject.library.steps {
        let Kind::Visit { tree, returns, .. } = &step.kind else {
            continue;
        };
        let tree = &subject.library.trees[*tree];
        let mut mapped = vec![false; tree.outcomes.len()];
        for &(outcome, _) in returns {
            mapped[outcome] = true;
        }
        let missing = tree.outcomes.iter().zip(mapped).filter(|(_, mapped)| !mapped);
        let missing: Vec<String> = missing.map(|(outcome, _)| quoted(&outcome.name)).collect();
        if !missing.is_empty() {
            findings.add(
                step.answers_at.unwrap_or(step.at),
                format!(
                    "the visit does not say where {} of `{}` leads",
                    list(&missing, "or"),
                    tree.name
                ),
                "add each outcome to `returns` with the step it leads to",
            );
        }
    }
}
