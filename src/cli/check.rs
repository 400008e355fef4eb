//! `proofwalk check`: what is wrong with a library.

use crate::check;
use crate::library;
use crate::report::findings::{self, Look};
use crate::source::{Files, Level, nearest, safe};

/// What a check prints.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Format {
    /// Each finding with the line it is about.
    #[default]
    Text,
    /// JSON for another program.
    Json,
}

/// Checks a library: what to print on standard output, and the exit code, 1 where something is an error.
pub(super) fn run(files: Files, format: Format, look: Look) -> (String, u8) {
    let (library, problems) = library::load(files);
    let found = check::run(&library, &problems);
    let failed = found.iter().any(|finding| finding.level == Level::Error);
    let report = match format {
        Format::Text => findings::text(&library, &found, look),
        Format::Json => findings::json(&library, &found),
    };
    (report, u8::from(failed))
}

/// A rule's page for standard output; with exit code 2, what to say on standard error where there is no such rule.
pub(super) fn explain(rule: &str) -> (String, u8) {
    if let Some(page) = check::page(rule) {
        return (page, 0);
    }
    let names: Vec<&str> = check::rules().iter().map(|rule| rule.name).collect();
    let mend = match nearest(rule, names.iter().copied()) {
        Some(meant) => format!("did you mean `{meant}`?"),
        None => format!("the rules are {}", names.join(", ")),
    };
    (format!("no rule is called `{}`; {mend}\n", safe(rule).cut(64)), 2)
}
