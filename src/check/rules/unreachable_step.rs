//! A step that no way leads to.

use std::cell::LazyCell;
use std::collections::HashSet;

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::{Id, Library, ProblemKind, Step, What};
use crate::source::FileId;

rule! {
    /// No way leads to this step, or to the tree that starts with it.
    ///
    /// A call starts at a tree with a complaint, at the gate, at a danger, or at the tree after work. What none of those leads to is never asked: most
    /// often an answer leads past it by mistake. Where nothing leads to a whole tree, its first step stands for all of them.
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
    ///     choices: { steady: done, lazy: weak }
    ///   clean:
    ///     do: Clean the rod with a fine abrasive.
    ///     go: weak
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The flame is lazy.
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
    ///     go: weak
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The flame is lazy.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is steady.
    /// ```
    UNREACHABLE_STEP, "unreachable-step", Warning, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let (library, graph) = (subject.library, subject.graph());
    // Most libraries have no such step.
    let before = LazyCell::new(|| first_before(library));
    let halved = files_with_a_step_left_out(subject);
    // A tree that is named and not there may be any; so may what a step that was left out visits.
    let any_may_be_entered = !halved.is_empty() || subject.misses(What::Tree);
    for (id, tree) in library.trees.iter() {
        if !any_may_be_entered && !graph.is_entered(id) {
            if subject.is_overlaid(tree.at) {
                continue;
            }
            if let Some(start) = tree.start {
                let tree = &tree.name;
                findings.add(
                    library[start].at,
                    format!("no way leads to the tree `{tree}`, which starts here"),
                    "visit it from a tree that a call comes to, give it a `complaint`, or take it out",
                );
            }
            continue;
        }
        if halved.contains(&tree.at.file) {
            continue;
        }
        for id in tree.steps.clone().map(Id::new) {
            if !graph.is_reached_from_start(id) {
                let step = &library[id];
                findings.add(
                    step.at,
                    format!("no way leads to the step `{}`", step.name),
                    help(subject, before[id.index()]),
                );
            }
        }
    }
}

/// Files in which a second step of one name was left out, with all that it leads to.
fn files_with_a_step_left_out(subject: &Subject<'_>) -> HashSet<FileId> {
    let left_out = subject.problems.iter().filter(|problem| {
        matches!(
            problem.kind,
            ProblemKind::DuplicateName {
                what: What::Step,
                look_alike: None,
                ..
            }
        )
    });
    left_out.map(|problem| problem.span.file).collect()
}

/// For each step, the first other step that has an edge to it.
fn first_before(library: &Library) -> Vec<Option<Id<Step>>> {
    let mut before = vec![None; library.steps.len()];
    for (index, step) in library.steps.iter().enumerate() {
        let to_others = step.edges().filter(|edge| edge.go.index() != index);
        to_others.for_each(|edge| _ = before[edge.go.index()].get_or_insert(Id::new(index)));
    }
    before
}

/// How to mend it: where steps do lead here, it is they that nothing leads to, or a visit that never ends so.
fn help(subject: &Subject<'_>, before: Option<Id<Step>>) -> String {
    let Some(before) = before else {
        return "lead an answer here, or take the step out".to_owned();
    };
    let name = &subject.library[before].name;
    if subject.graph().is_reached_from_start(before) {
        format!("the tree that `{name}` visits never ends so: let it, or take the step out")
    } else {
        format!("it only follows `{name}`: lead an answer to that one")
    }
}
