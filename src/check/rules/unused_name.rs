//! A name that is registered and that nothing refers to.

use crate::check::doubt::Doubts;
use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::uses::{Used, Uses};
use crate::library::{Kind, Library, Table, Tree, What};

rule! {
    /// A reading, sign, part, fault, put-back, caution, source, plate field or outcome is registered, and nothing refers to it.
    ///
    /// Most often a tree was meant to ask for it, or to end in it, and does something else. A caution that no step shows warns
    /// nobody; a part that no fault replaces has a proof that nobody will ever be asked for. What only a worked call names is not
    /// used; what only an unreachable step names is. An outcome is used where a step of its tree returns it.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # registry/cautions.yaml
    /// cautions:
    ///   qualified_person: { text: Work for a qualified person, source: common_practice }
    ///   hot_surface: { text: Burners and tubes stay hot, source: common_practice }
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # registry/cautions.yaml
    /// cautions:
    ///   qualified_person: { text: Work for a qualified person, source: common_practice }
    ///   hot_surface: { text: Burners and tubes stay hot, source: common_practice }
    /// # registry/signs.yaml
    /// signs:
    ///   flame_shape:
    ///     ask: How does the flame look?
    ///     cautions: [hot_surface]
    ///     values: { steady: Steady, lazy: Lazy }
    /// ```
    UNUSED_NAME, "unused-name", Warning, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let (library, uses) = (subject.library, Uses::of(subject.library));
    let doubts = Doubts::of(subject);
    let mut registry = Registry {
        subject,
        doubts,
        findings,
    };
    registry.unused(What::PlateField, &library.plate, &uses.fields);
    registry.unused(What::Reading, &library.readings, &uses.readings);
    registry.unused(What::Sign, &library.signs, &uses.signs);
    registry.unused(What::Part, &library.parts, &uses.parts);
    registry.unused(What::Fault, &library.faults, &uses.faults);
    registry.unused(What::Restore, &library.restores, &uses.restores);
    registry.unused(What::Caution, &library.cautions, &uses.cautions);
    registry.unused(What::Source, &library.sources, &uses.sources);
    for (_, tree) in library.trees.iter() {
        if !registry.doubts.stand_in(tree.at.file) {
            outcomes(library, tree, registry.findings);
        }
    }
}

struct Registry<'a, 'f> {
    subject: &'f Subject<'a>,
    doubts: Doubts<'a>,
    findings: &'f mut Findings,
}

impl Registry<'_, '_> {
    fn unused<T>(&mut self, what: What, table: &Table<T>, used: &Used<T>) {
        for (id, entry) in table.iter() {
            let unused = !used.contains(id) && !self.doubts.may_mean(what, &entry.name, entry.at);
            if unused && !self.subject.is_overlaid(entry.at) {
                self.findings.add(
                    entry.at,
                    format!("nothing refers to the {what} `{}`", entry.name),
                    "use it where it was meant to be used, or take it out",
                );
            }
        }
    }
}

fn outcomes(library: &Library, tree: &Tree, findings: &mut Findings) {
    let mut returned = vec![false; tree.outcomes.len()];
    for step in &library.steps[tree.steps.clone()] {
        if let Kind::Return { outcome } = step.kind {
            returned[outcome] = true;
        }
    }
    for (outcome, returned) in tree.outcomes.iter().zip(returned) {
        if !returned {
            findings.add(
                outcome.at,
                format!("no step of this tree returns the outcome `{}`", outcome.name),
                "return it from a step, or take it out of `outcomes`",
            );
        }
    }
}
