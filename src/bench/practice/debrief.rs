//! What is told after a practice call: what the fault was, what a proven way looked like, and what the apprentice's way cost.

use super::exercise::asked_in;
use super::score::Score;
use crate::bench::faults::Fault;
use crate::bench::trials::{Outcome, Played, Walked, judge, judge_verdict};
use crate::library::{self, Datum, Id, Library, Remedy, Restore};
use crate::source::{Safe, safe};
use crate::walk::{End, Known, State, end_words, standing};

/// The same furnace, walked by the tree with a careful technician.
#[derive(Debug)]
pub struct Reference {
    /// What is wrong with it, what the walk was and what it came to.
    pub played: Played,
}

/// What came of a practice call.
#[derive(Clone, Debug, PartialEq)]
pub struct Debrief {
    /// Against the truth.
    pub outcome: Outcome,
    /// It ended on a verdict whose proof did not hold.
    pub unproven: bool,
    /// What was wrong, a line each; empty where nothing was.
    pub truth: Vec<String>,
    /// How the apprentice ended.
    pub ended: String,
    /// Minutes it took.
    pub minutes: f64,
    /// Minutes of it for probes that were put elsewhere than asked.
    pub minutes_misplaced: f64,
    /// How many those were.
    pub misplaced: usize,
    /// Minutes that the tree took.
    pub tree_minutes: f64,
    /// What the tree came to.
    pub tree_outcome: Outcome,
    /// Parts that were condemned and are good.
    pub condemned_for_nothing: Vec<String>,
    /// Dangers that nobody looked for or acted upon.
    pub overlooked: Vec<String>,
    /// What was not put back.
    pub left_open: Vec<String>,
    /// The tree's way: what it asked and what the furnace answered, and how it ended.
    pub way: Vec<Safe>,
}

/// Holds a call that has ended against the truth and the tree; `mended` where work has put right what was wrong.
pub fn debrief(
    library: &Library,
    reference: &Reference,
    score: &Score,
    state: &State,
    mended: bool,
) -> Debrief {
    let played = &reference.played;
    let truth: Vec<&Fault> = played.truth.iter().map(|(fault, _)| *fault).collect();
    let insisted = match &state.ended {
        Some(End::Insisted { fault, .. }) => library.faults.find(fault),
        _ => None,
    };
    let in_order = truth.is_empty() || mended;
    let named: Vec<Id<library::Fault>> = state.moment.stated.iter().copied().chain(insisted).collect();
    let judged: Vec<_> = (named.iter())
        .map(|fault| (*fault, judge_verdict(library, *fault, &truth, in_order)))
        .collect();
    Debrief {
        outcome: outcome(library, state, mended, &truth, &judged),
        unproven: insisted.is_some(),
        truth: truth.iter().map(|fault| fault.title.to_owned()).collect(),
        ended: state.ended.as_ref().map_or_else(
            || "The call is not finished".to_owned(),
            |end| end_words(library, end),
        ),
        minutes: score.minutes,
        minutes_misplaced: score.minutes_misplaced(),
        misplaced: score.misplaced.len(),
        tree_minutes: played.walked.minutes,
        tree_outcome: played.outcome,
        condemned_for_nothing: (judged.iter())
            .filter(|(_, outcome)| *outcome == Outcome::Wrong)
            .filter_map(|(fault, _)| match library.faults[*fault].remedy {
                Remedy::Replace(part) => Some(library.parts[part].title.clone()),
                _ => None,
            })
            .collect(),
        overlooked: overlooked(library, state, &truth, &named),
        left_open: left_open(library, state),
        way: way(library, &played.walked),
    }
}

/// The worst verdict counts, as with the tree.
fn outcome(
    library: &Library,
    state: &State,
    mended: bool,
    truth: &[&Fault],
    judged: &[(Id<library::Fault>, Outcome)],
) -> Outcome {
    let any = |outcome| judged.iter().any(|(_, judged)| *judged == outcome);
    if any(Outcome::Wrong) {
        return Outcome::Wrong;
    }
    if any(Outcome::Right) {
        return Outcome::Right;
    }
    if let Some((_, outcome)) = judged.last() {
        return *outcome;
    }
    let walked = Walked {
        events: Vec::new(),
        state: state.clone(),
        minutes: 0.0,
        steps: 0,
        mended,
    };
    judge(library, &walked, truth)
}

