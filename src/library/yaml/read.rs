//! One file's text to one value, within the format's limits.

use serde::de::DeserializeOwned;
use serde_yaml::budget::BudgetBreach;
use serde_yaml::options::{DuplicateKeyPolicy, MergeKeyPolicy};
use serde_yaml::{Error, budget, options};

use super::tags;
use crate::source::{FileId, SourceFile, Span};

/// How deep maps and lists may nest.
const DEPTH: usize = 32;

/// Why a file could not be read as YAML of the expected shape.
#[derive(Debug)]
pub(in crate::library) struct Unreadable {
    pub span: Span,
    pub message: String,
    pub help: String,
}

/// Reads a file whole.
pub(in crate::library) fn read<T: DeserializeOwned>(
    file: FileId,
    source: &SourceFile,
) -> Result<T, Unreadable> {
    if let Some(at) = tags::first(source.text()) {
        let (message, help) = tag();
        let start = at as u32;
        let span = Span {
            file,
            start,
            end: start + 1,
        };
        return Err(Unreadable {
            span,
            message,
            help: help.to_owned(),
        });
    }
    let options = options! {
        budget: budget! {
            max_depth: DEPTH,
            flow_nesting_limit: DEPTH,
            max_anchors: 0,
            max_aliases: 0,
            max_merge_keys: 0,
            max_documents: 1,
            // The size of a file is limited before it is read; what it holds is then as long as it likes.
            max_nodes: usize::MAX,
            max_events: usize::MAX,
        },
        duplicate_keys: DuplicateKeyPolicy::PassThrough,
        merge_keys: MergeKeyPolicy::Error,
        reject_unsupported_tags: true,
        strict_booleans: true,
        with_snippet: false,
    };
    serde_yaml::from_str_with_options(source.text(), options).map_err(|error| explain(file, source, &error))
}

fn explain(file: FileId, source: &SourceFile, error: &Error) -> Unreadable {
    let (message, help) = wording(error.without_snippet());
    Unreadable {
        span: place(file, source, error),
        message,
        help: help.to_owned(),
    }
}

fn place(file: FileId, source: &SourceFile, error: &Error) -> Span {
    let last = source.text().len() as u32;
    let Some(location) = error.location() else {
        return Span {
            file,
            start: 0,
            end: 0,
        };
    };
    let span = location.span();
    // The scanner's own errors carry a line and a column, but no byte positions.
    let start = match span.byte_offset() {
        Some(offset) if offset > 0 => offset as u32,
        _ => source.offset(location.line() as usize, location.column() as usize),
    };
    let end = start + span.byte_len().unwrap_or(1).max(1) as u32;
    Span {
        file,
        start: start.min(last),
        end: end.min(last),
    }
}

fn wording(error: &Error) -> (String, &'static str) {
    match error {
        Error::SerdeInvalidType {
            unexpected, expected, ..
        }
        | Error::SerdeInvalidValue {
            unexpected, expected, ..
        } => (
            format!("this is {unexpected}, and {expected} is wanted here"),
            "write it as the format page shows for this key",
        ),
        Error::Unexpected { expected, .. } => match *expected {
            "mapping start" => (
                "a map is wanted here".to_owned(),
                "write lines of `key: value`, indented below the key",
            ),
            "string scalar" => (
                "one text is wanted here, not a list or a map".to_owned(),
                "write the text on the key's own line",
            ),
            "sequence start" => (
                "a list is wanted here".to_owned(),
                "write it in brackets, [one, two], even where it has one entry",
            ),
            other => (
                format!("{other} is wanted here"),
                "write it as the format page shows",
            ),
        },
        Error::InvalidScalar { ty: "bool", .. } => (
            "this is neither true nor false".to_owned(),
            "write true, or leave the key out",
        ),
        Error::InvalidScalar { ty: "u32", .. } => (
            "this is no whole number".to_owned(),
            "write a plain whole number here, such as 1, without a unit",
        ),
        Error::InvalidScalar { .. } => (
            "this is no number".to_owned(),
            "write a plain number here, without a unit",
        ),
        Error::Budget { breach, .. } => budget(breach),
        Error::MultipleDocuments { .. } => several_documents(),
        Error::MergeKeyNotAllowed { .. } => (
            "a merge key `<<` is not taken".to_owned(),
            "write the keys out where they are needed",
        ),
        Error::UnsupportedTag { .. } => tag(),
        Error::Eof { .. } => (
            "the file is empty".to_owned(),
            "write what its place calls for, or remove the file",
        ),
        Error::NullIntoString { .. } => (
            "a text is missing here".to_owned(),
            "write the text after the colon; inside {…} a comma ends a key, so write it as a block",
        ),
        // The scanner has a limit of its own, and meets it first where brackets open without end.
        other if first_line(&other.render()) == "recursion limit exceeded" => too_deep(),
        other => (
            first_line(&other.render()),
            "mend the YAML here: look at indentation, quotes and colons, on this line and the one before",
        ),
    }
}

fn budget(breach: &BudgetBreach) -> (String, &'static str) {
    match breach {
        BudgetBreach::Depth { .. } => too_deep(),
        BudgetBreach::Documents { .. } => several_documents(),
        BudgetBreach::Anchors { .. } | BudgetBreach::Aliases { .. } => (
            "anchors (`&name`) and aliases (`*name`) are not taken".to_owned(),
            "write the text out where it is needed; put quotes around a text that begins with & or *",
        ),
        other => (
            format!("the file goes beyond a limit of the YAML reader: {other:?}"),
            "split the file",
        ),
    }
}

fn too_deep() -> (String, &'static str) {
    (
        format!("maps and lists nest deeper than {DEPTH} levels"),
        "a library needs about ten: close the brackets, or take the levels out",
    )
}

fn tag() -> (String, &'static str) {
    (
        "a YAML tag is not taken".to_owned(),
        "leave the tag out, every value has one meaning here; put quotes around a text that begins with !",
    )
}

fn several_documents() -> (String, &'static str) {
    (
        "the file holds more than one document".to_owned(),
        "keep one document a file: move what follows `---` to a file of its own",
    )
}

/// What the YAML library says, without the place that it puts behind it: ours stands beside the message already.
fn first_line(text: &str) -> String {
    let line = text.lines().next().unwrap_or_default();
    let line = line.split(" at line ").next().unwrap_or(line);
    line.trim_end_matches('.').to_owned()
}
