//! A minimal library that is right, to put something wrong into.

use std::collections::BTreeMap;

use proofwalk::library::{Library, Problem, ProblemKind, load};
use proofwalk::source::{Files, Layer, SourceFile, Unread};

use crate::schemas;

/// A library as text: its files by name, those of the overlay number 1 under `1/`, and so on.
#[derive(Clone)]
pub struct Written(BTreeMap<String, String>);

/// The file that a name stands for; an overlay's folder is called `over1`, and so on.
fn file(name: &str, text: &str) -> SourceFile {
    let overlay = name
        .split_once('/')
        .and_then(|(number, rest)| Some((number.parse().ok()?, rest)));
    match overlay {
        Some((number, rest)) => {
            SourceFile::new(rest, text).in_layer(Layer::overlay(number, format!("over{number}")))
        }
        None => SourceFile::new(name, text),
    }
}

const FILES: [(&str, &str); 10] = [
    (
        "library.yaml",
        "library: pumps\nedition: 2026.1\ntitle: Pumps\nstanding_cautions: [care]\n",
    ),
    (
        "registry/plate.yaml",
        "\
fields:
  phase: { title: Phase, choices: { single: Single, three: Three } }
  head_min: { title: Lowest head, unit: psi, plausible: 1 psi to 50 psi }
  head_max: { title: Highest head, unit: psi, plausible: 10 psi to 90 psi }
order:
  - [head_min, head_max]
",
    ),
    (
        "registry/readings.yaml",
        "\
readings:
  supply: { title: Supply, unit: V, plausible: 0 V to 150 V, accuracy: 1 V }
  warm: { title: Warm side, unit: °F, plausible: 30 °F to 200 °F, accuracy: 1 °F }
  cold: { title: Cold side, unit: °F, plausible: 30 °F to 120 °F, accuracy: 1 °F }
  rise:
    title: Rise
    unit: °F
    difference: true
    worked_out: { formula: temperature_rise, supply: warm, return: cold }
",
    ),
    (
        "registry/signs.yaml",
        "signs:\n  noise: { ask: What is heard?, values: { hum: It hums, quiet: Nothing } }\n",
    ),
    (
        "registry/parts.yaml",
        "parts:\n  motor:\n    title: Motor\n    proof:\n      - supply: 100 V to 130 V\n      - noise: hum\n",
    ),
    (
        "registry/faults.yaml",
        "faults:\n  motor_dead: { title: Motor dead, remedy: replace motor }\n  fine: { title: All right, remedy: none }\n",
    ),
    (
        "registry/restores.yaml",
        "restores:\n  cover: Screw the cover on\n",
    ),
    (
        "registry/cautions.yaml",
        "cautions:\n  care: { text: Take care, source: practice }\n",
    ),
    (
        "registry/sources.yaml",
        "sources:\n  practice: { title: Common practice, kind: practice }\n",
    ),
    (
        "stands-still.yaml",
        "\
tree: stands-still
title: The pump stands still
complaint: It does not pump
start: supply
steps:
  supply:
    measure: supply
    source: practice
    bands:
      below 100 V: fine
      at least 100 V: noise
  noise: { observe: noise, choices: { hum: motor, quiet: fine } }
  motor: { verdict: motor_dead, because: It hums with its supply. }
  fine: { verdict: fine, because: Nothing is wrong. }
",
    ),
];

/// The tree of the minimal library.
pub const TREE: &str = "stands-still.yaml";

impl Written {
    pub fn small() -> Self {
        Self(
            FILES
                .map(|(name, text)| (name.to_owned(), text.to_owned()))
                .into(),
        )
    }

    /// With one file written otherwise, or added.
    pub fn with(mut self, name: &str, text: impl Into<String>) -> Self {
        self.0.insert(name.to_owned(), text.into());
        self
    }

    /// With a piece of one file, which it holds once, swapped for another.
    #[track_caller]
    pub fn swapped(self, name: &str, old: &str, new: &str) -> Self {
        let text = self.0[name].clone();
        assert_eq!(text.matches(old).count(), 1, "{name} must hold {old:?} once");
        self.with(name, text.replace(old, new))
    }

