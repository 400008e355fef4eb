//! The office's part: what proves the verdict, what was measured and seen, how everything was left, and notes.
//!
//! It is set out to be short: a reading stands once, among its bands, and plate and work are told apart from what was asked.
//! The numbers are those of the answers, so the order is kept; the text and JSON have them one after the other.

use maud::{Markup, html};

use super::super::chart::strip;
use super::super::entries::{AnswerEntry, PutBackEntry};
use super::super::proof::Lacking;
use super::super::{Job, ReadingEntry, asked_words};

impl Job {
    pub(super) fn for_the_office(&self) -> Markup {
        html! {
            section aria-labelledby="office" {
                h2 id="office" { "For the office" }
                (self.what_proves_it())
                (self.charts())
                (self.seen())
                (self.plate_lines())
                (self.left())
                @if !self.notes.is_empty() {
                    h3 { "Notes" }
                    ul { @for note in &self.notes { li { (note) } } }
                }
            }
        }
    }

    fn what_proves_it(&self) -> Markup {
        html! {
            @if !self.proof.is_empty() {
                h3 { "What proves it" }
                table {
                    thead { tr { th scope="col" { "Asked for" } th scope="col" { "Measured or seen" } } }
                    tbody {
                        @for line in &self.proof {
                            tr {
                                td {
                                    @match &line.lacking {
                                        None => (line.claim),
                                        Some(lacking) => (not_proven(lacking)),
                                    }
                                }
                                td {
                                    @match line.taken.as_slice() {
                                        // The claim says already what it is called.
                                        [(_, value)] if line.holds => strong { (value) },
                                        _ => (line.measured.join("; ")),
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    fn charts(&self) -> Markup {
        let mut drawn = self.readings.iter().filter(|entry| entry.has_bounds()).peekable();
        if drawn.peek().is_none() {
            return html! {};
        }
        html! {
            h3 { "Readings among their bands" }
            p class="soft" {
                "Outlined: the band in which it lay. The triangle is the reading, the line through the strip what the meter \
                 leaves open, a ring the reading before. Numbers are those of the answers."
            }
            div class="strips" { @for entry in drawn { (charted(entry)) } }
        }
    }

    /// What was seen and answered, without what stands among the readings, the plate or the work.
    fn seen(&self) -> Markup {
        let is_charted = |name: &str| {
            let mut charted = self.readings.iter().filter(|entry| entry.has_bounds());
            charted.any(|entry| entry.reading == name)
        };
        let is_elsewhere = |answer: &AnswerEntry| match answer.kind {
            "reading" => answer.given && answer.name.as_deref().is_some_and(is_charted),
            "plate" => answer.given,
            "work" => true,
            _ => false,
        };
        let mut seen = (self.answers.iter().enumerate())
            .filter(|(_, answer)| !is_elsewhere(answer))
            .peekable();
        if seen.peek().is_none() {
            return html! {};
        }
        html! {
            h3 { "Seen and answered" }
            ol class="asked" {
                @for (at, answer) in seen {
                    li value=(at + 1) {
                        (asked_words(&answer.title, ""))
                        strong { (answer.answer) }
                        @if answer.borderline { " (borderline)" }
                        @for came_out in answer.worked_out.iter().filter(|came_out| !is_charted(&came_out.reading)) {
                            "; worked out: " (came_out.title) ": " strong { (came_out.value) }
                        }
                    }
                }
            }
        }
    }

    fn plate_lines(&self) -> Markup {
        html! {
            @if !self.plate.is_empty() {
                h3 { "Rating plate and labels" }
                dl class="facts" {
                    @for entry in &self.plate { div { dt { (entry.title) } dd { (entry.value) } } }
                }
            }
        }
    }

    fn left(&self) -> Markup {
        let (done, open): (Vec<_>, Vec<_>) = self.put_back.iter().partition(|entry| entry.state == "done");
        html! {
            @if !open.is_empty() {
                h3 class="warn" { "Not put back" }
                ul { @for entry in open { (left_open(entry)) } }
            }
            @if !done.is_empty() {
                h3 { "Opened, and put back" }
                ul class="run" { @for entry in done { li { (entry.text) } } }
            }
        }
    }
}

fn left_open(entry: &PutBackEntry) -> Markup {
    html! {
        li {
            span class="warn" { (if entry.state == "refused" { "Left open: " } else { "Still open: " }) }
            (entry.text)
            @if let Some(why) = &entry.why { " (left open because: " (why) ")" }
        }
    }
}

/// A reading in words, beside its strip.
fn charted(entry: &ReadingEntry) -> Markup {
    let here = || entry.bands.iter().filter(|band| band.here);
    html! {
        figure {
            figcaption {
                @for (at, taking) in entry.takings.iter().enumerate() {
                    (if at == 0 { "" } else { ", " }) (taking.answer + 1)
                }
                ". " (entry.title) ": "
                @for (at, taking) in entry.takings.iter().enumerate() {
                    @if at > 0 { ", then " }
                    strong { (taking.value) }
                    @if taking.borderline { " (borderline)" }
                }
                @for band in here() {
                    "; band: " (band.words) @if let Some(means) = &band.means { ": " (means) }
                }
            }
            @if let Some(chart) = strip(entry) { (chart) }
        }
    }
}

/// What a line of the proof lacks.
fn not_proven(lacking: &Lacking) -> Markup {
    html! {
        span class="warn" { @if lacking.others == 0 { "Not proven:" } @else { "Not proven; what comes nearest:" } }
        ul { @for claim in &lacking.claims { li { (claim) } } }
        @if let Some(others) = lacking.others() { (others) }
    }
}
