//! The job report as one page for a browser or a printer: first for the owner, then for the office, then for who audits.
//!
//! Nothing is fetched and nothing runs: no script, no picture, no font from elsewhere.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::chart::strip;
use super::style::STYLE;
use super::text::{GOVERNS, tree_words};
use super::{FindingEntry, Job, no_field_call, severity_word};
use crate::library::Severity;

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
                        h1 { "Job report" }
                        p { (self.complaint) }
                        (self.who_and_when())
                    }
                    main {
                        (self.for_the_owner())
                        (self.for_the_office())
                        (self.for_the_record())
                    }
                    footer { p class="soft" { (GOVERNS) } }
                }
            }
        };
        page.into_string()
    }

    fn who_and_when(&self) -> Markup {
        html! {
            dl {
                @for (label, value) in [("Site", &self.site), ("Equipment", &self.equipment), ("Technician", &self.technician)] {
                    dt { (label) }
                    dd { (value.as_deref().unwrap_or("not given")) }
                }
                dt { "Opened" }
                dd { (self.opened) }
                dt { "Last entry" }
                dd { (self.last) " (" (self.status) ")" }
            }
        }
    }

    // ── for the owner ─────────────────────────────────────────────────────────

    fn for_the_owner(&self) -> Markup {
        let stop = self
            .findings
            .iter()
            .any(|finding| finding.severity == Severity::Danger.name())
            || !self.dangers.is_empty();
        html! {
            section aria-labelledby="owner" {
                h2 id="owner" { "What was found" }
                @if let Some(from) = &self.answered_from {
                    p class="warn" { "No field call: " (no_field_call(from)) }
                }
                @for tree in self.drafts() {
                    p class="warn" { "Not released: walked by a draft of the tree “" (tree.title) "”." }
                }
                @for danger in &self.dangers { p class="warn" { "Danger was raised on this call: " (danger) } }
                div class=(if stop { "result stop" } else { "result" }) {
                    p { strong { (self.ended.as_deref().unwrap_or("The call is not finished.")) } }
                    @if let Some(asked) = &self.stands_at { p { "It stands at: " (asked) } }
                    @for words in [&self.because, &self.remedy, &self.advice].into_iter().flatten() { p { (words) } }
                }
                @if !self.noted.is_empty() {
                    h3 { "Also found on the way" }
                    ul { @for noted in &self.noted { li { (noted) } } }
                }
                @if !self.work.is_empty() {
                    h3 { "What was done" }
                    ul { @for work in &self.work { li { (work) } } }
                }
                (self.changed())
                @if !self.findings.is_empty() {
                    h3 { "What is advised, the most urgent first" }
                    table {
                        thead { tr { th scope="col" { "How urgent" } th scope="col" { "What" } } }
                        tbody { @for finding in &self.findings { (urgent(finding)) } }
                    }
                }
            }
        }
    }

    fn changed(&self) -> Markup {
        let mut changed = self.before_and_after().peekable();
        if changed.peek().is_none() {
            return html! {};
        }
        html! {
            h3 { "Before and after" }
            table {
                thead { tr { th scope="col" { "Reading" } th scope="col" { "Before" } th scope="col" { "After" } } }
                tbody {
                    @for (reading, before, after) in changed {
                        tr { td { (reading.title) } td class="number" { (before.value) } td class="number" { (after.value) } }
                    }
                }
            }
        }
    }

    // ── for the office ────────────────────────────────────────────────────────

    fn for_the_office(&self) -> Markup {
        html! {
            section aria-labelledby="office" {
                h2 id="office" { "For the office" }
                @if !self.proof.is_empty() {
                    h3 { "What proves it" }
                    ul {
                        @for line in &self.proof {
                            li {
                                @if !line.holds { span class="warn" { "Not proven: " } }
                                (line.claim)
                                @for measured in &line.measured { br; span class="soft" { (measured) } }
                            }
                        }
                    }
                }
                (self.charts())
                (self.questions())
                (self.left())
                @if !self.notes.is_empty() {
                    h3 { "Notes" }
                    ul { @for note in &self.notes { li { (note) } } }
                }
            }
        }
    }

    fn charts(&self) -> Markup {
        let drawn = || {
            self.readings
                .iter()
                .filter_map(|entry| Some((entry, strip(entry)?)))
        };
        if drawn().next().is_none() {
            return html! {};
        }
        html! {
            h3 { "Readings among their bands" }
            p class="soft" {
                "The outlined band is where the reading lay; the bar through its mark is what the meter leaves open. \
                 A ring is the reading before."
            }
            div class="strips" {
                @for (entry, chart) in drawn() {
                    figure {
                        figcaption {
                            (entry.title)
                            @if entry.takings.last().is_some_and(|taking| taking.borderline) { " (borderline)" }
                        }
                        (chart)
                        @for band in entry.bands.iter().filter(|band| band.here) {
                            p class="soft" { (band.words) @if let Some(means) = &band.means { ": " (means) } }
                        }
                    }
                }
            }
        }
    }

    fn questions(&self) -> Markup {
        if self.answers.is_empty() {
            return html! {};
        }
        html! {
            h3 { "What was asked and answered" }
            ol class="asked" {
                @for answer in &self.answers {
                    li {
                        (answer.title) ": " strong { (answer.answer) }
                        @if answer.borderline { " (borderline)" }
                        @for came_out in &answer.worked_out {
                            "; " span class="soft" { "worked out: " (came_out.title) ": " (came_out.value) }
                        }
                    }
                }
            }
        }
    }

    fn left(&self) -> Markup {
        if self.put_back.is_empty() {
            return html! {};
        }
        html! {
            h3 { "Opened, and how it was left" }
            ul class="left" {
                @for entry in &self.put_back {
                    li {
                        @match entry.state {
                            "done" => "Put back: ",
                            "refused" => span class="warn" { "Left open: " },
                            _ => span class="warn" { "Still open: " },
                        }
                        (entry.text)
                        @if let Some(why) = &entry.why { " (left open because: " (why) ")" }
                    }
                }
            }
        }
    }

    // ── for the record ────────────────────────────────────────────────────────

    fn for_the_record(&self) -> Markup {
        html! {
            section aria-labelledby="record" {
                h2 id="record" { "Record" }
                dl {
                    dt { "Session" } dd class="hash" { (self.session) }
                    dt { "Library" } dd { (self.library) }
                    dt { "Its hash" } dd class="hash" { (self.library_hash) }
                    @for overlay in &self.overlays { dt { "Overlay" } dd { (overlay) } }
                    dt { "Trees" }
                    dd {
                        @for (at, tree) in self.trees.iter().enumerate() {
                            @if at > 0 { "; " }
                            (tree_words(tree))
                        }
                    }
                    dt { "Log" } dd { (self.records) " lines" }
                    dt { "Its head" } dd class="hash" { (self.head) }
                }
                p class="soft" {
                    "The head is the hash of the log's last line, which holds that of the line before, and so on to the first. \
                     “proofwalk verify” tells whether the log is still the one that this page was made from."
                }
            }
        }
    }
}

/// A finding, with how soon something must be done about it.
fn urgent(finding: &FindingEntry) -> Markup {
    let soon = match Severity::ALL
        .into_iter()
        .find(|severity| severity.name() == finding.severity)
    {
        Some(Severity::Danger) => "Now: it must not run until this is put right",
        Some(Severity::Repair) => "Soon: have it put right",
        Some(Severity::Advise) => "When it suits",
        Some(Severity::Note) | None => "To know",
    };
    html! {
        tr {
            td { span class="urgency" { (severity_word(finding.severity)) } br; span class="soft" { (soon) } }
            td { (finding.text) }
        }
    }
}
