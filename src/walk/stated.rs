//! What a verdict that ended a walk asks of the technician.

use super::event::{End, Opened};
use super::state::State;
use super::words::remedy_alone;
use crate::library::{Kind, Library, Remedy};
use crate::source::{Safe, safe, safe_lines};

/// What a verdict that ended a walk asks of the technician. Every text is safe to print as it is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stated {
    /// Whether it is a shut-down: not to be overlooked.
    pub shut_down: bool,
    /// What is done about the fault.
    pub remedy: Safe,
    /// How, a line each, in the words of the fault.
    pub text: Vec<Safe>,
    /// What can hurt there.
    pub cautions: Vec<Safe>,
    /// Why it follows.
    pub because: Vec<Safe>,
    /// What to tell the owner.
    pub advice: Vec<Safe>,
    /// What to walk once that is done, where the library says how work is proven.
    pub then: Option<Safe>,
}

/// What the verdict asks for in which a walk has ended, proven or insisted on; none where it ended without one.
pub(super) fn stated(library: &Library, state: &State) -> Option<Stated> {
    let (End::Verdict { fault, .. } | End::Insisted { fault, .. }) = state.ended.as_ref()? else {
        return None;
    };
    let id = library.faults.find(fault)?;
    let fault = &library.faults[id];
    let mut stated = Stated {
        shut_down: fault.remedy == Remedy::ShutDown,
        remedy: safe(&remedy_alone(library, id)),
        text: fault.text.as_deref().map(safe_lines).unwrap_or_default(),
        then: then(library, state, fault.remedy),
        ..Stated::default()
    };
    let step = state.top().map(|frame| &library[frame.step]);
    if let Some(step) = step
        && let Kind::Verdict {
            fault: at,
            because,
            advice,
        } = &step.kind
        && *at == id
    {
        let texts = step
            .cautions
            .iter()
            .map(|caution| safe(&library.cautions[*caution].text));
        stated.cautions = texts.collect();
        stated.because = safe_lines(because);
        stated.advice = advice.as_deref().map(safe_lines).unwrap_or_default();
    }
    Some(stated)
}

/// What to walk once something was replaced or set right. In practice nothing is.
fn then(library: &Library, state: &State, remedy: Remedy) -> Option<Safe> {
    let is_worked_on = matches!(remedy, Remedy::Replace(_) | Remedy::Correct);
    let is_practice = state.opened.as_ref().is_some_and(Opened::is_practice);
    let tree = library.after_work.filter(|_| is_worked_on && !is_practice)?;
    let tree = &library.trees[tree];
    let called = tree.complaint.as_ref().unwrap_or(&tree.title);
    Some(safe(&format!(
        "Once that is done, walk {}: “{called}”",
        tree.name
    )))
}
