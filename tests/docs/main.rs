//! The documentation: every command runs, every YAML example reads, and what the program knows better is made from it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod blocks;
mod fragment;
mod guide;
mod kept;
mod keys;
mod links;
mod rules;
#[path = "../common/schemas.rs"]
mod schemas;
mod sessions;

use std::collections::BTreeMap;
use std::path::Path;
use std::process::{Command, Stdio};

use proofwalk::check;
use proofwalk::library::{self, ProblemKind};
use proofwalk::source::{Files, Layer, SourceFile};
use proofwalk::walk;

use blocks::texts;
use kept::page;

/// The YAML examples of a page as the files they name in their first line; `continued` ones join the file before.
fn files_of(page: &str) -> Files {
    let mut files: BTreeMap<String, String> = BTreeMap::new();
    for block in texts(page, "yaml") {
        let (first, rest) = block.split_once('\n').unwrap();
        let name = first
            .strip_prefix("# ")
            .expect("an example begins with its file's name");
        let name = name.split(',').next().unwrap();
        files.entry(name.to_owned()).or_default().push_str(rest);
    }
    assert!(!files.is_empty(), "the page has no example");
    let files = files
        .into_iter()
        .map(|(name, text)| match name.strip_prefix(OVERLAY) {
            Some(inside) => SourceFile::new(inside, text).in_layer(Layer::overlay(1, OVERLAY)),
            None => SourceFile::new(name, text),
        });
    Files::new(files.collect())
}

/// The folder of the overlay in the examples.
const OVERLAY: &str = "north-branch/";

#[test]
fn the_library_of_the_format_page_is_checked_and_rehearsed() {
    let files = files_of(&page("docs/format.md"));
    let own = files.iter().filter(|(_, file)| file.layer().number() == 0);
    let own = Files::new(own.map(|(_, file)| file.clone()).collect());
    for (files, replaced) in [(own, 0), (files, 1)] {
        let (library, problems) = library::load(files);
        schemas::refuse_nothing_of(&library.files, &problems);
        let findings = check::run(&library, &problems);
        assert!(findings.is_empty(), "{findings:#?}");
        assert_eq!(library.scenarios.len(), 2);
        assert_eq!(library.replaced.len(), replaced);
        for scenario in &library.scenarios {
            let run = walk::rehearse(&library, scenario);
            assert_eq!(run.departures, [], "{}", scenario.title);
        }
    }
}

#[test]
fn the_yaml_of_the_readme_reads() {
    let files = files_of(&page("README.md")).with(SourceFile::new("library.yaml", "library: sump-pump"));
    let (_, problems) = library::load(files);
    let malformed = |kind: &ProblemKind| matches!(kind, ProblemKind::Malformed { .. });
    let malformed: Vec<_> = problems
        .iter()
        .filter(|problem| malformed(&problem.kind))
        .collect();
    assert!(malformed.is_empty(), "{malformed:#?}");
}

#[test]
fn every_command_of_the_readme_runs() {
    let folder = tempfile::tempdir().unwrap();
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    std::os::unix::fs::symlink(root.join("trees"), folder.path().join("trees")).unwrap();
    // An audit follows no link to a folder of sessions.
    for demo in ["demo-sessions", "demo-sessions/libraries"] {
        std::fs::create_dir(folder.path().join(demo)).unwrap();
        for entry in std::fs::read_dir(root.join(demo)).unwrap() {
            let from = entry.unwrap().path();
            if from.is_file() {
                let to = folder.path().join(demo).join(from.file_name().unwrap());
                std::fs::copy(&from, to).unwrap();
            }
        }
    }
    let readme = page("README.md");
    let commands = texts(&readme, "console");
    let commands: Vec<&str> = commands.iter().flat_map(|block| block.lines()).collect();
    assert!(commands.len() > 5);
    for command in commands {
        let words = command
            .strip_prefix("$ proofwalk")
            .expect("a line of the examples is a command");
        let run = Command::new(env!("CARGO_BIN_EXE_proofwalk"))
            .args(words.split_whitespace())
            .current_dir(folder.path())
            .stdin(Stdio::null())
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&run.stderr);
        assert!(run.status.success(), "{command}: {}\n{said}", run.status);
    }
}

#[test]
fn the_two_commands_of_the_readme_are_those_that_the_project_runs() {
    let readme = page("README.md");
    let shell = texts(&readme, "sh");
    assert_eq!(
        shell,
        ["cargo run --release -- walk no-heat\n", "cargo test --locked\n"]
    );
    assert!(page(".ci/run").contains("cargo test --locked"));
}
