//! Tree files from a folder.

use std::fs::{self, File, Permissions};
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::Path;

use proofwalk::store::{LIBRARY_LIMIT, TREE_FILE_LIMIT, read_layers, read_library};
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

/// The folder cannot be read at all.
#[track_caller]
fn refused(folder: &Path, message: &str) {
    assert_eq!(read_library(folder).unwrap_err().to_string(), message);
}

/// These files stand there and cannot be read; each is told with the line its fault is in.
#[track_caller]
fn unread(folder: &Path, messages: &[&str]) {
    let files = read_library(folder).unwrap();
    let told: Vec<String> = (files.iter())
        .filter_map(|file| {
            let why = file.why_unread()?;
            let (line, column) = file.line_column(file.text().len() as u32);
            Some(format!(
                "{}:{line}:{column}: {}; {}",
                file.name(),
                why.message,
                why.help
            ))
        })
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
        &format!(
            "{path}: there is no .yaml file in this folder; name the folder of a library; its files end in .yaml. \
             To begin a library here, write library.yaml with a line `library: NAME`"
        ),
    );
    refused(
        &temp.path().join("no"),
        &format!("{path}/no: there is no such folder; name the folder of a library"),
    );
    refused(
        &temp.path().join("notes.txt"),
        &format!("{path}/notes.txt: this is no folder; name the folder that holds the library's files"),
    );
}

#[test]
fn what_cannot_be_read_is_told_file_by_file_and_keeps_no_other_from_being_read() {
    let temp = folder(&[
        ("a.yml", b""),
        ("b.YAML", b""),
        ("c.yaml", b"one\n\xc2\xb0\x80"),
        ("d.yaml", b"\xff\xfea\0"),
        ("e\x1b.yml", b""),
        ("good.yaml", b"good"),
    ]);
    mkfifoat(CWD, temp.path().join("f.yaml"), Mode::RWXU).unwrap();
    let whole = read_library(temp.path()).unwrap();
    let good = whole.iter().find(|file| file.name() == "good.yaml").unwrap();
    assert_eq!((good.text(), good.why_unread()), ("good", None));
    unread(
        temp.path(),
        &[
            "a.yml:1:1: the ending of a tree file is .yaml, not .yml; rename it to a.yaml",
            "b.YAML:1:1: the ending of a tree file is .yaml, not .YAML; rename it to b.yaml",
            "c.yaml:2:2: not UTF-8 from byte 6 on; save the file as UTF-8",
            "d.yaml:1:1: this is UTF-16, by the byte order mark at its start; save the file as UTF-8",
            "e\u{1b}.yml:1:1: the ending of a tree file is .yaml, not .yml; rename it to e\u{1b}.yaml",
            "f.yaml:1:1: this is no regular file; put a regular file there, or give it another ending",
        ],
    );
}

