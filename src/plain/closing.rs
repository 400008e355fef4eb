//! What is said before something is ended, and when the call is left.

use std::io::{self, BufRead, Write};

use super::line;
use super::voice::Voice;
use crate::walk::Command;

/// Asks whether a command is really meant; it comes back where it is.
pub fn confirm<W: Write>(
    voice: &mut Voice<'_, W>,
    input: &mut impl BufRead,
    command: Command,
) -> io::Result<Option<Command>> {
    voice.say(match command {
        Command::Back(_) => "That answer and all after it are taken back.",
        Command::Stop(_) => "The walk ends without a verdict.",
        Command::Insist(_) => "The walk ends on your own verdict; it is recorded as yours, not as proven.",
        _ => "It stays open, and that stands on the job report.",
    })?;
    voice.prompt("Say yes to do it:")?;
    let line = line::read(input)?.unwrap_or_default();
    voice.echo(&line)?;
    if line.eq_ignore_ascii_case("yes") {
        return Ok(Some(command));
    }
    voice.say("Nothing was done.")?;
    Ok(None)
}

/// Says that the call stays open, and how to come back.
pub fn left_open<W: Write>(voice: &mut Voice<'_, W>) -> io::Result<()> {
    voice.blank()?;
    voice.say("The call stays open.")?;
    voice.flush()
}
