//! A name that is taken.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::ProblemKind;

rule! {
    /// A name is registered or defined twice, or two names cannot be told apart by a reader.
    ///
    /// Which of the two a tree means would be left to chance, and a proof could name one reading while the technician takes the
    /// other.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # registry/restores.yaml
    /// restores:
    ///   door_switch: Release the door switch and close the door
    ///   door_switch: Close the door
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # registry/restores.yaml
    /// restores:
    ///   door_switch: Release the door switch and close the door
    /// ```
    DUPLICATE_NAME, "duplicate-name", Error, needs Text, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for problem in subject.problems {
        let ProblemKind::DuplicateName {
            what,
            name,
            first,
            look_alike,
        } = &problem.kind
        else {
            continue;
        };
        let place = subject.library.files.place(*first);
        let stands = format!("stands at {}:{}", place.file, place.line);
        match look_alike {
            None => findings.add(
                problem.span,
                format!("a second {what} is called `{name}`"),
                format!("the first {stands}: keep one, or give one another name"),
            ),
            Some(other) => findings.add(
                problem.span,
                format!("the {what} `{name}` cannot be told from `{other}` in print"),
                format!("the other {stands}: rename one so that they differ by more than a letter's shape"),
            ),
        }
    }
}
