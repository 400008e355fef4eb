//! What a check found, for a person and for another program.

mod excerpt;
mod layers;
mod sarif;

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{Annotation, AnnotationKind, Group, Level as Mark, Renderer, Snippet};
use serde::Serialize;

use crate::library::Library;
use crate::source::{Diagnostic, Files, Level, Place, Safe, Span, Walked, WitnessAnswer, ascii, safe, wrap};
use excerpt::Excerpt;
use layers::{OverlayEntry, ReplacedEntry};
pub use sarif::sarif;

/// Most columns that a report takes, and fewest, as far as what it quotes can be shortened.
const COLUMNS: usize = 80;
const NARROWEST: usize = 36;

/// How many steps of a walk are written out.
const STEPS: usize = 60;

/// How a report looks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Look {
    /// Draws with ASCII characters only.
    pub ascii: bool,
    /// Colours the report, with the terminal's own colours.
    pub color: bool,
    /// How many columns there are, where fewer than a report takes by itself.
    pub columns: Option<usize>,
}

impl Look {
    /// How many columns a report takes.
    pub(super) fn columns(self) -> usize {
        self.columns
            .map_or(COLUMNS, |columns| columns.clamp(NARROWEST, COLUMNS))
    }
}

/// What comes next where nothing can be walked.
const NO_TREE_YET: &str = "there is no tree yet: write NAME.yaml beside library.yaml, with `tree: NAME`, `title`, `complaint`,\n\
                           `start` and `steps`; what its steps ask for stands in registry/\n";

/// The findings for a person: each with the line it is about, what overlays replaced, and a count of all at the end.
///
/// The count names the library as it is `called`, where it is.
pub fn text(library: &Library, findings: &[Diagnostic], called: Option<&Safe>, look: Look) -> String {
    let renderer = renderer(look);
    let mut report = String::new();
    for finding in findings {
        // The renderer would count columns in the line as it is shown, which may be cut.
        let Place { file, line, column } = library.files.place(finding.span);
        report.push_str(&format!("{}:{line}:{column}\n", safe(&file)));
        report.push_str(&renderer.render(&[group(library, finding, look)]));
        report.push_str("\n\n");
    }
    report.push_str(&layers::text(library));
    if let Some(called) = called {
        report.push_str(&format!("{called}: "));
    }
    report.push_str(&summary(library, findings));
    report.push('\n');
    let sound = findings.iter().all(|finding| finding.level != Level::Error);
    if library.trees.is_empty() && sound {
        report.push_str(NO_TREE_YET);
    }
    report
}

/// What draws excerpts in a look.
pub(super) fn renderer(look: Look) -> Renderer {
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
    renderer.decor_style(decor).term_width(look.columns())
}

/// The line that a span begins on, with the span marked.
pub(super) fn snippet<'a>(files: &Files, span: Span, look: Look) -> Snippet<'a, Annotation<'a>> {
    let excerpt = Excerpt::of(files.get(span.file), span, look.columns(), look.ascii);
    Snippet::source(excerpt.line)
        .line_start(files.place(span).line)
        .annotation(AnnotationKind::Primary.span(excerpt.marked))
}

fn group<'a>(library: &Library, finding: &Diagnostic, look: Look) -> Group<'a> {
    let mark = match finding.level {
        Level::Error => Mark::ERROR,
        Level::Warning => Mark::WARNING,
    };
    let line = library.files.place(finding.span).line;
    // The frame beside a note is as wide as the line's number.
    let beside = line.to_string().len() + " = help: ".len();
    let mut group = mark
        .primary_title(words(
            &finding.message,
            finding.level.name().len() + finding.rule.len() + "[]: ".len(),
            look,
        ))
        .id(finding.rule)
        .element(snippet(&library.files, finding.span, look))
        .element(Mark::HELP.message(words(&finding.help, beside, look)));
    if let Some(shown) = walk(finding).or_else(|| witness(finding).map(|steps| vec![steps])) {
        // What a long line goes on with stands further in than the next step.
        let lines = shown
            .iter()
            .map(|line| words(line, beside + 4, look).replace('\n', "\n      "));
        group = group.element(Mark::NOTE.message(lines.collect::<Vec<_>>().join("\n")));
    }
    group
}

/// The walk that shows a finding, a line for each step.
fn walk(finding: &Diagnostic) -> Option<Vec<String>> {
    /// How many steps are shown of either end.
    const ENDS: usize = 12;

    let (heading, answers) = match finding.walk.as_ref()? {
        Walked::With(answers) => ("a shortest walk that shows it:", answers.as_slice()),
        Walked::NotShown => ("these steps lead there, but are not shown walkable:", &[][..]),
    };
    let mut answers = answers.iter().peekable();
    let mut lines: Vec<String> = Vec::with_capacity(finding.witness.len());
    for step in &finding.witness {
        let mut line = format!("  {step}");
        let mut before = ": ";
        while let Some(answer) = answers.next_if(|answer| answer.step == *step) {
            line.push_str(&format!("{before}{} {}", answer.asks, answer.answer));
            before = ", ";
        }
        lines.push(line);
    }
    if lines.len() > 2 * ENDS + 1 {
        let left_out = ENDS..lines.len() - ENDS;
        lines.splice(left_out.clone(), [format!("  … {} more steps …", left_out.len())]);
    }
    lines.insert(0, heading.to_owned());
    Some(lines)
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
    let lines = wrap(&text, look.columns().saturating_sub(before));
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

pub(super) fn counted(count: usize, what: &str) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {what}{plural}")
}

#[derive(Serialize)]
struct Checked<'a> {
    library: String,
    trees: usize,
    steps: usize,
    findings: Vec<Finding<'a>>,
    overlays: Vec<OverlayEntry>,
    replaced: Vec<ReplacedEntry>,
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
    /// Answers that lead along the steps of the witness.
    #[serde(skip_serializing_if = "Option::is_none")]
    answers: Option<Vec<Given>>,
    /// Whether a walk was found that takes the steps of the witness; absent where that needs no showing.
    #[serde(skip_serializing_if = "Option::is_none")]
    walkable: Option<bool>,
}

#[derive(Serialize)]
struct Given {
    step: String,
    asks: String,
    answer: String,
}

fn given(answer: &WitnessAnswer) -> Given {
    let shown = |text: &str| String::from(safe(text));
    Given {
        step: shown(&answer.step),
        asks: shown(&answer.asks),
        answer: shown(&answer.answer),
    }
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
            answers: match &finding.walk {
                Some(Walked::With(answers)) => Some(answers.iter().map(given).collect()),
                Some(Walked::NotShown) | None => None,
            },
            walkable: finding.walk.as_ref().map(|walk| matches!(walk, Walked::With(_))),
        }
    });
    let checked = Checked {
        library: shown(&library.name),
        trees: library.trees.len(),
        steps: library.steps.len(),
        findings: findings.collect(),
        overlays: layers::overlays(library),
        replaced: layers::replaced(library),
    };
    // Texts and numbers in a struct: there is nothing here that JSON cannot say.
    serde_json::to_string_pretty(&checked).unwrap_or_default() + "\n"
}
