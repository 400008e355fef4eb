//! Ways that must and must not count as a proof, one by one.

use proofwalk::check;
use proofwalk::library::load;
use proofwalk::source::{Files, SourceFile, Walked};

const BASE: [(&str, &str); 6] = [
    ("library.yaml", "library: small\nedition: '1'\ntitle: Small\n"),
    (
        "registry/plate.yaml",
        "\
fields:
  gas: { title: Gas, choices: { natural: Natural, propane: Propane } }
  low: { title: Lower mark, unit: V, plausible: 2 V to 10 V }
  high: { title: Upper mark, unit: V, plausible: 4 V to 20 V }
order: [[low, high]]
",
    ),
    (
        "registry/readings.yaml",
        "\
readings:
  volts: { title: Volts, unit: V, plausible: 0 V to 30 V, accuracy: 0.1 V, source: practice }
  ohms: { title: Ohms, unit: ohm, plausible: 0 ohm to 100 ohm, accuracy: 0.1 ohm, source: practice }
  warm: { title: Warm, unit: °F, plausible: 30 °F to 200 °F, accuracy: 1 °F, source: practice }
  cold: { title: Cold, unit: °F, plausible: 30 °F to 120 °F, accuracy: 1 °F, source: practice }
  rise: { title: Rise, unit: °F, difference: true, source: practice, worked_out: { formula: temperature_rise, supply: warm, return: cold } }
",
    ),
    (
        "registry/signs.yaml",
        "signs:\n  flame: { ask: How is the flame?, values: { blue: Blue, lazy: Lazy } }\n",
    ),
    ("registry/sources.yaml", "sources:\n  practice: { title: Common practice, kind: practice }\n"),
    (
        "registry/faults.yaml",
        "\
faults:
  bad: { title: Bad, remedy: replace part }
  fine: { title: Fine, remedy: none }
  dirty: { title: Dirty, remedy: correct }
",
    ),
];

/// What is said of verdicts without their proof: the step, and whether a walk is shown.
fn unproven(proof: &str, trees: &[(&str, &str)]) -> Vec<(String, Option<String>)> {
    let part = format!("parts:\n  part:\n    title: Part\n    proof:\n{proof}");
    let own = trees.iter().map(|(name, steps)| {
        let complaint = match *name {
            "called" => "",
            _ => "complaint: It fails\n",
        };
        let outcomes = if *name == "called" {
            "outcomes: [right, wrong]\n"
        } else {
            ""
        };
        let text = format!("tree: {name}\ntitle: A tree\n{complaint}{outcomes}start: a\nsteps:\n{steps}");
        (format!("{name}.yaml"), text)
    });
    let base = BASE
        .iter()
        .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()));
    let files = base.chain(own).chain([("registry/parts.yaml".to_owned(), part)]);
    let files = files.map(|(name, text)| SourceFile::new(name, text));
    let (library, problems) = load(Files::new(files.collect()));
    assert!(problems.is_empty(), "{problems:?}");
    let found = check::run(&library, &problems);
    let found = found
        .into_iter()
        .filter(|finding| finding.rule == "unproven-verdict");
    found
        .map(|finding| {
            let answers = match finding.walk.unwrap() {
                Walked::With(answers) => Some(answers),
                Walked::NotShown => None,
            };
            let answers = answers.map(|answers| {
                let answers = answers
                    .iter()
                    .map(|answer| format!("{} {}", answer.asks, answer.answer));
                answers.collect::<Vec<_>>().join(", ")
            });
            (finding.witness.join(" "), answers)
        })
        .collect()
}

#[track_caller]
fn is_proven(proof: &str, trees: &[(&str, &str)]) {
    assert_eq!(unproven(proof, trees), []);
}

#[track_caller]
fn shows(proof: &str, trees: &[(&str, &str)], way: &str, answers: &str) {
    let expected = (way.to_owned(), Some(answers.to_owned()));
    assert_eq!(unproven(proof, trees), [expected]);
}

const ENDS: &str = "  bad: { verdict: bad, because: So. }\n  fine: { verdict: fine, because: So. }\n";

fn tree(steps: &str) -> String {
    format!("{steps}{ENDS}")
}

const AT_LEAST_TEN: &str = "      - volts: at least 10 V\n";

#[test]
fn two_bands_on_one_value_that_still_stands_prove_together() {
    let steps = tree(
        "  a: { measure: volts, bands: { below 5 V: fine, at least 5 V: b } }
  b: { measure: volts, bands: { at most 15 V: bad, above 15 V: fine } }
",
    );
    is_proven("      - volts: 5 V to 15 V\n", &[("main", &steps)]);
    let voided =
        steps.replace("at least 5 V: b", "at least 5 V: c") + "  c: { do: Work., voids: [volts], go: b }\n";
    shows(
        "      - volts: 5 V to 15 V\n",
        &[("main", &voided)],
        "a c b bad",
        "volts 20 V, volts 3 V",
    );
}

