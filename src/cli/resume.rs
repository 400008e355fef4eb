//! Taking up a call that was left or cut off.

use super::arguments::Walking;
use super::desk::Desk;
use super::failure::{Failure, WRONG_USE};
use super::session::{events, named, opened, state};
use super::walk::{existing_sessions, face, kept};
use crate::source::safe;
use crate::store::{ChainState, Listed, Repair, SessionFolder, SessionId};
use crate::walk::{Event, Opened, decode};

/// Takes up a session; without an id, the newest of this technician that is not closed.
pub(super) fn run(session: Option<&str>, walking: &Walking) -> Result<u8, Failure> {
    let folder = existing_sessions(walking.sessions.sessions.as_deref())?;
    let id = match session {
        Some(text) => named(&folder, text)?,
        None => newest(&folder, walking.technician.as_deref())?,
    };
    // Looked at first: taking a session up mends a torn last line, and nothing is touched that cannot be gone on with.
    let before = events(&folder.read(&id)?.records)?;
    let opened = opened(&before)?;
    if opened.is_practice() {
        super::practice::setup_of(opened)?;
    }
    let loaded = kept(&folder, opened)?;
    let is_practice = opened.is_practice();
    let taken = folder.take_up(&id)?;
    // Where the built-in library stood in for it: the next version has another one built in.
    folder.keep_library(&loaded.hash, loaded.library.files.as_slice())?;
    if is_practice {
        return super::practice::take_up(&id, &loaded, taken, walking);
    }
    let events = events(&taken.records)?;
    let state = state(&loaded.library, &events)?;
    if state.closed {
        return Err(is_closed(&id));
    }
    let mut desk = Desk::at(&loaded.library, state, taken.journal, walking.clock);
    if let Some(repair) = taken.repair {
        mended(&mut desk, repair)?;
    }
    desk.go_on()?;
    face(&id, &mut desk, walking)
}

/// A call that is closed is not taken up.
pub(super) fn is_closed(id: &SessionId) -> Failure {
    Failure::new(WRONG_USE, format!("the call {} is closed", id.as_str()))
        .help(format!("read it with `proofwalk report {}`", id.as_str()))
}

/// Says and records that the last line had been torn.
pub(super) fn mended(desk: &mut Desk<'_>, repair: Repair) -> Result<(), Failure> {
    super::tell(&format!(
        "The last line was torn: {} bytes that were never acknowledged are kept aside as {}.",
        repair.bytes, repair.kept_as
    ));
    desk.record(Event::TailCut {
        bytes: repair.bytes,
        kept: repair.kept_as,
    })
}

/// Says so where something is named that a call has had since it was opened.
pub(super) fn say_what_stays(walking: &Walking) {
    if walking.library.is_some() || !walking.overlays.folders.is_empty() {
        super::tell("A call goes on with the library it began with; no other is looked at.");
    }
    if walking.site.is_some() || walking.equipment.is_some() {
        super::tell("A call keeps the site and the equipment that it was opened with.");
    }
}

/// The newest open session of a technician; ids begin with their time, so the last one is the newest. A call at a house goes
/// before any practice.
fn newest(folder: &SessionFolder, technician: Option<&str>) -> Result<SessionId, Failure> {
    let mut open = folder.list()?;
    open.retain(|listed| {
        is_open(listed) && technician.is_none_or(|technician| of(listed).as_deref() == Some(technician))
    });
    let newest = |practice: bool| open.iter().rev().find(|listed| is_practice(listed) == practice);
    let open = newest(false).or_else(|| newest(true));
    open.map(|listed| listed.id.clone()).ok_or_else(|| {
        let of = technician.map(|technician| format!(" of the technician {}", safe(technician)));
        let message = format!("there is no call{} to take up", of.unwrap_or_default());
        Failure::new(WRONG_USE, message)
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

/// Whether a session is practice.
fn is_practice(listed: &Listed) -> bool {
    opening(listed).is_some_and(|opened| opened.is_practice())
}

/// The technician of a session.
pub(super) fn of(listed: &Listed) -> Option<String> {
    opening(listed)?.technician
}

fn opening(listed: &Listed) -> Option<Opened> {
    match decode(listed.first.as_ref()?.event.get()).ok()? {
        Event::Opened(opened) => Some(*opened),
        _ => None,
    }
}
