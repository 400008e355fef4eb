//! What stands beside the question, spoken.

use std::io::{self, Write};

use super::voice::Voice;
use super::words::WORDS;
use crate::face::{asked_and_answered, came_out, few, near, not_looked_at_since};
use crate::source::{Safe, safe};
use crate::walk::{Known, NO_LONGER, Standing};

/// All of it.
pub fn overview<W: Write>(voice: &mut Voice<'_, W>, standing: &Standing) -> io::Result<()> {
    ended(voice, standing)?;
    list(voice, "To put back", &standing.open)?;
    if !standing.possible.is_empty() {
        voice.label("Still possible", &few(&standing.possible))?;
    }
    let walking = standing.ended.is_none();
    for entry in (standing.trail.iter()).filter(|entry| walking && !entry.ruled_out.is_empty()) {
        let by = format!("{}, by {}", few(&entry.ruled_out), asked_and_answered(entry));
        no_longer(voice, &safe(&by))?;
    }
    for (severity, text) in &standing.findings {
        voice.label("Found", &safe(&format!("{}: {text}", severity.name())))?;
    }
    if walking {
        not_looked_at(voice, standing)?;
    }
    match near(standing.at_worst).filter(|_| walking) {
        Some(1) => voice.say("At most 1 question more"),
        Some(many) => voice.say(&format!("At most {many} questions more")),
        None => Ok(()),
    }
}

/// How the walk has ended, once it has, and what is to be done.
pub fn ended<W: Write>(voice: &mut Voice<'_, W>, standing: &Standing) -> io::Result<()> {
    if let Some(ended) = &standing.ended {
        voice.label("Ended", ended)?;
    }
    if standing.ended.is_some() {
        not_looked_at(voice, standing)?;
    }
    let Some(stated) = &standing.stated else {
        return Ok(());
    };
    let label = if stated.shut_down { "SHUT DOWN" } else { "Remedy" };
    voice.label(label, &stated.remedy)?;
    let long = [
        ("Do", &stated.text),
        ("CAUTION", &stated.cautions),
        ("Why", &stated.because),
        ("Tell the owner", &stated.advice),
    ];
    for (label, lines) in long {
        lines.iter().try_for_each(|line| voice.label(label, line))?;
    }
    stated.then.iter().try_for_each(|then| voice.label("Then", then))
}

/// What was passed over, because a verdict before it was noted.
fn not_looked_at<W: Write>(voice: &mut Voice<'_, W>, standing: &Standing) -> io::Result<()> {
    for visit in &standing.not_looked_at {
        voice.label(
            "Not looked at",
            &safe(&format!("{}:", not_looked_at_since(visit))),
        )?;
        (visit.checks.iter()).try_for_each(|check| voice.say(&format!("  {check}")))?;
    }
    Ok(())
}

/// What was just taken, and what is no longer reached: the answers after the first `before`.
pub fn taken<W: Write>(voice: &mut Voice<'_, W>, standing: &Standing, before: usize) -> io::Result<()> {
    for entry in standing.trail.iter().skip(before) {
        let borderline = if entry.borderline { " (borderline)" } else { "" };
        voice.label(
            "Taken",
            &safe(&format!("{}{borderline}", asked_and_answered(entry))),
        )?;
        for value in &entry.worked_out {
            voice.label("Worked out", &came_out(value))?;
        }
        for value in &entry.stood {
            voice.label("Still stands", &came_out(value))?;
        }
        if standing.ended.is_none() && !entry.ruled_out.is_empty() {
            no_longer(voice, &few(&entry.ruled_out))?;
        }
    }
    Ok(())
}

fn no_longer<W: Write>(voice: &mut Voice<'_, W>, faults: &Safe) -> io::Result<()> {
    voice.label(&format!("On this way {NO_LONGER}"), faults)
}

fn list<W: Write>(voice: &mut Voice<'_, W>, label: &str, texts: &[Safe]) -> io::Result<()> {
    if texts.is_empty() {
        return voice.say(&format!("{label}: nothing"));
    }
    texts.iter().try_for_each(|text| voice.label(label, text))
}

/// The answers so far, by number.
pub fn answers<W: Write>(voice: &mut Voice<'_, W>, standing: &Standing) -> io::Result<()> {
    if standing.trail.is_empty() {
        return voice.say("Nothing is answered yet.");
    }
    for (number, entry) in standing.trail.iter().enumerate() {
        let borderline = if entry.borderline { " (borderline)" } else { "" };
        voice.item(
            number + 1,
            &safe(&format!("{}{borderline}", asked_and_answered(entry))),
        )?;
        for value in &entry.worked_out {
            voice.label("     Worked out", &came_out(value))?;
        }
        for value in &entry.stood {
            voice.label("     Still stands", &came_out(value))?;
        }
    }
    Ok(())
}

/// What was known of the equipment before this call.
pub fn known<W: Write>(voice: &mut Voice<'_, W>, known: &[Known]) -> io::Result<()> {
    for section in known {
        voice.say(section.heading.as_str())?;
        for line in &section.lines {
            voice.say(&format!("  {line}"))?;
        }
    }
    Ok(())
}

/// The dangers, by number.
pub fn dangers<W: Write>(voice: &mut Voice<'_, W>, dangers: &[Safe]) -> io::Result<()> {
    if dangers.is_empty() {
        return voice.say(
            "This library names no dangers. Leave the building if you must, and call for help from outside.",
        );
    }
    voice.say("What is the danger? If you must leave, leave: this can wait.")?;
    for (number, danger) in dangers.iter().enumerate() {
        voice.item(number + 1, danger)?;
    }
    Ok(())
}

/// The words.
pub fn help<W: Write>(voice: &mut Voice<'_, W>, searches: bool) -> io::Result<()> {
    voice.say("A line answers the question: a number, or the number of an answer.")?;
    if searches {
        voice.say("Here it can also be words to look for, or parts of them: inducer, volt valve. What is called so is listed.")?;
    }
    voice.say("Other words:")?;
    for word in WORDS {
        let left = format!("{} {}", word.word, word.rest);
        voice.say(&format!("{}: {}", left.trim(), word.help))?;
    }
    Ok(())
}
