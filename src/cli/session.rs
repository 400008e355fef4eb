//! Sessions as the commands read them: records to events to a state.

use std::sync::Arc;

use crate::audit::Teller;
use crate::bench::practice::ByPractice;
use crate::library::Library;
use crate::source::safe;
use crate::store::{Reading, Record, SessionFolder, SessionId};
use crate::walk::{ByTheTrees, Due, Event, Opened, State, decode, encode, fold, retrace};

use super::failure::{FINDINGS, Failure};
use super::library::Loaded;

/// Letters of an event that a message shows.
const SHOWN: usize = 200;

/// The events of a session, in order.
pub(super) fn events(records: &[Record]) -> Result<Vec<Event>, Failure> {
    let decoded = records.iter().map(|record| {
        decode(record.event.get()).map_err(|error| {
            Failure::new(
                FINDINGS,
                format!(
                    "line {} holds no event of this version: {}",
                    record.line,
                    safe(&error.to_string())
                ),
            )
        })
    });
    decoded.collect()
}

/// How a session was opened.
pub(super) fn opened(events: &[Event]) -> Result<&Opened, Failure> {
    match events.first() {
        Some(Event::Opened(opened)) => Ok(opened),
        _ => Err(Failure::new(
            FINDINGS,
            "the session does not begin with its opening, so nothing of it can be told",
        )
        .help("`proofwalk verify` says what is wrong with its file; keep it as it is, and begin a new call")),
    }
}

/// Whether a call counts as closed: it ended in any way, and everything opened was put back or refused in writing. The
/// technician need not have signed it off.
pub(super) fn is_closed(records: &[Record], events: &[Event]) -> bool {
    let mut told = events.iter().zip(records.iter().map(|record| record.time));
    let Some((Event::Opened(opened), time)) = told.next() else {
        return false;
    };
    let mut teller = Teller::new("", 0, &opened.as_ref().clone().into(), time, Arc::default());
    for (event, time) in told {
        teller.tell(event.clone(), time);
    }
    teller.end(None).closed.is_some()
}

/// A session that was read: its events, and the library it was walked with.
pub(super) struct Told {
    pub reading: Reading,
    pub events: Vec<Event>,
    pub loaded: Loaded,
}

impl Told {
    /// Reads a session and its library.
    pub fn read(folder: &SessionFolder, id: &SessionId) -> Result<Self, Failure> {
        let reading = folder.read(id)?;
        if let Some(damage) = &reading.report.damage {
            return Err(Failure::new(
                FINDINGS,
                format!("the session {} is damaged: {damage}", id.as_str()),
            )
            .help("`proofwalk verify` says more; a damaged session is never mended silently"));
        }
        let events = events(&reading.records)?;
        let loaded = super::walk::kept(folder, opened(&events)?)?;
        Ok(Self {
            reading,
            events,
            loaded,
        })
    }

    /// Where the call stands, once every move of it was decided again: a record that does not follow from its library tells
    /// nothing.
    pub fn retraced(&self, id: &SessionId) -> Result<State, Failure> {
        self.retrace().map_err(|why| {
            let message = format!(
                "the session {} does not follow from its library: {why}",
                id.as_str()
            );
            Failure::new(FINDINGS, message)
                .help("it was changed, and nothing of it is told; keep it as it is")
        })
    }

    /// The same; otherwise the first line that does not follow.
    pub fn retrace(&self) -> Result<State, String> {
        let library = &self.loaded.library;
        let opened = opened(&self.events).map_err(|failure| failure.message)?;
        let mark = &opened.library;
        if (&mark.name, &mark.edition) != (&library.name, &library.edition) {
            let [named, kept] =
                [mark, &self.loaded.mark()].map(|mark| safe(&format!("{} {}", mark.name, mark.edition)));
            return Err(format!("line 1 names {named}, and its hash is that of {kept}"));
        }
        let state = match ByPractice::of(opened) {
            Some(rules) => retrace(library, &self.events, &rules),
            None => retrace(library, &self.events, &ByTheTrees),
        };
        state.map_err(|stray| {
            let line = self.reading.records.get(stray.at).map_or(0, |record| record.line);
            let stands = self.events.get(stray.at).map(as_recorded).unwrap_or_default();
            let due = match &stray.due {
                Due::Nothing => "which no answer leads to there".to_owned(),
                Due::Event(event) => format!("where {} would have come", as_recorded(event)),
                Due::Refused(refusal) => format!("which would have been refused: {refusal}"),
            };
            format!("line {line} says {stands}, {due}{}", by_another_version(opened))
        })
    }
}

/// An event as it stands in the log, as much as a line holds.
fn as_recorded(event: &Event) -> String {
    let text = encode(event).unwrap_or_default();
    safe(&text).cut(SHOWN).to_string()
}

/// What is to be thought of where another version of the program recorded the call: it may have walked by other rules.
fn by_another_version(opened: &Opened) -> String {
    let program = &opened.program;
    let is_version = program.starts_with(|first: char| first.is_ascii_digit());
    match is_version && program != env!("CARGO_PKG_VERSION") {
        true => format!(
            "; proofwalk {} recorded it, whose rules may have been others",
            safe(program)
        ),
        false => String::new(),
    }
}

/// Folds a call's events.
pub(super) fn state(library: &Library, events: &[Event]) -> Result<State, Failure> {
    Ok(fold(library, events)?)
}
