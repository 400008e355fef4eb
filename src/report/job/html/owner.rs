//! The owner's part: what was wrong, what was done, what it changed, what is advised and how urgent it is.

use maud::{Markup, html};

use super::super::entries::FindingEntry;
use super::super::{Job, no_field_call, severity_word};
use crate::library::Severity;

impl Job {
    pub(super) fn for_the_owner(&self) -> Markup {
        html! {
            section aria-labelledby="owner" {
                h2 id="owner" { "For the owner" }
                (self.warnings())
                (self.came_to())
                (self.found_on_the_way())
                (self.passed_over())
                @if !self.work.is_empty() {
                    h3 { "What was done" }
                    ul class=[(self.work.len() > 2).then_some("two")] { @for work in &self.work { li { (work) } } }
                }
                (self.changed())
                @if !self.findings.is_empty() {
                    h3 { "What else was found and advised, the most urgent first" }
                    table {
                        thead { tr { th scope="col" { "How urgent" } th scope="col" { "What" } } }
                        tbody { @for finding in &self.findings { (urgent(finding)) } }
                    }
                }
            }
        }
    }

    fn warnings(&self) -> Markup {
        html! {
            @if let Some(from) = &self.answered_from {
                p class="warn" { "No field call: " (no_field_call(from)) }
            }
            @for tree in self.drafts() {
                p class="warn" { "Not released: walked by a draft of the tree “" (tree.title) "”." }
            }
            @for danger in &self.dangers { p class="warn" { "Danger was raised on this call: " (danger) } }
        }
    }

    fn came_to(&self) -> Markup {
        let proven =
            self.fault.is_some() && !self.proof.is_empty() && self.proof.iter().all(|line| line.holds);
        html! {
            h3 { "What was found" }
            div class=(if self.is_dangerous() { "result stop" } else { "result" }) {
                p { strong { (sentence(&self.headline)) } @if proven { " Proven by what is listed under “What proves it”." } }
                @if let Some(asked) = &self.stands_at { p { "It stands at: " (asked) } }
                @if let Some(because) = &self.because { p { "Why: " (because) } }
                @if let Some(remedy) = &self.remedy { p { "What to do: " strong { (remedy) } } }
                @if let Some(advice) = &self.advice { p { "Advice: " (advice) } }
                @if let Some(then) = &self.then { p { (sentence(then)) } }
            }
        }
    }

    fn found_on_the_way(&self) -> Markup {
        html! {
            @if !self.found_on_the_way.is_empty() {
                h3 { "Also found" }
                ul {
                    @for noted in &self.found_on_the_way {
                        li {
                            strong { (sentence(&noted.title)) }
                            @if let Some(because) = &noted.because { " " (sentence(because)) }
                            " What to do: " (sentence(&noted.remedy))
                            @if let Some(advice) = &noted.advice { " Advice: " (sentence(advice)) }
                        }
                    }
                }
            }
        }
    }

    fn passed_over(&self) -> Markup {
        html! {
            @if !self.not_looked_at.is_empty() {
                h3 { "Not looked at this time" }
                ul {
                    @for visit in &self.not_looked_at {
                        li {
                            strong { (visit.tree) }
                            ", where “" (visit.because) "” was found first: "
                            (visit.checks.join("; "))
                        }
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
                thead { tr { th scope="col" { "Reading" } th scope="col" { "Before" } th scope="col" { "After" } th scope="col" { "Changed" } } }
                tbody {
                    @for (reading, before, after) in changed {
                        tr {
                            td { (reading.title) }
                            td class="number" { (before.value) }
                            td class="number" { (after.value) }
                            td { (change(before.is_as(after), after.number > before.number)) }
                        }
                    }
                }
            }
        }
    }
}

/// Words with an end: what follows must not run into them.
fn sentence(words: &str) -> String {
    match words.ends_with(['.', '?', '!']) {
        true => words.to_owned(),
        false => format!("{words}."),
    }
}

/// How a reading has moved, where the two meters cannot have said the same of one value.
fn change(same: bool, more: bool) -> &'static str {
    match (same, more) {
        (true, _) => "no more than the meter can tell",
        (false, true) => "up",
        (false, false) => "down",
    }
}

/// A finding, with how soon something must be done about it.
fn urgent(finding: &FindingEntry) -> Markup {
    let soon = match Severity::ALL
        .into_iter()
        .find(|severity| severity.name() == finding.severity)
    {
        Some(Severity::Danger) => "now: it must not run until this is put right",
        Some(Severity::Repair) => "soon: to be put right, if that is not done yet",
        Some(Severity::Advise) => "when it suits",
        Some(Severity::Note) | None => "to know",
    };
    html! {
        tr {
            td { strong { (severity_word(finding.severity)) } ", " (soon) }
            td { (finding.text) }
        }
    }
}
