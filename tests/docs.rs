//! The examples of the documentation: every command runs, every YAML example reads.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "what tests share stops the test, as the tests do"
)]

#[path = "common/schemas.rs"]
mod schemas;

use std::collections::BTreeMap;
use std::path::Path;
use std::process::{Command, Stdio};

use proofwalk::check;
use proofwalk::library::{self, ProblemKind};
use proofwalk::source::{Files, SourceFile};
use proofwalk::walk;

fn page(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(name);
    std::fs::read_to_string(path).unwrap()
}

/// The fenced blocks of a language.
fn blocks(text: &str, language: &str) -> Vec<String> {
    let mut blocks = Vec::new();
    let mut open: Option<(bool, String)> = None;
    for line in text.lines() {
        match (&mut open, line.strip_prefix("```")) {
            (None, Some(fence)) => open = Some((fence == language, String::new())),
            (Some(_), Some(_)) => {
                if let Some((true, block)) = open.take() {
                    blocks.push(block);
                }
            }
            (Some((_, block)), None) => {
                block.push_str(line);
                block.push('\n');
            }
            (None, None) => {}
        }
    }
    blocks
}

/// The YAML examples of a page as the files they name in their first line; `continued` ones join the file before.
fn files_of(page: &str) -> Files {
    let mut files: BTreeMap<String, String> = BTreeMap::new();
    for block in blocks(page, "yaml") {
        let (first, rest) = block.split_once('\n').unwrap();
        let name = first
            .strip_prefix("# ")
            .expect("an example begins with its file's name");
        let name = name.split(',').next().unwrap();
        files.entry(name.to_owned()).or_default().push_str(rest);
    }
    assert!(!files.is_empty(), "the page has no example");
    Files::new(
        files
            .into_iter()
            .map(|(name, text)| SourceFile::new(name, text))
            .collect(),
    )
}

#[test]
fn the_library_of_the_format_page_is_checked_and_rehearsed() {
    let (library, problems) = library::load(files_of(&page("docs/format.md")));
    schemas::refuse_nothing_of(&library.files, &problems);
    let findings = check::run(&library, &problems);
    assert!(findings.is_empty(), "{findings:#?}");
    assert_eq!(library.scenarios.len(), 2);
    for scenario in &library.scenarios {
        let run = walk::rehearse(&library, scenario);
        assert_eq!(run.departures, [], "{}", scenario.title);
    }
}

#[test]
fn the_yaml_of_the_readme_reads() {
    let (_, problems) = library::load(files_of(&page("README.md")));
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
    let trees = Path::new(env!("CARGO_MANIFEST_DIR")).join("trees");
    std::os::unix::fs::symlink(trees, folder.path().join("trees")).unwrap();
    let readme = page("README.md");
    let commands = blocks(&readme, "console");
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
    let shell = blocks(&readme, "sh");
    assert_eq!(
        shell,
        ["cargo run --release -- walk no-heat\n", "cargo test --locked\n"]
    );
    assert!(page(".ci/run").contains("cargo test --locked"));
}
