//! Where the calls of a tree went: its steps from top to bottom, and the ways between them as bows at the left.

use maud::{Markup, html};

use super::chart::fine;
use super::section;
use super::table::{Cell, cells, table};
use crate::audit::Audit;
use crate::report::audit::figures::{Way, Ways, counted, ways};

/// Most trees that are drawn; on paper fewer.
const TREES: usize = 6;
const PRINTED: usize = 4;

const WIDTH: f64 = 460.0;
/// A line's height, where the steps begin, and the widest bar.
const LINE: f64 = 24.0;
const LEFT: f64 = 132.0;
const BAR: f64 = 96.0;
/// The widest bow, and its broadest line.
const BOW: f64 = 118.0;
const BROAD: f64 = 11.0;

/// The section; nothing where no call went from one step to another.
pub(super) fn section_of(audit: &Audit) -> Option<Markup> {
    let ways = ways(audit);
    if ways.is_empty() {
        return None;
    }
    let body = html! {
        p {
            "Each line is a step, its bar how often calls came to it, dark at its end for those that ended or were left there. A bow is a "
            "way to another step, as broad as it was used; a broken one leads back. From a step without either, calls went back to the "
            "tree that had asked for this one."
        }
        div.ways {
            @for (number, tree) in ways.iter().take(TREES).enumerate() {
                div.tree.rest[number >= PRINTED] {
                    h3 { (tree.tree) }
                    figure { (chart(number, tree)) }
                    (steps(tree))
                }
            }
        }
        @if ways.len() > TREES { p.more.screen { (rest(ways.len() - TREES)) } }
        @if ways.len() > PRINTED { p.more.paper { (rest(ways.len() - PRINTED)) } }
    };
    Some(section("ways", "Where calls went", &body))
}

fn rest(more: usize) -> Markup {
    html! { "and " (counted(more as u64, "tree", "trees")) " that fewer calls went through" }
}

/// The same as a table. What the chart says is written in it, too, so that paper needs no more.
fn steps(tree: &Ways) -> Markup {
    let rows: Vec<Vec<Cell>> = (tree.steps.iter())
        .map(|step| {
            cells([
                step.name.to_string(),
                step.came.to_string(),
                step.ended.to_string(),
            ])
        })
        .collect();
    let heads = cells(["Step", "Calls came", "Ended here"]);
    html! {
        details.screen {
            summary { "The same as a table" }
            (table(&format!("Steps of {}", tree.tree), &heads, &rows))
        }
        @if tree.left_out > 0 { p.more { "and " (counted(tree.left_out as u64, "step", "steps")) " that fewer calls came to" } }
    }
}

fn chart(number: usize, tree: &Ways) -> Markup {
    let most = tree.steps.iter().map(|step| step.came).max().unwrap_or(1).max(1) as f64;
    let height = LINE * tree.steps.len() as f64 + 8.0;
    let y = |step: usize| LINE * (step as f64 + 0.5) + 4.0;
    let (title, told) = (format!("ways-{number}-title"), format!("ways-{number}-told"));
    html! {
        svg viewBox=(format!("0 0 {WIDTH} {height}")) role="img" aria-labelledby=(format!("{title} {told}")) {
            title id=(title) { "Where the calls of " (tree.tree) " went" }
            desc id=(told) { (tree.steps.len()) " steps and " (tree.ways.len()) " ways between them; the table has the figures." }
            @for way in &tree.ways { (bow(tree, way, most, &y)) }
            @for (place, step) in tree.steps.iter().enumerate() {
                @let long = (BAR * step.came as f64 / most).max(2.0);
                @let ended = long * step.ended as f64 / step.came.max(1) as f64;
                rect.stop x=(LEFT) y=(fine(y(place) - 7.0)) width=(fine(long)) height="14" {}
                @if step.ended > 0 {
                    rect.stay x=(fine(LEFT + long - ended)) y=(fine(y(place) - 7.0)) width=(fine(ended.max(1.0))) height="14" {}
                }
                text x=(fine(LEFT + long + 8.0)) y=(fine(y(place) + 4.0)) {
                    (step.name.cut(26)) " "
                    tspan.soft { (step.came) @if step.ended > 0 { ", " (step.ended) " ended" } }
                }
            }
        }
    }
}

fn bow(tree: &Ways, way: &Way, most: f64, y: &impl Fn(usize) -> f64) -> Markup {
    let apart = way.from.abs_diff(way.to) as f64;
    // The longest bow would have the width of the page; by the root short ones still show.
    let far = LEFT - 4.0 - (14.0 + BOW * (apart / tree.steps.len() as f64).sqrt()).min(BOW);
    let (from, to) = (fine(y(way.from)), fine(y(way.to)));
    let x = LEFT - 2.0;
    let broad = (BROAD * way.times as f64 / most).max(1.0);
    let class = if way.to <= way.from { "way back" } else { "way" };
    html! {
        path class=(class) stroke-width=(fine(broad)) d=(format!("M{x} {from}C{far} {from} {far} {to} {x} {to}", far = fine(far))) {
            title { (tree.steps[way.from].name) " to " (tree.steps[way.to].name) ": " (way.times) }
        }
    }
}
