//! Random libraries: trees that visit one another, loops that are bounded, readings that work makes void, proofs of all kinds.

use std::fmt::Write;

use proofwalk::library::{Library, load};
use proofwalk::source::{Files, SourceFile};

use crate::tape::Tape;

const PLATE: &str = "\
fields:
  gas: { title: Gas, choices: { natural: Natural, propane: Propane } }
  low: { title: Lower mark, unit: V, plausible: 2 V to 10 V }
  high: { title: Upper mark, unit: V, plausible: 4 V to 20 V }
order: [[low, high]]
";

const READINGS: &str = "\
readings:
  volts: { title: Volts, unit: V, plausible: 0 V to 30 V, accuracy: 0 V, source: practice }
  more: { title: More volts, unit: V, plausible: 0 V to 30 V, accuracy: 0.1 V, source: practice }
  warm: { title: Warm, unit: °F, plausible: 30 °F to 200 °F, accuracy: 1 °F, source: practice }
  cold: { title: Cold, unit: °F, plausible: 30 °F to 120 °F, accuracy: 1 °F, source: practice }
  rise: { title: Rise, unit: °F, difference: true, source: practice, worked_out: { formula: temperature_rise, supply: warm, return: cold } }
";

const SIGNS: &str = "\
signs:
  flame: { ask: How is the flame?, values: { blue: Blue, lazy: Lazy, out: Out } }
  noise: { ask: Is there a noise?, values: { noisy: Yes., quiet: No. } }
";

/// Bands that take every value once.
const VOLTS: [&[&str]; 6] = [
    &["below 10 V", "at least 10 V"],
    &["below 5 V", "5 V to 15 V", "above 15 V"],
    &["at most 8 V", "above 8 V, below 12 V", "at least 12 V"],
    &["below plate.low", "plate.low to plate.high", "above plate.high"],
    &["below 50 % of plate.high", "at least 50 % of plate.high"],
    &["at most plate.low + 3 V", "above plate.low + 3 V"],
];
const DEGREES: [&[&str]; 2] = [
    &["below 80 °F", "at least 80 °F"],
    &["below 60 °F", "60 °F to 100 °F", "above 100 °F"],
];
const RISES: [&[&str]; 2] = [
    &["below 40 °F", "at least 40 °F"],
    &["below 30 °F", "30 °F to 60 °F", "above 60 °F"],
];
const HIGH_MARKS: [&[&str]; 2] = [&["below 10 V", "at least 10 V"], &["at most 15 V", "above 15 V"]];

const CLAIMS: [&str; 16] = [
    "volts: below 10 V",
    "volts: at least 8 V",
    "volts: 5 V to 15 V",
    "volts: above 8 V, below 12 V",
    "volts: at most plate.high",
    "volts: plate.low to plate.high",
    "volts: at least 5 V",
    "more: below 10 V",
    "more: above plate.low",
    "more: at least 50 % of plate.high",
    "rise: at least 40 °F",
    "warm: at least 80 °F",
    "flame: lazy",
    "flame: [lazy, out]",
    "noise: noisy",
    "plate.gas: natural",
];

/// How many steps each tree has, without those that end it.
const STEPS: usize = 6;
const TREES: usize = 3;

/// The bands that a reading or field may be sorted into.
fn bands(of: &str) -> &'static [&'static [&'static str]] {
    match of {
        "volts" | "more" => &VOLTS,
        "warm" | "cold" => &DEGREES,
        "rise" => &RISES,
        _ => &HIGH_MARKS,
    }
}

fn claim(tape: &mut Tape<'_>) -> String {
    tape.one_of(&CLAIMS).replace("plate.gas:", "gas:")
}

fn proof(tape: &mut Tape<'_>) -> String {
    let lines = (0..1 + tape.below(2)).map(|_| match tape.below(4) {
        0 => format!(
            "- any: [{{ {} }}, {{ {} }}]",
            quoted(&claim(tape)),
            quoted(&claim(tape))
        ),
        _ => format!("- {{ {} }}", quoted(&claim(tape))),
    });
    lines.map(|line| format!("      {line}\n")).collect()
}

/// A claim as it may stand in braces: a comma would end it there.
fn quoted(claim: &str) -> String {
    match claim.split_once(": ") {
        Some((name, list)) if list.starts_with('[') => format!("{name}: {list}"),
        Some((name, band)) => format!("{name}: \"{band}\""),
        None => claim.to_owned(),
    }
}

/// An edge to a later step, or a bounded one to any, with a later one after its limit.
fn edge(tape: &mut Tape<'_>, tree: usize, at: usize) -> String {
    let later = |tape: &mut Tape<'_>| {
        let to = at + 1 + tape.below(STEPS + 3 - at);
        format!("t{tree}_s{to}")
    };
    if tape.once_in(5) {
        let back = tape.below(at + 1);
        let times = 1 + tape.below(2);
        return format!(
            "{{ go: t{tree}_s{back}, at_most: {times}, then: {} }}",
            later(tape)
        );
    }
    later(tape)
}

