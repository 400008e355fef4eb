//! What a rule is.

use super::subject::Subject;
use crate::source::{Diagnostic, Level, Span, Walked};

/// One thing that can be wrong with a library.
#[derive(Debug)]
pub struct Rule {
    /// Its name, for what is wrong; it reads well after "allow".
    pub name: &'static str,
    /// How bad it is.
    pub level: Level,
    /// The doc comment it stands under, a line each.
    pub(super) doc: &'static str,
    pub(super) needs: Needs,
    pub(super) look: fn(&Subject<'_>, &mut Findings),
}

/// What must be in order before a rule can look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Needs {
    /// Nothing: it looks at files as they are.
    Text,
    /// Every file has the format's shape.
    Shape,
}

impl Rule {
    /// What it means and why it hurts on a call, a paragraph each.
    pub fn meaning(&self) -> Vec<String> {
        let before = self.doc.split("\n ## ").next().unwrap_or_default();
        let paragraphs = before.split("\n\n").map(|paragraph| {
            let lines = paragraph.lines().map(str::trim);
            lines.collect::<Vec<_>>().join(" ")
        });
        paragraphs.filter(|paragraph| !paragraph.is_empty()).collect()
    }

    /// What is wrong, in a line: the first paragraph of its page.
    pub fn sentence(&self) -> String {
        self.meaning().into_iter().next().unwrap_or_default()
    }

    /// What it means, why it hurts on a call, an example that fails, and its mend; as Markdown.
    pub fn page(&self) -> String {
        let lines = self
            .doc
            .lines()
            .map(|line| line.strip_prefix(' ').unwrap_or(line));
        let text: String = lines.flat_map(|line| [line, "\n"]).collect();
        format!("# {} ({})\n\n{text}", self.name, self.level.name())
    }
}

/// Declares a [`Rule`] whose page is its doc comment: the same text in the editor, in the published documentation and at
/// run time.
macro_rules! rule {
    ($(#[doc = $line:literal])* $rule:ident, $name:literal, $level:ident, needs $needs:ident, $look:expr) => {
        $(#[doc = $line])*
        pub(in crate::check) static $rule: $crate::check::rule::Rule = $crate::check::rule::Rule {
            name: $name,
            level: $crate::source::Level::$level,
            doc: concat!($($line, "\n"),*),
            needs: $crate::check::rule::Needs::$needs,
            look: $look,
        };
    };
}
pub(super) use rule;

/// Where a rule puts what it finds.
pub(super) struct Findings {
    rule: &'static Rule,
    found: Vec<Diagnostic>,
}

impl Findings {
    /// What a rule finds in a library.
    pub fn of(rule: &'static Rule, subject: &Subject<'_>) -> Vec<Diagnostic> {
        let mut findings = Self {
            rule,
            found: Vec::new(),
        };
        (rule.look)(subject, &mut findings);
        findings.found
    }

    /// Adds a finding that its place explains.
    pub fn add(&mut self, span: Span, message: impl Into<String>, help: impl Into<String>) {
        self.add_shown(span, message, help, Vec::new());
    }

    /// Adds a finding that a walk shows.
    pub fn add_shown(
        &mut self,
        span: Span,
        message: impl Into<String>,
        help: impl Into<String>,
        witness: Vec<String>,
    ) {
        self.add_walked(span, message, help, witness, None);
    }

    /// Adds a finding that a walk shows, with what is known of that walk.
    pub fn add_walked(
        &mut self,
        span: Span,
        message: impl Into<String>,
        help: impl Into<String>,
        witness: Vec<String>,
        walk: Option<Walked>,
    ) {
        self.found.push(Diagnostic {
            rule: self.rule.name,
            level: self.rule.level,
            span,
            message: message.into(),
            help: help.into(),
            witness,
            walk,
        });
    }
}
