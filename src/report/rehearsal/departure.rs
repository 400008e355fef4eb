//! A scenario that departed: what it expects, what happened, and on which answer the walk left the way.

use annotate_snippets::{Group, Level as Mark};

use super::explained::{Explained, Left, Row, Way, Why};
use super::{Page, way};
use crate::library::{Library, Scenario};
use crate::report::findings::{renderer, snippet};
use crate::source::Place;
use crate::walk::{Departure, Run, Suggestion};

/// Most ways that are named where none was taken.
const MOST: usize = 12;

pub(super) fn write(page: &mut Page, library: &Library, scenario: &Scenario, run: &Run) {
    let explained = Explained::of(library, run);
    let rows = explained.rows();
    let mut marked = Vec::new();
    for departure in &run.departures {
        head(page, library, scenario, departure);
        let why = explained.why(scenario, run, departure);
        if let Why::Left(left) = &why {
            marked.push(left.at);
        }
        because(page, &why, &rows);
    }
    if !run.idle.is_empty() {
        let names = run
            .idle
            .iter()
            .map(|idle| format!("`{}`", library.name_of(idle.what)));
        let names: Vec<String> = names.collect();
        page.line(2, &format!("never asked for: {}", names.join(", ")));
    }
    way::write(page, &rows, &marked);
    page.blank();
}

/// What was expected and what happened, and no more.
pub(super) fn write_short(page: &mut Page, library: &Library, scenario: &Scenario, run: &Run) {
    for departure in &run.departures {
        let Place { file, line, column } = library.files.place(departure.at);
        let (expected, happened) = (&departure.expected, &departure.happened);
        let title = &scenario.title;
        page.line(
            0,
            &format!("{file}:{line}:{column}  {title}: expected {expected}; happened: {happened}"),
        );
    }
}

fn head(page: &mut Page, library: &Library, scenario: &Scenario, departure: &Departure) {
    let Place { file, line, column } = library.files.place(departure.at);
    page.line(0, &format!("{file}:{line}:{column}  {}", scenario.title));
    let expected = String::from(page.shown(&format!("expected {}", departure.expected)));
    let group: Group<'_> =
        Mark::ERROR
            .primary_title(expected)
            .element(snippet(&library.files, departure.at, page.look));
    page.text.push_str(&renderer(page.look).render(&[group]));
    page.text.push('\n');
    page.line(2, &format!("happened: {}", departure.happened));
}

fn because(page: &mut Page, why: &Why, rows: &[Row]) {
    match why {
        Why::Left(left) => parted(page, left, rows),
        Why::NoWay(steps) if steps.is_empty() => {
            page.line(2, "no step of the library leads there");
        }
        Why::NoWay(steps) => {
            page.line(2, "no answer of this walk leads there; these steps would:");
            listed(page, steps.len(), steps.iter().cloned());
        }
        Why::Lacks(lacks, suggestions) => {
            page.line(2, "the walk came to that verdict, and its proof does not hold:");
            for lack in lacks {
                page.line(
                    4,
                    &format!(
                        "{}:{}  {}: {}",
                        lack.place.file, lack.place.line, lack.words, lack.why
                    ),
                );
            }
            add(page, suggestions);
        }
        Why::Add(suggestion, ways) => {
            add(page, suggestion.as_slice());
            if !ways.is_empty() {
                page.line(2, "its answers:");
                listed(page, ways.len(), ways.iter().map(way_words));
            }
        }
        Why::Findings(findings) if findings.is_empty() => page.line(2, "nothing is on the job report"),
        Why::Findings(findings) => {
            page.line(2, "on the job report:");
            for (severity, text, place) in findings {
                let place = place
                    .as_ref()
                    .map_or(String::new(), |place| format!("{}:{}  ", place.file, place.line));
                page.line(4, &format!("{place}{severity}: {text}"));
            }
        }
        Why::Decided => page.line(
            2,
            "every question had an answer or a way on, and what was found is proven",
        ),
        Why::Plain => {}
    }
}

fn parted(page: &mut Page, left: &Left, rows: &[Row]) {
    let Some(row) = rows.get(left.at) else { return };
    page.line(
        2,
        &format!(
            "it could last have come to that at number {} of the walk, {}:{}  {}",
            left.at + 1,
            row.place.file,
            row.place.line,
            way::words(row)
        ),
    );
    page.line(2, "what would have kept it within reach there:");
    listed(page, left.keeping.len(), left.keeping.iter().map(way_words));
}

fn way_words(way: &Way) -> String {
    format!(
        "{}:{}  {} → {}",
        way.place.file, way.place.line, way.answer, way.go
    )
}

fn listed(page: &mut Page, count: usize, lines: impl Iterator<Item = String>) {
    for line in lines.take(MOST) {
        page.line(4, &line);
    }
    if count > MOST {
        page.line(4, &format!("… {} more", count - MOST));
    }
}

/// Lines that can be copied into the scenario.
fn add(page: &mut Page, suggestions: &[Suggestion]) {
    if suggestions.is_empty() {
        return;
    }
    page.line(2, "add to the scenario, for instance:");
    let mut under = "";
    for suggestion in suggestions {
        if suggestion.under != under {
            under = suggestion.under;
            page.line(4, &format!("{under}:"));
        }
        page.line(6, &format!("{}: {}", suggestion.name, suggestion.value));
    }
}
