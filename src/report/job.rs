//! The job report: what was found, measured, proven, put back and advised on one call.

mod chart;
mod html;
mod readings;
mod style;
mod text;

use std::collections::BTreeSet;

use serde::Serialize;

pub use readings::{BandEntry, ReadingEntry, TakingEntry};
pub(super) use text::GOVERNS;

use crate::library::{Datum, Fault, FieldKind, Id, Kind, Library, Severity, Status};
use crate::source::{Safe, safe};
use crate::walk::{self, End, Event, Opened, Question, Role, State, Value};

/// A job report, in order.
#[derive(Clone, Debug, Serialize)]
pub struct Job {
    /// The session.
    pub session: String,
    /// When it was opened, and when its last event was.
    pub opened: String,
    /// The last event's time.
    pub last: String,
    /// The complaint.
    pub complaint: String,
    /// The library's name and edition.
    pub library: String,
    /// The hash of the library's files.
    pub library_hash: String,
    /// The overlays laid over it, each with what it replaced.
    pub overlays: Vec<String>,
    /// The trees that were walked, in the order they were entered.
    pub trees: Vec<TreeEntry>,
    /// Who walked it.
    pub technician: Option<String>,
    /// Where.
    pub site: Option<String>,
    /// At which equipment.
    pub equipment: Option<String>,
    /// `open` or `closed`.
    pub status: &'static str,
    /// How the walk ended.
    pub ended: Option<String>,
    /// The registered name of the fault of the verdict, if there is one.
    pub fault: Option<String>,
    /// What is done about it.
    pub remedy: Option<String>,
    /// Why it follows, in the tree's words.
    pub because: Option<String>,
    /// What to tell the owner.
    pub advice: Option<String>,
    /// The lines of the proof, each with what was measured for it.
    pub proof: Vec<ProofEntry>,
    /// Verdicts that were noted on the way.
    pub noted: Vec<String>,
    /// What is on the report, worst first.
    pub findings: Vec<FindingEntry>,
    /// The question that a call which has not ended stands at.
    pub stands_at: Option<String>,
    /// Dangers that were raised, in order.
    pub dangers: Vec<String>,
    /// What answered, where nobody was on site: a file, or the practice that it was.
    pub answered_from: Option<String>,
    /// What was answered, in order; answers that were taken back are in the log.
    pub answers: Vec<AnswerEntry>,
    /// What was read from the rating plate and the labels.
    pub plate: Vec<PlateEntry>,
    /// What was measured and worked out: each reading once, with its takings and bands.
    pub readings: Vec<ReadingEntry>,
    /// The work that was done on the way, in order.
    pub work: Vec<String>,
    /// What was opened, and how it was left.
    pub put_back: Vec<PutBackEntry>,
    /// What the technician wrote down.
    pub notes: Vec<String>,
    /// The hash of the log's last line.
    pub head: String,
    /// Lines in the log.
    pub records: u64,
}

/// One tree.
#[derive(Clone, Debug, Serialize)]
pub struct TreeEntry {
    /// Its name.
    pub tree: String,
    /// What it is called.
    pub title: String,
    /// How far it is trusted: `draft`, `field-trial` or `approved`.
    pub status: &'static str,
    /// Its edition, where it gives one.
    pub edition: Option<String>,
}

/// One line of the proof.
#[derive(Clone, Debug, Serialize)]
pub struct ProofEntry {
    /// What was claimed.
    pub claim: String,
    /// What was measured for it.
    pub measured: Vec<String>,
    /// Whether it held at the end.
    pub holds: bool,
}

/// One finding.
#[derive(Clone, Debug, Serialize)]
pub struct FindingEntry {
    /// How bad.
    pub severity: &'static str,
    /// What.
    pub text: String,
}

/// One field of the rating plate.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PlateEntry {
    /// What it is called.
    pub title: String,
    /// What the plate says.
    pub value: String,
}

/// One answer.
#[derive(Clone, Debug, Serialize)]
pub struct AnswerEntry {
    /// What was asked.
    pub title: String,
    /// What was answered.
    pub answer: String,
    /// It lay within the meter's accuracy of a bound.
    pub borderline: bool,
    /// What was worked out after it, before anything else was asked.
    pub worked_out: Vec<WorkedOutEntry>,
    /// The faults that the walk no longer came to after it.
    pub ruled_out: Vec<String>,
}

