//! The schemas in a real YAML language server, the one that many editors run: no complaint of what is right, a readable
//! one where something is wrong, keys that complete, and keys that explain themselves.
//!
//! These tests need node and, from npm, yaml-language-server (a general tool for YAML): `.ci/run` installs it. Where it is
//! missing they are skipped by name.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "what tests share stops the test, as the tests do"
)]

mod server;
#[path = "../terminal/tools.rs"]
mod tools;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use proofwalk::store::read_library;
use server::{Finding, Server};
use tempfile::TempDir;

fn library(folder: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)
}

/// A copy of a library with its schemas and the lines that name them, as an author makes them.
fn told(folder: &str) -> TempDir {
    let temp = tempfile::tempdir().unwrap();
    for file in read_library(&library(folder)).unwrap() {
        let path = temp.path().join(file.name());
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, file.text()).unwrap();
    }
    let run = Command::new(env!("CARGO_BIN_EXE_proofwalk"))
        .args(["schema", "--modelines", "--write"])
        .arg(temp.path())
        .output()
        .unwrap();
    assert!(run.status.success(), "{run:?}");
    temp
}

#[test]
fn nothing_is_underlined_in_a_library_that_is_right() {
    let Some(mut server) = Server::start() else {
        return;
    };
    let every_key = told("tests/library/every-key");
    for folder in [library("trees"), every_key.path().to_owned()] {
        let files = read_library(&folder).unwrap();
        for file in &files {
            server.open(&folder.join(file.name()), file.text());
        }
        for file in &files {
            assert!(
                file.text().starts_with("# yaml-language-server: $schema="),
                "{}",
                file.name()
            );
            assert_eq!(
                server.underlined(&folder.join(file.name())),
                [],
                "{}",
                file.name()
            );
        }
    }
}

#[test]
fn a_registry_with_nothing_but_comments_is_right() {
    let Some(mut editor) = Editor::start() else {
        return;
    };
    let path = editor.library.path().join("registry/none-yet.yaml");
    let text = "# yaml-language-server: $schema=../schema/restores.json\n# none yet\n";
    editor.server.open(&path, text);
    assert_eq!(editor.server.underlined(&path), []);
}

/// An editor with a library before it.
struct Editor {
    server: Server,
    library: TempDir,
    cases: usize,
}

/// A file that was opened in an editor, and where the cursor stands.
struct Opened {
    path: PathBuf,
    line: usize,
    column: usize,
}

impl Editor {
    fn start() -> Option<Self> {
        let server = Server::start()?;
        let library = told("tests/library/every-key");
        Some(Self {
            server,
            library,
            cases: 0,
        })
    }

    /// Opens a file after a piece of it, which it holds once, was swapped; the cursor stands behind the new piece.
    #[track_caller]
    fn open(&mut self, file: &str, old: &str, new: &str) -> Opened {
        let path = self.library.path().join(file);
        let text = fs::read_to_string(&path).unwrap();
        assert_eq!(text.matches(old).count(), 1, "{file} must hold {old:?} once");
        let before = [&text[..text.find(old).unwrap()], new].concat();
        // A file of its own for each case, beside the others: its first line says which schema it has.
        self.cases += 1;
        let path = path.with_file_name(format!("case-{}.yaml", self.cases));
        self.server.open(&path, &text.replace(old, new));
        Opened {
            path,
            line: before.matches('\n').count() + 1,
            column: before.rsplit('\n').next().unwrap().chars().count() + 1,
        }
    }

    /// What is underlined after a piece was swapped, all of it in the line of that piece.
    #[track_caller]
    fn says(&mut self, file: &str, old: &str, new: &str, messages: &[&str]) {
        let opened = self.open(file, old, new);
        let found = self.server.underlined(&opened.path);
        let wanted = messages.iter().map(|message| Finding {
            line: opened.line,
            message: (*message).to_owned(),
        });
        assert_eq!(found, wanted.collect::<Vec<_>>(), "{new:?}");
    }

    /// What is offered behind the new piece, sorted and each once.
    #[track_caller]
    fn offers(&mut self, file: &str, old: &str, new: &str) -> String {
        let Opened { path, line, column } = self.open(file, old, new);
        let mut offered = self.server.offered(&path, line, column);
        offered.sort();
        offered.dedup();
        offered.join(" ")
    }

    /// What is shown where the cursor stands on the end of a piece.
    #[track_caller]
    fn explains(&mut self, file: &str, piece: &str) -> String {
        let Opened { path, line, column } = self.open(file, piece, piece);
        self.server.explained(&path, line, column - 1)
    }
}

const TREE: &str = "stands-still.yaml";
const STEP: &str = "starts: { measure: starts, go: rise }";
const NAME: &str = "write one name: lower-case ASCII letters, digits and underscores, at most 64, and none of yes, no, on, \
                    off, true, false, null";

#[test]
fn a_step_that_is_wrong_is_underlined_in_words_that_help() {
    let Some(mut editor) = Editor::start() else {
        return;
    };
    let leads = "say in one way where the answers lead: `bands`, or `go` where all lead to one step";
    for (step, messages) in [
        (
            "starts: { measure: starts, og: rise }",
            vec!["Property og is not allowed.", leads],
        ),
        (
            "starts: { mesure: starts, go: rise }",
            vec![
                "Property mesure is not allowed.",
                "give this step exactly one of measure, observe, do, plate, visit, verdict, return",
            ],
        ),
        (
            "starts: { measure: starts, observe: noise, go: rise }",
            vec!["Property observe is not allowed."],
        ),
        ("starts: { measure: Number of starts, go: rise }", vec![NAME]),
        ("starts: { measure: , go: rise }", vec![NAME]),
        ("starts: { measure: starts }", vec![leads]),
        (
            "starts: { measure: starts, go: { at_most: 1, then: hot } }",
            vec!["Missing property \"go\"."],
        ),
        (
            "starts: { measure: starts, go: { go: rise, at_most: 1 } }",
            vec!["`at_most` needs `then`: the step this leads to after that"],
        ),
        (
            "starts: { measure: starts, go: Rise }",
            vec!["write the name of the step this leads to, or a map with `go`"],
        ),
        (
            "starts: { measure: starts, go: rise, minutes: 2 min }",
            vec!["write a plain number of minutes"],
        ),
        ("starts: nothing", vec!["Incorrect type. Expected \"step\"."]),
    ] {
        editor.says(TREE, STEP, step, &messages);
    }
}

