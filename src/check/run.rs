//! Every rule over one library.

use std::collections::BTreeSet;

use super::rule::{Findings, Needs, Rule};
use super::subject::Subject;
use crate::library::{Library, Problem};
use crate::source::{Diagnostic, FileId};

/// Everything that is wrong with a library, sorted by file, place and rule.
///
/// While a file has not the format's shape, only the rules that look at files as they are have their say: the others would
/// report what the missing lines would have mended.
pub fn run(library: &Library, problems: &[Problem]) -> Vec<Diagnostic> {
    found_by(super::rules(), library, problems)
}

/// As [`run`], with what keeps the library from being released ([`super::release_rules`]).
pub fn run_for_release(library: &Library, problems: &[Problem]) -> Vec<Diagnostic> {
    let rules = [super::rules(), super::release_rules()].concat();
    found_by(&rules, library, problems)
}

fn found_by(rules: &[&'static Rule], library: &Library, problems: &[Problem]) -> Vec<Diagnostic> {
    let subject = Subject::new(library, problems);
    let well_formed = subject.is_well_formed();
    let rules = rules
        .iter()
        .filter(|rule| well_formed || rule.needs == Needs::Text);
    let mut found: Vec<Diagnostic> = rules.flat_map(|rule| Findings::of(rule, &subject)).collect();
    leave_out_what_a_character_broke(&mut found);
    // Files are numbered in the order of their layers and names.
    found.sort_by(|a, b| key(a).cmp(&key(b)));
    found.dedup();
    found
}

/// A character that has no place in a text may keep it from being read, too: one finding is enough to mend it.
fn leave_out_what_a_character_broke(found: &mut Vec<Diagnostic>) {
    let unsafe_at = found.iter().filter(|finding| finding.rule == "unsafe-text");
    let unsafe_at: BTreeSet<(FileId, u32)> = unsafe_at
        .map(|finding| (finding.span.file, finding.span.start))
        .collect();
    found.retain(|finding| {
        let (file, start, end) = (finding.span.file, finding.span.start, finding.span.end);
        let broken = unsafe_at
            .range((file, start)..=(file, end.max(start)))
            .next()
            .is_some();
        !(finding.rule == "malformed" && broken)
    });
}

fn key(finding: &Diagnostic) -> (FileId, u32, &str, &str) {
    (
        finding.span.file,
        finding.span.start,
        finding.rule,
        &finding.message,
    )
}
