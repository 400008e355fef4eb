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
    serde_yaml::from_str_with_options(source.text(), options)
        .map_err(|error| tab(file, source, &error).unwrap_or_else(|| explain(file, source, &error)))
}

fn explain(file: FileId, source: &SourceFile, error: &Error) -> Unreadable {
    let (message, help) = wording(error.without_snippet());
    Unreadable {
        span: place(file, source, error),
        message,
        help: help.to_owned(),
    }
}

/// How many lines from a tab the reader may say it is.
const NEAR: usize = 2;

/// The first line that begins with a tab near where the reader stopped, which blames it on the line before. Elsewhere, as in a
/// block of text, a tab is no fault.
fn tab(file: FileId, source: &SourceFile, error: &Error) -> Option<Unreadable> {
    let blamed = error.location()?.line() as usize;
    let mut start = 0;
    for (number, line) in source.text().split('\n').enumerate() {
        let indentation = &line[..line.len() - line.trim_start_matches([' ', '\t']).len()];
        if let (Some(at), true) = (indentation.find('\t'), (number + 1).abs_diff(blamed) <= NEAR) {
            let start = (start + at) as u32;
            let span = Span {
                file,
                start,
                end: start + 1,
            };
            return Some(Unreadable {
                span,
                message: format!("line {} begins with a tab", number + 1),
                help: "use spaces: YAML takes no tab in front of a line".to_owned(),
            });
        }
        start += line.len() + 1;
    }
    None
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
                "lines of `key: value` are wanted here".to_owned(),
                "write them indented below the key; put a text with a colon in it in quotes",
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
        other => scanned(first_line(&other.render())),
    }
}

/// What the scanner says, in the words of somebody who writes no programs, as far as that is simple.
fn scanned(said: String) -> (String, &'static str) {
    let is = |words: &[&str]| words.iter().any(|words| said.contains(words));
    if is(&["simple key expected ':'", "could not find expected ':'"]) {
        return (
            "a key without its colon".to_owned(),
            "write `key: value`; a text that goes on below its key stands further in than the key",
        );
    }
    if is(&["mapping values are not allowed", "invalid colon", "simple key"]) {
        return (
            "there is a colon here that YAML does not take".to_owned(),
            "put a text with a colon in it in quotes; of a key, see that its line begins as far in as those beside it",
        );
    }
    if is(&["flow mapping", "flow sequence", "',' or"]) {
        return (
            "a bracket that was opened before this place is not closed as it should be".to_owned(),
            "close every { with } and every [ with ]; put a text that holds a comma, a colon or a bracket in quotes",
        );
    }
    if is(&[
        "block mapping",
        "block collection",
        "expected block end",
        "expected <block end>",
    ]) {
        return (
            "this line does not fit the lines before it".to_owned(),
            "begin it as far in as the lines it belongs to, with spaces; put a text with a colon in it in quotes",
        );
    }
    (
        said,
        "mend the YAML here: look at indentation, quotes and colons, on this line and the one before",
    )
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
