//! The schemas as a judge of tree files, beside the loader.
//!
//! They are read by the crate jsonschema, a published validator of the drafts of JSON Schema.

#![allow(
    dead_code,
    reason = "what one of the test programs leaves unused, another uses"
)]

use std::sync::LazyLock;

use jsonschema::Validator;
use proofwalk::library::{FileKind, Problem, ProblemKind, What, schema};
use proofwalk::source::{Files, SourceFile};
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

/// No schema may refuse what the loader takes: nothing is underlined in a library of which nothing is malformed.
pub fn refuse_nothing_of(files: &Files, problems: &[Problem]) {
    // Which formulas there are is known to a schema as well.
    let known_to_a_schema = |problem: &Problem| match problem.kind {
        ProblemKind::Malformed { .. } => true,
        ProblemKind::UnknownName { what, .. } => matches!(what, What::Formula | What::Argument),
        _ => false,
    };
    if problems.iter().any(known_to_a_schema) {
        return;
    }
    // A validator takes its time over the large files of some tests.
    // An overlay may go without what a library needs, and its files are judged where they are a library's own.
    let judged = |file: &SourceFile| file.layer().number() == 0 && file.text().len() < 10_000;
    for (_, file) in files.iter().filter(|(_, file)| judged(file)) {
        let complaints = complaints(file.name(), file.text());
        assert!(
            complaints.is_empty(),
            "{}: {complaints:?}\n{}",
            file.name(),
            file.text()
        );
    }
}

/// What the schema of a kind says against a file's content.
pub fn judge(kind: FileKind, value: &Value) -> Vec<String> {
    let at = FileKind::ALL.iter().position(|other| *other == kind).unwrap();
    let errors = VALIDATORS[at].iter_errors(value);
    errors
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect()
}
