//! What a job report takes from a call: from its state what stands, from its events what has happened.

use super::entries::{AnswerEntry, NotedEntry, PlateEntry, PutBackEntry, TreeEntry, WorkedOutEntry};
use crate::library::{Datum, Fault, FieldKind, Id, Kind, Library};
use crate::source::{Safe, safe};
use crate::walk::{self, End, Event, Opened, Question, Role, Standing, State, Value, What};

pub(super) fn plain(text: &str) -> String {
    safe(text).to_string()
}

pub(super) fn complaint(library: &Library, name: &str) -> String {
    let tree = library.trees.find(name).map(|tree| &library.trees[tree]);
    let words = tree.map(|tree| tree.complaint.as_deref().unwrap_or(&tree.title));
    plain(words.unwrap_or(name))
}

/// The fault that the call ended in, proven or insisted on.
pub(super) fn verdict(library: &Library, state: &State) -> Option<Id<Fault>> {
    match state.ended.as_ref()? {
        End::Verdict { fault, .. } | End::Insisted { fault, .. } => library.faults.find(fault),
        End::Outcome { .. } | End::Unproven { .. } => None,
    }
}

/// Why the verdict follows and what to advise, as its step says.
pub(super) fn verdict_step<'l>(
    library: &'l Library,
    state: &State,
    fault: Id<Fault>,
) -> Option<(&'l str, Option<&'l str>)> {
    match &library[state.top()?.step].kind {
        Kind::Verdict {
            fault: at,
            because,
            advice,
        } if *at == fault => Some((because, advice.as_deref())),
        _ => None,
    }
}

pub(super) fn noted(library: &Library, state: &State) -> Vec<String> {
    let ended = verdict(library, state);
    let stated = state.moment.stated.iter().filter(|fault| Some(**fault) != ended);
    stated.map(|fault| plain(&library.faults[*fault].title)).collect()
}

/// What came of a call, in a line for the owner.
pub(super) fn headline(library: &Library, state: &State) -> String {
    let title = |name: &str| {
        let fault = library.faults.find(name);
        fault.map_or_else(|| plain(name), |fault| plain(&library.faults[fault].title))
    };
    match &state.ended {
        None => "The call is not finished".to_owned(),
        Some(End::Verdict { fault, .. }) => title(fault),
        Some(End::Insisted { fault, words }) => {
            let title = title(fault);
            plain(&format!(
                "{title}: the technician's own verdict, not proven: {words}"
            ))
        }
        Some(End::Unproven { why }) => plain(&format!("The cause is not proven: {why}")),
        Some(End::Outcome { outcome }) => {
            let opened = state.opened.as_ref();
            let complaint = opened.map(|opened| complaint(library, &opened.tree));
            let outcome = plain(&outcome.replace('_', " "));
            match complaint {
                Some(complaint) => format!("{complaint}: {outcome}"),
                None => outcome,
            }
        }
    }
}

/// What was answered, in order.
pub(super) fn answers(library: &Library, state: &State, standing: &Standing) -> Vec<AnswerEntry> {
    // What a tree comes to after an answer says nothing where no tree asked.
    let is_free = state.opened.as_ref().is_some_and(Opened::is_free_practice);
    let answers = state.trail.iter().zip(&standing.trail).map(|(answered, entry)| {
        let (kind, name) = match answered.what {
            What::Datum(datum) => {
                let kind = match datum {
                    Datum::Reading(_) => "reading",
                    Datum::Sign(_) => "sign",
                    Datum::Field(_) => "plate",
                };
                (kind, Some(plain(library.name_of(datum))))
            }
            What::Work(_) => ("work", None),
        };
        let worked_out = answered.worked_out.iter().zip(&entry.worked_out);
        let ruled_out = entry.ruled_out.iter().filter(|_| !is_free);
        AnswerEntry {
            title: entry.title.to_string(),
            answer: entry.answer.to_string(),
            borderline: entry.borderline,
            kind,
            name,
            given: answered.given,
            worked_out: worked_out
                .map(|(of, came_out)| WorkedOutEntry {
                    reading: plain(library.name_of(of.datum)),
                    title: came_out.title.to_string(),
                    value: came_out.value.to_string(),
                    means: came_out.means.as_ref().map(Safe::to_string),
                })
                .collect(),
            ruled_out: ruled_out.map(Safe::to_string).collect(),
        }
    });
    answers.collect()
}