#[test]
fn what_may_not_be_read_is_told_as_well() {
    if rustix::process::geteuid().is_root() {
        eprintln!("skipped: the administrator may read everything");
        return;
    }
    let temp = folder(&[("a.yaml", b""), ("shut.yaml", b""), ("shut/x.yaml", b"")]);
    for name in ["shut.yaml", "shut"] {
        fs::set_permissions(temp.path().join(name), Permissions::from_mode(0o000)).unwrap();
    }
    unread(
        temp.path(),
        &[
            "shut:1:1: cannot be read: Permission denied (os error 13); ask its owner for the right to read it",
            "shut.yaml:1:1: cannot be read: Permission denied (os error 13); ask its owner for the right to read it",
        ],
    );
    fs::set_permissions(temp.path(), Permissions::from_mode(0o000)).unwrap();
    let path = temp.path().display();
    refused(
        temp.path(),
        &format!(
            "{path}: cannot be read: Permission denied (os error 13); ask its owner for the right to read it"
        ),
    );
    fs::set_permissions(temp.path(), Permissions::from_mode(0o700)).unwrap();
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
    let not_read = "this symbolic link leads to what is not read as part of the library";
    unread(
        temp.path(),
        &[
            &format!("file.yaml:1:1: this symbolic link leads out of the library; {help}"),
            &format!("folder:1:1: this symbolic link leads out of the library; {help}"),
            &format!("hidden.yaml:1:1: {not_read}; {help}"),
            &format!("nowhere.yaml:1:1: this symbolic link leads nowhere; {help}"),
            &format!("self.yaml:1:1: this symbolic link leads nowhere; {help}"),
            &format!("text.yaml:1:1: {not_read}; {help}"),
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
    unread(
        temp.path(),
        &["a.yaml:1:1: larger than the 64 MiB that one file may have; divide it into several files"],
    );
    for number in 0..LIBRARY_LIMIT / TREE_FILE_LIMIT {
        sparse(temp.path(), &format!("b{number}.yaml"), TREE_FILE_LIMIT);
    }
    let too_large = |folder: &Path| {
        format!(
            "{}: with the .yaml files in this folder, the library is larger than 1024 MiB; check whether this is the folder \
             of a library, or divide it into several",
            folder.display()
        )
    };
    refused(temp.path(), &too_large(temp.path()));
    let base = folder(&[("library.yaml", b"")]);
    let error = read_layers(Some(base.path()), &[temp.path().to_owned()]).unwrap_err();
    assert_eq!(error.to_string(), too_large(temp.path()));
}

fn layers(base: &Path, overlays: &[&Path]) -> Result<Vec<(String, String)>, String> {
    let overlays: Vec<_> = overlays.iter().map(|folder| folder.to_path_buf()).collect();
    let files = read_layers(Some(base), &overlays).map_err(|error| error.to_string())?;
    Ok(files.iter().map(|file| (file.key(), file.shown())).collect())
}

#[test]
fn a_file_is_known_by_its_layer_and_shown_with_the_overlays_folder() {
    let base = folder(&[("a.yaml", b""), ("registry/parts.yaml", b"")]);
    let (one, two) = (folder(&[("a.yaml", b"")]), folder(&[("a.yaml", b"")]));
    let read = layers(base.path(), &[two.path(), one.path()]).unwrap();
    let shown = |folder: &TempDir| format!("{}/a.yaml", folder.path().display());
    let expected = [
        ("a.yaml".to_owned(), "a.yaml".to_owned()),
        ("registry/parts.yaml".to_owned(), "registry/parts.yaml".to_owned()),
        (".overlay-1/a.yaml".to_owned(), shown(&two)),
        (".overlay-2/a.yaml".to_owned(), shown(&one)),
    ];
    assert_eq!(read, expected);
}

#[test]
fn an_overlay_that_is_no_folder_of_its_own_is_refused() {
    let temp = folder(&[
        ("base/a.yaml", b""),
        ("base/company/a.yaml", b""),
        ("over/a.yaml", b""),
        ("notes.txt", b""),
        ("empty/notes.txt", b""),
    ]);
    let at = |name: &str| temp.path().join(name);
    symlink("base", at("link")).unwrap();
    let apart = "keep each in a folder beside the others";
    for (overlays, message) in [
        (&["no"][..], "no: there is no such folder; name the folder of an overlay".to_owned()),
        (
            &["notes.txt"],
            "notes.txt: this is no folder; name the folder that holds the overlay's files".to_owned(),
        ),
        (
            &["empty"],
            "empty: there is no .yaml file in this folder; name the folder of an overlay; its files end in .yaml".to_owned(),
        ),
        (&["base"], format!("base: this overlay is the library's own folder; {apart}")),
        (&["link"], format!("link: this overlay is the library's own folder; {apart}")),
        (
            &["base/company"],
            format!("base/company: this overlay lies in the library's own folder; {apart}"),
        ),
        (&["."], format!(".: this overlay holds the library's own folder; {apart}")),
        (
            &["over", "over"],
            format!("over: this overlay is the folder of the overlay {}; {apart}", at("over").display()),
        ),
    ] {
        let paths: Vec<_> = overlays.iter().map(|name| at(name)).collect();
        let paths: Vec<&Path> = paths.iter().map(AsRef::as_ref).collect();
        let error = layers(&at("base"), &paths).unwrap_err();
        assert_eq!(error, format!("{}/{message}", temp.path().display()));
    }
}
