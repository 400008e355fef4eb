//! `proofwalk check`: what is wrong with a library.

use std::path::Path;

use super::library::called;
use crate::check;
use crate::library;
use crate::report::findings::{self, Look};
use crate::source::{Files, Level, nearest, safe, wrap};

/// How many columns the list of rules takes.
const COLUMNS: usize = 80;

/// How many columns of those the names of rules take.
const NAME: usize = 16;

/// What a check prints.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Format {
    /// Each finding with the line it is about.
    #[default]
    Text,
    /// JSON for another program.
    Json,
    /// SARIF 2.1.0, for an editor or a code review.
    Sarif,
}

/// Checks a library, or with `release` whether it is fit for release: what to print on standard output, and the exit code,
/// 1 where something is an error. `folder` is the library's, as it was given.
pub(super) fn run(
    files: Files,
    folder: Option<&Path>,
    release: bool,
    format: Format,
    look: Look,
) -> (String, u8) {
    let (library, problems) = library::load(files);
    let found = match release {
        true => check::run_for_release(&library, &problems),
        false => check::run(&library, &problems),
    };
    let failed = found.iter().any(|finding| finding.level == Level::Error);
    let report = match format {
        Format::Text => findings::text(&library, &found, Some(&called(&library, folder)), look),
        Format::Json => findings::json(&library, &found),
        Format::Sarif => findings::sarif(&library, &found, folder.and_then(Path::to_str)),
    };
    // Taking a large library apart takes as long as a rule does, and the process is about to end anyway.
    std::mem::forget(library);
    (report, u8::from(failed))
}

/// All rules, each with its level and what is wrong, those that only a release must keep at the end.
pub(super) fn list() -> String {
    let mut list: String = check::rules().iter().map(|rule| lines(rule)).collect();
    list.push_str("\nOnly `proofwalk check --release` looks for these:\n\n");
    check::release_rules()
        .iter()
        .for_each(|rule| list.push_str(&lines(rule)));
    list.push_str("\n`proofwalk check --explain RULE` prints a rule's page, with an example and its mend.\n");
    list
}

/// A rule's name and level, and beside them what is wrong.
fn lines(rule: &check::Rule) -> String {
    let before = format!("{:NAME$}  {:7}  ", rule.name, rule.level.name());
    let said = safe(&rule.sentence());
    let mut text = String::new();
    for (number, part) in wrap(&said, COLUMNS - before.len()).iter().enumerate() {
        let before = if number == 0 { before.as_str() } else { "" };
        text.push_str(&format!(
            "{before:indent$}{}\n",
            part.as_str(),
            indent = NAME + 11
        ));
    }
    text
}

/// A rule's page for standard output; with exit code 2, what to say on standard error where there is no such rule.
pub(super) fn explain(rule: &str) -> (String, u8) {
    if let Some(page) = check::page(rule) {
        return (page, 0);
    }
    let rules = check::rules().iter().chain(check::release_rules());
    let names: Vec<&str> = rules.map(|rule| rule.name).collect();
    let mend = match nearest(rule, names.iter().copied()) {
        Some(meant) => format!("did you mean `{meant}`?"),
        None => format!("the rules are {}", names.join(", ")),
    };
    (format!("no rule is called `{}`; {mend}\n", safe(rule).cut(64)), 2)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::SourceFile;

    fn code(steps: &str) -> u8 {
        let tree = format!("tree: flood\ntitle: Flood\nstart: a\nsteps:\n{steps}");
        let faults = "faults: { none_found: { title: Nothing, remedy: none } }";
        let about = ("library.yaml", "library: floods");
        let files = [
            about,
            ("flood.yaml", tree.as_str()),
            ("registry/faults.yaml", faults),
        ];
        let files = files.map(|(name, text)| SourceFile::new(name, text));
        run(
            Files::new(files.into()),
            None,
            false,
            Format::Text,
            Look::default(),
        )
        .1
    }

    #[test]
    fn an_error_fails_and_a_warning_does_not() {
        // Nothing leads to this tree, which is a warning.
        assert_eq!(code("  a: { verdict: none_found, because: So. }\n"), 0);
        assert_eq!(code("  a: { do: Wait., go: a }\n"), 1);
    }

    #[test]
    fn a_rule_is_explained_and_an_unknown_one_is_wrong_use() {
        assert_eq!(explain("band-gap").1, 0);
        let (message, code) = explain("band-gaps");
        assert_eq!(
            message,
            "no rule is called `band-gaps`; did you mean `band-gap`?\n"
        );
        assert_eq!(code, 2);
    }
}
