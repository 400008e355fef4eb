//! The dialogue of a call.

use std::io::{self, BufRead, Write};

use super::voice::{Options, Voice};
use super::words::{Wish, wish};
use super::{closing, line, question, standing};
use crate::face::Left;
use crate::source::safe;

use crate::walk::{Call, Command, NotDone, Question};

/// What comes of a line.
enum Outcome {
    /// Nothing: the prompt again.
    Prompt,
    /// The question again.
    Ask,
    /// A command.
    Do(Command),
    /// The call is left.
    Leave,
}

/// Walks a call line by line until it is closed or left. The end of the input leaves it open.
///
/// # Errors
///
/// Where the input cannot be read or the output not written. Every answer that was said to be taken is saved all the same.
pub fn call(
    mut input: impl BufRead,
    output: impl Write,
    call: &mut dyn Call,
    options: Options<'_>,
) -> io::Result<Left> {
    let mut voice = Voice::new(output, options);
    voice.say("Answer each question with a line. Say help for the other words.")?;
    standing::known(&mut voice, call.known())?;
    let mut show = true;
    let mut told = None;
    loop {
        let finished = matches!(call.ask().question, Question::Finished | Question::Closed);
        if told != call.standing().ended {
            told.clone_from(&call.standing().ended);
            // Before anything is to be put back: what the verdict asks for may not wait. The overview at the end says it too.
            if told.is_some() && !finished {
                voice.blank()?;
                standing::ended(&mut voice, call.standing())?;
            }
        }
        if show {
            question::ask(&mut voice, call.ask())?;
            if let Question::Finished = call.ask().question {
                standing::overview(&mut voice, call.standing())?;
            }
        }
        if matches!(call.ask().question, Question::Closed) {
            voice.flush()?;
            return Ok(Left::Closed);
        }
        voice.prompt(&question::prompt(&call.ask().question, call.searches()))?;
        let Some(line) = line::read(&mut input)? else {
            closing::left_open(&mut voice)?;
            return Ok(Left::Quit);
        };
        voice.echo(&line)?;
        show = match understand(&mut voice, &mut input, call, &line)? {
            Outcome::Prompt => false,
            Outcome::Ask => true,
            Outcome::Do(command) => carry_out(&mut voice, &mut input, call, command)?,
            Outcome::Leave => {
                closing::left_open(&mut voice)?;
                return Ok(Left::Quit);
            }
        };
    }
}

/// Carries a command out; whether the question is to be shown.
fn carry_out<W: Write>(
    voice: &mut Voice<'_, W>,
    input: &mut impl BufRead,
    call: &mut dyn Call,
    command: Command,
) -> io::Result<bool> {
    let aside = matches!(command, Command::Note(_));
    let before = call.standing().trail.len();
    match call.carry_out(command) {
        Ok(()) if aside => {
            voice.say("Noted.")?;
            Ok(false)
        }
        Ok(()) => {
            standing::taken(voice, call.standing(), before)?;
            drop_early(voice, input)?;
            Ok(true)
        }
        Err(NotDone::Refused(refusal)) => {
            voice.label(
                "NOT TAKEN",
                &safe(&format!("{}; {}", refusal.message, refusal.help)),
            )?;
            Ok(false)
        }
        Err(NotDone::NotSaved { message, help }) => {
            voice.label("NOT SAVED", &safe(&format!("{message}; {help}")))?;
            Ok(false)
        }
    }
}

/// Drops lines that came before anybody could read the question they would answer.
fn drop_early<W: Write>(voice: &mut Voice<'_, W>, input: &mut impl BufRead) -> io::Result<()> {
    let Some(early) = voice.options().early else {
        return Ok(());
    };
    let mut dropped = 0;
    while early() {
        if line::read(input)?.is_none() {
            break;
        }
        dropped += 1;
    }
    match dropped {
        0 => Ok(()),
        1 => voice.say("One line came before the question below was shown. It was not taken."),
        many => voice.say(&format!(
            "{many} lines came before the question below was shown. They were not taken."
        )),
    }
}

