//! Weights of faults as the calls have them, as a file that a library takes.
//!
//! It is `registry/faults.yaml` of an overlay. What an overlay says of a fault replaces all that was said of it, so each fault
//! stands there whole, as its author wrote it, with the new weight. Each value is written as JSON, which YAML reads.

use std::collections::HashMap;
use std::fmt::Write;

use serde_json::{Map, Value};

use super::change;
use super::figures::{counted, days, number};
use crate::audit::statistics::LEVEL;
use crate::audit::statistics::weights::{PRIOR, learned, prior};
use crate::audit::{Audit, Learned, TOO_SMALL};
use crate::bench::cost::Asked;
use crate::library::{Library, Remedy, faults_as_written};
use crate::source::safe;

/// The weights of a library's faults, learned from the verdicts that held, and what they change in its trees.
pub fn weights(audit: &Audit, library: &Library, trees: &[Asked]) -> String {
    let known: HashMap<&str, &Learned> = audit
        .learned
        .iter()
        .map(|row| (row.fault.as_str(), row))
        .collect();
    // What is no fault is never weighed.
    let faults = library.faults.iter().map(|(_, fault)| fault);
    let faults = faults.filter(|fault| !matches!(fault.remedy, Remedy::None | Remedy::Unresolved));
    let (names, author): (Vec<&str>, Vec<f64>) = faults
        .map(|fault| (fault.name.as_str(), fault.weight.unwrap_or(1.0)))
        .unzip();
    let held: Vec<u64> = names
        .iter()
        .map(|name| known.get(name).map_or(0, |row| row.held))
        .collect();
    let all: u64 = held.iter().sum();
    let mut page = head(audit, library, &author, all);
    if all > 0 {
        let prior = names.iter().copied().zip(prior(&author)).collect();
        page.push_str(&change::lines(audit, library, trees, &prior));
    }
    let mut written = faults_as_written(&library.files);
    page.push_str("faults:\n");
    let learned = learned(&author, &held, LEVEL);
    for (((name, held), author), weight) in names.iter().zip(&held).zip(&author).zip(learned) {
        let Some(mut entry) = written.remove(*name) else {
            continue;
        };
        let _ = writeln!(
            page,
            "  # author {}; {held} of {all} held: by the calls alone {} to {} with 95 %{}",
            number(*author),
            number(weight.low),
            number(weight.high),
            match (weight.low..=weight.high).contains(author) {
                true => "",
                false => "; THE AUTHOR'S LIES OUTSIDE",
            }
        );
        entry.insert("weight".to_owned(), rounded(weight.weight));
        let _ = write!(page, "  {name}: ");
        map(&mut page, &entry);
        page.push('\n');
    }
    page
}

fn head(audit: &Audit, library: &Library, author: &[f64], all: u64) -> String {
    let mut head = format!(
        "# Weights of the faults of {}, learned from {} that held: proven on a closed call, and not called back within {}.\n",
        safe(&library.name),
        counted(all, "verdict", "verdicts"),
        days(audit.window_days)
    );
    head.push_str(
        "# This is registry/faults.yaml of an overlay, say of the folder learned: then `proofwalk check --overlay learned` and\n\
         # `proofwalk rehearse --cost --overlay learned` check it and price the trees with it.\n\
         # A weight says how often, not how dangerous: the gate and the dangers come first, whatever it is.\n",
    );
    let _ = writeln!(
        head,
        "# The author's weights count as {} verdicts, half a verdict a fault, shared out as they have them, and what held comes on top:\n\
         # so a few calls change little, and no fault is taken for impossible. Learned weights are on the author's scale. Above each\n\
         # stand the author's weight (1 where none is written), what held, and where the calls alone have the weight with 95 %. Where\n\
         # the author's lies outside that, which is chance for one fault in twenty, a senior technician should decide which is right,\n\
         # and may take the fault out of this file.\n\
         # Weights that were learned from the same calls must not be laid over the library for this: those would count twice.",
        number(PRIOR * author.len() as f64),
    );
    if all < TOO_SMALL {
        head.push_str("# TOO FEW: these say next to nothing yet.\n");
    }
    let stranger =
        |row: &&Learned| row.held > 0 && !library.faults.iter().any(|(_, fault)| fault.name == row.fault);
    let strangers: Vec<String> = (audit.learned.iter())
        .filter(stranger)
        .map(|row| safe(&row.fault).to_string())
        .collect();
    if !strangers.is_empty() {
        let _ = writeln!(
            head,
            "# Not of this library, and left out: {}",
            strangers.join(", ")
        );
    }
    head
}

/// A weight to four digits, as a number that is written so.
fn rounded(weight: f64) -> Value {
    number(weight)
        .parse()
        .map_or(Value::Null, |weight: f64| Value::from(weight))
}

