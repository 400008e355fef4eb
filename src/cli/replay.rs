//! `proofwalk replay`: a session, walked again step by step.

use std::io::{self, BufRead};
use std::path::Path;

use jiff::Timestamp;

use super::failure::{FINDINGS, Failure};
use super::look;
use super::session::{Told, named};
use super::walk::existing_sessions;
use crate::report::replay;
use crate::source::{Safe, safe, wrap};
use crate::walk::Event;

/// What a person is told to type.
const KEYS: &str = "Enter: next; b: back; a number: that step; q: leave";

/// Columns for what is typed behind it.
const TYPED: usize = 4;

/// Shows a session moment by moment; all at once where nobody sits at the terminal.
pub(super) fn run(session: &str, folder: Option<&Path>) -> Result<u8, Failure> {
    let folder = existing_sessions(folder)?;
    let id = named(&folder, session)?;
    let told = Told::read(&folder, &id)?;
    // Whoever looks into a record that does not follow has to see it.
    let code = match told.retrace() {
        Ok(_) => 0,
        Err(why) => {
            super::tell(&format!(
                "proofwalk: this does not follow from its library: {why}"
            ));
            FINDINGS
        }
    };
    let times = told.reading.records.iter().map(|record| record.time);
    let events: Vec<(Timestamp, Event)> = times.zip(told.events).collect();
    let (moments, misfit) = replay::replay(&told.loaded.library, &events);
    if let Some(misfit) = misfit.filter(|_| moments.is_empty()) {
        return Err(misfit.into());
    }
    let ascii = look::of_findings(&io::stdout()).ascii;
    let columns = look::terminal_width();
    let text = |at: usize| replay::text(&moments[at], at + 1, moments.len(), ascii, columns);
    if !super::is_interactive() {
        let all: Vec<String> = (0..moments.len()).map(text).collect();
        return super::print(&all.join("\n")).map(|()| code);
    }
    // Room for the blank behind them, and for what is typed.
    let keys = wrap(
        &safe(KEYS),
        columns.map_or(usize::MAX, |columns| columns.saturating_sub(TYPED)),
    );
    let keys = keys.iter().map(Safe::as_str).collect::<Vec<_>>().join("\n");
    let mut input = io::stdin().lock();
    let mut at = 0;
    while at < moments.len() {
        super::print(&format!("\n{}\n{keys} ", text(at)))?;
        let mut line = String::new();
        if input.read_line(&mut line)? == 0 {
            break;
        }
        at = match (line.trim(), line.trim().parse::<usize>()) {
            ("q", _) => break,
            ("b", _) => at.saturating_sub(1),
            (_, Ok(number)) if (1..=moments.len()).contains(&number) => number - 1,
            ("", _) => at + 1,
            _ => at,
        };
    }
    Ok(code)
}