fn understand<W: Write>(
    voice: &mut Voice<'_, W>,
    input: &mut impl BufRead,
    call: &dyn Call,
    line: &str,
) -> io::Result<Outcome> {
    if line.is_empty() {
        return Ok(Outcome::Ask);
    }
    let Some((wish, rest)) = wish(line) else {
        return answer(voice, call, line);
    };
    let beside = call.standing();
    match wish {
        // What a meter shows, and no put-back that stays open.
        Wish::LeaveOpen if rest.is_empty() && matches!(call.ask().question, Question::Number { .. }) => {
            return answer(voice, call, line);
        }
        // Words to look for, where nothing is to be put back: `open igniter`.
        Wish::LeaveOpen if call.searches() => return answer(voice, call, line),
        Wish::Again => return Ok(Outcome::Ask),
        Wish::Leave => return Ok(Outcome::Leave),
        Wish::Help => standing::help(voice, call.searches())?,
        Wish::Known if call.known().is_empty() => {
            voice.say("Nothing is known of this equipment: no earlier call here has its id.")?;
        }
        Wish::Known => standing::known(voice, call.known())?,
        Wish::Overview => standing::overview(voice, beside)?,
        Wish::Answers => standing::answers(voice, beside)?,
        Wish::Danger => return danger(voice, input, call, rest),
        Wish::Back | Wish::Retake => {
            let of = |number: &str| position(number, beside.trail.len()).and_then(|at| beside.trail.get(at));
            let mut entry = of(rest);
            if entry.is_none() && !beside.trail.is_empty() {
                // Asked here and read here: its number is no answer to the question that stands.
                voice.say("Which answer? Say its number:")?;
                standing::answers(voice, beside)?;
                voice.prompt("Number of the answer:")?;
                if let Some(number) = line::read(input)? {
                    voice.echo(&number)?;
                    entry = of(number.trim());
                }
            }
            let Some(entry) = entry else {
                voice.say("No answer has that number; all of them stand.")?;
                return Ok(Outcome::Prompt);
            };
            match (wish, entry.datum) {
                (Wish::Retake, Some(datum)) => return Ok(Outcome::Do(Command::Retake(datum))),
                (Wish::Retake, None) => voice.say("Nothing was taken there that could be taken again.")?,
                _ => return closing::confirm(voice, input, Command::Back(entry.position)).map(confirmed),
            }
        }
        Wish::Take => return take(voice, &call.ask().question, rest),
        Wish::Unsure => return Ok(Outcome::Do(Command::Unsure)),
        Wish::Done => return done(voice, &call.ask().question),
        Wish::Close => return Ok(Outcome::Do(Command::Close)),
        Wish::Note | Wish::Unable | Wish::LeaveOpen | Wish::Stop | Wish::Insist if rest.is_empty() => {
            voice.say("Write the words behind it, on the same line.")?;
        }
        Wish::Note => return Ok(Outcome::Do(Command::Note(rest.to_owned()))),
        Wish::Unable => return Ok(Outcome::Do(Command::Unable(rest.to_owned()))),
        Wish::Stop => return closing::confirm(voice, input, Command::Stop(rest.to_owned())).map(confirmed),
        // Refused without a question where there is nothing to insist on.
        Wish::Insist if !matches!(call.ask().question, Question::Unproven { .. }) => {
            return Ok(Outcome::Do(Command::Insist(rest.to_owned())));
        }
        Wish::Insist => {
            return closing::confirm(voice, input, Command::Insist(rest.to_owned())).map(confirmed);
        }
        Wish::LeaveOpen => match &call.ask().question {
            Question::PutBack { restore, .. } => {
                let command = Command::LeaveOpen(*restore, rest.to_owned());
                return closing::confirm(voice, input, command).map(confirmed);
            }
            _ => voice.say("Nothing is to be put back at this question.")?,
        },
    }
    Ok(Outcome::Prompt)
}

