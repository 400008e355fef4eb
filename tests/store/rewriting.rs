//! Writing into the folder of a library.

use std::fs;
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::Path;

use proofwalk::store::{read_library, rewrite_library, write_beside};
use tempfile::TempDir;

fn library(files: &[(&str, &[u8])]) -> TempDir {
    let temp = tempfile::tempdir().unwrap();
    for (name, bytes) in files {
        let path = temp.path().join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, bytes).unwrap();
    }
    temp
}

fn marked(_: &str, text: &str) -> Option<String> {
    (!text.contains("# marked")).then(|| format!("{text}# marked\n"))
}

fn beside(folder: &Path, text: &str) -> Result<Vec<String>, String> {
    write_beside(folder, "schema", &[("a.json".to_owned(), text.to_owned())])
        .map_err(|error| error.to_string())
}

fn nothing_was_left_over(folder: &Path) {
    let names = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name());
    let strange: Vec<_> = names
        .filter(|name| name.as_encoded_bytes().starts_with(b"."))
        .collect();
    assert!(strange.is_empty(), "{strange:?}");
}

#[test]
fn a_file_is_changed_as_it_is_on_disk_and_only_where_it_must_be() {
    let temp = library(&[
        ("a.yaml", b"\xef\xbb\xbfa: 1\r\n"),
        ("b/c.yaml", b"# marked\n"),
        ("notes.txt", b"text"),
        (".hidden.yaml", b"b: 1\n"),
    ]);
    fs::set_permissions(temp.path().join("a.yaml"), fs::Permissions::from_mode(0o640)).unwrap();
    assert_eq!(rewrite_library(temp.path(), marked).unwrap(), ["a.yaml"]);
    assert_eq!(rewrite_library(temp.path(), marked).unwrap(), [""; 0]);
    let read = |name: &str| fs::read(temp.path().join(name)).unwrap();
    assert_eq!(read("a.yaml"), b"\xef\xbb\xbfa: 1\r\n# marked\n");
    assert_eq!(
        (read("b/c.yaml"), read(".hidden.yaml")),
        (b"# marked\n".to_vec(), b"b: 1\n".to_vec())
    );
    let mode = fs::metadata(temp.path().join("a.yaml"))
        .unwrap()
        .permissions()
        .mode();
    assert_eq!(mode & 0o777, 0o640);
    fs::remove_file(temp.path().join(".hidden.yaml")).unwrap();
    nothing_was_left_over(temp.path());
}

#[test]
fn where_one_file_is_not_as_it_should_be_none_is_changed() {
    type Spoil = fn(&Path);
    let faults: [(&str, Spoil); 3] = [
        ("b.yaml: not UTF-8", |path| fs::write(path, b"\xff").unwrap()),
        ("b.yaml: this symbolic link leads out of the library", |path| {
            symlink("/dev/null", path).unwrap()
        }),
        ("b.yaml: the file is write-protected", |path| {
            fs::write(path, b"b: 1\n").unwrap();
            fs::set_permissions(path, fs::Permissions::from_mode(0o444)).unwrap();
        }),
    ];
    for (message, spoil) in faults {
        let temp = library(&[("a.yaml", b"a: 1\n")]);
        spoil(&temp.path().join("b.yaml"));
        let errors = rewrite_library(temp.path(), marked).unwrap_err();
        assert_eq!(errors.len(), 1);
        assert!(errors[0].to_string().starts_with(message), "{errors:?}");
        assert!(!errors[0].unsaved);
        assert_eq!(fs::read(temp.path().join("a.yaml")).unwrap(), b"a: 1\n");
    }
}

#[test]
fn what_is_written_beside_a_library_is_no_part_of_it() {
    let temp = library(&[("a.yaml", b"a: 1\n")]);
    let before = read_library(temp.path()).unwrap();
    assert_eq!(beside(temp.path(), "{}\n").unwrap(), ["schema/a.json"]);
    assert_eq!(beside(temp.path(), "{}\n").unwrap(), [""; 0], "it is so already");
    assert_eq!(beside(temp.path(), "[]\n").unwrap(), ["schema/a.json"]);
    assert_eq!(fs::read(temp.path().join("schema/a.json")).unwrap(), b"[]\n");
    assert_eq!(read_library(temp.path()).unwrap(), before);
    nothing_was_left_over(&temp.path().join("schema"));
}

#[test]
fn nothing_is_written_through_a_link_or_over_what_is_no_file() {
    let elsewhere = library(&[("a.json", b"mine")]);
    let temp = library(&[("a.yaml", b"a: 1\n")]);
    symlink(elsewhere.path(), temp.path().join("schema")).unwrap();
    assert!(
        beside(temp.path(), "{}\n")
            .unwrap_err()
            .starts_with("schema: something else than a folder")
    );
    let temp = library(&[("schema/b.json", b"")]);
    symlink(elsewhere.path().join("a.json"), temp.path().join("schema/a.json")).unwrap();
    assert!(
        beside(temp.path(), "{}\n")
            .unwrap_err()
            .starts_with("schema/a.json: this is no regular file")
    );
    assert_eq!(fs::read(elsewhere.path().join("a.json")).unwrap(), b"mine");
    let missing = temp.path().join("missing");
    assert!(
        beside(&missing, "{}\n")
            .unwrap_err()
            .contains("there is no such folder")
    );
}
