//! `formula`: what the trade computes, as a technician asks for it.

mod computed;
mod found;
mod told;

use crate::common::scene::{Said, run};

/// Runs `proofwalk formula` with words as a shell would split them.
pub(super) fn formula(words: &str) -> Said {
    let words: Vec<&str> = std::iter::once("formula")
        .chain(words.split_whitespace())
        .collect();
    run(&words)
}

#[track_caller]
pub(super) fn computes(words: &str, first_line: &str) -> String {
    let said = formula(words).exits(0);
    assert_eq!(said.out.lines().next(), Some(first_line), "{words}");
    assert_eq!(said.err, "", "{words}");
    said.out
}

#[track_caller]
pub(super) fn refuses(words: &str, message: &str) {
    let said = formula(words).exits(2);
    assert_eq!(said.out, "", "{words}");
    assert_eq!(said.err.trim_end(), message, "{words}");
}

#[track_caller]
pub(super) fn fits(text: &str) {
    let wide = text.lines().find(|line| line.chars().count() >= 80);
    assert_eq!(wide, None);
}
