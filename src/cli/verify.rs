//! Checking session files: their chain, their order, and that every move of them follows from its library.

use std::path::{Path, PathBuf};

use super::failure::{FINDINGS, Failure, WRONG_USE, worse};
use super::session::{LastLibrary, Told, is_closed};
use crate::source::safe;
use crate::store::{ChainState, PACK_ENDING, SessionFolder, SessionId, StoreError};

/// Sessions, each with the folder that it is read from.
type Sessions = Vec<(SessionFolder, SessionId)>;

/// Checks files and folders; the exit code says whether anything is wrong.
pub(super) fn run(paths: &[PathBuf]) -> Result<u8, Failure> {
    let mut code = 0;
    for path in paths {
        let bad = bad_packs(path)?;
        let (sessions, of_them) = sessions_of(path)?;
        code = worse(code, worse(bad, of_them));
        if sessions.is_empty() && worse(bad, of_them) == 0 {
            let shown = safe(&path.to_string_lossy());
            super::tell(&format!(
                "No sessions in {shown}: a session is a file that ends in .jsonl."
            ));
        }
        let mut last = LastLibrary::default();
        for (folder, id) in sessions {
            let verdict = one(&folder, &id, &mut last);
            let line = verdict.unwrap_or_else(|failure| {
                code = worse(code, failure.code);
                format!("{}  {}", word(failure.code), failure.message)
            });
            super::print(&format!("{}  {line}\n", id.as_str()))?;
        }
    }
    super::tell(
        "A file cut off at the end of a line looks whole: compare the head with one noted down elsewhere.",
    );
    Ok(code)
}

fn word(code: u8) -> &'static str {
    match code {
        FINDINGS => "DAMAGED",
        _ => "NOT VERIFIED",
    }
}

/// Names the packs of a folder that are damaged or cannot be read; the code of the worst.
fn bad_packs(path: &Path) -> Result<u8, Failure> {
    let mut code = 0;
    if path.is_dir() {
        for (name, error) in &SessionFolder::open_existing(path)?.packs()?.bad {
            code = worse(code, error.exit_code());
            say(name, error)?;
        }
    }
    Ok(code)
}

/// What is wrong with a pack, or with an entry of one.
fn say(name: &str, error: &StoreError) -> Result<(), Failure> {
    let word = word(error.exit_code());
    super::print(&format!("{}  {word}  {}\n", safe(name), error.reason()))
}

/// The sessions of a file, a pack or a folder; the code of what is wrong with the pack.
fn sessions_of(path: &Path) -> Result<(Sessions, u8), Failure> {
    let shown = safe(&path.to_string_lossy()).to_string();
    if path.is_dir() {
        let folder = SessionFolder::open_existing(path)?;
        let ids = folder.names()?.sessions.into_iter();
        return Ok((ids.map(|id| (folder.clone(), id)).collect(), 0));
    }
    let parent = path
        .parent()
        .filter(|parent| !parent.as_os_str().is_empty())
        .unwrap_or(Path::new("."));
    let name = path
        .file_name()
        .and_then(|name| name.to_str())
        .unwrap_or_default();
    if !path.exists() {
        return Err(
            Failure::new(WRONG_USE, format!("there is no file or folder {shown}"))
                .help("check the path: name session files, packs of them, or folders"),
        );
    }
    if name.ends_with(PACK_ENDING) {
        return in_pack(&SessionFolder::open_existing(parent)?, name);
    }
    let stem = name.strip_suffix(".jsonl");
    let Some(stem) = stem else {
        return Err(
            Failure::new(WRONG_USE, format!("{shown} is no session file or folder of them"))
                .help("a session file ends in .jsonl, a pack of them in .sessions.zip"),
        );
    };
    let session = (SessionFolder::open_existing(parent)?, SessionId::parse(stem)?);
    Ok((vec![session], 0))
}

/// The sessions of a pack, also those that have a file of their own beside it.
fn in_pack(folder: &SessionFolder, name: &str) -> Result<(Sessions, u8), Failure> {
    let pack = folder.pack_named(name)?;
    let mut code = 0;
    for (name, error) in pack.doubled() {
        code = worse(code, error.exit_code());
        say(&name, &error)?;
    }
    let only = folder.only(&pack);
    Ok((pack.sessions().map(|id| (only.clone(), id)).collect(), code))
}

/// A session that is whole, in one line.
fn one(folder: &SessionFolder, id: &SessionId, last: &mut LastLibrary) -> Result<String, Failure> {
    let listed = folder.look_at(id.clone());
    match listed.state {
        ChainState::Whole | ChainState::Torn(_) if listed.first.is_none() => {
            return Ok("empty: nothing was recorded".to_owned());
        }
        ChainState::Whole | ChainState::Torn(_) => {}
        ChainState::Damaged(damage) => return Err(Failure::new(FINDINGS, damage.to_string())),
        ChainState::Unreadable(error) => return Err(error.into()),
    }
    let told = Told::read_beside(folder, id, last)?;
    told.retrace()
        .map_err(|why| Failure::new(FINDINGS, format!("does not follow from its library: {why}")))?;
    let how = match is_closed(&told.reading.records, &told.events) {
        true => "closed",
        false => "open",
    };
    let torn = match told.reading.report.torn_tail {
        Some(bytes) => format!(", its last line torn ({bytes} bytes)"),
        None => String::new(),
    };
    let warnings = match told.reading.report.warnings.len() {
        0 => String::new(),
        _ => ", its clock went backwards".to_owned(),
    };
    let report = &told.reading.report;
    Ok(format!(
        "whole, {how}{torn}{warnings}, {} records, head {}",
        report.records, report.head
    ))
}