/// Asks which danger it is, unless that was said with the word: its number is no answer to the question that stands.
/// Another word is heard all the same; who must leave leaves.
fn danger<W: Write>(
    voice: &mut Voice<'_, W>,
    input: &mut impl BufRead,
    call: &dyn Call,
    rest: &str,
) -> io::Result<Outcome> {
    let dangers = &call.standing().dangers;
    let mut said = rest.to_owned();
    loop {
        if let Some(at) = position(&said, dangers.len()) {
            return Ok(Outcome::Do(Command::Danger(at)));
        }
        standing::dangers(voice, dangers)?;
        if dangers.is_empty() {
            return Ok(Outcome::Prompt);
        }
        voice.prompt("Number of the danger:")?;
        let Some(line) = line::read(input)? else {
            return Ok(Outcome::Prompt);
        };
        voice.echo(&line)?;
        said = match wish(&line) {
            Some((Wish::Danger, rest)) => rest.to_owned(),
            Some(_) => return understand(voice, input, call, &line),
            None if position(&line, dangers.len()).is_some() => line,
            None => {
                voice.say("No danger has that number; the question stands.")?;
                return Ok(Outcome::Prompt);
            }
        };
    }
}

fn confirmed(command: Option<Command>) -> Outcome {
    command.map_or(Outcome::Prompt, Outcome::Do)
}

fn answer<W: Write>(voice: &mut Voice<'_, W>, call: &dyn Call, line: &str) -> io::Result<Outcome> {
    let question = &call.ask().question;
    match question {
        Question::Number { .. } => return Ok(Outcome::Do(Command::Type(line.to_owned()))),
        Question::Choice { options, .. } => {
            let by_text = || {
                options
                    .iter()
                    .position(|option| option.text.as_str().eq_ignore_ascii_case(line))
            };
            if let Some(option) = position(line, options.len())
                .or_else(by_text)
                .and_then(|at| options.get(at))
            {
                return Ok(Outcome::Do(Command::Choose(option.value)));
            }
            if call.searches() {
                return Ok(Outcome::Do(Command::Type(line.to_owned())));
            }
            voice.say(&format!(
                "That is none of the answers. Say a number from 1 to {}, or help.",
                options.len()
            ))?;
        }
        Question::Unproven { .. } => return take(voice, question, line),
        _ => voice.say("That is no answer here. Say help for the words.")?,
    }
    Ok(Outcome::Prompt)
}

fn take<W: Write>(voice: &mut Voice<'_, W>, question: &Question, rest: &str) -> io::Result<Outcome> {
    let Question::Unproven { lacks, .. } = question else {
        voice.say("No proof lacks anything at this question.")?;
        return Ok(Outcome::Prompt);
    };
    let takes: Vec<_> = lacks.iter().flat_map(|lack| &lack.take).collect();
    match position(rest, takes.len()).and_then(|at| takes.get(at)) {
        Some((datum, _)) => Ok(Outcome::Do(Command::Take(*datum))),
        None => {
            voice.say(
                "Say the number of what is to be taken, or stop, or insist, with the reason behind it.",
            )?;
            Ok(Outcome::Prompt)
        }
    }
}

fn done<W: Write>(voice: &mut Voice<'_, W>, question: &Question) -> io::Result<Outcome> {
    match question {
        Question::Act { .. } => Ok(Outcome::Do(Command::Done)),
        Question::PutBack { restore, .. } => Ok(Outcome::Do(Command::PutBack(*restore))),
        _ => {
            voice.say("There is nothing to do here but to answer.")?;
            Ok(Outcome::Prompt)
        }
    }
}

/// A number from 1 as a position in a list so long.
pub(super) fn position(text: &str, count: usize) -> Option<usize> {
    let number: usize = text.trim().parse().ok()?;
    number.checked_sub(1).filter(|at| *at < count)
}
