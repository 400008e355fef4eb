//! What may have been meant where a name does not resolve: a rule that needs it holds its tongue.

use std::collections::{HashMap, HashSet};

use super::subject::Subject;
use crate::library::{ProblemKind, What};
use crate::source::{FileId, Span};

/// What the names that do not resolve may have meant.
#[derive(Debug)]
pub(super) struct Doubts<'a> {
    /// The kinds of names that are not there.
    missing: HashSet<What>,
    /// A tree is not there, and with it whatever it would have used.
    tree_is_missing: bool,
    /// Names that are there twice, or that a reader cannot tell apart.
    doubled: HashSet<&'a str>,
    /// The files in which something does not resolve, so that what it stood beside may have been passed by as well.
    files: HashSet<FileId>,
    /// The words in those files, and how often they stand there.
    words: HashMap<&'a str, usize>,
}

impl<'a> Doubts<'a> {
    /// The doubts about a library's own files; worked calls refer to nothing.
    pub fn of(subject: &Subject<'a>) -> Self {
        let mut doubts = Self {
            missing: HashSet::new(),
            tree_is_missing: false,
            doubled: HashSet::new(),
            files: HashSet::new(),
            words: HashMap::new(),
        };
        for problem in subject.own_problems() {
            doubts.files.insert(problem.span.file);
            match &problem.kind {
                ProblemKind::UnknownName { what, nearest, .. } => {
                    doubts.missing.insert(*what);
                    doubts.tree_is_missing |= *what == What::Tree && nearest.is_none();
                }
                ProblemKind::DuplicateName { name, look_alike, .. } => {
                    doubts.doubled.insert(name);
                    doubts.doubled.extend(look_alike.as_deref());
                }
                ProblemKind::Malformed { .. } | ProblemKind::UnitMismatch(_) => {}
            }
        }
        for file in &doubts.files {
            let text = subject.library.files.get(*file).text();
            for word in text.split(|c: char| !c.is_ascii_alphanumeric() && c != '_') {
                *doubts.words.entry(word).or_default() += 1;
            }
        }
        doubts
    }

    /// Whether something that does not resolve may have meant, or led to, the thing of this kind that is registered at `at`.
    pub fn may_mean(&self, what: What, name: &str, at: Span) -> bool {
        let kinds: &[What] = match what {
            What::Reading | What::Sign => &[What::ReadingOrSign, What::Datum],
            What::PlateField => &[What::Datum],
            _ => &[],
        };
        let registered = usize::from(self.files.contains(&at.file));
        let named = self.words.get(name).copied().unwrap_or_default();
        self.tree_is_missing
            || self.missing.contains(&what)
            || kinds.iter().any(|kind| self.missing.contains(kind))
            || self.doubled.contains(name)
            || named > registered
    }

    /// Whether something in a file does not resolve.
    pub fn stand_in(&self, file: FileId) -> bool {
        self.files.contains(&file)
    }
}
