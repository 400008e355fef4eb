//! What an author's editor is told, against what the loader takes.
//!
//! The schemas are judged by the crate jsonschema, a published validator of the drafts of JSON Schema.

mod agree;
mod explain;
mod refuse;
mod texts;

use std::sync::LazyLock;

use jsonschema::Validator;
use proofwalk::library::{FileKind, schema};
use serde_json::Value;

static VALIDATORS: LazyLock<Vec<Validator>> = LazyLock::new(|| {
    let validators = FileKind::ALL.iter().map(|kind| {
        let schema = schema(*kind);
        jsonschema::draft7::meta::validate(&schema).unwrap();
        jsonschema::draft7::new(&schema).unwrap()
    });
    validators.collect()
});

/// What the schema of a file says against it; nothing for a file of no kind, or one that is no YAML.
pub fn complaints(file: &str, text: &str) -> Vec<String> {
    let Some(kind) = FileKind::of(file) else {
        return Vec::new();
    };
    let value = match serde_yaml::from_str::<Value>(text) {
        // An editor has nothing to judge in a file with nothing but comments.
        Ok(Value::Null) if text.lines().all(|line| line.is_empty() || line.starts_with('#')) => {
            return Vec::new();
        }
        Ok(value) => value,
        Err(_) => return Vec::new(),
    };
    judge(kind, &value)
}

/// What the schema of a kind says against a file's content.
pub fn judge(kind: FileKind, value: &Value) -> Vec<String> {
    let at = FileKind::ALL.iter().position(|other| *other == kind).unwrap();
    let errors = VALIDATORS[at].iter_errors(value);
    errors
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect()
}