fn overlooked(
    library: &Library,
    state: &State,
    truth: &[&Fault],
    named: &[Id<library::Fault>],
) -> Vec<String> {
    let mut overlooked = Vec::new();
    // A walk that ended in a danger was right to leave the rest of the gate.
    let shut_down = named
        .iter()
        .any(|fault| library.faults[*fault].remedy == Remedy::ShutDown);
    let gate = library.gate.filter(|_| !shut_down);
    let at_gate: Vec<Datum> = gate.map(|gate| asked_in(library, gate)).unwrap_or_default();
    for datum in at_gate.into_iter().filter(|datum| !state.asked.contains(datum)) {
        overlooked.push(format!(
            "Not asked before the furnace was fired: {}",
            library.title_of(datum)
        ));
    }
    for fault in truth {
        let id = fault.verdicts.iter().find_map(|name| library.faults.find(name));
        let Some(id) = id.filter(|id| library.faults[*id].remedy == Remedy::ShutDown) else {
            continue;
        };
        if !named.contains(&id) && !shut_down {
            overlooked.push(format!("It must not run, and was not shut down: {}", fault.title));
        }
    }
    overlooked
}

fn left_open(library: &Library, state: &State) -> Vec<String> {
    let refused = state.put_backs.iter().filter(|done| done.refused.is_some());
    let refused = refused.map(|done| done.restore);
    let all: Vec<Id<Restore>> = refused.chain(state.open.iter().copied()).collect();
    all.into_iter()
        .map(|restore| library.restores[restore].text.clone())
        .collect()
}

fn way(library: &Library, walked: &Walked) -> Vec<Safe> {
    let standing = standing(library, &walked.state);
    let mut way = Vec::new();
    for entry in &standing.trail {
        way.push(safe(&format!("{} → {}", entry.title, entry.answer)));
        for came_out in &entry.worked_out {
            way.push(safe(&format!("{} = {}", came_out.title, came_out.value)));
        }
    }
    way.extend(standing.ended);
    way
}

impl Debrief {
    /// The score in a line, for the record of the call.
    pub fn line(&self) -> String {
        let parts = match self.condemned_for_nothing.as_slice() {
            [] => "none".to_owned(),
            parts => parts.join(", "),
        };
        format!(
            "Practice: {}; {} min, the tree {} min; probes misplaced: {}; parts condemned for nothing: {parts}; \
             dangers overlooked: {}; left open: {}",
            self.verdict(),
            self.minutes,
            self.tree_minutes,
            self.misplaced,
            self.overlooked.len(),
            self.left_open.len()
        )
    }

    fn verdict(&self) -> &'static str {
        match (self.outcome, self.unproven) {
            (Outcome::Right, false) => "right",
            (Outcome::Right, true) => "right, but not proven",
            (Outcome::Referred, _) => "handed on or stopped without the fault",
            (Outcome::Missed, _) => "missed: left as if nothing were wrong",
            (Outcome::Wrong, _) => "wrong",
        }
    }

    /// All of it, a section after the other.
    pub fn sections(&self) -> Vec<Known> {
        let truth = match self.truth.as_slice() {
            [] => vec!["Nothing".to_owned()],
            truth => truth.to_vec(),
        };
        let found = vec![
            super::menu::capital(self.verdict()),
            format!("You ended with: {}", self.ended),
        ];
        let mut minutes = vec![format!(
            "{} min; the tree takes {} min",
            self.minutes, self.tree_minutes
        )];
        if self.misplaced > 0 {
            minutes.push(format!(
                "{} min of that for probes that were put elsewhere: {}",
                self.minutes_misplaced, self.misplaced
            ));
        }
        let mut way: Vec<String> = self.way.iter().map(Safe::to_string).collect();
        let proven = self.tree_outcome == Outcome::Right;
        if !proven {
            way.push("The tree does not find it at this furnace".to_owned());
        }
        let way_heading = if proven {
            "A proven way, by the tree"
        } else {
            "The tree's way"
        };
        let sections = [
            ("What was wrong", truth),
            ("What you found", found),
            ("What it took", minutes),
            (
                "Parts condemned for nothing",
                none_if_empty(&self.condemned_for_nothing),
            ),
            ("Dangers overlooked", none_if_empty(&self.overlooked)),
            ("Left open", none_if_empty(&self.left_open)),
            (way_heading, way),
        ];
        let section = |(heading, lines): (&str, Vec<String>)| Known {
            heading: safe(heading),
            lines: lines.iter().map(|line| safe(line)).collect(),
        };
        sections.into_iter().map(section).collect()
    }
}

fn none_if_empty(lines: &[String]) -> Vec<String> {
    match lines {
        [] => vec!["None".to_owned()],
        lines => lines.to_vec(),
    }
}
