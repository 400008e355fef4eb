//! The question, spoken.

use std::io::{self, Write};

use super::voice::Voice;
use crate::face::{ANY_ONE, alternative, why_again, why_lacking};
use crate::library::{Datum, Severity};
use crate::source::{Safe, safe};
use crate::walk::{Ask, Question, ShownBand, Way};

/// Says where the walk is, and all of the question.
pub fn ask<W: Write>(voice: &mut Voice<'_, W>, ask: &Ask) -> io::Result<()> {
    voice.blank()?;
    let mut path: Vec<&str> = ask.through.iter().map(Safe::as_str).collect();
    path.push(ask.tree.as_str());
    voice.say(&format!("{}{}", path.join(", then "), marks(ask)))?;
    if let Some(title) = &ask.title {
        voice.say(title.as_str())?;
    }
    asked(voice, ask)?;
    if let Some(again) = &ask.again {
        voice.label("Again", &safe(&why_again(again)))?;
    }
    for caution in ask.cautions.iter().chain(&ask.standing_cautions) {
        voice.label("CAUTION", caution)?;
    }
    for (label, lines) in [("Overlay", &ask.overlays), ("Why", &ask.why)] {
        for line in lines {
            voice.label(label, line)?;
        }
    }
    // One text, of which each line goes on where the one before it ended.
    for (number, line) in ask.how.iter().enumerate() {
        match number {
            0 => voice.label("How", line)?,
            _ => voice.goes_on(line)?,
        }
    }
    if let Some(source) = &ask.source {
        voice.label("Source", source)?;
    }
    answers(voice, &ask.question)?;
    ways(voice, ask)
}

/// How far the tree is trusted, and which edition it is.
fn marks(ask: &Ask) -> String {
    let edition = ask.edition.as_ref().map(|edition| format!("edition {edition}"));
    let marks: Vec<String> = (ask.status.iter().map(Safe::to_string)).chain(edition).collect();
    match marks.as_slice() {
        [] => String::new(),
        marks => format!(" ({})", marks.join(", ")),
    }
}

/// What the prompt says; `searches` where words look for what is not in the list.
pub fn prompt(question: &Question, searches: bool) -> String {
    match question {
        Question::Number { scale, .. } if scale.symbol().is_empty() => "Number:".to_owned(),
        Question::Number { scale, .. } => format!("Number ({}):", scale.symbol()),
        Question::Choice { options, .. } if searches => {
            format!("Answer (1 to {}, or words to look for):", options.len())
        }
        Question::Choice { options, .. } => format!("Answer (1 to {}):", options.len()),
        Question::Act { .. } | Question::PutBack { .. } => "Answer (done):".to_owned(),
        Question::Unproven { .. } => "Answer (a number, stop, or insist):".to_owned(),
        Question::Finished => "Answer (close):".to_owned(),
        Question::Closed => String::new(),
    }
}

fn asked<W: Write>(voice: &mut Voice<'_, W>, ask: &Ask) -> io::Result<()> {
    let minutes = ask
        .minutes
        .map(|minutes| format!(" (about {minutes} min)"))
        .unwrap_or_default();
    let with_minutes = |text: &Safe| safe(&format!("{text}{minutes}"));
    match &ask.question {
        Question::Number { datum, title, .. } => {
            let label = if matches!(datum, Datum::Field(_)) {
                "Read from the plate"
            } else {
                "Measure"
            };
            voice.label(label, &with_minutes(title))
        }
        Question::Choice { prompt, .. } => voice.label("Question", &with_minutes(prompt)),
        Question::Act { text } => {
            for (number, line) in text.iter().enumerate() {
                match number + 1 == text.len() {
                    true => voice.label("Do", &with_minutes(line))?,
                    false => voice.label("Do", line)?,
                }
            }
            Ok(())
        }
        Question::Unproven { fault, remedy, .. } => {
            voice.label("NOT PROVEN", fault)?;
            voice.label("What would be done", remedy)
        }
        Question::PutBack { text, left, .. } => {
            voice.label("Put back", text)?;
            if *left > 0 {
                voice.say(&format!("After this, {left} more to put back."))?;
            }
            Ok(())
        }
        Question::Finished => voice.say("Everything is answered. The call can be closed."),
        Question::Closed => voice.say("The call is closed."),
    }
}

fn answers<W: Write>(voice: &mut Voice<'_, W>, question: &Question) -> io::Result<()> {
    match question {
        Question::Number {
            bands,
            works_out,
            plausible,
            accuracy,
            scale,
            ..
        } => {
            if let Some(works_out) = works_out {
                voice.label("For", works_out)?;
            }
            if let Some(accuracy) = accuracy {
                voice.label("Meter", accuracy)?;
            }
            bands
                .iter()
                .try_for_each(|band| voice.label("Band", &band_words(band)))?;
            if let Some((low, high)) = plausible {
                let range = format!("{} to {}", low.display(*scale), high.display(*scale));
                voice.label("Plausible", &safe(&range))?;
            }
            Ok(())
        }
        Question::Choice { options, .. } => {
            for (number, option) in options.iter().enumerate() {
                let means = meaning(option.means.as_ref(), option.finding);
                voice.item(number + 1, &safe(&format!("{}{means}", option.text)))?;
            }
            Ok(())
        }
        Question::Unproven { lacks, .. } => {
            let mut number = 0;
            for lack in lacks {
                let because = why_lacking(lack.because);
                match lack.any_of.is_empty() {
                    true => voice.label("Lacks", &safe(&format!("{} ({because})", lack.words)))?,
                    false => voice.label("Lacks", &safe(&format!("{ANY_ONE}:")))?,
                }
                for (mark, words, stands) in lack.any_of.iter().flat_map(|claims| alternative(claims)) {
                    voice.say(&format!("  {mark} {words} ({stands})"))?;
                }
                for (_, take) in &lack.take {
                    number += 1;
                    voice.item(number, &safe(&format!("take {take}")))?;
                }
            }
            Ok(())
        }
        _ => Ok(()),
    }
}

fn ways<W: Write>(voice: &mut Voice<'_, W>, ask: &Ask) -> io::Result<()> {
    for (way, word, meaning) in [
        (ask.unable, "unable", "it cannot be taken"),
        (ask.unsure, "unsure", "you cannot tell"),
    ] {
        let comes = match way {
            None => continue,
            Some(Way::GoesOn) => "the walk goes on another way",
            Some(Way::EndsUnproven) => "the walk ends without a verdict",
            Some(Way::LeftUntaken) => "it is left untaken, and you choose again",
        };
        voice.label("Or", &safe(&format!("{word}, if {meaning}; {comes}")))?;
    }
    Ok(())
}

fn band_words(band: &ShownBand) -> Safe {
    let written = band
        .written
        .as_ref()
        .map(|written| format!(" (written: {written})"))
        .unwrap_or_default();
    safe(&format!(
        "{}{written}{}",
        band.words,
        meaning(band.means.as_ref(), band.finding)
    ))
}

fn meaning(means: Option<&Safe>, finding: Option<Severity>) -> String {
    let means = means.map(|means| format!(": {means}")).unwrap_or_default();
    let finding = finding
        .map(|severity| format!(" [{}]", severity.name()))
        .unwrap_or_default();
    format!("{means}{finding}")
}