#[test]
fn a_value_that_cannot_be_taken_is_no_proof() {
    let steps =
        tree("  a: { measure: volts, unable: bad, bands: { below 10 V: fine, at least 10 V: bad } }\n");
    shows(
        AT_LEAST_TEN,
        &[("main", &steps)],
        "a bad",
        "volts could not be taken",
    );
}

#[test]
fn work_that_makes_a_reading_void_takes_its_proof_back() {
    let steps = tree(
        "  a: { measure: volts, bands: { below 10 V: fine, at least 10 V: b } }
  b: { do: Work., voids: [volts], go: bad }
",
    );
    shows(AT_LEAST_TEN, &[("main", &steps)], "a b bad", "volts 20 V");
    is_proven(
        AT_LEAST_TEN,
        &[("main", &steps.replace("voids: [volts]", "voids: [ohms]"))],
    );
}

#[test]
fn voiding_an_input_voids_what_is_worked_out_from_it_and_the_other_way_round() {
    let steps = |voided: &str| {
        tree(&format!(
            "  a: {{ measure: rise, bands: {{ below 40 °F: fine, at least 40 °F: b }} }}\n  b: {{ do: Work., voids: [{voided}], go: bad }}\n"
        ))
    };
    let proof = "      - rise: at least 40 °F\n";
    let found = unproven(proof, &[("main", &steps("cold"))]);
    assert_eq!(found[0].0, "a b bad");
    is_proven(proof, &[("main", &steps("volts"))]);
    let inputs = tree(
        "  a: { measure: warm, bands: { below 80 °F: fine, at least 80 °F: b } }
  b: { do: Work., voids: [rise], go: bad }
",
    );
    let found = unproven("      - warm: at least 80 °F\n", &[("main", &inputs)]);
    assert_eq!(found[0].0, "a b bad");
}

#[test]
fn a_second_taking_is_left_to_the_guard_of_the_walk() {
    let steps = tree(
        "  a: { measure: warm, bands: { below 80 °F: fine, at least 80 °F: b } }
  b: { measure: rise, bands: { below 40 °F: bad, at least 40 °F: bad } }
",
    );
    // Close to 40 °F the rise is asked for again, and then the warm side may be anything: the walk would hold the verdict back.
    is_proven("      - warm: at least 80 °F\n", &[("main", &steps)]);
}

#[test]
fn one_alternative_is_enough_and_which_one_depends_on_the_way() {
    let proof = "      - any: [{ volts: at least 10 V }, { flame: lazy, ohms: below 5 ohm }]\n";
    let steps = tree(
        "  a: { measure: volts, unable: b, bands: { below 10 V: b, at least 10 V: bad } }
  b: { observe: flame, choices: { blue: fine, lazy: c } }
  c: { measure: ohms, bands: { below 5 ohm: bad, at least 5 ohm: fine } }
",
    );
    is_proven(proof, &[("main", &steps)]);
    let open = steps.replace("at least 5 ohm: fine", "at least 5 ohm: bad");
    shows(
        proof,
        &[("main", &open)],
        "a b c bad",
        "volts could not be taken, flame lazy, ohms 50 Ω",
    );
}

#[test]
fn alternatives_that_leave_a_value_no_other_hold_once_it_is_taken() {
    let proof = "      - any: [{ volts: below 10 V }, { volts: at least 8 V }]\n";
    is_proven(proof, &[("main", &tree("  a: { measure: volts, go: bad }\n"))]);
    let unable = tree("  a: { measure: volts, go: bad, unable: bad }\n");
    shows(proof, &[("main", &unable)], "a bad", "volts could not be taken");
}

#[test]
fn a_plate_that_orders_its_fields_proves_what_leans_on_them() {
    let proof = "      - volts: at least plate.low\n";
    let steps = tree("  a: { measure: volts, bands: { at most plate.high: fine, above plate.high: bad } }\n");
    is_proven(proof, &[("main", &steps)]);
    let other = tree("  a: { measure: volts, bands: { below plate.low: bad, at least plate.low: fine } }\n");
    let found = unproven(proof, &[("main", &other)]);
    assert!(found[0].1.as_ref().unwrap().starts_with("low "), "{found:?}");
    // What the plate was sorted into counts as well.
    let read = tree(
        "  a: { plate: low, bands: { below 6 V: fine, at least 6 V: b } }
  b: { measure: volts, bands: { below plate.low: fine, at least plate.low: bad } }
",
    );
    is_proven("      - volts: at least 6 V\n", &[("main", &read)]);
}