#[test]
fn a_value_that_is_wrong_is_underlined_in_words_that_help() {
    let Some(mut editor) = Editor::start() else {
        return;
    };
    let (readings, parts) = ("registry/readings.yaml", "registry/parts.yaml");
    let claim = "write a band (`above 100 ohm`), the value of a sign, or several of its values in brackets";
    for (file, old, new, message) in [
        (
            TREE,
            "below 100 V: {",
            "'< 100 V': {",
            "write `below B`, `at most B`, `above B`, `at least B` or `A to B`, several joined by commas; a bound is a \
             quantity (24 V), plate.FIELD, 90 % of plate.FIELD, or plate.FIELD - 0.3 in.w.c.",
        ),
        (
            TREE,
            "severity: danger",
            "severity: high",
            "write one of note, advise, repair, danger",
        ),
        (
            TREE,
            "status: field-trial",
            "status: trial",
            "write one of draft, field-trial, approved",
        ),
        (
            TREE,
            "because: The rise says so.",
            "advice: The rise says so.",
            "Missing property \"because\".",
        ),
        (
            TREE,
            "voids: [noise, supply_voltage]",
            "voids: noise",
            "write a list in brackets, [one, two], even where it has one entry",
        ),
        (TREE, "title: Cover", "title: [Cover]", "write one text here"),
        (
            readings,
            "plausible: 0 V to 250 V",
            "plausible: 0 V",
            "write both ends with their units, the smaller first: `0 V to 150 V`",
        ),
        (
            readings,
            "accuracy: 1 % + 0.5 V",
            "accuracy: good",
            "write a share, an amount with its unit, or both: `1 % + 0.3 V`",
        ),
        (
            "registry/faults.yaml",
            "remedy: replace motor",
            "remedy: mend motor",
            "write `replace PART`, `correct`, `shut_down`, `refer` or `none`",
        ),
        (parts, "noise: [hum, grinds]", "noise: It hums", claim),
        (
            parts,
            "supply_voltage: 100 V to 130 V",
            "supply_voltage: about 120 V",
            claim,
        ),
        (
            "registry/plate.yaml",
            "choices: { single: Single phase, three: Three phases }",
            "unit: V",
            "a field that is a number needs `plausible`",
        ),
        ("registry/restores.yaml", "cover: Screw", "the-cover: Screw", NAME),
        (
            "scenarios/hums.yaml",
            "warm: 70 °F",
            "warm: hot",
            "write a number and its unit (24 V), or several in brackets: [24 V, 25 V]",
        ),
        (
            "scenarios/cannot-tell.yaml",
            "ends: unproven",
            "ends: well",
            "write one of unproven",
        ),
    ] {
        editor.says(file, old, new, &[message]);
    }
}

#[test]
fn keys_and_values_are_offered_where_they_belong() {
    let Some(mut editor) = Editor::start() else {
        return;
    };
    let step = editor.offers(TREE, STEP, "new:\n    ");
    assert_eq!(
        step,
        "cautions do measure minutes observe plate return source title verdict visit why"
    );
    let measuring = editor.offers(TREE, STEP, "new:\n    measure: starts\n    ");
    assert!(
        measuring.contains("bands") && measuring.contains("unable") && !measuring.contains("choices"),
        "{measuring}"
    );
    let edge = editor.offers(
        TREE,
        STEP,
        "new:\n    measure: starts\n    go:\n      go: rise\n      ",
    );
    assert!(edge.contains("at_most") && edge.contains("finding"), "{edge}");
    assert_eq!(
        editor.offers(TREE, "severity: danger", "severity: "),
        "advise danger note repair"
    );
    assert_eq!(
        editor.offers(TREE, "status: field-trial", "status: "),
        "approved draft field-trial"
    );
    let formulas = editor.offers("registry/readings.yaml", "formula: temperature_rise", "formula: ");
    assert!(
        formulas.contains("co_air_free") && formulas.contains("temperature_rise"),
        "{formulas}"
    );
    let remedies = editor.offers("registry/faults.yaml", "remedy: replace motor", "remedy: ");
    assert!(
        remedies.contains("replace PART") && remedies.contains("shut_down"),
        "{remedies}"
    );
}

#[test]
fn a_key_explains_itself() {
    let Some(mut editor) = Editor::start() else {
        return;
    };
    for (piece, meaning) in [
        ("on_verdict", "Where to go on after a verdict of the visited tree"),
        ("at_most: 2", "How often a walk may take this edge"),
        ("severity", "How much it matters."),
        ("below 10 A", "Where this answer leads"),
        (
            "hot: { verdict",
            "States a fault of registry/faults.yaml, once its proof holds.",
        ),
        ("complaint", "What the owner complains of."),
        ("noise:\n    observe", "Asks for a sign of registry/signs.yaml."),
    ] {
        let shown = editor.explains(TREE, piece);
        assert!(shown.contains(meaning), "{piece}: {shown}");
    }
    let shown = editor.explains("registry/readings.yaml", "accuracy: 1 % + 0.5 V");
    assert!(shown.contains("How far the usual meter may be off"), "{shown}");
}