/// One reading that was worked out.
#[derive(Clone, Debug, Serialize)]
pub struct WorkedOutEntry {
    /// What it is called.
    pub title: String,
    /// What came out.
    pub value: String,
    /// What that means, in the tree's words.
    pub means: Option<String>,
}

/// One thing that was opened.
#[derive(Clone, Debug, Serialize)]
pub struct PutBackEntry {
    /// What to do to put it back.
    pub text: String,
    /// `done`, `refused` or `open`.
    pub state: &'static str,
    /// Why it stays open, in the technician's words.
    pub why: Option<String>,
}

/// What a report takes from the log beside the events.
#[derive(Clone, Debug)]
pub struct Log<'a> {
    /// The session's id.
    pub session: &'a str,
    /// Time of the first record.
    pub opened: String,
    /// Time of the last record.
    pub last: String,
    /// Hash of the last line.
    pub head: String,
    /// Lines.
    pub records: u64,
}

/// Why a call is no field call: a file answered it, or a simulated furnace.
fn no_field_call(answered_from: &str) -> String {
    match answered_from.starts_with(Opened::PRACTICE) {
        true => format!("{answered_from}; a simulated furnace answered."),
        false => format!("the file {answered_from} answered, and the gate was not walked."),
    }
}

impl Job {
    /// The report of a call that stands at `state` after `events`.
    pub fn new(library: &Library, state: &State, events: &[Event], log: Log<'_>) -> Self {
        let opened = state.opened.as_ref();
        let shown = |text: &Option<String>| text.as_deref().map(plain);
        let fault = verdict(library, state);
        let at = fault.and_then(|fault| verdict_step(library, state, fault));
        let standing = walk::standing(library, state);
        let mut findings: Vec<_> = state
            .moment
            .findings
            .iter()
            .map(|(_, finding)| finding.clone())
            .collect();
        findings.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
        Self {
            session: plain(log.session),
            opened: log.opened,
            last: log.last,
            complaint: opened
                .map(|opened| complaint(library, &opened.tree))
                .unwrap_or_default(),
            library: opened
                .map(|opened| plain(&format!("{} {}", opened.library.name, opened.library.edition)))
                .unwrap_or_default(),
            library_hash: opened
                .map(|opened| plain(&opened.library.hash))
                .unwrap_or_default(),
            overlays: walk::overlay_words(library, state)
                .iter()
                .map(Safe::to_string)
                .collect(),
            trees: trees(library, events),
            technician: opened.and_then(|opened| shown(&opened.technician)),
            site: opened.and_then(|opened| shown(&opened.site)),
            equipment: opened.and_then(|opened| shown(&opened.equipment)),
            status: if state.closed { "closed" } else { "open" },
            ended: state
                .ended
                .as_ref()
                .map(|end| plain(&walk::end_words(library, end))),
            fault: fault.map(|fault| library.faults[fault].name.clone()),
            remedy: fault.map(|fault| plain(&walk::remedy_words(library, fault))),
            because: at.map(|(because, _)| plain(because)),
            advice: at.and_then(|(_, advice)| advice.map(plain)),
            proof: fault
                .map(|fault| proof(library, state, fault))
                .unwrap_or_default(),
            noted: noted(library, state),
            findings: (findings.iter())
                .map(|finding| FindingEntry {
                    severity: finding.severity.name(),
                    text: plain(&finding.text),
                })
                .collect(),
            stands_at: stands_at(library, state),
            dangers: dangers(library, events),
            answered_from: opened.and_then(|opened| shown(&opened.answered_from)),
            answers: (standing.trail.iter())
                .map(|entry| AnswerEntry {
                    title: entry.title.to_string(),
                    answer: entry.answer.to_string(),
                    borderline: entry.borderline,
                    worked_out: (entry.worked_out.iter())
                        .map(|came_out| WorkedOutEntry {
                            title: came_out.title.to_string(),
                            value: came_out.value.to_string(),
                            means: came_out.means.as_ref().map(Safe::to_string),
                        })
                        .collect(),
                    ruled_out: entry.ruled_out.iter().map(Safe::to_string).collect(),
                })
                .collect(),
            plate: plate(library, state),
            readings: readings::readings(library, events),
            work: work(library, events),
            put_back: put_back(library, state, events),
            notes: state.notes.iter().map(|note| plain(note)).collect(),
            head: log.head,
            records: log.records,
        }
    }

