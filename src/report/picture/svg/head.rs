//! The head of a sheet: what it is, how far it is trusted, and what governs over it.

use super::super::Picture;
use super::super::layout::{Block, Paper, Style};
use super::super::lettering::short;
use crate::library::Status;
use crate::report::job::GOVERNS;

/// The head of a sheet of this width, to be printed on this paper.
pub(super) fn head(picture: &Picture<'_>, paper: Option<Paper>, width: f64) -> Block {
    let library = picture.library;
    let tree = &library.trees[picture.tree];
    let mut head = Block::default();
    let mut say = |style, text: &str| head.add(style, &short(text), width);
    say(Style::Title, &tree.title);
    say(Style::Head, &entrance(picture));
    let edition = tree
        .edition
        .as_ref()
        .map_or_else(String::new, |edition| format!(", edition {edition}"));
    let changed = tree
        .changed
        .as_ref()
        .map_or_else(String::new, |changed| format!(" ({changed})"));
    say(
        Style::Head,
        &format!(
            "Tree {}{edition}{changed}, of {} ({}), edition {}",
            tree.name, library.title, library.name, library.edition
        ),
    );
    let (style, status) = match tree.status {
        Status::Approved => (Style::Head, "approved".to_owned()),
        status => (Style::Warning, status.name().replace('-', " ").to_uppercase()),
    };
    say(style, &format!("Status: {status}"));
    let prints = match paper {
        Some(paper) => format!("Prints on {}, or larger.", paper.name),
        None => "Larger than any usual paper: --from and --depth draw a part.".to_owned(),
    };
    // On a short line, which no name of a paper breaks: the paper turns on the height of the head.
    if let Some(status) = head.0.last_mut() {
        status.tail = Some((Style::Head, short(&prints)));
    }
    let mut say = |style, text: &str| head.add(style, &short(text), width);
    if let Some(part) = part(picture) {
        say(Style::Warning, &part);
    }
    if picture.errors > 0 {
        let count = picture.errors;
        let errors = if count == 1 {
            "1 error".to_owned()
        } else {
            format!("{count} errors")
        };
        say(
            Style::Warning,
            &format!("NOT TO BE WALKED: the library has {errors}; check it first"),
        );
    }
    say(Style::Warning, GOVERNS);
    let cautions = library.standing_cautions.iter();
    let cautions: Vec<&str> = cautions.map(|id| library.cautions[*id].text.as_str()).collect();
    say(Style::Head, &cautions.join(" "));
    head
}

/// How a call comes to this tree.
fn entrance(picture: &Picture<'_>) -> String {
    let library = picture.library;
    let danger = library.dangers.iter().find(|danger| danger.tree == picture.tree);
    match (&library.trees[picture.tree].complaint, danger) {
        (_, Some(danger)) => format!("Danger, at hand at every step: {}", danger.label),
        (Some(complaint), None) => format!("The owner says: {complaint}"),
        (None, None) if library.gate == Some(picture.tree) => "Walked before every complaint".to_owned(),
        (None, None) => "Visited by other trees; no complaint begins here".to_owned(),
    }
}

/// Which part of the tree is drawn, where it is not all of it.
fn part(picture: &Picture<'_>) -> Option<String> {
    let from = picture.part.from.as_ref().map(|from| format!("from {from}"));
    let depth = picture.part.depth.map(|depth| match depth {
        1 => "1 step on".to_owned(),
        depth => format!("{depth} steps on"),
    });
    let words: Vec<String> = from.into_iter().chain(depth).collect();
    (!words.is_empty()).then(|| format!("A part of the tree: {}", words.join(", ")))
}
