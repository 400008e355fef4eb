//! A tree that is still being written, in a library that is to be released.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::Status;

rule! {
    /// A tree of a library that is to be released is still a draft: its `status` says so, or it has none.
    ///
    /// A draft is half of what its author has in mind, and a technician who is sent by it cannot know which half. So this is
    /// looked for only with `proofwalk check --release`; while a tree is written, it may be a draft.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// status: draft
    /// complaint: It does not heat
    /// start: done
    /// steps:
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
    /// status: field-trial
    /// complaint: It does not heat
    /// start: done
    /// steps:
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    DRAFT_TREE, "draft-tree", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for (_, tree) in subject.library.trees.iter() {
        if tree.status == Status::Draft {
            findings.add(
                tree.status_at,
                format!("the tree `{}` is a draft", tree.name),
                "finish it and write `status: field-trial` or `status: approved`, or leave it out of the release",
            );
        }
    }
}
