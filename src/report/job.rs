//! The job report: what was found, measured, proven, put back and advised on one call.

mod brief;
mod chart;
mod entries;
mod gather;
mod html;
mod proof;
mod readings;
mod style;
mod text;

use serde::Serialize;

pub use entries::{
    AnswerEntry, FindingEntry, NotLookedAtEntry, NotedEntry, PlateEntry, ProofEntry, PutBackEntry, TreeEntry,
    WorkedOutEntry,
};
use gather::plain;
pub use readings::{BandEntry, ReadingEntry, TakingEntry};
pub(super) use text::GOVERNS;

use crate::library::{Library, Remedy, Severity, Status};
use crate::source::Safe;
use crate::walk::{self, Event, Opened, State};

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
    /// What came of it, in a line for the owner.
    pub headline: String,
    /// How the walk ended.
    pub ended: Option<String>,
    /// The registered name of the fault of the verdict, if there is one.
    pub fault: Option<String>,
    /// What is done about it.
    pub remedy: Option<String>,
    /// The furnace is shut down for it.
    pub shut_down: bool,
    /// Why it follows, in the tree's words.
    pub because: Option<String>,
    /// What to tell the owner.
    pub advice: Option<String>,
    /// What to walk once that is done, where the library says how work is proven.
    pub then: Option<String>,
    /// The lines of the proof, each with what was measured for it.
    pub proof: Vec<ProofEntry>,
    /// Verdicts that were noted on the way.
    pub noted: Vec<String>,
    /// The same, with what is done about each, why it follows and what to tell the owner.
    pub found_on_the_way: Vec<NotedEntry>,
    /// What was passed over, because a verdict before it was noted.
    pub not_looked_at: Vec<NotLookedAtEntry>,
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
pub(super) fn no_field_call(answered_from: &str) -> String {
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
        let fault = gather::verdict(library, state);
        let at = fault.and_then(|fault| gather::verdict_step(library, state, fault));
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
                .map(|opened| gather::complaint(library, &opened.tree))
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
            trees: gather::trees(library, events),
            technician: opened.and_then(|opened| shown(&opened.technician)),
            site: opened.and_then(|opened| shown(&opened.site)),
            equipment: opened.and_then(|opened| shown(&opened.equipment)),
            status: if state.closed { "closed" } else { "open" },
            headline: gather::headline(library, state),
            ended: state
                .ended
                .as_ref()
                .map(|end| plain(&walk::end_words(library, end))),
            fault: fault.map(|fault| library.faults[fault].name.clone()),
            remedy: fault.map(|fault| plain(&walk::remedy_words(library, fault))),
            shut_down: fault.is_some_and(|fault| library.faults[fault].remedy == Remedy::ShutDown),
            because: at.map(|(because, _)| plain(because)),
            advice: at.and_then(|(_, advice)| advice.map(plain)),
            then: (standing.stated.as_ref())
                .and_then(|stated| stated.then.as_ref())
                .map(Safe::to_string),
            proof: fault
                .map(|fault| proof::proof(library, state, fault))
                .unwrap_or_default(),
            noted: gather::noted(library, state),
            found_on_the_way: gather::found_on_the_way(library, state),
            not_looked_at: (standing.not_looked_at.iter())
                .map(|visit| NotLookedAtEntry {
                    tree: visit.tree.to_string(),
                    because: visit.because.to_string(),
                    checks: visit.checks.iter().map(Safe::to_string).collect(),
                })
                .collect(),
            findings: (findings.iter())
                .map(|finding| FindingEntry {
                    severity: finding.severity.name(),
                    text: plain(&finding.text),
                })
                .collect(),
            stands_at: gather::stands_at(library, state),
            dangers: gather::dangers(library, events),
            answered_from: opened.and_then(|opened| shown(&opened.answered_from)),
            answers: gather::answers(library, state, &standing),
            plate: gather::plate(library, state),
            readings: readings::readings(library, events),
            work: gather::work(library, events),
            put_back: gather::put_back(library, state, events),
            notes: state.notes.iter().map(|note| plain(note)).collect(),
            head: log.head,
            records: log.records,
        }
    }

    /// Whether somebody can be hurt: a danger was raised or found, or the furnace is shut down.
    fn is_dangerous(&self) -> bool {
        let danger = Severity::Danger.name();
        !self.dangers.is_empty()
            || self.shut_down
            || self.findings.iter().any(|finding| finding.severity == danger)
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

/// What was asked and what was answered; a question has its own mark, and needs no colon.
fn asked_words(title: &str, answer: &str) -> String {
    let colon = if title.ends_with(['?', '.', ':']) { "" } else { ":" };
    format!("{title}{colon} {answer}")
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
