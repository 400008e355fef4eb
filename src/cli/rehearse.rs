//! Running a library's scenarios.

mod season;
mod trials;

pub(super) use trials::known_to_furnace;

use std::io;
use std::path::Path;

use super::arguments::{Rehearse, RehearseFormat, Required};
use super::failure::{FINDINGS, Failure, WRONG_USE};
use super::library::{called, say_which, sound};
use super::{look, watch};
use crate::bench::cost;
use crate::library::{Id, Library, Scenario, Tree};
use crate::report::rehearsal::{self, Listed};
use crate::source::{Place, safe};
use crate::walk::{Rehearsal, Tally};

/// Walks the scenarios; the exit code says whether one departs from what it expects.
pub(super) fn run(how: &Rehearse) -> Result<u8, Failure> {
    let folder = how.library.folder()?;
    say_which(folder, "rehearse");
    if how.watch {
        let header = match how.format {
            RehearseFormat::Text => watch::Header::Beside,
            RehearseFormat::Json => watch::Header::Apart,
        };
        return watch::run(folder, &how.overlays.folders, header, || once(folder, how));
    }
    let (text, code) = once(folder, how)?;
    super::print(&text)?;
    Ok(code)
}

/// What to print, and the exit code.
fn once(folder: Option<&Path>, how: &Rehearse) -> Result<(String, u8), Failure> {
    let loaded = sound(folder, &how.overlays.folders)?;
    let library = &loaded.library;
    if how.cost {
        return Ok((costs(library, folder, how.format), 0));
    }
    if let Some(season) = &how.trials.season {
        return season::run(&loaded, season, how);
    }
    if how.bench {
        return trials::run(library, folder, how);
    }
    let chosen = chosen(library, &how.only)?;
    let rehearsal = Rehearsal::of(library, chosen);
    let listed = match (how.uncovered, how.only.is_empty()) {
        (true, _) => Listed::All,
        (false, true) => Listed::Few,
        (false, false) => Listed::Nothing,
    };
    let mut text = match how.format {
        RehearseFormat::Text => {
            let called = called(library, folder);
            rehearsal::text(
                &rehearsal,
                listed,
                Some(&called),
                look::of_findings(&io::stdout()),
            )
        }
        RehearseFormat::Json => rehearsal::json(&rehearsal),
    };
    let short = how.require.and_then(|required| short_of(&rehearsal, required));
    if let (Some(short), RehearseFormat::Text) = (&short, how.format) {
        text.push_str(short);
    }
    let holds = rehearsal.failed.is_empty() && short.is_none();
    Ok((text, if holds { 0 } else { FINDINGS }))
}

/// What the trees cost.
fn costs(library: &Library, folder: Option<&Path>, format: RehearseFormat) -> String {
    let cost = cost::cost(library);
    match format {
        RehearseFormat::Text => {
            let called = called(library, folder);
            rehearsal::cost::text(&cost, Some(&called), look::of_findings(&io::stdout()))
        }
        RehearseFormat::Json => rehearsal::cost::json(&cost),
    }
}

/// The scenarios with one of the words in their title, their file's name or their tree's; all where no word is given.
fn chosen<'l>(library: &'l Library, words: &[String]) -> Result<Vec<&'l Scenario>, Failure> {
    let has = |scenario: &Scenario, word: &str| {
        let tree = &library.trees[scenario.tree].name;
        [&scenario.title, &scenario.name, tree]
            .iter()
            .any(|text| text.to_lowercase().contains(word))
    };
    for word in words {
        let lower = word.to_lowercase();
        if !library.scenarios.iter().any(|scenario| has(scenario, &lower)) {
            let message = format!(
                "no scenario has `{}` in its title, file or tree",
                safe(word).cut(64)
            );
            return Err(Failure::new(WRONG_USE, message).help("give part of a name, or leave out `--only`"));
        }
    }
    let words: Vec<String> = words.iter().map(|word| word.to_lowercase()).collect();
    let is_chosen = |scenario: &&Scenario| words.is_empty() || words.iter().any(|word| has(scenario, word));
    Ok(library.scenarios.iter().filter(is_chosen).collect())
}

/// What is missing of what must have been walked.
fn short_of(rehearsal: &Rehearsal<'_>, required: Required) -> Option<String> {
    let library = rehearsal.library;
    let mut tally = Tally::default();
    let mut missed = String::new();
    for tree in 0..library.trees.len() {
        let walked = rehearsal.coverage.of(Id::<Tree>::new(tree));
        tally += match required {
            Required::Steps => walked.steps,
            Required::Edges => walked.edges,
        };
        let steps = walked.missed_steps.iter().filter(|(_, reachable)| *reachable);
        // Edges are listed where the walks are summed up.
        for (step, _) in steps.filter(|_| required == Required::Steps) {
            let Place { file, line, .. } = library.files.place(library[*step].at);
            let line = format!("  {file}:{line}  {}", library.path_of(*step));
            missed.push_str(&format!("{}\n", safe(&line)));
        }
    }
    let what = match required {
        Required::Steps => "steps",
        Required::Edges => "edges",
    };
    let left = tally.total - tally.covered;
    let are = if left == 1 { "is" } else { "are" };
    (!tally.is_whole()).then(|| format!("{left} of {} {what} {are} in no scenario\n{missed}", tally.total))
}
