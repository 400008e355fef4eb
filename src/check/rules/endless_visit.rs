//! Trees that visit one another in a circle.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::words::circle;

rule! {
    /// Trees visit one another in a circle, or a tree visits itself.
    ///
    /// A walk could enter them for ever without finishing one, and nobody could say what is still to come.
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
    ///     choices: { steady: done, lazy: again }
    ///   again:
    ///     visit: no-heat
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
    ///     choices: { steady: done, lazy: dirty }
    ///   dirty:
    ///     verdict: rod_dirty
    ///     because: The flame is lazy.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is steady.
    /// ```
    ENDLESS_VISIT, "endless-visit", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let library = subject.library;
    for visits in subject.graph().endless_visits() {
        let trees = visits
            .iter()
            .map(|&visit| library.trees[library[visit].tree].name.clone());
        let trees: Vec<String> = trees.collect();
        if let Some(&first) = visits.first() {
            findings.add_shown(
                library[first].at,
                format!("trees visit one another in a circle: {}", circle(&trees)),
                "move the steps that both need into a tree that visits neither",
                subject.step_names(&visits),
            );
        }
    }
}
