//! `proofwalk pack`: the closed sessions of a month go into one file, and come out again.

use std::collections::BTreeMap;
use std::path::Path;

use jiff::Timestamp;

use super::arguments::Packing;
use super::failure::{FINDINGS, Failure, NOT_SAVED, WRONG_USE};
use super::walk::existing_sessions;
use crate::source::safe;
use crate::store::{ChainState, Hash, Listed, PACK_ENDING, SessionFolder, SessionId, StoreError};
use crate::walk::{Event, decode};

/// Packs closed sessions by month, or unpacks a file of them; the exit code says whether one had to be left.
pub(super) fn run(how: &Packing) -> Result<u8, Failure> {
    match &how.unpack {
        Some(file) => unpack(file, how.sessions.sessions.as_deref(), how.keep),
        None => pack(how),
    }
}

fn pack(how: &Packing) -> Result<u8, Failure> {
    let folder = existing_sessions(how.sessions.sessions.as_deref())?;
    clear_up(&folder)?;
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
        let packed = match folder.pack(&month, &ids, how.keep) {
            Ok(packed) => packed,
            // The disk would refuse the next month, too.
            Err(error) if error.exit_code() == NOT_SAVED => return Err(error.into()),
            Err(error) => {
                super::tell(&format!("{month} is left as it is: {error}"));
                code = FINDINGS;
                continue;
            }
        };
        let files = match how.keep {
            true => "their own files are kept".to_owned(),
            false => format!("{} of their own files removed", packed.removed),
        };
        super::print(&format!(
            "{}  {} packed, {} bytes as {}; {files}; {} in it\n",
            safe(&packed.path.to_string_lossy()),
            counted(packed.taken.len()),
            packed.bytes,
            packed.size,
            counted(packed.sessions),
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

fn unpack(file: &Path, into: Option<&Path>, keep: bool) -> Result<u8, Failure> {
    let file = match into {
        // Named as it is in the folder that it lies in.
        Some(into) if file.parent() == Some(Path::new("")) && !file.exists() => into.join(file),
        _ => file.to_owned(),
    };
    let parent = (file.parent())
        .filter(|parent| !parent.as_os_str().is_empty())
        .unwrap_or(Path::new("."));
    let name = (file.file_name()).and_then(|name| name.to_str()).ok_or_else(|| {
        Failure::new(WRONG_USE, "this is no pack of sessions")
            .help("a pack is a file that ends in .sessions.zip")
    })?;
    let from = SessionFolder::open_existing(parent)?;
    // Before anything is made for it.
    is_pack(&from, name)?;
    let to = match into {
        Some(into) => SessionFolder::open(into)?,
        None => from.clone(),
    };
    clear_up(&to)?;
    // A pack that was brought from elsewhere may be the only copy there.
    let is_elsewhere = parent.canonicalize().ok() != to.path().canonicalize().ok();
    let unpacked = from.unpack(name, &to, keep || is_elsewhere)?;
    if is_elsewhere {
        keep_libraries(&from, name, &to)?;
    }
    let pack = if unpacked.removed { "removed" } else { "kept" };
    let place = match is_elsewhere {
        true => format!(" into {}", safe(&to.path().to_string_lossy())),
        false => String::new(),
    };
    super::print(&format!(
        "{}  {} unpacked{place}, the pack is {pack}\n",
        safe(&file.to_string_lossy()),
        counted(unpacked.sessions)
    ))?;
    Ok(tell_left(&unpacked.left))
}

/// A failure where a folder has no pack of this name.
fn is_pack(folder: &SessionFolder, name: &str) -> Result<(), Failure> {
    let path = folder.path().join(name);
    let shown = safe(&path.to_string_lossy()).to_string();
    if !name.ends_with(PACK_ENDING) {
        let help = format!("a pack is a file that ends in {PACK_ENDING}");
        return Err(Failure::new(WRONG_USE, format!("{shown} is no pack of sessions")).help(help));
    }
    match folder.pack_named(name) {
        Err(StoreError::NoSession { .. }) => {
            let help = "check its name; `proofwalk pack` names each pack that it makes";
            Err(Failure::new(WRONG_USE, format!("there is no pack {shown}")).help(help))
        }
        Err(error) => Err(error.into()),
        Ok(_) => Ok(()),
    }
}

/// Keeps the libraries of a pack's sessions where those are now, as far as they are beside the pack.
fn keep_libraries(from: &SessionFolder, name: &str, to: &SessionFolder) -> Result<(), Failure> {
    let mut hashes: Vec<Hash> = Vec::new();
    for id in from.pack_named(name)?.sessions() {
        let first = to.look_at(id).first;
        let Some(Ok(Event::Opened(opened))) = first.map(|first| decode(first.event.get())) else {
            continue;
        };
        let hash = opened.library.hash.parse().ok();
        hashes.extend(hash.filter(|hash| !hashes.contains(hash)));
    }
    for hash in hashes {
        if let Some(files) = from.kept_library(&hash)? {
            to.keep_library(&hash, &files)?;
        }
    }
    Ok(())
}

/// Removes what a killed run left behind, and says so.
fn clear_up(folder: &SessionFolder) -> Result<(), Failure> {
    match folder.clear_left_behind()? {
        0 => {}
        1 => super::tell(
            "Removed 1 half-written file of an earlier run that was cut off; no session was in it alone.",
        ),
        many => super::tell(&format!(
            "Removed {many} half-written files of earlier runs that were cut off; no session was in them alone."
        )),
    }
    Ok(())
}

/// A number of sessions.
fn counted(sessions: usize) -> String {
    match sessions {
        1 => "1 session".to_owned(),
        many => format!("{many} sessions"),
    }
}

/// Says which sessions were left, and why.
fn tell_left(left: &[(SessionId, StoreError)]) -> u8 {
    for (id, error) in left {
        super::tell(&format!("left as it is: {}: {error}", id.as_str()));
    }
    if left.is_empty() { 0 } else { FINDINGS }
}