/// A map on one line, with a space behind each colon, for readers of YAML that want one.
fn map(page: &mut String, entry: &Map<String, Value>) {
    page.push_str("{ ");
    for (place, (key, value)) in entry.iter().enumerate() {
        if place > 0 {
            page.push_str(", ");
        }
        let _ = write!(page, "{}: ", Value::from(key.as_str()));
        one(page, value);
    }
    page.push_str(" }");
}

fn one(page: &mut String, value: &Value) {
    match value {
        Value::Object(entry) => map(page, entry),
        Value::Array(list) => {
            page.push('[');
            for (place, value) in list.iter().enumerate() {
                if place > 0 {
                    page.push_str(", ");
                }
                one(page, value);
            }
            page.push(']');
        }
        plain => {
            let _ = write!(page, "{plain}");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::library::{Fault, load};
    use crate::report::audit::made::season;
    use crate::source::{Files, Layer, SourceFile};

    const LIBRARY: [(&str, &str); 3] = [
        ("library.yaml", "library: shop\nedition: 1\ntitle: Shop\n"),
        (
            "registry/parts.yaml",
            "parts:\n  gas_valve: { title: Gas valve, proof: [{ click: none }] }\n  control_board: { title: Board, proof: [{ click: none }] }\n",
        ),
        (
            "registry/faults.yaml",
            r##"
faults:
  valve_does_not_open:
    title: "A \"valve\": does # not open"
    remedy: replace gas_valve
    weight: 9
    text: |
      First this,
      then {that}.
    group: [gas_valve, control_board]
    proof:
      - any:
          - click: none
          - volts: 18 V to 30 V
  board_lets_go: { title: "No", remedy: replace control_board }
  never_met: { title: Never met, remedy: correct, text: "µ ° ü" }
  nothing_found: { title: Nothing found, remedy: none }
"##,
        ),
    ];

    fn files(more: Option<String>) -> Files {
        let library = LIBRARY.map(|(name, text)| SourceFile::new(name, text));
        let overlay = more
            .map(|text| SourceFile::new("registry/faults.yaml", text).in_layer(Layer::overlay(1, "learned")));
        Files::new(library.into_iter().chain(overlay).collect())
    }

    fn told(fault: &Fault) -> String {
        format!(
            "{:?}",
            (
                &fault.title,
                fault.remedy,
                &fault.text,
                &fault.group,
                fault.proof.lines.len()
            )
        )
    }

    #[test]
    fn what_is_printed_laid_over_the_library_changes_the_weights_and_nothing_else() {
        let (library, problems) = load(files(None));
        let text = weights(&season(), &library, &[]);
        let (learned, after) = load(files(Some(text.clone())));
        assert_eq!(problems.len(), after.len(), "{text}\n{after:#?}");
        for ((_, before), (_, after)) in library.faults.iter().zip(learned.faults.iter()) {
            assert_eq!(before.name, after.name);
            assert_eq!(told(before), told(after));
        }
        let weight = |name: &str| {
            let fault = learned.faults.iter().find(|(_, fault)| fault.name == name);
            fault.and_then(|(_, fault)| fault.weight)
        };
        let [valve, board, never] = ["valve_does_not_open", "board_lets_go", "never_met"].map(weight);
        assert!(
            valve.unwrap() < 9.0 && board.unwrap() > 1.0 && never.unwrap() < 0.1,
            "{text}"
        );
        // On the author's scale: 9, and 1 where none is written.
        assert!((valve.unwrap() + board.unwrap() + never.unwrap() - 11.0).abs() < 1e-2);
        assert!(text.contains("count as 1.5 verdicts"), "{text}");
        let above = |name: &str| {
            let lines: Vec<&str> = text.lines().collect();
            let at = lines
                .iter()
                .position(|line| line.starts_with(&format!("  {name}:")));
            lines[at.unwrap() - 1].to_owned()
        };
        assert!(
            above("valve_does_not_open").starts_with("  # author 9; "),
            "{text}"
        );
        assert!(
            above("board_lets_go").ends_with("THE AUTHOR'S LIES OUTSIDE"),
            "{text}"
        );
        assert_eq!(weight("nothing_found"), None);
        assert!(
            text.contains("left out: igniter_open, switch_does_not_close"),
            "{text}"
        );
    }

    #[test]
    fn few_verdicts_say_so() {
        let (library, _) = load(files(None));
        let mut audit = season();
        audit.learned.truncate(1);
        audit.learned[0].held = 3;
        let text = weights(&audit, &library, &[]);
        assert!(
            text.contains("# TOO FEW") && text.contains("from 3 verdicts that held"),
            "{text}"
        );
    }
}