    pub fn read(&self) -> (Library, Vec<Problem>) {
        let files = self.0.iter().map(|(name, text)| file(name, text));
        let (library, problems) = load(Files::new(files.collect()));
        schemas::refuse_nothing_of(&library.files, &problems);
        (library, problems)
    }

    /// Every problem as `file:line:column kind: message`, in the order of their places.
    pub fn problems(&self) -> Vec<String> {
        let (library, mut problems) = self.read();
        problems.sort_by_key(|problem| problem.span);
        let words = problems.iter().map(|problem| {
            let place = library.files.place(problem.span);
            let what = match &problem.kind {
                ProblemKind::Malformed { message, .. } => format!("malformed: {message}"),
                ProblemKind::UnknownName {
                    what, name, nearest, ..
                } => match nearest {
                    Some(nearest) => format!("unknown {what} `{name}`, meant `{nearest}`"),
                    None => format!("unknown {what} `{name}`"),
                },
                ProblemKind::DuplicateName {
                    what,
                    name,
                    first,
                    look_alike,
                } => {
                    let first = library.files.place(*first);
                    let (file, line, column) = (first.file, first.line, first.column);
                    match look_alike {
                        Some(alike) => {
                            format!("duplicate {what} `{name}` looks like `{alike}`, {file}:{line}:{column}")
                        }
                        None => format!("duplicate {what} `{name}`, first {file}:{line}:{column}"),
                    }
                }
                ProblemKind::UnitMismatch(wrong) => format!("unit: {}", wrong.message),
            };
            format!("{}:{}:{} {what}", place.file, place.line, place.column)
        });
        words.collect()
    }

    #[track_caller]
    pub fn says(&self, expected: &[&str]) {
        assert_eq!(self.problems(), expected);
    }

    /// The helps of everything malformed, in the order of their places.
    pub fn helps(&self) -> Vec<String> {
        let (_, mut problems) = self.read();
        problems.sort_by_key(|problem| problem.span);
        let helps = problems.into_iter().filter_map(|problem| match problem.kind {
            ProblemKind::Malformed { help, .. } => Some(help),
            _ => None,
        });
        helps.collect()
    }
}

#[test]
fn the_minimal_library_is_right() {
    Written::small().says(&[]);
}

#[test]
fn what_nothing_needs_may_be_absent() {
    let files = [
        ("library.yaml", "library: bare\n"),
        (
            "registry/faults.yaml",
            "faults:\n  fine: { title: Fine, remedy: none }\n",
        ),
        (
            "bare.yaml",
            "tree: bare\ntitle: Bare\nstart: end\nsteps:\n  end: { verdict: fine, because: So it is. }\n",
        ),
    ];
    Written(
        files
            .map(|(name, text)| (name.to_owned(), text.to_owned()))
            .into(),
    )
    .says(&[]);
}

#[test]
fn a_library_without_its_library_yaml_is_told_what_to_write() {
    let mut library = Written::small();
    library.0.remove("library.yaml");
    let missing = ["library.yaml:1:1 malformed: the library has no `library.yaml`"];
    library.says(&missing);
    assert_eq!(
        library.helps(),
        ["write one, with at least a line `library: NAME`; its title, edition, gate and dangers stand there"]
    );
    // An overlay's does not stand in for it.
    library.with("1/library.yaml", "title: Ours\n").says(&missing);
}

#[test]
fn a_file_that_could_not_be_read_is_malformed_where_its_text_ends() {
    let why = Unread {
        message: "not UTF-8 from byte 14 on".to_owned(),
        help: "save the file as UTF-8".to_owned(),
    };
    let small = Written::small().read().0.files;
    let files = small.with(SourceFile::unread("broken.yaml", "tree: broken\nt", why));
    let (library, problems) = load(files);
    assert_eq!(problems.len(), 1, "{problems:?}");
    let place = library.files.place(problems[0].span);
    assert_eq!(
        (place.file.as_str(), place.line, place.column),
        ("broken.yaml", 2, 2)
    );
    assert_eq!(library.trees.len(), 1, "the rest is read");
}
