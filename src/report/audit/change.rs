//! What learned weights change in the minutes that trees are expected to take.
//!
//! A tree asks in the order it asks, whatever the weights: they change how often each of its verdicts is to be expected, and so the
//! mean of their minutes. With the verdicts that the author's weights count as, the shares of a tree's faults have a Dirichlet distribution;
//! that of a mean of values `c` under shares with `a` verdicts of `A` is `(Σ a c²/A − (Σ a c/A)²)/(A + 1)`, a textbook fact.

use std::collections::HashMap;
use std::fmt::Write;

use crate::audit::{Audit, TOO_SMALL};
use crate::bench::cost::Asked;
use crate::library::Library;
use crate::source::safe;

/// The middle 95 of 100 of a normal distribution, in standard deviations.
const SPREAD: f64 = 1.96;

/// A tree before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Change {
    before: f64,
    after: f64,
    /// How far off that may be, by the few verdicts it rests on.
    within: f64,
    /// How many verdicts of its faults held.
    held: u64,
}

/// The lines of a file's head, each a comment. `prior` has the verdicts that the author's weight of each fault counts as.
pub(super) fn lines(audit: &Audit, library: &Library, trees: &[Asked], prior: &HashMap<&str, f64>) -> String {
    let mut text = String::from(
        "# What they change: the minutes to a verdict that `proofwalk rehearse --cost` expects of each tree, with the library's own\n\
         # weights and with these. The trees ask in the same order; other faults are met more often. The 95 % are what so few\n\
         # verdicts leave open, if the author's weights are about right, and the minutes of each step as they are written.\n",
    );
    let _ = writeln!(
        text,
        "#   {:<28} {:>9} {:>7}   {:<16} verdicts",
        "tree", "as it was", "learned", "95 %"
    );
    let mut unmet = 0;
    for tree in trees {
        let change = change(audit, library, tree, prior);
        if change.held == 0 {
            unmet += 1;
            continue;
        }
        let (low, high) = (
            (change.after - change.within).max(0.0),
            change.after + change.within,
        );
        let within = match change.held < TOO_SMALL {
            true => "too few".to_owned(),
            false => format!("{low:.1} to {high:.1}"),
        };
        let _ = writeln!(
            text,
            "#   {:<28} {:>9.1} {:>7.1}   {within:<16} {:>8}",
            safe(&library.trees[tree.tree].name),
            change.before,
            change.after,
            change.held
        );
    }
    if unmet > 0 {
        let _ = writeln!(text, "#   and {unmet} more, of whose faults no verdict held");
    }
    text
}

fn change(audit: &Audit, library: &Library, tree: &Asked, prior: &HashMap<&str, f64>) -> Change {
    let held = |name: &str| {
        let row = audit.learned.iter().find(|row| row.fault == name);
        row.map_or(0, |row| row.held)
    };
    let (mut all, mut sum, mut squares, mut verdicts) = (0.0, 0.0, 0.0, 0);
    for (fault, minutes) in &tree.faults {
        let name = library.faults[*fault].name.as_str();
        let held = held(name);
        let share = held as f64 + prior.get(name).copied().unwrap_or_default();
        verdicts += held;
        all += share;
        sum += share * minutes;
        squares += share * minutes * minutes;
    }
    let after = sum / all;
    let variance = (squares / all - after * after).max(0.0) / (all + 1.0);
    Change {
        before: tree.minutes,
        after,
        within: SPREAD * variance.sqrt(),
        held: verdicts,
    }
}
