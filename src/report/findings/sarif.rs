//! The findings as SARIF 2.1.0, the exchange format of checkers: for editors, and for the pages of code reviews.
//!
//! Files are named from the library's folder on, and where that folder lies below the one that the check was run in, the run
//! says so. Columns count characters.

use serde_json::{Value, json};

use crate::check::{self, Rule};
use crate::library::{Id, Library, Step};
use crate::source::{Diagnostic, Span, safe};

/// The schema that the log is written to.
const SCHEMA: &str =
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
/// What file names are relative to.
const BASE: &str = "LIBRARY";
/// What the library's folder is relative to, where it is.
const ROOT: &str = "ROOT";

/// The findings for another program, as SARIF; `folder` is the library's, as it was given.
pub fn sarif(library: &Library, findings: &[Diagnostic], folder: Option<&str>) -> String {
    let rules: Vec<&Rule> = check::rules()
        .iter()
        .chain(check::release_rules())
        .copied()
        .collect();
    let results: Vec<Value> = findings
        .iter()
        .map(|finding| result(library, &rules, finding))
        .collect();
    let log = json!({
        "$schema": SCHEMA,
        "version": "2.1.0",
        "runs": [{
            "tool": { "driver": {
                "name": env!("CARGO_PKG_NAME"),
                "version": env!("CARGO_PKG_VERSION"),
                "semanticVersion": env!("CARGO_PKG_VERSION"),
                "rules": rules.iter().map(|rule| descriptor(rule)).collect::<Vec<_>>(),
            } },
            "invocations": [{ "executionSuccessful": true }],
            "columnKind": "unicodeCodePoints",
            "originalUriBaseIds": bases(folder),
            "results": results,
            "properties": {
                "library": safe(&library.name).as_str(),
                "trees": library.trees.len(),
                "steps": library.steps.len(),
            },
        }],
    });
    format!("{log:#}\n")
}

fn bases(folder: Option<&str>) -> Value {
    let described = json!({ "description": { "text": "the folder of the library" } });
    let Some(folder) = folder.filter(|folder| is_below(folder)) else {
        return json!({ BASE: described });
    };
    let slash = if folder.ends_with('/') { "" } else { "/" };
    json!({
        BASE: { "uri": format!("{}{slash}", uri(folder)), "uriBaseId": ROOT },
        ROOT: { "description": { "text": "the folder that the check was run in" } },
    })
}

/// Whether a folder is named from the present one on, and lies below it.
fn is_below(folder: &str) -> bool {
    let climbs = folder.split('/').any(|name| name == "..");
    !folder.is_empty() && !folder.starts_with('/') && !climbs
}

fn descriptor(rule: &Rule) -> Value {
    let (page, meaning) = (rule.page(), rule.meaning());
    json!({
        "id": rule.name,
        "shortDescription": { "text": meaning.first() },
        "fullDescription": { "text": meaning.join("\n\n") },
        "help": { "text": page, "markdown": page },
        "defaultConfiguration": { "level": rule.level.name() },
    })
}

fn result(library: &Library, rules: &[&Rule], finding: &Diagnostic) -> Value {
    let message = format!("{}; {}", safe(&finding.message), safe(&finding.help));
    let mut result = json!({
        "ruleId": finding.rule,
        "level": finding.level.name(),
        "message": { "text": text(&message) },
        "locations": [{ "physicalLocation": physical(library, finding.span) }],
    });
    if let Some(index) = rules.iter().position(|rule| rule.name == finding.rule) {
        result["ruleIndex"] = json!(index);
    }
    if !finding.witness.is_empty() {
        let steps: Vec<Value> = finding
            .witness
            .iter()
            .map(|step| json!({ "location": passed(library, finding.span, step) }))
            .collect();
        result["codeFlows"] = json!([{ "threadFlows": [{ "locations": steps }] }]);
    }
    result
}

fn physical(library: &Library, span: Span) -> Value {
    let file = library.files.get(span.file);
    let (start_line, start_column) = file.line_column(span.start);
    let (end_line, end_column) = file.line_column(span.end.max(span.start));
    let artifact = match file.layer().number() {
        0 => json!({ "uri": uri(file.name()), "uriBaseId": BASE }),
        // An overlay lies where it was given, and not in the library's folder.
        _ => json!({ "uri": uri(&file.shown()) }),
    };
    json!({
        "artifactLocation": artifact,
        "region": {
            "startLine": start_line,
            "startColumn": start_column,
            "endLine": end_line,
            "endColumn": end_column,
        },
    })
}

/// A step of a walk that shows a finding: in the finding's own tree, where its name alone is given.
fn passed(library: &Library, span: Span, name: &str) -> Value {
    let mut location = json!({
        "message": { "text": text(safe(name).as_str()) },
        "logicalLocations": [{ "fullyQualifiedName": safe(name).as_str() }],
    });
    let (tree, step) = match name.split_once('/') {
        Some((tree, step)) => (library.trees.find(tree), step),
        None => {
            let own = library.trees.iter().find(|(_, tree)| tree.at.file == span.file);
            (own.map(|(tree, _)| tree), name)
        }
    };
    let found = tree.and_then(|tree| {
        let mut steps = library.trees[tree].steps.clone().map(Id::<Step>::new);
        steps.find(|&id| library[id].name == step)
    });
    if let Some(step) = found {
        location["physicalLocation"] = physical(library, library[step].at);
        location["logicalLocations"][0]["fullyQualifiedName"] = json!(safe(&library.path_of(step)).as_str());
    }
    location
}

/// A message in which nothing is taken for a placeholder or for a link.
fn text(words: &str) -> String {
    let braces = words.replace('{', "{{").replace('}', "}}");
    braces.replace("](", "] (")
}

/// A path as a relative reference: RFC 3986, sections 2.3 and 4.2.
fn uri(path: &str) -> String {
    let mut uri = String::with_capacity(path.len());
    for byte in path.bytes() {
        match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'.' | b'_' | b'~' | b'/' => {
                uri.push(char::from(byte))
            }
            // A colon too: in the first part of a path it would end a scheme.
            other => uri.push_str(&format!("%{other:02X}")),
        }
    }
    uri
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_is_a_relative_reference() {
        assert_eq!(uri("registry/parts.yaml"), "registry/parts.yaml");
        assert_eq!(uri("c:no heat°%.yaml"), "c%3Ano%20heat%C2%B0%25.yaml");
    }

    #[test]
    fn nothing_in_a_message_is_a_placeholder_or_a_link() {
        assert_eq!(
            text("`{0}` [here](https://example.org)"),
            "`{{0}}` [here] (https://example.org)"
        );
    }

    #[test]
    fn a_folder_below_is_named_and_another_is_not() {
        assert_eq!(bases(Some("my trees"))[BASE]["uri"], "my%20trees/");
        for folder in [Some("/srv/trees"), Some("../trees"), Some(""), None] {
            assert_eq!(bases(folder)[BASE].get("uri"), None, "{folder:?}");
        }
    }
}