    /// The readings that were taken more than once, with something done in between; what was only taken to work one of
    /// them out is left out.
    pub fn before_and_after(&self) -> impl Iterator<Item = (&ReadingEntry, &TakingEntry, &TakingEntry)> {
        self.readings
            .iter()
            .filter(|entry| !entry.worked_into)
            .filter_map(|entry| match entry.takings.as_slice() {
                [first, .., last] => Some((entry, first, last)),
                _ => None,
            })
    }

    /// The trees of the call that are being written still.
    fn drafts(&self) -> impl Iterator<Item = &TreeEntry> {
        let is_draft = |tree: &&TreeEntry| tree.status == Status::Draft.name();
        self.trees.iter().filter(is_draft)
    }

    /// The report as JSON.
    pub fn json(&self) -> String {
        // The report holds texts, numbers and lists only, which all have a form in JSON.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

fn plain(text: &str) -> String {
    safe(text).to_string()
}

fn complaint(library: &Library, name: &str) -> String {
    let tree = library.trees.find(name).map(|tree| &library.trees[tree]);
    let words = tree.map(|tree| tree.complaint.as_deref().unwrap_or(&tree.title));
    plain(words.unwrap_or(name))
}

/// The fault that the call ended in, proven or insisted on.
fn verdict(library: &Library, state: &State) -> Option<Id<Fault>> {
    match state.ended.as_ref()? {
        End::Verdict { fault, .. } | End::Insisted { fault, .. } => library.faults.find(fault),
        End::Outcome { .. } | End::Unproven { .. } => None,
    }
}

/// Why the verdict follows and what to advise, as its step says.
fn verdict_step<'l>(
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

/// What the proof asked for and what was measured: of a line that holds, the claims that it holds by; of one that does
/// not, all of its alternatives.
fn proof(library: &Library, state: &State, fault: Id<Fault>) -> Vec<ProofEntry> {
    let measured = |data: &mut dyn Iterator<Item = Datum>| {
        let data: BTreeSet<Datum> = data.collect();
        let measured = data.into_iter().filter_map(|datum| {
            let standing = state.value(datum)?;
            Some(plain(&format!("{}: {}", library.title_of(datum), standing.typed)))
        });
        measured.collect()
    };
    let mut entries = Vec::new();
    for (line, holding) in walk::proof_lines(library, state, fault) {
        match walk::holding_alternative(state, line).filter(|_| holding == walk::Holding::Holds) {
            Some(claims) => entries.extend(claims.iter().map(|claim| ProofEntry {
                claim: plain(&walk::claim_words(library, claim)),
                measured: measured(&mut std::iter::once(claim.datum())),
                holds: true,
            })),
            None => entries.push(ProofEntry {
                claim: plain(&walk::line_words(library, line)),
                measured: measured(&mut line.alternatives.iter().flatten().map(|claim| claim.datum())),
                holds: false,
            }),
        }
    }
    entries
}

fn noted(library: &Library, state: &State) -> Vec<String> {
    let ended = verdict(library, state);
    let stated = state.moment.stated.iter().filter(|fault| Some(**fault) != ended);
    stated.map(|fault| plain(&library.faults[*fault].title)).collect()
}

fn stands_at(library: &Library, state: &State) -> Option<String> {
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

fn trees(library: &Library, events: &[Event]) -> Vec<TreeEntry> {
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

fn plate(library: &Library, state: &State) -> Vec<PlateEntry> {
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

fn work(library: &Library, events: &[Event]) -> Vec<String> {
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

fn dangers(library: &Library, events: &[Event]) -> Vec<String> {
    let raised = events.iter().filter_map(|event| match event {
        Event::Entered {
            tree,
            role: Role::Danger,
        } => Some(tree),
        _ => None,
    });
    raised.map(|tree| complaint(library, tree)).collect()
}

fn put_back(library: &Library, state: &State, events: &[Event]) -> Vec<PutBackEntry> {
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

/// The word for a severity in a report that a person reads.
pub(super) fn severity_word(name: &str) -> &'static str {
    match Severity::ALL.into_iter().find(|severity| severity.name() == name) {
        Some(Severity::Danger) => "DANGER",
        Some(Severity::Repair) => "Repair",
        Some(Severity::Advise) => "Advise",
        Some(Severity::Note) | None => "Note",
    }
}
