//! The job report as one page for a browser or a printer: first for the owner, then for the office, then for who audits.
//!
//! Nothing is fetched and nothing runs: no script, no picture, no font from elsewhere.

mod office;
mod owner;
mod record;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::Job;
use super::style::STYLE;
use super::text::GOVERNS;

impl Job {
    /// The report as a page of HTML that stands alone.
    pub fn html(&self) -> String {
        let page = html! {
            (DOCTYPE)
            html lang="en" {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    title { "Job report: " (self.complaint) }
                    style { (PreEscaped(STYLE)) }
                }
                body {
                    header {
                        h1 { "Job report: " (self.complaint) }
                        (self.who_and_when())
                    }
                    main {
                        (self.for_the_owner())
                        (self.for_the_office())
                        (self.for_the_record())
                    }
                    footer { p { (GOVERNS) } }
                }
            }
        };
        page.into_string()
    }

    fn who_and_when(&self) -> Markup {
        html! {
            dl class="facts" {
                @for (label, value) in [("Site", &self.site), ("Equipment", &self.equipment), ("Technician", &self.technician)] {
                    div { dt { (label) } dd { (value.as_deref().unwrap_or("not given")) } }
                }
                div { dt { "Opened" } dd { (self.opened) } }
                div { dt { "Last entry" } dd { (self.last) ", call " (self.status) } }
            }
        }
    }
}
