//! Libraries of one extreme shape.

use std::fmt::Write;

use super::File;

/// One step after the other.
pub fn chain(steps: usize) -> Vec<File> {
    let mut text = head("chain", "complaint: It does nothing\n");
    for step in 1..steps {
        let _ = writeln!(text, "  s{step}: {{ do: Turn screw {step}, go: s{} }}", step + 1);
    }
    let _ = writeln!(
        text,
        "  s{steps}: {{ verdict: found, because: That was the last }}"
    );
    with_fault(vec![("chain.yaml".to_owned(), text)])
}

/// One tree inside the other.
pub fn visits(trees: usize) -> Vec<File> {
    let tree = |number: usize| {
        let way_in = if number == 1 {
            "complaint: It does nothing\n"
        } else {
            ""
        };
        let mut text = head(&format!("tree-{number}"), &format!("{way_in}outcomes: [over]\n"));
        if number == trees {
            text += "  s1: { return: over }\n";
        } else {
            let next = number + 1;
            let _ = writeln!(text, "  s1: {{ visit: tree-{next}, returns: {{ over: s2 }} }}");
            text += "  s2: { return: over }\n";
        }
        (format!("tree-{number}.yaml"), text)
    };
    (1..=trees).map(tree).chain([about()]).collect()
}

/// One sign with so many values.
pub fn choices(values: usize) -> Vec<File> {
    let mut signs = "signs:\n  colour:\n    ask: Which colour is it?\n    values:\n".to_owned();
    let mut text =
        head("choices", "complaint: It does nothing\n") + "  s1:\n    observe: colour\n    choices:\n";
    let mut steps = String::new();
    for value in 1..=values {
        let _ = writeln!(signs, "      c{value}: Colour {value} of the chart");
        let _ = writeln!(text, "      c{value}: v{value}");
        let _ = writeln!(
            steps,
            "  v{value}: {{ verdict: found, because: It is colour {value} }}"
        );
    }
    with_fault(vec![
        ("registry/signs.yaml".to_owned(), signs),
        ("choices.yaml".to_owned(), text + &steps),
    ])
}

/// One step with so many bands.
pub fn bands(bands: usize) -> Vec<File> {
    let mut text = head("bands", "complaint: It does nothing\n")
        + "  s1:\n    measure: r1\n    bands:\n      below 1 V: b0\n";
    let mut steps = String::new();
    for band in 1..bands {
        match band + 1 == bands {
            true => _ = writeln!(text, "      at least {band} V: b{band}"),
            false => _ = writeln!(text, "      at least {band} V, below {} V: b{band}", band + 1),
        }
    }
    for band in 0..bands {
        let _ = writeln!(
            steps,
            "  b{band}: {{ verdict: found, because: It is band {band} }}"
        );
    }
    let readings = format!("readings:\n{}", reading(1, bands));
    with_cautions(vec![
        ("registry/readings.yaml".to_owned(), readings),
        ("bands.yaml".to_owned(), text + &steps),
    ])
}

/// So many readings, taken one after the other.
pub fn readings(readings: usize) -> Vec<File> {
    let mut registry = "readings:\n".to_owned();
    let mut text = head("readings", "complaint: It does nothing\n");
    for number in 1..=readings {
        registry += &reading(number, 40);
        let _ = writeln!(text, "  s{number}: {{ measure: r{number}, go: s{} }}", number + 1);
    }
    let _ = writeln!(
        text,
        "  s{}: {{ verdict: found, because: That was the last }}",
        readings + 1
    );
    with_cautions(vec![
        ("registry/readings.yaml".to_owned(), registry),
        ("readings.yaml".to_owned(), text),
    ])
}

/// A chain in which every step may lead back to its start, twice.
pub fn loops(steps: usize) -> Vec<File> {
    let mut text = head("loops", "complaint: It does nothing\n");
    for step in 1..steps {
        let next = step + 1;
        let _ = writeln!(
            text,
            "  s{step}: {{ do: Turn screw {step}, go: {{ go: s1, at_most: 2, then: s{next} }} }}"
        );
    }
    let _ = writeln!(
        text,
        "  s{steps}: {{ verdict: found, because: That was the last }}"
    );
    with_fault(vec![("loops.yaml".to_owned(), text)])
}

/// A chain whose edges have one limit behind the other, as many as may nest.
pub fn limits(steps: usize) -> Vec<File> {
    const LIMITS: usize = 28;
    let mut text = head("limits", "complaint: It does nothing\n");
    for step in 1..steps {
        let back = "{ go: s1, at_most: 1, then: ".repeat(LIMITS);
        let close = " }".repeat(LIMITS);
        let _ = writeln!(
            text,
            "  s{step}: {{ do: Turn screw {step}, go: {back}s{}{close} }}",
            step + 1
        );
    }
    let _ = writeln!(
        text,
        "  s{steps}: {{ verdict: found, because: That was the last }}"
    );
    with_fault(vec![("limits.yaml".to_owned(), text)])
}

fn head(name: &str, way_in: &str) -> String {
    format!("tree: {name}\ntitle: Made to measure\nstatus: draft\n{way_in}start: s1\nsteps:\n")
}

fn reading(number: usize, volts: usize) -> String {
    format!(
        "  r{number}:\n    title: Voltage at terminal {number}\n    unit: V\n    plausible: 0 V to {volts} V\n    accuracy: 1 % + 0.3 V\n    source: practice\n    cautions: [care]\n"
    )
}

/// What a library of any shape needs.
fn about() -> File {
    let text = "library: made-to-measure\ntitle: Made to measure\n";
    ("library.yaml".to_owned(), text.to_owned())
}

/// With the one fault that every verdict states.
fn with_fault(mut files: Vec<File>) -> Vec<File> {
    let faults = "faults:\n  found: { title: Found, remedy: none }\n";
    files.extend([about(), ("registry/faults.yaml".to_owned(), faults.to_owned())]);
    files
}

/// With what readings name as well.
fn with_cautions(files: Vec<File>) -> Vec<File> {
    let registries = [
        ("sources", "practice: { title: Common practice, kind: practice }"),
        ("cautions", "care: { text: Mind your fingers, source: practice }"),
    ];
    let registries =
        registries.map(|(name, line)| (format!("registry/{name}.yaml"), format!("{name}:\n  {line}\n")));
    with_fault(files.into_iter().chain(registries).collect())
}
