//! Typing and pasting.

use tui_input::{Input, InputRequest};

use crate::source::{is_unsafe, safe};
use crate::tui::keys::{Action, Place, Press};
use crate::tui::model::{Dialog, LONGEST_ANSWER, LONGEST_WORDS, Model, Said, Scene};

/// Edits the line that is being typed.
pub fn edit(model: &mut Model, action: Action, press: Press) {
    let (input, most) = line(model);
    let request = match (action, press) {
        (Action::Type, Press::Char(character)) => {
            if is_unsafe(character) || input.value().chars().count() >= most {
                return;
            }
            InputRequest::InsertChar(character)
        }
        (Action::DeleteBefore, _) => InputRequest::DeletePrevChar,
        (Action::DeleteAfter, _) => InputRequest::DeleteNextChar,
        (Action::DeleteWord, _) => InputRequest::DeletePrevWord,
        (Action::DeleteLine, _) => InputRequest::DeleteLine,
        (Action::Left, _) => InputRequest::GoToPrevChar,
        (Action::Right, _) => InputRequest::GoToNextChar,
        (Action::ToStart, _) => InputRequest::GoToStart,
        (Action::ToEnd, _) => InputRequest::GoToEnd,
        _ => return,
    };
    input.handle(request);
}

/// Takes what was pasted as one line of text, never as answers.
pub fn paste(model: &mut Model, scene: Scene<'_>, text: &str) {
    if !matches!(model.place(scene), Place::Number | Place::List | Place::Writing) {
        model.said = Some(Said::Hint("Nothing is typed here, so nothing was pasted."));
        return;
    }
    let (input, most) = line(model);
    let room = most.saturating_sub(input.value().chars().count());
    // One more than fits tells whether all of it did; the rest of a paste of megabytes is never looked at.
    let start: String = text.chars().take(room + 1).collect();
    let joined = start
        .trim_end_matches(['\r', '\n'])
        .replace("\r\n", " ")
        .replace(['\r', '\n', '\t'], " ");
    let line = safe(&joined);
    let mut characters = line.as_str().chars();
    for character in characters.by_ref().take(room) {
        input.handle(InputRequest::InsertChar(character));
    }
    if characters.next().is_some() {
        model.said = Some(Said::Hint("Only the start of what was pasted fits."));
    } else if start.contains(['\r', '\n']) {
        model.said = Some(Said::Hint(
            "What was pasted stands in one line. Look at it, then press Enter.",
        ));
    }
}

fn line(model: &mut Model) -> (&mut Input, usize) {
    match &mut model.dialog {
        Some(Dialog::Writing(_, input)) => (input, LONGEST_WORDS),
        _ => (&mut model.input, LONGEST_ANSWER),
    }
}
