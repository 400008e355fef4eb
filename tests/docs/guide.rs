//! The guide is worked through as an author would: each file is written, each command run, and what it says compared.

use std::fs;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use tempfile::TempDir;

use super::blocks::blocks;
use super::fragment::Fragment;
use super::kept::{keep, page};

const GUIDE: &str = "docs/guide.md";

/// In what a command says, this line stands for lines that the guide leaves out.
const LEFT_OUT: &str = "…";

#[test]
fn what_the_guide_shows_is_what_the_program_says() {
    let (_, right) = worked_through();
    keep(GUIDE, &right);
}

#[test]
fn the_library_of_the_guide_is_fit_for_release() {
    let (folder, _) = worked_through();
    for arguments in [
        "check air-compressor --release",
        "rehearse air-compressor --require steps",
        "check air-compressor --overlay north-shop --release",
        "rehearse air-compressor --overlay north-shop",
    ] {
        let run = program(folder.path(), arguments);
        let said = String::from_utf8_lossy(&run.stdout);
        assert!(run.status.success(), "{arguments}: {said}");
        assert!(!said.contains("warning["), "{arguments}: {said}");
    }
}

/// Does all that the guide says: the folder it was done in, and the guide as it should be.
fn worked_through() -> (TempDir, String) {
    let folder = tempfile::tempdir().unwrap();
    let guide = page(GUIDE);
    let lines: Vec<&str> = guide.lines().collect();
    let mut right: Vec<String> = Vec::new();
    let mut next = 0;
    for block in blocks(&guide) {
        match block.language {
            "yaml" => Fragment::of(&block.text).put_into(folder.path()),
            "console" => {
                right.extend(lines[next..block.line].iter().map(|&line| line.to_owned()));
                right.extend(ran(folder.path(), &block.text).lines().map(str::to_owned));
                next = block.line + block.text.lines().count();
            }
            "text" => {}
            other => panic!("{GUIDE}:{}: nothing tests a block of `{other}`", block.line),
        }
    }
    right.extend(lines[next..].iter().map(|&line| line.to_owned()));
    (folder, right.join("\n") + "\n")
}

/// A block of commands with what each says now. Where the block leaves something out, as much is left out again.
fn ran(folder: &Path, block: &str) -> String {
    let mut right = String::new();
    for command in format!("\n{block}").split("\n$ ").skip(1) {
        let (line, shown) = command.split_once('\n').unwrap_or((command, ""));
        let shown: Vec<&str> = shown.lines().collect();
        let says = said(folder, line);
        let says: Vec<&str> = says.lines().collect();
        right.push_str(&format!("$ {line}\n"));
        for line in cut_alike(&shown, &says) {
            right.push_str(&format!("{line}\n"));
        }
    }
    right
}

/// What a command says, without its middle or end where that is left out of what is shown.
fn cut_alike<'a>(shown: &[&str], says: &[&'a str]) -> Vec<&'a str> {
    let Some(before) = shown.iter().position(|line| *line == LEFT_OUT) else {
        return says.to_vec();
    };
    let behind = shown.len() - before - 1;
    assert!(before + behind < says.len(), "nothing is left out of {says:?}");
    [&says[..before], &[LEFT_OUT], &says[says.len() - behind..]].concat()
}

/// What a command says, on standard output and after it on standard error.
fn said(folder: &Path, line: &str) -> String {
    if let Some(made) = line.strip_prefix("mkdir ") {
        made.split(' ')
            .for_each(|made| fs::create_dir(folder.join(made)).unwrap());
        return String::new();
    }
    let (command, saved) = line
        .split_once(" > ")
        .map_or((line, None), |(command, file)| (command, Some(file)));
    let arguments = command
        .strip_prefix("proofwalk ")
        .unwrap_or_else(|| panic!("`{command}` is not run by any test"));
    let Output { stdout, stderr, .. } = program(folder, arguments);
    let (mut out, err) = (
        String::from_utf8(stdout).unwrap(),
        String::from_utf8(stderr).unwrap(),
    );
    if let Some(file) = saved {
        assert!(!out.is_empty(), "`{command}` saves nothing");
        fs::write(folder.join(file), out).unwrap();
        out = String::new();
    }
    out + &err
}

/// Runs the program where an author has the folder of the library beside them.
fn program(folder: &Path, arguments: &str) -> Output {
    Command::new(env!("CARGO_BIN_EXE_proofwalk"))
        .args(arguments.split(' '))
        .current_dir(folder)
        .env_clear()
        .env("LANG", "C.UTF-8")
        .env("XDG_STATE_HOME", folder.join("state"))
        .stdin(Stdio::null())
        .output()
        .unwrap()
}
