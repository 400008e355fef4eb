//! Tables: each in a box of its own, that shows where there is more to the side.

use maud::{Markup, html};

use crate::source::safe;

/// Most rows of a table; the rest is counted.
const ROWS: usize = 200;

/// Most rows that are printed on paper.
const PRINTED: usize = 40;

/// From so many columns on it is wider than a telephone.
const WIDE: usize = 7;

/// What stands in one place of a table.
pub(super) enum Cell {
    /// A number, or a word or two: on one line where there is room.
    Text(String),
    /// Words that run over several lines.
    Words(String),
    /// Something drawn.
    Drawn(Markup),
}

impl Cell {
    fn class(&self) -> Option<&'static str> {
        match self {
            Self::Text(_) => None,
            Self::Words(_) => Some("words"),
            Self::Drawn(_) => Some("drawn"),
        }
    }
}

impl From<String> for Cell {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<&str> for Cell {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

/// Cells out of texts.
pub(super) fn cells<T: Into<Cell>>(texts: impl IntoIterator<Item = T>) -> Vec<Cell> {
    texts.into_iter().map(Into::into).collect()
}

/// A table that scrolls by itself where it is wider than the page.
pub(super) fn table(caption: &str, heads: &[Cell], rows: &[Vec<Cell>]) -> Markup {
    let class = if heads.len() >= WIDE { "wide" } else { "narrow" };
    html! {
        section.scroll aria-label=(caption) tabindex="0" {
            table class=(class) {
                caption { (caption) }
                thead { tr { @for head in heads { th scope="col" class=[head.class()] { (content(head)) } } } }
                tbody {
                    @for (number, row) in rows.iter().take(ROWS).enumerate() {
                        tr class=[(number >= PRINTED).then_some("rest")] {
                            @for (place, cell) in row.iter().enumerate() { (placed(place, cell)) }
                        }
                    }
                }
            }
        }
        @if rows.len() > PRINTED { p.more.paper { (rest(rows.len() - PRINTED)) } }
        @if rows.len() > ROWS { p.more.screen { (rest(rows.len() - ROWS)) } }
    }
}

/// How many more there are, and where they all are.
fn rest(more: usize) -> Markup {
    html! { "and " (more) " more: " code { "proofwalk audit DIR --format json" } " lists them all" }
}

fn placed(place: usize, cell: &Cell) -> Markup {
    html! {
        @if place == 0 { th scope="row" { (content(cell)) } }
        @else { td class=[cell.class()] { (content(cell)) } }
    }
}

fn content(cell: &Cell) -> Markup {
    match cell {
        // A sign does not stand on a line of its own.
        Cell::Text(text) | Cell::Words(text) => html! { (safe(&text.replace(" %", "\u{a0}%"))) },
        Cell::Drawn(drawn) => drawn.clone(),
    }
}
