//! What a check found, for a person and for another program.

mod excerpt;
mod sarif;

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Group, Level as Mark, Renderer, Snippet};
use serde::Serialize;

use crate::library::Library;
use crate::source::{Diagnostic, Level, Place, Safe, ascii, safe, wrap};
use excerpt::Excerpt;
pub use sarif::sarif;

/// How many columns a report takes, as far as what it quotes can be shortened.
const COLUMNS: usize = 80;

/// How many steps of a walk are written out.
const STEPS: usize = 60;

/// How a report looks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Look {
    /// Draws with ASCII characters only.
    pub ascii: bool,
    /// Colours the report, with the terminal's own colours.
    pub color: bool,
}

/// The findings for a person: each with the line it is about, and a count of all at the end.
pub fn text(library: &Library, findings: &[Diagnostic], look: Look) -> String {
    let renderer = if look.color {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let decor = if look.ascii {
        DecorStyle::Ascii
    } else {
        DecorStyle::Unicode
    };
    let renderer = renderer.decor_style(decor).term_width(COLUMNS);
    let mut report = String::new();
    for finding in findings {
        // The renderer would count columns in the line as it is shown, which may be cut.
        let Place { file, line, column } = library.files.place(finding.span);
        report.push_str(&format!("{}:{line}:{column}\n", safe(&file)));
        report.push_str(&renderer.render(&[group(library, finding, look)]));
        report.push_str("\n\n");
    }
    report.push_str(&summary(library, findings));
    report.push('\n');
    report
}

fn group<'a>(library: &Library, finding: &Diagnostic, look: Look) -> Group<'a> {
    let excerpt = Excerpt::of(
        library.files.get(finding.span.file),
        finding.span,
        COLUMNS,
        look.ascii,
    );
    let mark = match finding.level {
        Level::Error => Mark::ERROR,
        Level::Warning => Mark::WARNING,
    };
    let line = library.files.place(finding.span).line;
    let snippet = Snippet::source(excerpt.line)
        .line_start(line)
        .annotation(AnnotationKind::Primary.span(excerpt.marked));
    // The frame beside a note is as wide as the line's number.
    let beside = line.to_string().len() + " = help: ".len();
    let mut group = mark
        .primary_title(words(
            &finding.message,
            finding.level.name().len() + finding.rule.len() + "[]: ".len(),
            look,
        ))
        .id(finding.rule)
        .element(snippet)
        .element(Mark::HELP.message(words(&finding.help, beside, look)));
    if let Some(steps) = witness(finding) {
        group = group.element(Mark::NOTE.message(words(&steps, beside, look)));
    }
    group
}

/// The steps that show a finding, where its message does not name them all.
fn witness(finding: &Diagnostic) -> Option<String> {
    let named = |step: &String| finding.message.contains(&format!("`{step}`"));
    if finding.witness.iter().all(named) {
        return None;
    }
    let shown = finding.witness.len().min(STEPS);
    let more = match finding.witness.len() - shown {
        0 => String::new(),
        left_out => format!(" … {left_out} more"),
    };
    Some(format!(
        "the steps are {}{more}",
        finding.witness[..shown].join(", ")
    ))
}

/// Text of ours with names of the author's in it, broken into lines that fit beside what stands before them.
fn words(text: &str, before: usize, look: Look) -> String {
    let text = safe(text);
    let text = if look.ascii { ascii(&text) } else { text };
    let lines = wrap(&text, COLUMNS - before);
    lines.iter().map(Safe::as_str).collect::<Vec<_>>().join("\n")
}

/// `2 errors, 1 warning in 27 trees, 812 steps`.
pub fn summary(library: &Library, findings: &[Diagnostic]) -> String {
    let of = |level| findings.iter().filter(|finding| finding.level == level).count();
    let (errors, warnings) = (of(Level::Error), of(Level::Warning));
    let found = match (errors, warnings) {
        (0, 0) => "no errors, no warnings".to_owned(),
        (0, _) => counted(warnings, "warning"),
        (_, 0) => counted(errors, "error"),
        _ => format!("{}, {}", counted(errors, "error"), counted(warnings, "warning")),
    };
    let (trees, steps) = (library.trees.len(), library.steps.len());
    format!(
        "{found} in {}, {}",
        counted(trees, "tree"),
        counted(steps, "step")
    )
}

fn counted(count: usize, what: &str) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {what}{plural}")
}

#[derive(Serialize)]
struct Checked<'a> {
    library: String,
    trees: usize,
    steps: usize,
    findings: Vec<Finding<'a>>,
}

#[derive(Serialize)]
struct Finding<'a> {
    rule: &'a str,
    level: &'a str,
    file: String,
    line: usize,
    column: usize,
    message: String,
    help: String,
    witness: Vec<String>,
}

/// The findings for another program, as JSON.
///
/// Texts are made safe here as well: JSON lets characters through that a terminal acts on.
pub fn json(library: &Library, findings: &[Diagnostic]) -> String {
    let shown = |text: &str| String::from(safe(text));
    let findings = findings.iter().map(|finding| {
        let place = library.files.place(finding.span);
        Finding {
            rule: finding.rule,
            level: finding.level.name(),
            file: shown(&place.file),
            line: place.line,
            column: place.column,
            message: shown(&finding.message),
            help: shown(&finding.help),
            witness: finding.witness.iter().map(|step| shown(step)).collect(),
        }
    });
    let checked = Checked {
        library: shown(&library.name),
        trees: library.trees.len(),
        steps: library.steps.len(),
        findings: findings.collect(),
    };
    // Texts and numbers in a struct: there is nothing here that JSON cannot say.
    serde_json::to_string_pretty(&checked).unwrap_or_default() + "\n"
}
