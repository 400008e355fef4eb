//! A name that nothing is registered under.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::{ProblemKind, What};

rule! {
    /// A step, reading, sign, part, fault, put-back, caution, source, tree, outcome or plate field is named that is not there.
    ///
    /// A call that came here could not go on. While the name does not resolve, the rules that would need what it stands for
    /// pass it by.
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
    ///     measure: flame_curent
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
    ///     go: done
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    UNKNOWN_NAME, "unknown-name", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    for problem in subject.problems {
        if let ProblemKind::UnknownName {
            what,
            name,
            nearest,
            registered,
        } = &problem.kind
        {
            let help = match nearest {
                Some(meant) => format!("did you mean `{meant}`?"),
                None if !registered.is_empty() => {
                    let names: Vec<String> = registered.iter().map(|name| format!("`{name}`")).collect();
                    format!("name one that is registered for it: {}", names.join(", "))
                }
                None => mend(*what, name),
            };
            findings.add(problem.span, format!("no {what} is called `{name}`"), help);
        }
    }
}

/// How to mend a name that resembles none.
fn mend(what: What, name: &str) -> String {
    let registry = match what {
        What::PlateField => "plate",
        What::Reading => "readings",
        What::Sign => "signs",
        What::Part => "parts",
        What::Fault => "faults",
        What::Restore => "restores",
        What::Caution => "cautions",
        What::Source => "sources",
        What::ReadingOrSign => {
            return "register it in registry/readings.yaml or registry/signs.yaml".to_owned();
        }
        What::Datum => return "register it in registry/readings.yaml, signs.yaml or plate.yaml".to_owned(),
        What::Tree => return format!("write the tree in a file {name}.yaml, or name one that is there"),
        What::Step => return "write the step, or lead to one that this tree has".to_owned(),
        What::Outcome => return "add it to the `outcomes` of its tree, or name one of those".to_owned(),
        What::Value => return "name one of the values that are registered for it".to_owned(),
        What::Formula => return "`proofwalk formula` lists the formulas there are".to_owned(),
        What::Argument => return "`proofwalk formula` lists the arguments of each formula".to_owned(),
    };
    format!("register it in registry/{registry}.yaml, or name one that is there")
}
