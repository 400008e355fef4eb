//! What is told after a practice call: what the fault was, what a proven way looked like, and what the apprentice's way cost.

use super::Mode;
use super::backing::Backing;
use super::here::Here;
use super::overlooked::{LeftRunning, at_gate, left_running};
use super::score::Score;
use crate::bench::faults::Fault;
use crate::bench::machine::Machine;
use crate::bench::trials::{Outcome, Played, Walked, judge, judge_verdict};
use crate::library::{self, Id, Library, Remedy, Restore};
use crate::source::{Safe, safe};
use crate::walk::{End, State, end_words, standing};

/// The same furnace, walked by the tree with a careful technician.
#[derive(Debug)]
pub struct Reference {
    /// What is wrong with it, what the walk was and what it came to.
    pub played: Played,
    /// How it is practised.
    pub mode: Mode,
    /// What the furnace shows.
    here: Here,
}

impl Reference {
    /// Of a call that was played at a furnace, and that furnace as it is found.
    pub fn new(library: &Library, played: Played, mode: Mode, machine: &mut impl Machine) -> Self {
        Self {
            played,
            mode,
            here: Here::of(library, machine),
        }
    }
}

/// What came of the tree's own way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TreeCame {
    /// It ended in a verdict that is right.
    Proven,
    /// It found nothing, where nothing is.
    Sound,
    /// Its work put right what was wrong, and it named nothing.
    PutRight,
    /// It handed the call on.
    HandedOn,
    /// None of these.
    NotFound,
}

/// What came of a practice call.
#[derive(Clone, Debug, PartialEq)]
pub struct Debrief {
    /// Against the truth.
    pub outcome: Outcome,
    /// How far what it ended on was proven.
    pub proof: Proof,
    /// It ended on a bad part, by the name of a fault that this part does not have.
    pub other_fault: bool,
    /// It ended without naming anything that is wrong.
    pub stopped: bool,
    /// It ended on what is to be handed on, for what is wrong.
    pub handed_on: bool,
    /// What else was named before, and was not proven then.
    pub named_before: Vec<String>,
    /// What was wrong, a line each; empty where nothing was.
    pub truth: Vec<String>,
    /// By which fault of the registry each of those is named; none where its words are the same, or it can only be handed on.
    pub named_as: Vec<Option<String>>,
    /// What of it was not found, where something else of it was.
    pub not_found: Vec<String>,
    /// Why it was called for, where nothing was wrong.
    pub occasion: Option<&'static str>,
    /// Work on the way has put it right.
    pub mended: bool,
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
    pub tree_came: TreeCame,
    /// Parts that were condemned and are good.
    pub condemned_for_nothing: Vec<String>,
    /// Parts that were condemned, are bad, and were not proven bad.
    pub condemned_unproven: Vec<String>,
    /// Dangers that were acted upon.
    pub raised: Vec<String>,
    /// What belongs before everything else and was left out or came too late.
    pub overlooked_at_gate: Vec<String>,
    /// What must not run and was not shut down for it.
    pub left_running: Vec<LeftRunning>,
    /// What was not put back.
    pub left_open: Vec<String>,
    /// The tree's way: what it asked and what the furnace answered, and how it ended.
    pub way: Vec<Safe>,
}

/// How far what a call ended on was proven.
#[derive(Clone, Debug, PartialEq)]
pub enum Proof {
    /// All of it held.
    Proven,
    /// Something was missing.
    Lacking(Backing),
    /// It ended on nothing that could be proven.
    Nothing,
}

impl Proof {
    fn of(backing: Backing) -> Self {
        match backing.is_proven() {
            true => Self::Proven,
            false => Self::Lacking(backing),
        }
    }
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
    let condemned = |outcome: Outcome, which: &dyn Fn(Id<library::Fault>) -> bool| {
        let judged = judged
            .iter()
            .filter(|(fault, judged)| *judged == outcome && which(*fault));
        let parts = judged.filter_map(|(fault, _)| match library.faults[*fault].remedy {
            Remedy::Replace(part) => Some(library.parts[part].title.clone()),
            _ => None,
        });
        parts.collect::<Vec<_>>()
    };
    let is_found = |fault: &&Fault| {
        let mut named = named.iter();
        named.any(|named| judge_verdict(library, *named, &[*fault], false) == Outcome::Right)
    };
    let (found, not_found): (Vec<&Fault>, Vec<&Fault>) = truth.iter().copied().partition(is_found);
    Debrief {
        not_found: match found.is_empty() {
            true => Vec::new(),
            false => not_found.iter().map(|fault| fault.title.to_owned()).collect(),
        },
        outcome: outcome(library, state, mended, &truth, &judged),
        proof: proof(library, reference, state, insisted, in_order),
        other_fault: (named.last()).is_some_and(|fault| is_other_fault(library, *fault, &truth)),
        stopped: named
            .iter()
            .all(|fault| library.faults[*fault].remedy == Remedy::None),
        handed_on: (named.last()).is_some_and(|fault| is_handed_on(library, played, *fault, &truth)),
        named_before: named_before(library, reference.mode, state, &named),
        truth: truth.iter().map(|fault| fault.title.to_owned()).collect(),
        named_as: truth
            .iter()
            .map(|fault| named_as(library, played, fault))
            .collect(),
        occasion: played.occasion.map(|occasion| occasion.why),
        mended: mended && !truth.is_empty(),
        ended: state.ended.as_ref().map_or_else(
            || "The call is not finished".to_owned(),
            |end| end_words(library, end),
        ),
        minutes: score.minutes,
        minutes_misplaced: score.minutes_misplaced(),
        misplaced: score.misplaced.len(),
        tree_minutes: played.walked.minutes,
        tree_came: tree_came(library, played, &truth),
        condemned_for_nothing: condemned(Outcome::Wrong, &|_| true),
        condemned_unproven: condemned(Outcome::Right, &|fault| insisted == Some(fault)),
        raised: (score.raised.iter())
            .map(|tree| library.trees[*tree].title.clone())
            .collect(),
        overlooked_at_gate: at_gate(library, state, &score.raised),
        left_running: match mended {
            true => Vec::new(),
            false => left_running(library, &truth, &named, &played.walked),
        },
        left_open: left_open(library, state),
        way: way(library, &played.walked),
    }
}

