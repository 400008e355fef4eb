//! Taking up a call that was left or cut off.

use super::arguments::Walking;
use super::desk::Desk;
use super::failure::{Failure, WRONG_USE};
use super::session::{events, opened, state};
use super::walk::{face, kept, sessions};
use crate::source::safe;
use crate::store::{ChainState, Listed, SessionFolder, SessionId};
use crate::walk::{Event, Opened, decode};

/// Takes up a session; without an id, the newest of this technician that is not closed.
pub(super) fn run(session: Option<&str>, walking: &Walking) -> Result<u8, Failure> {
    let folder = sessions(walking.sessions.sessions.as_deref())?;
    let id = match session {
        Some(text) => SessionId::parse(text)?,
        None => newest(&folder, walking.technician.as_deref())?,
    };
    // Looked at first: taking a session up mends a torn last line, and nothing is touched that cannot be gone on with.
    let before = events(&folder.read(&id)?.records)?;
    let opened = opened(&before)?;
    if opened.is_practice() {
        let mark = opened.answered_from.as_deref().unwrap_or_default();
        return Err(Failure::new(
            WRONG_USE,
            "practice is not taken up again: the furnace is not kept with it",
        )
        .help(format!(
            "begin the same furnace anew with `proofwalk practice`; this was {}",
            safe(mark)
        )));
    }
    let loaded = kept(&folder, opened)?;
    let taken = folder.take_up(&id)?;
    let events = events(&taken.records)?;
    let state = state(&loaded.library, &events)?;
    if state.closed {
        return Err(
            Failure::new(WRONG_USE, format!("the call {} is closed", id.as_str()))
                .help(format!("read it with `proofwalk report {}`", id.as_str())),
        );
    }
    let mut desk = Desk::at(&loaded.library, state, taken.journal, walking.clock);
    if let Some(repair) = taken.repair {
        super::tell(&format!(
            "The last line was torn: {} bytes that were never acknowledged are kept aside as {}.",
            repair.bytes, repair.kept_as
        ));
        desk.record(Event::TailCut {
            bytes: repair.bytes,
            kept: repair.kept_as,
        })?;
    }
    desk.go_on()?;
    face(&id, &mut desk, walking)
}

/// Says so where a library is named that will not be looked at.
pub(super) fn say_which_library(walking: &Walking) {
    if walking.library.is_some() || !walking.overlays.folders.is_empty() {
        super::tell("A call goes on with the library it began with; no other is looked at.");
    }
}

/// The newest open session of a technician; ids begin with their time, so the last one is the newest.
fn newest(folder: &SessionFolder, technician: Option<&str>) -> Result<SessionId, Failure> {
    let open = folder.list()?.into_iter().rev().find(|listed| {
        can_go_on(listed) && technician.is_none_or(|technician| of(listed).as_deref() == Some(technician))
    });
    open.map(|listed| listed.id).ok_or_else(|| {
        Failure::new(WRONG_USE, "there is no call to take up")
            .help("`proofwalk sessions` lists them; `proofwalk` alone offers the complaints")
    })
}

/// Whether a session can be taken up and is not closed.
pub(super) fn is_open(listed: &Listed) -> bool {
    let whole = matches!(listed.state, ChainState::Whole | ChainState::Torn(_));
    let last = listed
        .last
        .as_ref()
        .and_then(|record| decode(record.event.get()).ok());
    whole && listed.first.is_some() && !matches!(last, Some(Event::Closed))
}

/// Whether a session can be taken up and is no practice.
pub(super) fn can_go_on(listed: &Listed) -> bool {
    is_open(listed) && !opening(listed).is_some_and(|opened| opened.is_practice())
}

/// The technician of a session.
pub(super) fn of(listed: &Listed) -> Option<String> {
    opening(listed)?.technician
}

fn opening(listed: &Listed) -> Option<Opened> {
    match decode(listed.first.as_ref()?.event.get()).ok()? {
        Event::Opened(opened) => Some(opened),
        _ => None,
    }
}
