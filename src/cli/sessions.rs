//! Listing the sessions.

use std::path::Path;

use super::failure::{FINDINGS, Failure};
use super::resume::is_open;
use super::walk::sessions;
use crate::source::safe;
use crate::store::{ChainState, Listed};
use crate::walk::{Event, decode};

/// Prints a line a session; the exit code says whether one is damaged.
pub(super) fn run(folder: Option<&Path>) -> Result<u8, Failure> {
    let folder = sessions(folder)?;
    let mut text = String::new();
    let mut damaged = false;
    let listed = folder.list()?;
    for (name, error) in &folder.packs()?.bad {
        damaged = true;
        text.push_str(&format!("{}  damaged  {error}\n", safe(name)));
    }
    if listed.is_empty() {
        super::tell(&format!(
            "No sessions in {}.",
            safe(&folder.path().to_string_lossy())
        ));
    }
    for session in listed {
        damaged |= !matches!(session.state, ChainState::Whole | ChainState::Torn(_));
        text.push_str(&line(&session));
        text.push('\n');
    }
    super::print(&text)?;
    Ok(if damaged { FINDINGS } else { 0 })
}

fn line(session: &Listed) -> String {
    let state = match &session.state {
        ChainState::Damaged(damage) => format!("damaged  {damage}"),
        ChainState::Unreadable(error) => format!("damaged  {error}"),
        ChainState::Whole | ChainState::Torn(_) => match (is_open(session), &session.state) {
            (true, ChainState::Torn(bytes)) => format!("open     (its last line is torn: {bytes} bytes)"),
            (true, _) => "open".to_owned(),
            (false, _) if session.first.is_none() => "empty: nothing was recorded".to_owned(),
            (false, _) => "closed".to_owned(),
        },
    };
    let id = session.id.as_str();
    format!("{id}  {}  {state}", about(session).unwrap_or_default())
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