#[test]
fn a_proof_may_be_taken_in_a_visit_and_is_kept_or_lost_by_what_it_does() {
    let main = tree(
        "  a: { visit: called, returns: { right: bad, wrong: fine } }
",
    );
    let called = "  a: { measure: volts, bands: { below 10 V: w, at least 10 V: r } }
  r: { return: right }
  w: { return: wrong }
";
    is_proven(AT_LEAST_TEN, &[("main", &main), ("called", called)]);
    let swapped = called.replace("below 10 V: w", "below 10 V: r");
    shows(
        AT_LEAST_TEN,
        &[("main", &main), ("called", &swapped)],
        "a a r bad",
        "volts 5 V",
    );
}

#[test]
fn a_visit_returns_only_to_its_own_visitor() {
    // What is known on entering is handed back: the first visit proves nothing for the second.
    let main = tree(
        "  a: { observe: flame, choices: { blue: b, lazy: m } }
  b: { visit: called, returns: { right: fine, wrong: fine } }
  m: { measure: volts, bands: { below 10 V: fine, at least 10 V: c } }
  c: { visit: called, returns: { right: bad, wrong: fine } }
",
    );
    let called = "  a: { measure: ohms, bands: { below 5 ohm: r, at least 5 ohm: w } }
  r: { return: right }
  w: { return: wrong }
";
    is_proven(AT_LEAST_TEN, &[("main", &main), ("called", called)]);
}

#[test]
fn a_loop_that_is_bounded_is_gone_round_and_left() {
    let steps = tree(
        "  a:
    measure: volts
    bands:
      below 10 V: { go: b, at_most: 1, then: bad }
      at least 10 V: bad
  b: { do: Work., voids: [volts], go: a }
",
    );
    shows(
        AT_LEAST_TEN,
        &[("main", &steps)],
        "a b a bad",
        "volts 5 V, volts 5 V",
    );
    is_proven(
        AT_LEAST_TEN,
        &[("main", &steps.replace("then: bad", "then: fine"))],
    );
}

#[test]
fn a_way_that_its_counts_forbid_is_not_shown_walkable() {
    // The first answer always takes `go`, and nothing leads back to it.
    let steps = tree("  a: { do: Work., go: { go: fine, at_most: 1, then: bad } }\n");
    assert_eq!(
        unproven(AT_LEAST_TEN, &[("main", &steps)]),
        [("a bad".to_owned(), None)]
    );
}

#[test]
fn a_verdict_that_is_noted_was_proven() {
    let main = tree(
        "  a: { visit: called, returns: { right: fine, wrong: fine }, on_verdict: bad }
",
    );
    let called = "  a: { measure: volts, bands: { below 10 V: w, at least 10 V: v } }
  v: { verdict: bad, because: So. }
  w: { verdict: dirty, because: So. }
  r: { return: right }
";
    let found = unproven(AT_LEAST_TEN, &[("main", &main), ("called", called)]);
    // By way of the other verdict, nothing is proven; by way of its own it is.
    assert_eq!(found, [("a a w bad".to_owned(), Some("volts 5 V".to_owned()))]);
    let only = called
        .replace("below 10 V: w", "below 10 V: r")
        .replace("  w: { verdict: dirty, because: So. }\n", "");
    is_proven(AT_LEAST_TEN, &[("main", &main), ("called", &only)]);
}

#[test]
fn a_plate_field_is_a_claim_like_any_other() {
    let proof = "      - gas: natural\n";
    let steps = tree("  a: { plate: gas, choices: { natural: bad, propane: fine } }\n");
    is_proven(proof, &[("main", &steps)]);
    shows(
        proof,
        &[(
            "main",
            &tree("  a: { observe: flame, choices: { blue: bad, lazy: fine } }\n"),
        )],
        "a bad",
        "flame blue, gas propane",
    );
}

#[test]
fn every_complaint_is_a_beginning_and_a_tree_that_nobody_comes_to_is_none() {
    let open = tree("  a: { observe: flame, choices: { blue: bad, lazy: fine } }\n");
    let right = tree("  a: { measure: volts, bands: { below 10 V: fine, at least 10 V: bad } }\n");
    let found = unproven(AT_LEAST_TEN, &[("main", &right), ("other", &open)]);
    assert_eq!(found.len(), 1);
    is_proven(
        AT_LEAST_TEN,
        &[
            ("main", &right),
            ("called", &format!("{open}  r: {{ return: right }}\n")),
        ],
    );
}

#[test]
fn a_verdict_without_a_proof_needs_none() {
    is_proven(
        AT_LEAST_TEN,
        &[(
            "main",
            "  a: { observe: flame, choices: { blue: x, lazy: x } }\n  x: { verdict: dirty, because: So. }\n",
        )],
    );
}
