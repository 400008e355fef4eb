//! An approval that does not say of what.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::Status;

rule! {
    /// An approved tree of a library that is to be released has no `edition`, or no `changed` that says what changed last.
    ///
    /// Somebody stood up for one text of the tree. Without an edition nobody can tell whether the text at hand is that one,
    /// and without a note on the change the next reviewer reads it all again, or none of it. This is looked for only with
    /// `proofwalk check --release`.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// status: approved
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
    /// status: approved
    /// edition: 2
    /// changed: The flame is looked at before anything is measured.
    /// complaint: It does not heat
    /// start: done
    /// steps:
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    MISSING_EDITION, "missing-edition", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let lacks = |text: &Option<String>| text.as_deref().is_none_or(|text| text.trim().is_empty());
    let trees = subject.library.trees.iter().map(|(_, tree)| tree);
    for tree in trees.filter(|tree| tree.status == Status::Approved) {
        let missing = match (lacks(&tree.edition), lacks(&tree.changed)) {
            (false, false) => continue,
            (true, false) => "an edition",
            (false, true) => "a note of what changed",
            (true, true) => "an edition and a note of what changed",
        };
        findings.add(
            tree.status_at,
            format!("the tree `{}` is approved without {missing}", tree.name),
            "add `edition: …` and `changed: …`, as they were when it was approved",
        );
    }
}
