//! The auditor's part: what the page was made from, and the sums that it can be held against.

use maud::{Markup, html};

use super::super::Job;
use super::super::text::trees_words;

impl Job {
    pub(super) fn for_the_record(&self) -> Markup {
        html! {
            section class="auditor" aria-labelledby="record" {
                h2 id="record" { "For the auditor" }
                dl class="record" {
                    dt { "Session" } dd class="hash" { (self.session) }
                    dt { "Log" } dd { (self.records) " lines; hash of the last one: " span class="hash" { (self.head) } }
                    dt { "Library" } dd { (self.library) "; hash of its files: " span class="hash" { (self.library_hash) } }
                    @for overlay in &self.overlays { dt { "Overlay" } dd { (overlay) } }
                    dt { "Trees" } dd { (trees_words(&self.trees)) }
                }
                p class="soft" {
                    "The hash of the log's last line takes in that of the line before, and so on to the first. \
                     “proofwalk verify” tells whether the log is still the one that this page was made from."
                }
            }
        }
    }
}
