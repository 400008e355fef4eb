//! The page for a browser: one file that needs nothing but itself, with a table beside each chart.
//!
//! It is well-formed as XML too, which a test holds. No meaning is carried by a colour alone.

mod chart;
mod confusion;
mod funnel;
mod groups;
mod held;
mod intervals;
mod lists;
mod look;
mod months;
mod paths;
mod people;
mod summary;
mod survival;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::figures::counted;
use crate::audit::Audit;
use crate::source::safe;

/// Most rows of a table, and most lines of a list; the rest is counted.
const ROWS: usize = 200;
const LINES: usize = 60;

/// The audit as one HTML page.
pub fn html(audit: &Audit) -> String {
    let title = format!("Audit of {}", counted(audit.calls, "call", "calls"));
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                // As XML wants them.
                (PreEscaped("<meta charset=\"utf-8\"/>"))
                (PreEscaped("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>"))
                title { (title) }
                style { (PreEscaped(look::style_sheet())) }
            }
            body {
                header { (summary::head(audit)) }
                main {
                    (summary::figures(audit))
                    (survival::section_of(audit).unwrap_or_default())
                    (months::section_of(audit).unwrap_or_default())
                    (groups::sections(audit))
                    (funnel::section_of(audit).unwrap_or_default())
                    (people::section_of(audit).unwrap_or_default())
                    (held::section_of(audit).unwrap_or_default())
                    (confusion::section_of(audit).unwrap_or_default())
                    (paths::section_of(audit).unwrap_or_default())
                    (lists::sections(audit))
                }
                footer { p { (audit.caution) } }
            }
        }
    };
    page.into_string()
}

/// A section with a heading; `id` names it.
fn section(id: &str, title: &str, body: &Markup) -> Markup {
    let heading = format!("{id}-heading");
    html! {
        section id=(id) aria-labelledby=(heading) {
            h2 id=(heading) { (title) }
            (body)
        }
    }
}

/// A chart with its table beside it.
fn beside(chart: &Markup, table: &Markup) -> Markup {
    html! {
        div.pair {
            figure { (chart) }
            (table)
        }
    }
}

/// A table that scrolls by itself where it is wider than the page.
fn table(caption: &str, heads: &[&str], rows: &[Vec<String>]) -> Markup {
    html! {
        div.scroll role="region" aria-label=(caption) tabindex="0" {
            table {
                caption { (caption) }
                thead { tr { @for head in heads { th scope="col" { (head) } } } }
                tbody {
                    @for row in rows.iter().take(ROWS) {
                        tr {
                            @for (place, cell) in row.iter().enumerate() {
                                @if place == 0 { th scope="row" { (safe(cell)) } }
                                @else { td { (safe(cell)) } }
                            }
                        }
                    }
                }
            }
            @if rows.len() > ROWS { p.more { "and " (rows.len() - ROWS) " more" } }
        }
    }
}
