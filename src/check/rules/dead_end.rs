//! A step from which a call cannot end.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::graph::Graph;
use crate::library::{Id, Kind, Step, return_edge};

rule! {
    /// No verdict and no return can be reached from this step.
    ///
    /// Whatever the technician answers, the call goes on until they give up.
    ///
    /// A dead end that leads anywhere at all leads round in a circle, so `endless-loop` mostly stands beside it: there, bounding
    /// the circle is not enough, for there is still no way out.
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
    ///     go: wait
    ///   wait:
    ///     do: Let it run for a minute.
    ///     go: clean
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
    ///     choices: { steady: done, lazy: clean }
    ///   clean:
    ///     do: Clean the rod with a fine abrasive.
    ///     go: wait
    ///   wait:
    ///     do: Let it run for a minute.
    ///     go: dirty
    ///   dirty:
    ///     verdict: rod_dirty
    ///     because: The flame is lazy.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is steady.
    /// ```
    DEAD_END, "dead-end", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let (library, graph) = (subject.library, subject.graph());
    let steps = || {
        library
            .steps
            .iter()
            .enumerate()
            .map(|(index, step)| (Id::new(index), step))
    };
    let ends = steps()
        .filter(|(_, step)| may_end(subject, graph, step))
        .map(|(id, _)| id);
    let leads_out = graph.leading_to(ends);
    for (id, step) in steps() {
        if !leads_out[id.index()] {
            findings.add(
                step.at,
                format!("no verdict and no return can be reached from `{}`", step.name),
                "lead one of the answers on the way to a verdict or a return",
            );
        }
    }
}

/// Whether a walk may end, or leave its tree, at a step; what is not known is not held against it.
fn may_end(subject: &Subject<'_>, graph: &Graph, step: &Step) -> bool {
    match &step.kind {
        Kind::Verdict { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => true,
        Kind::Visit {
            tree,
            returns,
            on_verdict,
        } => {
            let ends = graph.ends(*tree);
            let mapped = |outcome| return_edge(returns, outcome).is_some();
            let mut outcomes = 0..subject.library.trees[*tree].outcomes.len();
            ends.shut_down
                || (ends.verdict && on_verdict.is_none())
                // Where it goes is another rule's question.
                || outcomes.any(|outcome| ends.can_return(outcome) && !mapped(outcome))
        }
        Kind::Measure { .. } | Kind::Observe { .. } | Kind::Do { .. } | Kind::Plate { .. } => false,
    }
}
