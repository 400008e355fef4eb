//! Sessions as the commands read them: records to events to a state.

use std::rc::Rc;
use std::sync::Arc;

use crate::audit::Teller;
use crate::library::Library;
use crate::source::safe;
use crate::store::{Reading, Record, SessionFolder, SessionId, StoreError};
use crate::walk::{Event, Opened, State, decode, fold};

use super::failure::{FINDINGS, Failure, WRONG_USE};
use super::library::Loaded;

/// Most sessions that are named where the beginning of an id is that of several.
const NAMED: usize = 5;

/// The session of an id, or of its beginning where no other begins with that. One that is not there is for whoever reads it to tell.
pub(super) fn named(folder: &SessionFolder, text: &str) -> Result<SessionId, Failure> {
    let id = SessionId::parse(text)?;
    if !matches!(folder.stream(&id), Err(StoreError::NoSession { .. })) {
        return Ok(id);
    }
    let mut sessions = folder.names()?.sessions;
    sessions.retain(|session| session.as_str().starts_with(text));
    match sessions.as_slice() {
        [] => Ok(id),
        [session] => Ok(session.clone()),
        several => Err(of_several(text, several)),
    }
}

fn of_several(text: &str, sessions: &[SessionId]) -> Failure {
    let named = sessions.iter().take(NAMED).map(SessionId::as_str);
    let mut named = named.collect::<Vec<_>>().join(", ");
    if let more @ 1.. = sessions.len().saturating_sub(NAMED) {
        named += &format!(" and {more} more");
    }
    let message = format!("{} sessions begin with `{text}`: {named}", sessions.len());
    Failure::new(WRONG_USE, message).help("type more of its id; `proofwalk sessions` lists them all")
}

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
    pub loaded: Rc<Loaded>,
}

/// The library that was read last: sessions that lie side by side mostly have the same, and it takes far longer to read than they do.
#[derive(Default)]
pub(super) struct LastLibrary(Option<Rc<Loaded>>);

impl LastLibrary {
    /// The library of a session in a folder; always the same folder, since in another it may be damaged.
    fn of(&mut self, folder: &SessionFolder, opened: &Opened) -> Result<Rc<Loaded>, Failure> {
        let last = self.0.as_ref();
        if let Some(last) = last.filter(|last| last.hash.to_string() == opened.library.hash) {
            return Ok(Rc::clone(last));
        }
        let loaded = Rc::new(super::walk::kept(folder, opened)?);
        self.0 = Some(Rc::clone(&loaded));
        Ok(loaded)
    }
}

impl Told {
    /// Reads a session and its library.
    pub fn read(folder: &SessionFolder, id: &SessionId) -> Result<Self, Failure> {
        Self::read_beside(folder, id, &mut LastLibrary::default())
    }

    /// Reads one of several sessions in a folder.
    pub fn read_beside(
        folder: &SessionFolder,
        id: &SessionId,
        last: &mut LastLibrary,
    ) -> Result<Self, Failure> {
        let reading = folder.read(id)?;
        if let Some(damage) = &reading.report.damage {
            return Err(Failure::new(
                FINDINGS,
                format!("the session {} is damaged: {damage}", id.as_str()),
            )
            .help("`proofwalk verify` says more; a damaged session is never mended silently"));
        }
        let events = events(&reading.records)?;
        let loaded = last.of(folder, opened(&events)?)?;
        Ok(Self {
            reading,
            events,
            loaded,
        })
    }
}

/// Folds a call's events.
pub(super) fn state(library: &Library, events: &[Event]) -> Result<State, Failure> {
    Ok(fold(library, events)?)
}
