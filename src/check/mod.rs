//! What is wrong with a library: one rule, one file.
//!
//! - [`rules()`] and [`page`]: what is looked for, and what each rule means.
//! - [`run()`]: everything that is wrong with a library, in one go; [`run_for_release()`]: and what keeps it from release.
//!
//! To add a rule, write its file in `rules/`, with the rule's page as its doc comment, and its line in `rules/mod.rs`.

mod bands;
mod doubt;
mod escapes;
mod known;
mod questions;
mod roomy;
mod rule;
mod rules;
mod run;
mod sorting;
mod subject;
mod texts;
mod uses;
mod words;

pub use rule::Rule;
pub use run::{run, run_for_release};

/// Every rule, in the order of their names.
pub fn rules() -> &'static [&'static Rule] {
    &rules::ALL
}

/// The rules that have their say beside the others where a library is to be released, in the order of their names.
pub fn release_rules() -> &'static [&'static Rule] {
    &rules::RELEASE
}

/// The page of a rule: what it means, why it hurts on a call, an example that fails and its mend.
pub fn page(name: &str) -> Option<String> {
    let rules = rules().iter().chain(release_rules());
    let mut named = rules.filter(|rule| rule.name == name);
    named.next().map(|rule| rule.page())
}
