//! A circle that nothing bounds.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::words::circle;

rule! {
    /// Steps lead back to themselves, and no edge on the way round is bounded.
    ///
    /// Every walk must end. A technician who cleans a sensor and measures again may do so once or twice; then the tree must
    /// have something else to say. `at_most` bounds an edge, and `then` says where it leads after that.
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
    ///     choices: { steady: done, lazy: clean }
    ///   clean:
    ///     do: Clean the rod with a fine abrasive.
    ///     voids: [flame_shape]
    ///     go: shape
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
    ///     choices:
    ///       steady: done
    ///       lazy: { go: clean, at_most: 1, then: dirty }
    ///   clean:
    ///     do: Clean the rod with a fine abrasive.
    ///     voids: [flame_shape]
    ///     go: shape
    ///   dirty:
    ///     verdict: rod_dirty
    ///     because: The flame is lazy after cleaning.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is steady.
    /// ```
    ENDLESS_LOOP, "endless-loop", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for steps in subject.graph().endless_loops() {
        let names = subject.step_names(&steps);
        if let Some(&first) = steps.first() {
            findings.add_shown(
                subject.library[first].at,
                format!("nothing bounds the circle {}", circle(&names)),
                "give an edge of the circle `at_most`, and with `then` a way out of it",
                names,
            );
        }
    }
}
