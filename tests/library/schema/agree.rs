//! The schemas and the loader agree: on whole libraries, and on each of them with one thing changed.

use std::collections::BTreeSet;
use std::path::Path;

use proofwalk::library::{FileKind, ProblemKind, load, schema};
use proofwalk::source::{Files, SourceFile};
use proofwalk::store::read_library;
use serde_json::{Value, json};

use super::complaints;

/// The library of this test in which every key of the format stands.
fn every_key() -> Vec<SourceFile> {
    library("tests/library/every-key")
}

fn library(folder: &str) -> Vec<SourceFile> {
    read_library(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)).unwrap()
}

#[test]
fn a_right_library_is_right_in_an_editor() {
    for folder in ["trees", "tests/library/every-key"] {
        let files = library(folder);
        assert!(files.len() > 15);
        let (_, problems) = load(Files::new(files.clone()));
        assert!(problems.is_empty(), "{folder}: {problems:#?}");
        for file in files {
            let none: [String; 0] = [];
            assert_eq!(
                complaints(file.name(), file.text()),
                none,
                "{folder}/{}",
                file.name()
            );
        }
    }
}

#[test]
fn every_key_that_a_schema_knows_is_taken_by_the_loader() {
    let mut known = BTreeSet::new();
    for kind in FileKind::ALL {
        keys_of_schema(&schema(kind), kind.name(), &mut known);
    }
    let mut used = BTreeSet::new();
    for file in every_key() {
        let kind = FileKind::of(file.name()).unwrap().name();
        keys_of(&serde_yaml::from_str(file.text()).unwrap(), kind, &mut used);
    }
    let unused: Vec<_> = known.difference(&used).collect();
    assert!(
        unused.is_empty(),
        "write these into tests/library/every-key: {unused:?}"
    );
    assert!(known.len() > 70);
}

fn keys_of_schema(schema: &Value, kind: &str, keys: &mut BTreeSet<(String, String)>) {
    match schema {
        Value::Object(map) => {
            for (name, inside) in map {
                if name == "properties" {
                    for key in inside.as_object().unwrap().keys() {
                        keys.insert((kind.to_owned(), key.clone()));
                    }
                }
                // What only one formula knows is no key of the format.
                if name != "allOf"
                    || map
                        .get("properties")
                        .is_none_or(|keys| keys.get("formula").is_none())
                {
                    keys_of_schema(inside, kind, keys);
                }
            }
        }
        Value::Array(items) => items.iter().for_each(|item| keys_of_schema(item, kind, keys)),
        _ => {}
    }
}

fn keys_of(value: &Value, kind: &str, keys: &mut BTreeSet<(String, String)>) {
    match value {
        Value::Object(map) => {
            for (key, inside) in map {
                keys.insert((kind.to_owned(), key.clone()));
                keys_of(inside, kind, keys);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| keys_of(item, kind, keys)),
        _ => {}
    }
}

/// What the loader calls malformed and no schema can: it takes more than the place at hand to know.
const NOT_FOR_A_SCHEMA: [&str; 3] = [
    "has no unit",
    "cannot stand in this order",
    "library.yaml has no `library`",
];

#[test]
fn one_thing_changed_is_refused_by_both_or_by_neither() {
    let files = every_key();
    let (mut tried, mut refused) = (0, 0);
    let mut wrong = Vec::new();
    for (at, file) in files.iter().enumerate() {
        let right: Value = serde_yaml::from_str(file.text()).unwrap();
        let mut changes = Vec::new();
        changed(&right, &mut |value| changes.push(value));
        for value in changes {
            let mut files = files.clone();
            // What JSON writes, YAML reads.
            files[at] = SourceFile::new(file.name(), value.to_string());
            let complaints = complaints(file.name(), files[at].text());
            let malformed = problems(files);
            tried += 1;
            refused += usize::from(!complaints.is_empty());
            if complaints.is_empty()
                && malformed.iter().any(|(message, is_malformed)| {
                    *is_malformed && !NOT_FOR_A_SCHEMA.iter().any(|known| message.contains(known))
                })
            {
                wrong.push(format!(
                    "only the loader refuses {}: {value}\n  {malformed:?}",
                    file.name()
                ));
            }
            if !complaints.is_empty() && malformed.is_empty() {
                wrong.push(format!(
                    "only the schema refuses {}: {value}\n  {complaints:?}",
                    file.name()
                ));
            }
        }
    }
    assert!(
        tried > 1000 && refused > tried / 4,
        "{refused} of {tried} were refused"
    );
    assert!(
        wrong.is_empty(),
        "{} of {tried}:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}

/// Every message against a library, and whether it says that something is malformed.
fn problems(files: Vec<SourceFile>) -> Vec<(String, bool)> {
    let (_, problems) = load(Files::new(files));
    let messages = problems.into_iter().map(|problem| match problem.kind {
        ProblemKind::Malformed { message, .. } => (message, true),
        other => (format!("{other:?}"), false),
    });
    messages.collect()
}

/// Hands on every value that differs from `value` in one place: a key or an entry taken out, a key added, or one value
/// of another type.
fn changed(value: &Value, take: &mut dyn FnMut(Value)) {
    let others = match value {
        Value::Object(_) | Value::Array(_) => vec![json!(null), json!("Some words"), json!([]), json!({})],
        _ => vec![
            json!(null),
            json!(true),
            json!(7),
            json!("Some words"),
            json!(""),
            json!([]),
        ],
    };
    others.into_iter().for_each(&mut *take);
    match value {
        Value::Object(map) => {
            let mut with = map.clone();
            with.insert("colour".to_owned(), json!("red"));
            take(with.into());
            for (key, inside) in map {
                let mut without = map.clone();
                without.remove(key);
                take(without.into());
                changed(inside, &mut |inside| {
                    let mut map = map.clone();
                    map.insert(key.clone(), inside);
                    take(map.into());
                });
            }
        }
        Value::Array(items) => {
            for (at, inside) in items.iter().enumerate() {
                changed(inside, &mut |inside| {
                    let mut items = items.clone();
                    items[at] = inside;
                    take(items.into());
                });
            }
        }
        _ => {}
    }
}
