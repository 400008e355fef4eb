//! Whether a session follows from its library.

use super::failure::{FINDINGS, Failure};
use super::session::{Told, opened};
use crate::bench::practice::ByPractice;
use crate::source::safe;
use crate::store::SessionId;
use crate::walk::{ByTheTrees, Due, Event, Opened, State, encode, retrace};

/// Letters of an event that a message shows.
const SHOWN: usize = 200;

impl Told {
    /// Where the call stands, once every move of it was decided again: a record that does not follow from its library tells
    /// nothing.
    pub fn retraced(&self, id: &SessionId) -> Result<State, Failure> {
        self.retrace().map_err(|why| {
            let message = format!(
                "the session {} does not follow from its library: {why}",
                id.as_str()
            );
            Failure::new(FINDINGS, message)
                .help("it was changed, or recorded by other rules; nothing of it is told, and `proofwalk replay` shows what stands there")
        })
    }

    /// The same; otherwise the first line that does not follow.
    pub fn retrace(&self) -> Result<State, String> {
        let library = &self.loaded.library;
        let opened = opened(&self.events).map_err(|failure| failure.message)?;
        let mark = &opened.library;
        if (&mark.name, &mark.edition) != (&library.name, &library.edition) {
            let [named, kept] =
                [mark, &self.loaded.mark()].map(|mark| safe(&format!("{} {}", mark.name, mark.edition)));
            return Err(format!("line 1 names {named}, and its hash is that of {kept}"));
        }
        let state = match ByPractice::of(opened) {
            Some(rules) => retrace(library, &self.events, &rules),
            None => retrace(library, &self.events, &ByTheTrees),
        };
        state.map_err(|stray| {
            let line = self.reading.records.get(stray.at).map_or(0, |record| record.line);
            let stands = self.events.get(stray.at).map(as_recorded).unwrap_or_default();
            let due = match &stray.due {
                Due::Nothing => "which no answer leads to there".to_owned(),
                Due::Event(event) => format!("where {} would have come", as_recorded(event)),
                Due::Refused(refusal) => format!("which would have been refused: {refusal}"),
            };
            format!("line {line} says {stands}, {due}{}", by_another_version(opened))
        })
    }
}

/// An event as it stands in the log, as much as a line holds.
fn as_recorded(event: &Event) -> String {
    let text = encode(event).unwrap_or_default();
    safe(&text).cut(SHOWN).to_string()
}

/// What is to be thought of where another version of the program recorded the call: it may have walked by other rules.
fn by_another_version(opened: &Opened) -> String {
    let program = &opened.program;
    let is_version = program.starts_with(|first: char| first.is_ascii_digit());
    match is_version && program != env!("CARGO_PKG_VERSION") {
        true => format!(
            "; proofwalk {} recorded it, whose rules may have been others",
            safe(program)
        ),
        false => String::new(),
    }
}
