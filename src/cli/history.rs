//! What is known of an equipment from its earlier calls.

use std::path::Path;

use super::arguments::HistoryFormat;
use super::failure::{Failure, WRONG_USE};
use super::look;
use super::report::told_as_job;
use super::session::Told;
use super::walk::existing_sessions;
use crate::report::History;
use crate::source::safe;
use crate::store::{SessionFolder, SessionId};
use crate::walk::{Event, decode};

/// Prints it.
pub(super) fn run(equipment: &str, format: HistoryFormat, folder: Option<&Path>) -> Result<u8, Failure> {
    let folder = existing_sessions(folder)?;
    let (history, unread) = read(&folder, equipment, None)?;
    for session in &unread {
        super::tell(&format!(
            "the session {} is left out: it cannot be read; `proofwalk verify` says why",
            session.as_str()
        ));
    }
    let history = history.ok_or_else(|| {
        Failure::new(
            WRONG_USE,
            format!("no call is recorded at the equipment `{}`", safe(equipment)),
        )
        .help("`proofwalk sessions` lists the calls, with their equipment")
    })?;
    let text = match format {
        HistoryFormat::Text => history.text(look::terminal_width()),
        HistoryFormat::Json => history.json() + "\n",
    };
    super::print(&text)?;
    Ok(0)
}

/// What the folder's other sessions tell of an equipment, and those of its sessions that cannot be read.
pub(super) fn read(
    folder: &SessionFolder,
    equipment: &str,
    but: Option<&SessionId>,
) -> Result<(Option<History>, Vec<SessionId>), Failure> {
    let (mut jobs, mut unread) = (Vec::new(), Vec::new());
    for id in folder.names()?.sessions {
        if but == Some(&id) || equipment_of(folder, &id).as_deref() != Some(equipment) {
            continue;
        }
        match Told::read(folder, &id).and_then(|told| told_as_job(&id, &told)) {
            Ok(job) => jobs.push(job),
            Err(_) => unread.push(id),
        }
    }
    jobs.sort_by(|a, b| a.opened.cmp(&b.opened));
    Ok((History::of(equipment, &jobs), unread))
}

/// The equipment that a session's first line names; only that line is read.
fn equipment_of(folder: &SessionFolder, id: &SessionId) -> Option<String> {
    let first = folder.stream(id).ok()?.next()?.ok()?;
    match decode(first.event.get()).ok()? {
        Event::Opened(opened) => opened.equipment,
        _ => None,
    }
}
