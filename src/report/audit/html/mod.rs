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
mod table;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::figures::counted;
use crate::audit::Audit;

/// Most rows of a table that is no longer than the chart beside it.
const BESIDE: usize = 16;

/// Most rows of one that is kept on one page of paper with its chart.
const SHORT: usize = 8;

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

/// A chart with its table beside it; above a long one, which would leave the page empty below the chart.
fn beside(chart: &Markup, table: &Markup, rows: usize) -> Markup {
    let class = match rows {
        0..=SHORT => "pair",
        _ if rows <= BESIDE => "pair long",
        _ => "above",
    };
    html! {
        div class=(class) {
            figure { (chart) }
            div { (table) }
        }
    }
}
