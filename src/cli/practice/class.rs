//! Practice sessions of a class, set side by side.

use std::io;
use std::path::PathBuf;

use crate::bench::practice::{Mark, Setup};
use crate::cli::arguments::PracticeFormat;
use crate::cli::failure::{FINDINGS, Failure};
use crate::cli::look;
use crate::cli::session::{events, opened};
use crate::cli::{print, tell};
use crate::report::practice::{Class, End, Practised, json, left_out, text};
use crate::source::safe;
use crate::store::{Archive, SessionFolder, SessionId};
use crate::walk::{Event, LibraryMark, Opened};

/// Prints what everybody came to; the exit code says whether a session is damaged.
pub(super) fn run(folders: &[PathBuf], tells: bool, format: PracticeFormat) -> Result<u8, Failure> {
    let archive = Archive::find(folders)?;
    let mut class = Class {
        tells,
        ..Class::default()
    };
    let mut damaged = false;
    let mut not_read = |name: &str, why: &str| {
        damaged = true;
        tell(&format!("{} was not read: {}", safe(name), safe(why)));
    };
    for (_, name, why) in &archive.unreadable {
        not_read(name, why);
    }
    for found in archive.sessions() {
        let id = found.id();
        let places = std::iter::once(&found.lies).chain(&found.others);
        let folders = places.map(|lies| archive.folder(lies.place));
        let read = folders.map(|folder| one(folder?.as_ref(), &id));
        // Of several copies one that is whole and goes farthest.
        let best = read.max_by_key(|read| match read {
            Ok(Found::Practised(practised)) => 2 + u8::from(practised.end != End::NotFinished),
            Ok(Found::Call | Found::Foreign) => 1,
            Err(_) => 0,
        });
        match best {
            Some(Ok(Found::Practised(one))) => class.practised.push(*one),
            Some(Ok(Found::Call)) => class.calls += 1,
            Some(Ok(Found::Foreign)) => class.foreign += 1,
            Some(Err(failure)) => not_read(id.as_str(), &failure.message),
            None => {}
        }
    }
    // Some packs are only looked into when it is their turn.
    for bad in archive.bad_packs() {
        not_read(&bad.name, &bad.why);
    }
    if format == PracticeFormat::Json {
        // The list has room for practice only.
        left_out(&class).iter().for_each(|line| tell(line));
    }
    print(&match format {
        PracticeFormat::Text => text(&class, look::of_findings(&io::stdout())),
        PracticeFormat::Json => json(&class),
    })?;
    Ok(if damaged { FINDINGS } else { 0 })
}

/// What a session is.
enum Found {
    Practised(Box<Practised>),
    /// A call at a house.
    Call,
    /// Practice that this version knows nothing of.
    Foreign,
}

/// Reads a session.
fn one(folder: &SessionFolder, id: &SessionId) -> Result<Found, Failure> {
    let reading = folder.read(id)?;
    if let Some(damage) = &reading.report.damage {
        return Err(Failure::new(FINDINGS, damage.to_string()));
    }
    let events = events(&reading.records)?;
    let opened = opened(&events)?;
    let Some(setup) = opened.answered_from.as_deref().and_then(Setup::read) else {
        return Ok(if opened.is_practice() {
            Found::Foreign
        } else {
            Found::Call
        });
    };
    // The line that was written with the close, and no note that somebody wrote before it.
    let end = match events.as_slice() {
        [.., Event::Noted { text }, Event::Closed] => Mark::read(text).map_or(End::NotKnown, End::Came),
        [.., Event::Closed] => End::NotKnown,
        _ => End::NotFinished,
    };
    Ok(Found::Practised(Box::new(Practised {
        session: id.as_str().to_owned(),
        apprentice: opened.technician.clone(),
        setup,
        drawn_with: drawn_with(opened),
        end,
    })))
}

fn drawn_with(opened: &Opened) -> String {
    let LibraryMark {
        name, edition, hash, ..
    } = &opened.library;
    format!("proofwalk {} and {name} {edition} {hash}", opened.program)
}
