//! Tree files from a folder.

use std::fs::{self, File};
use std::os::unix::fs::symlink;
use std::path::Path;

use proofwalk::store::{LIBRARY_LIMIT, TREE_FILE_LIMIT, read_library};
use rustix::fs::{CWD, Mode, mkfifoat};
use tempfile::TempDir;

/// A folder with these files.
fn folder(files: &[(&str, &[u8])]) -> TempDir {
    let temp = tempfile::tempdir().unwrap();
    for (name, bytes) in files {
        let path = temp.path().join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, bytes).unwrap();
    }
    temp
}

fn names(folder: &Path) -> Vec<String> {
    let files = read_library(folder).unwrap();
    files.iter().map(|file| file.name().to_owned()).collect()
}

#[track_caller]
fn refused(folder: &Path, messages: &[&str]) {
    let told: Vec<String> = read_library(folder)
        .unwrap_err()
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(told, messages);
}

#[test]
fn files_are_named_from_the_folder_and_sorted() {
    let temp = folder(&[
        ("trees/no-heat.yaml", b"b"),
        ("library.yaml", b"\xef\xbb\xbfa"),
        ("trees.yaml", b""),
        ("README.md", b""),
        (".hidden.yaml", b"\xff"),
        (".git/x.yaml", b"\xff"),
    ]);
    assert_eq!(
        names(temp.path()),
        ["library.yaml", "trees.yaml", "trees/no-heat.yaml"]
    );
    assert_eq!(read_library(temp.path()).unwrap()[0].text(), "a");
}

#[test]
fn a_folder_may_itself_be_hidden_or_a_link() {
    let temp = folder(&[(".library/a.yaml", b"")]);
    symlink(".library", temp.path().join("link")).unwrap();
    assert_eq!(names(&temp.path().join(".library")), ["a.yaml"]);
    assert_eq!(names(&temp.path().join("link")), ["a.yaml"]);
}

#[test]
fn a_missing_and_an_empty_folder_say_what_to_do() {
    let temp = folder(&[("notes.txt", b"")]);
    let path = temp.path().display();
    refused(
        temp.path(),
        &[&format!(
            "{path}: there is no .yaml file in this folder; name the folder of a library; its files end in .yaml"
        )],
    );
    refused(
        &temp.path().join("no"),
        &[&format!(
            "{path}/no: there is no such folder; name the folder of a library"
        )],
    );
    refused(
        &temp.path().join("notes.txt"),
        &[&format!(
            "{path}/notes.txt: this is no folder; name the folder that holds the library's files"
        )],
    );
}

#[test]
fn everything_that_is_wrong_is_told_at_once() {
    let temp = folder(&[
        ("a.yml", b""),
        ("b.YAML", b""),
        ("c.yaml", b"one\n\xc2\xb0\x80"),
        ("d.yaml", b"\xff\xfea\0"),
        ("e\x1b.yml", b""),
        ("good.yaml", b""),
    ]);
    mkfifoat(CWD, temp.path().join("f.yaml"), Mode::RWXU).unwrap();
    refused(
        temp.path(),
        &[
            "a.yml: the ending of a tree file is .yaml, not .yml; rename it to a.yaml",
            "b.YAML: the ending of a tree file is .yaml, not .YAML; rename it to b.yaml",
            "c.yaml:2:2: not UTF-8 from byte 6 on; save the file as UTF-8",
            "d.yaml: this is UTF-16, by the byte order mark at its start; save the file as UTF-8",
            "e^[.yml: the ending of a tree file is .yaml, not .yml; rename it to e^[.yaml",
            "f.yaml: this is no regular file; put a regular file there, or give it another ending",
        ],
    );
}

#[test]
fn links_that_lead_out_of_what_is_read_are_refused() {
    let outside = folder(&[("x.yaml", b"")]);
    let temp = folder(&[("a.yaml", b""), (".hidden/b.yaml", b""), ("c.txt", b"")]);
    let link = |target: &Path, name: &str| symlink(target, temp.path().join(name)).unwrap();
    link(&outside.path().join("x.yaml"), "file.yaml");
    link(outside.path(), "folder");
    link(Path::new(".hidden/b.yaml"), "hidden.yaml");
    link(Path::new("c.txt"), "text.yaml");
    link(Path::new("nothing"), "nowhere.yaml");
    link(Path::new("self.yaml"), "self.yaml");
    let help = "put the file or folder itself there, or remove the link";
    refused(
        temp.path(),
        &[
            &format!("file.yaml: this symbolic link leads out of the library; {help}"),
            &format!("folder: this symbolic link leads out of the library; {help}"),
            &format!(
                "hidden.yaml: this symbolic link leads to what is not read as part of the library; {help}"
            ),
            &format!("nowhere.yaml: this symbolic link leads nowhere; {help}"),
            &format!("self.yaml: this symbolic link leads nowhere; {help}"),
            &format!(
                "text.yaml: this symbolic link leads to what is not read as part of the library; {help}"
            ),
        ],
    );
}

#[test]
fn links_to_what_is_read_anyway_are_passed_over_and_a_circle_of_them_ends() {
    let temp = folder(&[("trees/a.yaml", b""), ("notes.txt", b"")]);
    symlink("..", temp.path().join("trees/up")).unwrap();
    symlink("trees/a.yaml", temp.path().join("b.yaml")).unwrap();
    symlink("/dev/null", temp.path().join("notes.md")).unwrap();
    assert_eq!(names(temp.path()), ["trees/a.yaml"]);
}

/// A file of this length that takes no room on the disk, and would take it in memory.
fn sparse(folder: &Path, name: &str, length: u64) {
    File::create(folder.join(name)).unwrap().set_len(length).unwrap();
}

#[test]
fn what_is_too_large_is_not_read() {
    let temp = tempfile::tempdir().unwrap();
    sparse(temp.path(), "a.yaml", TREE_FILE_LIMIT + 1);
    refused(
        temp.path(),
        &["a.yaml: larger than the 64 MiB that one file may have; divide it into several files"],
    );
    for number in 0..LIBRARY_LIMIT / TREE_FILE_LIMIT {
        sparse(temp.path(), &format!("b{number}.yaml"), TREE_FILE_LIMIT);
    }
    refused(
        temp.path(),
        &[&format!(
            "{}: the .yaml files in this folder are larger than 1024 MiB together; check whether this is the folder of a \
             library, or divide it into several",
            temp.path().display()
        )],
    );
}