/// Whether a fault replaces a part that is bad, but by another fault: what proves a part bad does not tell its faults apart.
fn is_other_fault(library: &Library, fault: Id<library::Fault>, truth: &[&Fault]) -> bool {
    let said = &library.faults[fault];
    let is_named = truth
        .iter()
        .any(|fault| fault.verdicts.contains(&said.name.as_str()));
    match said.remedy {
        Remedy::Replace(part) => {
            let part = library.parts[part].name.as_str();
            !is_named && truth.iter().any(|fault| fault.part == Some(part))
        }
        _ => false,
    }
}

/// How far what the call ended on is proven. On a walk the tree has seen to it; in free practice what was taken must do.
fn proof(
    library: &Library,
    reference: &Reference,
    state: &State,
    insisted: Option<Id<library::Fault>>,
    in_order: bool,
) -> Proof {
    match (&state.ended, insisted) {
        (_, Some(fault)) => {
            let here = Some(&reference.here);
            Proof::of(Backing::at(library, state, here, fault))
        }
        (Some(End::Verdict { .. } | End::Outcome { .. }), None) => Proof::Proven,
        (Some(End::Unproven { .. }), None) if in_order && reference.mode == Mode::Free => {
            let here = Some(&reference.here);
            Proof::of(Backing::of_nothing_at(library, state, here))
        }
        _ => Proof::Nothing,
    }
}

/// Whether a fault hands on what is wrong, by its own words, a part in doubt, or as the tree's own way does.
fn is_handed_on(library: &Library, played: &Played, fault: Id<library::Fault>, truth: &[&Fault]) -> bool {
    let said = &library.faults[fault];
    let is_about = |true_fault: &&Fault| {
        let in_doubt = |part: &Id<library::Part>| true_fault.part == Some(library.parts[*part].name.as_str());
        true_fault.verdicts.contains(&said.name.as_str()) || said.group.iter().any(in_doubt)
    };
    let by_the_tree = played.walked.state.moment.stated.contains(&fault);
    said.remedy == Remedy::Refer && (by_the_tree || truth.iter().any(is_about))
}

/// What an apprentice had to name, where that has other words than what is told of the truth: as the tree's own way names it,
/// which fits the kind of furnace, and its most exact name.
fn named_as(library: &Library, played: &Played, truth: &Fault) -> Option<String> {
    let stated = played.walked.state.moment.stated.iter().copied();
    let exact = truth.verdicts.iter().filter_map(|name| library.faults.find(name));
    let is_right =
        |named: &Id<library::Fault>| judge_verdict(library, *named, &[truth], false) == Outcome::Right;
    let mut titles: Vec<&str> = Vec::new();
    for named in stated.filter(is_right).chain(exact.filter(is_right).take(1)) {
        let title = library.faults[named].title.as_str();
        if !titles.contains(&title) {
            titles.push(title);
        }
    }
    (!titles.is_empty() && titles != [truth.title]).then(|| titles.join(", or "))
}

/// What was named before the end and withheld, each once; on a walk it is the tree that names.
fn named_before(library: &Library, mode: Mode, state: &State, named: &[Id<library::Fault>]) -> Vec<String> {
    let mut before: Vec<Id<library::Fault>> = Vec::new();
    for fault in &state.withheld {
        if mode == Mode::Free && !named.contains(fault) && !before.contains(fault) {
            before.push(*fault);
        }
    }
    before
        .iter()
        .map(|fault| library.faults[*fault].title.clone())
        .collect()
}

/// What the tree's own way came to; only a verdict proves anything.
fn tree_came(library: &Library, played: &Played, truth: &[&Fault]) -> TreeCame {
    let walked = &played.walked;
    let stated = &walked.state.moment.stated;
    let is_right =
        |fault: &Id<library::Fault>| judge_verdict(library, *fault, truth, false) == Outcome::Right;
    let names = |remedy: Remedy| {
        stated
            .last()
            .is_some_and(|fault| library.faults[*fault].remedy == remedy)
    };
    match played.outcome {
        Outcome::Right if truth.is_empty() && !names(Remedy::Refer) => TreeCame::Sound,
        Outcome::Right if stated.iter().any(is_right) => TreeCame::Proven,
        _ if names(Remedy::Refer) => TreeCame::HandedOn,
        Outcome::Right if walked.mended => TreeCame::PutRight,
        _ => TreeCame::NotFound,
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
    // Who stops where the work has put it right has condemned nothing, and nothing is left to be found. Who stops at a sound
    // furnace has only told nobody so.
    if mended && !truth.is_empty() && matches!(state.ended, Some(End::Unproven { .. })) {
        return Outcome::Right;
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
