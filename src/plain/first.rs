//! The first screen, spoken.

use std::io::{self, BufRead, Write};

use super::dialogue::position;
use super::voice::{Options, Voice};
use super::words::{Wish, wish};
use super::{line, standing};
use crate::face::{Home, HomeChoice, HomeLine};
use crate::source::safe;

/// Offers the complaints and the calls not finished until one is chosen. The end of the input chooses nothing.
///
/// # Errors
///
/// Where the input cannot be read or the output not written.
pub fn home(
    mut input: impl BufRead,
    output: impl Write,
    home: &Home,
    options: Options<'_>,
) -> io::Result<HomeChoice> {
    let mut voice = Voice::new(output, options);
    offer(&mut voice, home)?;
    loop {
        voice.prompt("Number, danger, or leave:")?;
        let Some(line) = line::read(&mut input)? else {
            voice.blank()?;
            return Ok(HomeChoice::Quit);
        };
        voice.echo(&line)?;
        match wish(&line) {
            Some((Wish::Leave, _)) => return Ok(HomeChoice::Quit),
            Some((Wish::Danger, rest)) => match position(rest, home.dangers.len()) {
                Some(at) => return Ok(HomeChoice::Danger(at)),
                None => {
                    standing::dangers(&mut voice, &home.dangers)?;
                    voice.say("Say danger and its number.")?;
                }
            },
            _ => match position(&line, usize::MAX).and_then(|at| home.choice(at)) {
                Some(choice) => return Ok(choice),
                None => offer(&mut voice, home)?,
            },
        }
    }
}

fn offer<W: Write>(voice: &mut Voice<'_, W>, home: &Home) -> io::Result<()> {
    voice.say(home.title.as_str())?;
    for overlay in &home.overlays {
        voice.label("Overlay", overlay)?;
    }
    for caution in &home.standing_cautions {
        voice.label("CAUTION", caution)?;
    }
    let mut number = 0;
    let lists: [(&str, &[HomeLine]); 2] = [
        ("A new call:", &home.complaints),
        ("Calls not finished:", &home.unfinished),
    ];
    for (heading, lines) in lists.into_iter().filter(|(_, lines)| !lines.is_empty()) {
        voice.blank()?;
        voice.say(heading)?;
        for line in lines {
            number += 1;
            let note = line
                .note
                .as_ref()
                .map(|note| format!(" ({note})"))
                .unwrap_or_default();
            voice.item(number, &safe(&format!("{}{note}", line.label)))?;
        }
    }
    voice.blank()
}
