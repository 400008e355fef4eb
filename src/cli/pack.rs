//! `proofwalk pack`: the closed sessions of a month go into one file, and come out again.

use std::collections::BTreeMap;
use std::path::Path;

use jiff::Timestamp;

use super::arguments::Packing;
use super::failure::{FINDINGS, Failure, WRONG_USE};
use super::walk::sessions;
use crate::source::safe;
use crate::store::{ChainState, Listed, SessionFolder, SessionId, StoreError};
use crate::walk::{Event, decode};

/// Packs closed sessions by month, or unpacks a file of them; the exit code says whether one had to be left.
pub(super) fn run(how: &Packing) -> Result<u8, Failure> {
    match &how.unpack {
        Some(file) => unpack(file, how.keep),
        None => pack(how),
    }
}

fn pack(how: &Packing) -> Result<u8, Failure> {
    let folder = sessions(how.sessions.sessions.as_deref())?;
    let now = month(Timestamp::now());
    let mut months: BTreeMap<String, Vec<SessionId>> = BTreeMap::new();
    for id in folder.own_names()?.sessions {
        let listed = folder.look_at(id);
        let Some(opened) = closed(&listed) else { continue };
        let opened = month(opened);
        // What is still to come in this month would have to be packed again.
        if how.month.as_ref().map_or(opened < now, |month| *month == opened) {
            months.entry(opened).or_default().push(listed.id);
        }
    }
    if months.is_empty() {
        super::tell(match how.month {
            Some(_) => "No closed session of this month has a file of its own.",
            None => {
                "No closed session of a month that is over has a file of its own; `--month` names another month."
            }
        });
    }
    let mut code = 0;
    for (month, ids) in months {
        let packed = folder.pack(&month, &ids, how.keep)?;
        let files = match how.keep {
            true => "their own files are kept".to_owned(),
            false => format!("{} of their own files removed", packed.removed),
        };
        super::print(&format!(
            "{}  {} sessions packed, {} bytes as {}; {files}; {} sessions in it\n",
            safe(&packed.path.to_string_lossy()),
            packed.taken.len(),
            packed.bytes,
            packed.size,
            packed.sessions,
        ))?;
        code = code.max(tell_left(&packed.left));
    }
    Ok(code)
}

/// When a session was opened that is closed, whole and of this user; none for any other.
fn closed(listed: &Listed) -> Option<Timestamp> {
    let last = decode(listed.last.as_ref()?.event.get()).ok()?;
    let first = listed.first.as_ref()?;
    let is_call = matches!(decode(first.event.get()), Ok(Event::Opened(_)));
    let is_whole = matches!(listed.state, ChainState::Whole);
    (listed.ours && is_whole && is_call && matches!(last, Event::Closed)).then_some(first.time)
}

/// A month by its name, in UTC as the records are.
fn month(time: Timestamp) -> String {
    time.strftime("%Y-%m").to_string()
}

fn unpack(file: &Path, keep: bool) -> Result<u8, Failure> {
    let parent = (file.parent())
        .filter(|parent| !parent.as_os_str().is_empty())
        .unwrap_or(Path::new("."));
    let name = (file.file_name()).and_then(|name| name.to_str()).ok_or_else(|| {
        Failure::new(WRONG_USE, "this is no pack of sessions")
            .help("a pack is a file that ends in .sessions.zip")
    })?;
    let unpacked = SessionFolder::open_existing(parent)?.unpack(name, keep)?;
    let pack = if unpacked.removed { "removed" } else { "kept" };
    super::print(&format!(
        "{}  {} sessions unpacked, the pack is {pack}\n",
        safe(&file.to_string_lossy()),
        unpacked.sessions
    ))?;
    Ok(tell_left(&unpacked.left))
}

/// Says which sessions were left, and why.
fn tell_left(left: &[(SessionId, StoreError)]) -> u8 {
    for (id, error) in left {
        super::tell(&format!("left as it is: {}: {error}", id.as_str()));
    }
    if left.is_empty() { 0 } else { FINDINGS }
}