/// The noted verdicts with the words of their steps, each fault once: a part of a service that is walked again
/// after a repair may come to the same verdict, and so may the end of the call.
pub(super) fn found_on_the_way(library: &Library, state: &State) -> Vec<NotedEntry> {
    let mut seen: Vec<_> = verdict(library, state).into_iter().collect();
    let first_of_its_kind = state.moment.noted.iter().filter(|noted| {
        let new = !seen.contains(&noted.fault);
        seen.push(noted.fault);
        new
    });
    let noted = first_of_its_kind.map(|noted| {
        let step = noted.left.last().map(|frame| &library[frame.step].kind);
        let (because, advice) = match step {
            Some(Kind::Verdict { because, advice, .. }) => (Some(because), advice.as_ref()),
            _ => (None, None),
        };
        let fault = &library.faults[noted.fault];
        NotedEntry {
            fault: plain(&fault.name),
            title: plain(&fault.title),
            remedy: plain(&walk::remedy_words(library, noted.fault)),
            because: because.map(|words| plain(words)),
            advice: advice.map(|words| plain(words)),
        }
    });
    noted.collect()
}

pub(super) fn stands_at(library: &Library, state: &State) -> Option<String> {
    let asked = match walk::ask(library, state).question {
        Question::Number { title, .. } => title,
        Question::Choice { prompt, .. } => prompt,
        Question::Act { text } => text.first()?.clone(),
        Question::Unproven { fault, .. } => safe(&format!("not proven: {fault}")),
        Question::PutBack { text, .. } => safe(&format!("to put back: {text}")),
        Question::Finished | Question::Closed => return None,
    };
    Some(asked.to_string())
}

pub(super) fn trees(library: &Library, events: &[Event]) -> Vec<TreeEntry> {
    let mut entered: Vec<&str> = Vec::new();
    for event in events {
        if let Event::Entered { tree, .. } = event
            && !entered.contains(&tree.as_str())
        {
            entered.push(tree);
        }
    }
    let trees = entered.into_iter().filter_map(|name| {
        let tree = &library.trees[library.trees.find(name)?];
        Some(TreeEntry {
            tree: plain(name),
            title: plain(&tree.title),
            status: tree.status.name(),
            edition: tree.edition.as_deref().map(plain),
        })
    });
    trees.collect()
}

pub(super) fn plate(library: &Library, state: &State) -> Vec<PlateEntry> {
    let fields = library.plate.iter().filter_map(|(id, field)| {
        let standing = state.value(Datum::Field(id))?;
        let value = match (&field.kind, standing.value) {
            (FieldKind::Choices(choices), Value::Choice(at)) => choices.get(at)?.text.clone(),
            _ => standing.typed.clone(),
        };
        Some(PlateEntry {
            title: plain(&field.title),
            value: plain(&value),
        })
    });
    fields.collect()
}

pub(super) fn work(library: &Library, events: &[Event]) -> Vec<String> {
    let done = events.iter().filter_map(|event| match event {
        Event::Did { step } => {
            let (tree, name) = step.split_once('/')?;
            let tree = &library.trees[library.trees.find(tree)?];
            let step = library.steps[tree.steps.clone()]
                .iter()
                .find(|step| step.name == name)?;
            match &step.kind {
                Kind::Do { text, .. } => Some(plain(text)),
                _ => None,
            }
        }
        _ => None,
    });
    let mut work: Vec<String> = Vec::new();
    for text in done {
        if !work.contains(&text) {
            work.push(text);
        }
    }
    work
}

pub(super) fn dangers(library: &Library, events: &[Event]) -> Vec<String> {
    let raised = events.iter().filter_map(|event| match event {
        Event::Entered {
            tree,
            role: Role::Danger,
        } => Some(tree),
        _ => None,
    });
    raised.map(|tree| complaint(library, tree)).collect()
}

pub(super) fn put_back(library: &Library, state: &State, events: &[Event]) -> Vec<PutBackEntry> {
    let mut opened: Vec<&str> = Vec::new();
    for event in events {
        if let Event::LeftOpen { restores } = event {
            for name in restores {
                if !opened.contains(&name.as_str()) {
                    opened.push(name);
                }
            }
        }
    }
    let entries = opened.into_iter().filter_map(|name| {
        let id = library.restores.find(name)?;
        let last = state.put_backs.iter().rev().find(|done| done.restore == id);
        let (how, why) = match last {
            _ if state.open.contains(&id) => {
                let danger = matches!(state.ended, Some(End::Verdict { danger: true, .. }));
                ("open", danger.then(|| "the danger ended the call".to_owned()))
            }
            Some(done) if done.refused.is_some() => ("refused", done.refused.as_deref().map(plain)),
            _ => ("done", None),
        };
        Some(PutBackEntry {
            text: plain(&library.restores[id].text),
            state: how,
            why,
        })
    });
    entries.collect()
}
