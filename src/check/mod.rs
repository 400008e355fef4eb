//! What is wrong with a library: one rule, one file.
//!
//! - [`rules()`] and [`page`]: what is looked for, and what each rule means.
//! - [`run()`]: everything that is wrong with a library, in one go.
//!
//! To add a rule, write its file in `rules/`, with the rule's page as its doc comment, and its line in `rules/mod.rs`.

mod bands;
mod doubt;
mod escapes;
mod questions;
mod rule;
mod rules;
mod run;
mod subject;
mod texts;
mod uses;
mod words;

pub use rule::Rule;
pub use run::run;

/// Every rule, in the order of their names.
pub fn rules() -> &'static [&'static Rule] {
    &rules::ALL
}

/// The page of a rule: what it means, why it hurts on a call, an example that fails and its mend.
pub fn page(name: &str) -> Option<String> {
    rules()
        .iter()
        .find(|rule| rule.name == name)
        .map(|rule| rule.page())
}
