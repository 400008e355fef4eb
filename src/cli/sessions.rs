//! Listing the sessions.

use std::path::Path;

use super::failure::{FINDINGS, Failure, worse};
use super::resume::is_open;
use super::session::{events, is_closed, opened};
use super::walk::existing_sessions;
use crate::source::safe;
use crate::store::{ChainState, Listed, SessionFolder, StoreError};
use crate::walk::{Event, decode};

/// Prints a line a session; the exit code says whether one is damaged, or cannot be read.
pub(super) fn run(folder: Option<&Path>) -> Result<u8, Failure> {
    let folder = existing_sessions(folder)?;
    let mut text = String::new();
    let mut code = 0;
    let listed = folder.list()?;
    for (name, error) in &folder.packs()?.bad {
        code = worse(code, error.exit_code());
        let word = word(error.exit_code());
        text.push_str(&format!("{}  {word}  {}\n", safe(name), error.reason()));
    }
    if listed.is_empty() {
        super::tell(&format!(
            "No sessions in {}.",
            safe(&folder.path().to_string_lossy())
        ));
    }
    for session in listed {
        let state = state(&folder, &session).unwrap_or_else(|wrong| {
            code = worse(code, wrong.code);
            format!("{}  {}", word(wrong.code), wrong.why)
        });
        let about = about(&session).unwrap_or_default();
        text.push_str(&format!("{}  {about}  {state}\n", session.id.as_str()));
    }
    for name in folder.own_names()?.strangers {
        code = FINDINGS;
        text.push_str(&format!(
            "{}  damaged  no session can have this name, so it is not read\n",
            safe(&name)
        ));
    }
    super::print(&text)?;
    Ok(code)
}

/// What is wrong with a session's file.
struct Wrong {
    code: u8,
    why: String,
}

impl From<StoreError> for Wrong {
    fn from(error: StoreError) -> Self {
        Self::from(&error)
    }
}

impl From<&StoreError> for Wrong {
    fn from(error: &StoreError) -> Self {
        Self {
            code: error.exit_code(),
            why: error.reason(),
        }
    }
}

impl From<Failure> for Wrong {
    fn from(failure: Failure) -> Self {
        Self {
            code: failure.code,
            why: failure.message,
        }
    }
}

/// What a file is called that is wrong: one out of reach may be as sound as any.
fn word(code: u8) -> &'static str {
    match code {
        FINDINGS => "damaged",
        _ => "unreadable",
    }
}

/// How a session stands, as an audit counts it; an error is what is wrong with its file.
fn state(folder: &SessionFolder, session: &Listed) -> Result<String, Wrong> {
    let torn = match &session.state {
        ChainState::Damaged(damage) => {
            return Err(Wrong {
                code: FINDINGS,
                why: damage.to_string(),
            });
        }
        ChainState::Unreadable(error) => return Err(error.into()),
        ChainState::Torn(bytes) => Some(*bytes),
        ChainState::Whole => None,
    };
    if session.first.is_none() {
        return Ok("empty: nothing was recorded".to_owned());
    }
    let mut notes = Vec::new();
    let is_signed_off = !is_open(session);
    let is_closed = is_signed_off || ended(folder, session)?;
    if is_closed && !is_signed_off {
        notes.push("ended, not signed off".to_owned());
    }
    notes.extend(torn.map(|bytes| format!("its last line is torn: {bytes} bytes")));
    let state = if is_closed { "closed" } else { "open" };
    Ok(match notes.is_empty() {
        true => state.to_owned(),
        false => format!("{state:<8} ({})", notes.join("; ")),
    })
}

/// Whether a call that was not signed off ended all the same, with nothing left to put back.
fn ended(folder: &SessionFolder, session: &Listed) -> Result<bool, Wrong> {
    let reading = folder.read(&session.id)?;
    let events = events(&reading.records)?;
    opened(&events)?;
    Ok(is_closed(&reading.records, &events))
}

/// When a session was opened, on what, by whom and where.
pub(super) fn about(session: &Listed) -> Option<String> {
    let first = session.first.as_ref()?;
    let Ok(Event::Opened(opened)) = decode(first.event.get()) else {
        return None;
    };
    let time = first.time.strftime("%Y-%m-%d %H:%M");
    let practice = opened.answered_from.clone().filter(|_| opened.is_practice());
    let parts = [opened.technician, opened.site, opened.equipment, practice];
    let parts: Vec<String> = parts
        .into_iter()
        .flatten()
        .map(|part| safe(&part).to_string())
        .collect();
    Some(
        format!("{time}  {}  {}", safe(&opened.tree), parts.join(", "))
            .trim_end()
            .to_owned(),
    )
}
