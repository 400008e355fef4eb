//! Characters that act on a terminal, change the direction of text, or cannot be seen.

use std::collections::{BTreeSet, HashMap, HashSet};

use crate::check::escapes::Escapes;
use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::texts;
use crate::source::{FileId, SourceFile, Span, is_plain, is_unsafe};

rule! {
    /// A text holds a control character, one that changes the direction of text, or one that cannot be seen.
    ///
    /// On a technician's terminal such a text could hide a line, recolour a warning, or say something else than what the
    /// reviewer read. The program never lets it act, but it shows it spelled out, and nobody wants to read that on a call.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # registry/restores.yaml
    /// restores:
    ///   door_switch: "Release the door switch\e[2K and close the door"
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # registry/restores.yaml
    /// restores:
    ///   door_switch: Release the door switch and close the door
    /// ```
    UNSAFE_TEXT, "unsafe-text", Error, needs Text, look
}

/// How many places of one file are reported: a file that is full of them is mended at one stroke.
const MOST: usize = 100;

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    // What stands in a file as it is need not be reported once more where the text is used.
    let mut seen = HashSet::new();
    let files = subject.library.files.iter();
    for (id, file) in files.filter(|(_, file)| !is_plain(file.text())) {
        for (start, character) in unsafe_places(file).take(MOST) {
            seen.insert((id, character));
            let span = Span {
                file: id,
                start: start as u32,
                end: (start + character.len_utf8()) as u32,
            };
            findings.add(span, format!("the text holds {}", described(character)), HELP);
        }
    }
    // Nothing else can be in a text than is in its file, but for what an escape stands for.
    let mut files = subject.library.files.iter();
    if !files.any(|(_, file)| file.text().contains('\\')) {
        return;
    }
    let mut escapes = Escapes::of(&subject.library.files);
    let mut reported: HashMap<FileId, usize> = HashMap::new();
    texts::each(subject.library, &mut |at, text| {
        if is_plain(text) {
            return;
        }
        let characters: BTreeSet<char> = text.chars().filter(|&character| is_refused(character)).collect();
        for character in characters {
            let place = escapes.take(at, character);
            let written_out = place.is_some() || !seen.contains(&(at.file, character));
            let count = reported.entry(at.file).or_default();
            if written_out && *count < MOST {
                *count += 1;
                let message = format!("the text holds {}", described(character));
                findings.add(
                    place.unwrap_or(at),
                    message,
                    "take out the escape that stands for it",
                );
            }
        }
    });
}

const HELP: &str = "take it out; it may have come along when the text was copied";

fn is_refused(character: char) -> bool {
    is_unsafe(character) && !matches!(character, '\n' | '\t')
}

fn described(character: char) -> String {
    let kind = if character.is_control() {
        "a control character"
    } else {
        "a character that is not seen or turns the text round"
    };
    format!("U+{:04X}, {kind}", character as u32)
}

/// The first unsafe character of every run of one, with its offset.
fn unsafe_places(file: &SourceFile) -> impl Iterator<Item = (usize, char)> {
    let text = file.text();
    let mut next = 0;
    let lines = text.split_inclusive('\n').map(move |line| {
        let start = next;
        next += line.len();
        (start, line)
    });
    let characters = lines
        .filter(|(_, line)| !is_plain(line.strip_suffix("\r\n").unwrap_or(line)))
        .flat_map(|(start, line)| {
            line.char_indices()
                .map(move |(at, character)| (start + at, character))
        });
    let mut last = None;
    characters.filter(move |&(at, character)| {
        let harmless = match character {
            '\n' | '\t' => true,
            '\r' => text.as_bytes().get(at + 1) == Some(&b'\n'),
            // The byte-order mark, where it is one.
            '\u{feff}' => at == 0,
            other => !is_unsafe(other),
        };
        if harmless {
            return false;
        }
        let joins = last.replace(at + character.len_utf8()) == Some(at);
        !joins
    })
}
