//! What the resolver says when something is wrong: the wording of every shape error stands here.

use std::collections::HashSet;
use std::fmt;
use std::ops::Range;

use super::super::problem::{Problem, ProblemKind, What};
use super::super::yaml::{At, Entry, Keyed, StrayKey};
use super::Resolver;
use crate::measure::Misread;
use crate::source::{FileId, Span, nearest};

impl Resolver<'_> {
    pub(super) fn problem(&mut self, span: Span, kind: ProblemKind) {
        self.problems.push(Problem { span, kind });
    }

    pub(super) fn malformed(&mut self, span: Span, message: impl Into<String>, help: impl Into<String>) {
        let (message, help) = (message.into(), help.into());
        self.problem(span, ProblemKind::Malformed { message, help });
    }

    /// A key that the format requires is not there.
    pub(super) fn missing(&mut self, span: Span, whose: impl fmt::Display, key: &str) {
        self.malformed(
            span,
            format!("{whose} has no `{key}`"),
            format!("add a line `{key}: …` to it"),
        );
    }

    /// A text that the measure room could not read, inside the scalar it stands in.
    pub(super) fn misread(&mut self, text: &At<String>, file: FileId, wrong: Misread) {
        let span = self.inside(text, file, &wrong);
        let Misread { message, help, .. } = wrong;
        self.malformed(span, message, help);
    }

    /// A quantity of the wrong dimension, inside the scalar it stands in.
    pub(super) fn unit_mismatch(&mut self, text: &At<String>, file: FileId, wrong: Misread) {
        let span = self.inside(text, file, &wrong);
        self.problem(span, ProblemKind::UnitMismatch(wrong));
    }

    fn inside(&self, text: &At<String>, file: FileId, wrong: &Misread) -> Span {
        self.within(text, file, wrong.range.clone())
    }

    /// A part of a scalar; the whole scalar where quotes or folding move the text.
    pub(super) fn within(&self, text: &At<String>, file: FileId, range: Range<usize>) -> Span {
        let whole = text.span(file);
        if self.files.excerpt(whole) == text.value {
            whole.within(range)
        } else {
            whole
        }
    }

    pub(super) fn unknown(&mut self, what: What, name: &str, span: Span, nearest: Option<String>) {
        self.unknown_of(what, name, span, nearest, Vec::new());
    }

    /// As [`Resolver::unknown`], with what is registered.
    pub(super) fn unknown_of(
        &mut self,
        what: What,
        name: &str,
        span: Span,
        nearest: Option<String>,
        registered: Vec<String>,
    ) {
        let kind = ProblemKind::UnknownName {
            what,
            name: name.to_owned(),
            nearest,
            registered,
        };
        self.problem(span, kind);
    }

    pub(super) fn duplicate(
        &mut self,
        what: What,
        name: &str,
        span: Span,
        first: Span,
        alike: Option<String>,
    ) {
        self.problem(
            span,
            ProblemKind::DuplicateName {
                what,
                name: name.to_owned(),
                first,
                look_alike: alike,
            },
        );
    }

    pub(super) fn bad_name(&mut self, what: What, name: &str, span: Span) {
        // Some letters of other alphabets cannot be told in print from those that a name may have.
        let foreign = name.chars().find(|c| !c.is_ascii() && c.is_alphabetic());
        let why = foreign.map_or_else(String::new, |c| {
            format!(
                ": its letter `{c}` is U+{:04X}, which is none of a to z",
                u32::from(c)
            )
        });
        self.malformed(
            span,
            format!("`{name}` is no {what} name{why}"),
            "write it in lower-case ASCII letters, digits and underscores, at most 64 of them, and none of yes, no, on, off, \
             true, false, null",
        );
    }

    fn second(&mut self, name: &str, span: Span) {
        self.malformed(
            span,
            format!("the key `{name}` stands here a second time"),
            "keep one of the two",
        );
    }

    /// Reports the keys of an author's choice that stand in a map twice.
    pub(super) fn once_each<T>(&mut self, entries: &[Entry<T>], file: FileId) {
        let mut seen = HashSet::new();
        for Entry { key, .. } in entries {
            if !seen.insert(&key.value) {
                self.second(&key.value, key.span(file));
            }
        }
    }

    /// Reports the keys that a map has and the format does not.
    pub(super) fn stray<T>(&mut self, keyed: &Keyed<T>, file: FileId) {
        for StrayKey { key, repeated, known } in &keyed.stray {
            let span = key.span(file);
            let name = &key.value;
            if *repeated {
                self.second(name, span);
                continue;
            }
            let before = self.files.get(file).text().get(..span.start as usize);
            let behind_comma = before.is_some_and(|before| before.trim_end().ends_with(','));
            let help = match nearest(name, known.iter().copied()) {
                Some(meant) => format!("did you mean `{meant}`?"),
                // `{ because: It hums, and stops }`: no key of the format has a space.
                None if behind_comma && name.contains(' ') => {
                    "inside braces a comma ends a text; put a text that has one in \"quotes\"".to_owned()
                }
                None => format!("the keys here are {}", known.join(", ")),
            };
            self.malformed(span, format!("`{name}` is not a key of the format here"), help);
        }
    }
}