fn step(tape: &mut Tape<'_>, tree: usize, at: usize) -> String {
    let mut text = format!("  t{tree}_s{at}:\n");
    match tape.below(8) {
        0..=2 => {
            let reading = tape.one_of(&["volts", "volts", "more", "warm", "cold", "rise"]);
            let _ = writeln!(text, "    measure: {reading}");
            if tape.once_in(6) {
                let _ = writeln!(text, "    go: {}", edge(tape, tree, at));
            } else {
                text.push_str("    bands:\n");
                for band in tape.one_of(bands(reading)) {
                    let _ = writeln!(text, "      {band}: {}", edge(tape, tree, at));
                }
            }
            if tape.once_in(3) {
                let _ = writeln!(text, "    unable: {}", edge(tape, tree, at));
            }
        }
        3 => {
            let (sign, values): (_, &[&str]) = tape.one_of(&[
                ("flame", &["blue", "lazy", "out"][..]),
                ("noise", &["noisy", "quiet"][..]),
            ]);
            let _ = writeln!(text, "    observe: {sign}\n    choices:");
            for value in values {
                let _ = writeln!(text, "      {value}: {}", edge(tape, tree, at));
            }
            if tape.once_in(3) {
                let _ = writeln!(text, "    unsure: {}", edge(tape, tree, at));
            }
        }
        4 => {
            let _ = writeln!(text, "    do: Work.\n    go: {}", edge(tape, tree, at));
            let voids = tape.one_of(&[
                "volts",
                "more",
                "rise",
                "warm",
                "flame",
                "noise, volts",
                "cold",
                "flame",
                "volts",
                "high",
            ]);
            let _ = writeln!(text, "    voids: [{voids}]");
        }
        5 => {
            if tape.below(2) == 0 {
                text.push_str("    plate: high\n    bands:\n");
                for band in tape.one_of(bands("high")) {
                    let _ = writeln!(text, "      {band}: {}", edge(tape, tree, at));
                }
            } else {
                text.push_str("    plate: gas\n    choices:\n");
                for value in ["natural", "propane"] {
                    let _ = writeln!(text, "      {value}: {}", edge(tape, tree, at));
                }
            }
            if tape.once_in(4) {
                let _ = writeln!(text, "    unable: {}", edge(tape, tree, at));
            }
        }
        6 if tree + 1 < TREES => {
            let visited = tree + 1 + tape.below(TREES - tree - 1);
            let (first, second) = (edge(tape, tree, at), edge(tape, tree, at));
            let _ = writeln!(
                text,
                "    visit: t{visited}\n    returns:\n      right: {first}\n      wrong: {second}"
            );
            if tape.once_in(2) {
                let _ = writeln!(text, "    on_verdict: {}", edge(tape, tree, at));
            }
        }
        _ => {
            let fault = tape.below(5);
            let _ = writeln!(text, "    verdict: fault_{fault}\n    because: So.");
        }
    }
    text
}

fn tree(tape: &mut Tape<'_>, tree: usize) -> String {
    let mut text = format!("tree: t{tree}\ntitle: Tree {tree}\noutcomes: [right, wrong]\n");
    if tree != 1 {
        let _ = writeln!(text, "complaint: Complaint {tree}");
    }
    let _ = writeln!(text, "start: t{tree}_s0\nsteps:");
    for at in 0..STEPS {
        text.push_str(&step(tape, tree, at));
    }
    let last = [
        format!("    verdict: fault_{}\n    because: So.\n", tape.below(5)),
        "    return: right\n".to_owned(),
        "    return: wrong\n".to_owned(),
        format!("    verdict: fault_{}\n    because: So.\n", tape.below(5)),
    ];
    for (at, text_of) in last.iter().enumerate() {
        let _ = write!(text, "  t{tree}_s{}:\n{text_of}", STEPS + at);
    }
    text
}

/// A random library, as text.
pub fn files(bytes: &[u8]) -> Files {
    let tape = &mut Tape::new(bytes);
    let parts: String = (0..2)
        .map(|part| {
            format!(
                "  part_{part}:\n    title: Part {part}\n    proof:\n{}",
                proof(tape)
            )
        })
        .collect();
    let own = proof(tape);
    let faults = format!(
        "faults:\n  fault_0: {{ title: A, remedy: replace part_0 }}\n  fault_1: {{ title: B, remedy: replace part_1 }}\n  \
         fault_2: {{ title: C, remedy: correct }}\n  fault_3:\n    title: D\n    remedy: replace part_0\n    proof:\n{own}  \
         fault_4:\n    title: E\n    remedy: shut_down\n    proof:\n{own}"
    );
    let mut all = vec![
        (
            "library.yaml".to_owned(),
            "library: random\nedition: '1'\ntitle: Random\n".to_owned(),
        ),
        ("registry/plate.yaml".to_owned(), PLATE.to_owned()),
        ("registry/readings.yaml".to_owned(), READINGS.to_owned()),
        ("registry/signs.yaml".to_owned(), SIGNS.to_owned()),
        (
            "registry/sources.yaml".to_owned(),
            "sources:\n  practice: { title: Common practice, kind: practice }\n".to_owned(),
        ),
        ("registry/parts.yaml".to_owned(), format!("parts:\n{parts}")),
        ("registry/faults.yaml".to_owned(), faults),
    ];
    all.extend((0..TREES).map(|at| (format!("t{at}.yaml"), tree(tape, at))));
    Files::new(
        all.iter()
            .map(|(name, text)| SourceFile::new(name, text))
            .collect(),
    )
}

/// A random library.
pub fn library(bytes: &[u8]) -> Library {
    let (library, problems) = load(files(bytes));
    assert!(problems.is_empty(), "{problems:?}");
    library
}
