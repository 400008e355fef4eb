//! Proofs of which more can be known than can ever be looked at: the check ends, and never takes them for proven.

use std::fmt::Write;

use proofwalk::source::{Files, SourceFile};
use proofwalk::{check, library};

/// How many verdicts are found to be unproven.
fn unproven(files: Vec<(String, String)>) -> usize {
    let files = files.into_iter().map(|(name, text)| SourceFile::new(name, text));
    let (library, problems) = library::load(Files::new(files.collect()));
    assert_eq!(problems, []);
    let found = check::run(&library, &problems);
    let found = found.iter().filter(|finding| finding.rule == "unproven-verdict");
    found.inspect(|finding| assert!(finding.walk.is_some())).count()
}

fn file(name: &str, text: impl Into<String>) -> (String, String) {
    (name.to_owned(), text.into())
}

fn registries(readings: usize, parts: &str, faults: &str) -> Vec<(String, String)> {
    let mut text = "readings:\n".to_owned();
    for number in 0..readings {
        let _ = writeln!(
            text,
            "  r{number}: {{ title: Voltage {number}, unit: V, plausible: 0 V to 40 V, accuracy: 0.3 V }}"
        );
    }
    vec![
        file("library.yaml", "library: hard\n"),
        file("registry/readings.yaml", text),
        file("registry/parts.yaml", format!("parts:\n{parts}")),
        file("registry/faults.yaml", format!("faults:\n{faults}")),
    ]
}

#[test]
fn a_thousand_unproven_verdicts_are_all_found() {
    const TREES: usize = 1_000;
    const STEPS: usize = 97;
    let (mut parts, mut faults) = (
        String::new(),
        "  fine: { title: Fine, remedy: none }\n".to_owned(),
    );
    let mut trees = Vec::new();
    for number in 0..TREES {
        let _ = writeln!(
            parts,
            "  p{number}: {{ title: Part {number}, proof: [{{ r{number}: above 20 V }}] }}"
        );
        let _ = writeln!(
            faults,
            "  f{number}: {{ title: Fault {number}, remedy: replace p{number} }}"
        );
        let mut text =
            format!("tree: t{number}\ntitle: Tree\ncomplaint: It does nothing\nstart: s0\nsteps:\n");
        for step in 0..STEPS {
            let _ = writeln!(text, "  s{step}: {{ do: Turn it, go: s{} }}", step + 1);
        }
        let _ = writeln!(
            text,
            "  s{STEPS}: {{ measure: r{number}, bands: {{ below 18 V: fine, at least 18 V: bad }} }}\n  \
             fine: {{ verdict: fine, because: It is }}\n  \
             bad: {{ verdict: f{number}, because: It is not }}"
        );
        trees.push((format!("t{number}.yaml"), text));
    }
    trees.extend(registries(TREES, &parts, &faults));
    assert_eq!(unproven(trees), TREES);
}

/// Readings of a part's proof, three to an alternative.
const READINGS: usize = 36;

/// The registries with a part that any of twelve alternatives condemns.
fn with_many_alternatives() -> Vec<(String, String)> {
    let mut parts = "  board:\n    title: Board\n    proof:\n      - any:\n".to_owned();
    for first in (0..READINGS).step_by(3) {
        let [one, two, three] = [first, first + 1, first + 2];
        let _ = writeln!(
            parts,
            "          - {{ r{one}: above 20 V, r{two}: above 20 V, r{three}: below 10 V }}"
        );
    }
    let faults = "  fine: { title: Fine, remedy: none }\n  dead: { title: Dead, remedy: replace board }\n";
    registries(READINGS, &parts, faults)
}

/// Steps that take readings, let each answer go its own way for a step, and make others void.
fn takes(text: &mut String, from: usize, blocks: usize) {
    for block in from..from + blocks {
        let (taken, voided) = (block * 7 % READINGS, block * 11 % READINGS);
        let next = block + 1;
        let _ = writeln!(
            text,
            "  s{block}:\n    measure: r{taken}\n    bands: {{ below 10 V: w{block}, 10 V to 20 V: s{next}, above 20 V: x{block} }}\n  \
             w{block}: {{ do: Work, voids: [r{voided}], go: s{next} }}\n  \
             x{block}: {{ do: Work, go: {{ go: s{block}, at_most: 1, then: w{block} }} }}"
        );
    }
}

const ENDS: &str = "
  fine: { verdict: fine, because: It is }
  dead: { verdict: dead, because: It is not }
";

#[test]
fn a_proof_of_many_alternatives_over_readings_that_are_retaken_ends() {
    const BLOCKS: usize = 666;
    let mut text = "tree: a\ntitle: Tree\ncomplaint: It does nothing\nstart: s0\nsteps:\n".to_owned();
    takes(&mut text, 0, BLOCKS);
    let _ = writeln!(
        text,
        "  s{BLOCKS}: {{ measure: r0, bands: {{ below 5 V: fine, at least 5 V: dead }} }}{ENDS}"
    );
    let mut files = with_many_alternatives();
    files.push(file("a.yaml", text));
    assert_eq!(unproven(files), 1);
}

#[test]
fn a_tree_that_is_visited_with_ever_other_things_known_ends() {
    const VISITS: usize = 40;
    const BLOCKS: usize = 5;
    let mut outer = "tree: outer\ntitle: Tree\ncomplaint: It does nothing\nstart: s0\nsteps:\n".to_owned();
    for visit in 0..VISITS {
        let first = visit * (BLOCKS + 1);
        takes(&mut outer, first, BLOCKS);
        let _ = writeln!(
            outer,
            "  s{}: {{ visit: inner, returns: {{ one: s{next}, other: s{next} }} }}",
            first + BLOCKS,
            next = first + BLOCKS + 1
        );
    }
    let _ = writeln!(
        outer,
        "  s{}: {{ measure: r0, bands: {{ below 5 V: fine, at least 5 V: dead }} }}{ENDS}",
        VISITS * (BLOCKS + 1)
    );
    let mut inner = "tree: inner\ntitle: Inner\noutcomes: [one, other]\nstart: s0\nsteps:\n".to_owned();
    takes(&mut inner, 0, 20);
    inner += "  s20: { measure: r1, bands: { below 5 V: one, at least 5 V: other } }\n";
    inner += "  one: { return: one }\n  other: { return: other }\n";
    let mut files = with_many_alternatives();
    files.extend([file("outer.yaml", outer), file("inner.yaml", inner)]);
    assert_eq!(unproven(files), 1);
}
