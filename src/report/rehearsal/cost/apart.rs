//! How far faults are found and told apart, in the terms of IEEE Std 1522.

use super::{Page, name, share};
use crate::bench::cost::Cost;
use crate::library::{Fault, Id};

/// How many faults of a kind are listed.
const SHOWN: usize = 6;

pub(super) fn write(page: &mut Page, cost: &Cost<'_>) {
    page.line(
        0,
        "HOW FAR FAULTS ARE TOLD APART (terms of IEEE Std 1522), by weight",
    );
    let detected = share(cost.detected);
    let mut detection =
        format!("Fault detection: {detected} of the registered faults are some tree's verdict.");
    if !cost.unmet.is_empty() {
        detection.push_str(&format!(" Of no tree: {}.", some(cost, &cost.unmet)));
    }
    page.hanging(2, 2, &detection);
    if !cost.unfollowed.is_empty() {
        let line = format!(
            "Not priced, since no way to them was followed: {}.",
            some(cost, &cost.unfollowed)
        );
        page.hanging(2, 2, &line);
    }
    let [one, two, three] = [1, 2, 3].map(|at_most| share(cost.isolated.fraction(at_most)));
    page.hanging(
        2,
        2,
        &format!(
            "Fault isolation, of those with a way that was followed: {one} to one part or cause, {two} to two at most, {three} \
             to three at most. The verdicts of the rest hand on."
        ),
    );
    page.hanging(2, 2, &groups(cost));
    page.blank();
}

/// The first few of some faults.
fn some(cost: &Cost<'_>, faults: &[Id<Fault>]) -> String {
    let names: Vec<&str> = faults
        .iter()
        .take(SHOWN)
        .map(|fault| called(cost, *fault))
        .collect();
    let names = names.join(", ");
    match faults.len().saturating_sub(SHOWN) {
        0 => names,
        more => format!("{names} and {more} more, with `--format json`"),
    }
}

/// What no question of a tree tells apart, and verdicts that leave several parts.
fn groups(cost: &Cost<'_>) -> String {
    let library = cost.library;
    let mut groups: Vec<String> = Vec::new();
    for tree in &cost.trees {
        for group in &tree.ambiguous {
            let names: Vec<&str> = group.iter().map(|fault| called(cost, *fault)).collect();
            groups.push(format!("{} in {}", names.join(" or "), name(library, tree)));
        }
        for fault in tree.faults.iter().filter(|fault| fault.left > Some(1)) {
            let is_told = tree.ambiguous.iter().any(|group| group.contains(&fault.fault));
            let parts = library.faults[fault.fault].group.len();
            let words = format!("{} ({parts} parts)", called(cost, fault.fault));
            if parts > 1 && !is_told && !groups.contains(&words) {
                groups.push(words);
            }
        }
    }
    match groups.is_empty() {
        true => "Ambiguity groups: none; no two faults are left that no question tells apart.".to_owned(),
        false => format!(
            "Ambiguity groups, which no question tells apart: {}.",
            groups.join(", ")
        ),
    }
}

fn called<'l>(cost: &Cost<'l>, fault: Id<Fault>) -> &'l str {
    &cost.library.faults[fault].name
}
