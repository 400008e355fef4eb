//! A call walked again, step by step: what was asked, what was answered, and what came of it.
//!
//! What was taken back stands in it, too: it shows the log, not what is left of it.

mod told;

use jiff::{SignedDuration, Timestamp};

use super::columns_on;
use crate::library::{Datum, Library};
use crate::source::{Safe, ascii, safe, wrap};
use crate::walk::{Ask, Event, Misfit, Opened, Question, Role, State, apply, ask, standing};

/// Columns of a label at the left.
const LABEL: usize = 12;

/// Faults that are named when they are no longer reached; after a first answer that can be half the library.
const SHOWN: usize = 4;

/// One step of a replay: a question, its answer, and all that followed by itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Moment {
    /// When it was answered.
    pub time: Timestamp,
    /// How long after what was recorded before it: what finding the answer took. Negative where the clock went back.
    pub took: SignedDuration,
    /// The tree that it was asked in.
    pub tree: Safe,
    /// What was asked, what was answered and what followed, each with a label.
    pub lines: Vec<(&'static str, Safe)>,
}

/// A call's moments, in the order of its log: as far as its events fit the library and those before them, and what did not fit.
pub fn replay(library: &Library, events: &[(Timestamp, Event)]) -> (Vec<Moment>, Option<Misfit>) {
    let mut moments = Vec::new();
    let misfit = tell(library, events, &mut moments).err();
    (moments, misfit)
}

fn tell(library: &Library, events: &[(Timestamp, Event)], moments: &mut Vec<Moment>) -> Result<(), Misfit> {
    let mut state = State::default();
    // What an answer opens is recorded before it.
    let mut opened = Vec::new();
    let mut answers = 0;
    let mut before: Option<Timestamp> = None;
    for (time, event) in events {
        // What an answer opens belongs to that answer, also where a clock ran on between the two.
        if matches!(event, Event::LeftOpen { .. }) {
            opened.extend(told::line(library, &state, event));
            apply(library, &mut state, event)?;
            continue;
        }
        let took = before
            .replace(*time)
            .map_or(SignedDuration::ZERO, |before| time.duration_since(before));
        let is_later = moments.last().is_some_and(|moment| moment.time != *time);
        if begins(event) || (is_later && told::line(library, &state, event).is_some()) {
            ruled_out(library, &state, moments, &mut answers);
            let asked = ask(library, &state);
            moments.push(Moment {
                time: *time,
                took,
                tree: asked.tree.clone(),
                lines: asked_lines(event, &asked),
            });
        }
        let line = told::line(library, &state, event);
        apply(library, &mut state, event)?;
        if let Some(moment) = moments.last_mut() {
            moment.lines.extend(line);
            if begins(event) {
                moment.lines.append(&mut opened);
            }
        }
    }
    // A log that was cut off before the answer says what was opened all the same.
    if let Some(moment) = moments.last_mut() {
        moment.lines.append(&mut opened);
    }
    ruled_out(library, &state, moments, &mut answers);
    Ok(())
}

/// Whether the technician did this, so that it begins a moment; all else follows by itself.
fn begins(event: &Event) -> bool {
    match event {
        Event::Measured { typed, .. } => typed.is_some(),
        Event::Entered { role, .. } => *role == Role::Danger,
        Event::Opened(_)
        | Event::Observed { .. }
        | Event::ReadPlate { .. }
        | Event::Doubted { .. }
        | Event::CouldNot { .. }
        | Event::WasUnsure { .. }
        | Event::Did { .. }
        | Event::WentBack { .. }
        | Event::Retaking { .. }
        | Event::Noted { .. }
        | Event::PutBack { .. }
        | Event::KeptOpen { .. }
        | Event::Closed
        | Event::TailCut { .. } => true,
        _ => false,
    }
}

/// The question that an event answers.
fn asked_lines(event: &Event, ask: &Ask) -> Vec<(&'static str, Safe)> {
    let answers = matches!(
        event,
        Event::Measured { .. }
            | Event::Observed { .. }
            | Event::ReadPlate { .. }
            | Event::Doubted { .. }
            | Event::CouldNot { .. }
            | Event::WasUnsure { .. }
            | Event::Did { .. }
    );
    match &ask.question {
        _ if !answers => Vec::new(),
        Question::Number { datum, title, .. } => match datum {
            Datum::Field(_) => vec![("Plate", title.clone())],
            Datum::Reading(_) | Datum::Sign(_) => vec![("Measure", title.clone())],
        },
        Question::Choice { prompt, .. } => vec![("Question", prompt.clone())],
        Question::Act { text } => text.iter().map(|line| ("Do", line.clone())).collect(),
        _ => Vec::new(),
    }
}

/// Adds to the last moment which faults were no longer reached after its answer.
fn ruled_out(library: &Library, state: &State, moments: &mut [Moment], answers: &mut usize) {
    let Some(moment) = moments.last_mut().filter(|_| state.answers > *answers) else {
        return;
    };
    *answers = state.answers;
    if state.opened.as_ref().is_some_and(Opened::is_free_practice) {
        return;
    }
    if let Some(entry) = standing(library, state).trail.last()
        && !entry.ruled_out.is_empty()
    {
        let faults: Vec<&str> = entry.ruled_out.iter().map(Safe::as_str).collect();
        let more = faults.len().saturating_sub(SHOWN);
        let mut text = faults[..faults.len() - more].join("; ");
        if more > 0 {
            text.push_str(&format!("; and {more} more"));
        }
        moment
            .lines
            .push(("No longer", safe(&format!("reached: {text}"))));
    }
}

/// How long something took, in words that follow its time; nothing where it took no time.
fn taken(took: SignedDuration) -> String {
    let seconds = took.as_secs();
    match (seconds / 3600, seconds / 60 % 60, seconds % 60) {
        _ if took.is_negative() => ", and the clock went back".to_owned(),
        (0, 0, 0) => String::new(),
        (0, 0, seconds) => format!(", after {seconds} s"),
        (0, minutes, seconds) => format!(", after {minutes} min {seconds} s"),
        (hours, minutes, _) => format!(", after {hours} h {minutes} min"),
    }
}

/// A moment as lines of at most 78 columns, or as many as the terminal has.
pub fn text(moment: &Moment, number: usize, all: usize, is_ascii: bool, terminal: Option<usize>) -> String {
    let columns = columns_on(terminal);
    let time = moment.time.strftime("%Y-%m-%d %H:%M:%S UTC");
    let mut text = String::new();
    let mut write = |first: &str, words: &Safe| {
        let words = if is_ascii { ascii(words) } else { words.clone() };
        for (place, line) in wrap(&words, columns - first.len()).iter().enumerate() {
            let margin = if place == 0 {
                first.to_owned()
            } else {
                " ".repeat(first.len())
            };
            text.push_str(&format!("{margin}{line}\n"));
        }
    };
    let tree = match moment.tree.as_str() {
        "" => String::new(),
        tree => format!("  {tree}"),
    };
    let took = taken(moment.took);
    write("", &safe(&format!("{number} of {all}  {time}{took}{tree}")));
    for (label, words) in &moment.lines {
        write(&format!("  {label:<LABEL$} "), words);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_step_took_is_told_as_a_person_says_it() {
        for (seconds, told) in [
            (0, ""),
            (59, ", after 59 s"),
            (130, ", after 2 min 10 s"),
            (7500, ", after 2 h 5 min"),
            (-1, ", and the clock went back"),
        ] {
            assert_eq!(taken(SignedDuration::from_secs(seconds)), told);
        }
    }
}
