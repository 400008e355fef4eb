//! From a state to what stands beside the question.

use super::ask::{NotLookedAt, ShownValue, Standing, TrailEntry};
use super::at_worst::at_worst_by;
use super::possible::{Search, ruled_out_but, voidable};
use super::state::{CameOut, State, What};
use super::stated::stated;
use super::unchecked::unchecked;
use super::words::{answer_words, end_words};
use crate::library::{Fault, Id, Kind, Library};
use crate::source::safe;

fn not_looked_at(library: &Library, state: &State) -> Vec<NotLookedAt> {
    let cut_short = unchecked(library, state).into_iter().map(|visit| NotLookedAt {
        tree: safe(&library.trees[visit.tree].title),
        because: safe(&library.faults[visit.because].title),
        checks: (visit.checks.iter())
            .map(|datum| safe(library.title_of(*datum)))
            .collect(),
    });
    cut_short.collect()
}

/// What stands beside the question.
pub fn standing(library: &Library, state: &State) -> Standing {
    let fault_title = |fault: &Id<Fault>| safe(&library.faults[*fault].title);
    let ended = state.ended.is_some();
    let voidable = voidable(library, &state.moment);
    let search = Search::new(library, &state.moment, &voidable, true);
    let mut ruled_out = ruled_out_but(library, state, &search.faults);
    if let (true, Some(last)) = (ended, ruled_out.last_mut()) {
        // Where the walk ends, everything else falls away: that says nothing about it.
        last.clear();
    }
    let trail = (state.trail.iter().zip(ruled_out).enumerate())
        .map(|(position, (answered, ruled_out))| TrailEntry {
            position,
            title: match answered.what {
                What::Datum(datum) => safe(library.title_of(datum)),
                What::Work(step) => match &library[step].kind {
                    Kind::Do { text, .. } => safe(text.lines().next().unwrap_or_default()),
                    _ => safe(&library[step].name),
                },
            },
            datum: match answered.what {
                What::Datum(datum) => state.value(datum).map(|_| datum),
                What::Work(_) => None,
            },
            answer: safe(&answer_words(library, state, answered)),
            borderline: answered.borderline,
            worked_out: shown(library, &answered.worked_out),
            stood: shown(library, &answered.stood),
            ruled_out: ruled_out.iter().map(fault_title).collect(),
        })
        .collect();
    Standing {
        possible: match ended {
            true => Vec::new(),
            false => search.faults.iter().map(fault_title).collect(),
        },
        trail,
        last_is_news: false,
        open: state
            .open
            .iter()
            .map(|restore| safe(&library.restores[*restore].text))
            .collect(),
        findings: (state.moment.findings.iter())
            .map(|(_, finding)| (finding.severity, safe(&finding.text)))
            .collect(),
        not_looked_at: not_looked_at(library, state),
        at_worst: if ended {
            0
        } else {
            at_worst_by(library, &state.moment, &search, &voidable)
        },
        dangers: library.dangers.iter().map(|danger| safe(&danger.label)).collect(),
        ended: state.ended.as_ref().map(|end| safe(&end_words(library, end))),
        stated: stated(library, state),
    }
}

/// Values that nobody was asked for, as a face shows them.
fn shown(library: &Library, came_out: &[CameOut]) -> Vec<ShownValue> {
    let shown = came_out.iter().map(|came_out| ShownValue {
        title: safe(library.title_of(came_out.datum)),
        value: safe(&came_out.value),
        means: came_out.means.as_deref().map(safe),
    });
    shown.collect()
}
