//! The table of keys.
//!
//! Letters answer nothing, because a reading is typed with them. The control keys are those that a terminal, `tmux` and an
//! SSH client hand on.

use super::{Action, Binding, Keys, Place, Press};
use Place::{
    Act, Choice, Closed, Danger, Finished, Help, Home, Known, Leaving, List, Number, PutBack, Standing, Sure,
    Trail, Unproven, Writing,
};

const QUESTION: &[Place] = &[Number, Choice, List, Act, Unproven, PutBack, Finished];
const NUMBERED: &[Place] = &[Home, Choice, Unproven, Trail, Danger];
const LISTS: &[Place] = &[Home, Choice, List, Unproven, Trail, Danger];
const SCROLLS: &[Place] = &[
    Home, Number, Choice, List, Act, Unproven, PutBack, Finished, Closed, Standing, Trail, Danger, Known,
    Help,
];
const TYPING: &[Place] = &[Number, List, Writing];
const DIALOGS: &[Place] = &[Standing, Trail, Danger, Known, Writing, Sure, Leaving, Help];

const fn line(
    keys: Keys,
    places: &'static [Place],
    action: Action,
    word: &'static str,
    help: &'static str,
) -> Binding {
    Binding {
        keys,
        places,
        action,
        word,
        help,
    }
}

const fn one(press: &'static [Press]) -> Keys {
    Keys::These(press)
}

/// Every key, the most important first: the key bar leaves out from the end.
#[rustfmt::skip]
pub static TABLE: &[Binding] = &[
    line(one(&[Press::Ctrl('d')]), &[Home, Number, Choice, List, Act, Unproven, PutBack, Finished, Standing, Known, Trail, Writing, Sure, Leaving, Help], Action::Danger, "danger", "There is a danger: go to what to do about it"),
    line(one(&[Press::Enter]), &[Number, Choice, List], Action::Answer, "answer", "Answer the question"),
    line(one(&[Press::Enter]), &[Act], Action::Answer, "done", "It is done"),
    line(one(&[Press::Enter]), &[Unproven], Action::Answer, "take it", "Take what is chosen"),
    line(one(&[Press::Enter]), &[PutBack], Action::Answer, "it is back", "It has been put back"),
    line(one(&[Press::Enter]), &[Finished], Action::Answer, "close the call", "Close the call"),
    line(one(&[Press::Enter]), &[Closed], Action::Answer, "leave", "Leave the closed call"),
    line(one(&[Press::Enter]), &[Home], Action::Answer, "start", "Start with what is chosen"),
    line(one(&[Press::Enter]), &[Danger], Action::Answer, "go there", "Go to what to do about the chosen danger"),
    line(one(&[Press::Enter]), &[Trail], Action::Answer, "back to it", "Go back to it: it and all answers after it are taken back"),
    line(one(&[Press::Char('r')]), &[Trail], Action::Retake, "take again", "Take the chosen reading again; the answers stay"),
    line(one(&[Press::Enter]), &[Writing], Action::Answer, "go on", "Go on with what is written"),
    line(one(&[Press::Char('y')]), &[Sure], Action::Yes, "yes", "Yes, do it"),
    line(one(&[Press::Enter]), &[Leaving], Action::Answer, "leave", "Leave; everything is saved"),
    line(one(&[Press::Enter]), &[Known], Action::Close, "go on", "On to the question"),
    line(one(&[Press::Esc]), DIALOGS, Action::Close, "back", "Back to where you were"),
    line(one(&[Press::F(1), Press::Char('?')]), &[Home, Number, Choice, List, Act, Unproven, PutBack, Finished, Closed, Standing, Known, Trail, Danger, Sure, Leaving], Action::Help, "help", "This list of keys"),
    line(one(&[Press::F(1)]), &[Writing], Action::Help, "help", "This list of keys"),
    line(one(&[Press::Ctrl('l')]), &[PutBack], Action::LeaveOpen, "leave open", "It cannot be put back: say why, in writing"),
    line(one(&[Press::Ctrl('e')]), &[Unproven], Action::Stop, "end unproven", "End without a verdict: say why, in writing"),
    line(one(&[Press::Ctrl('o')]), &[Unproven], Action::Insist, "own verdict", "End on your own verdict: say why, in writing"),
    line(one(&[Press::Ctrl('t')]), QUESTION, Action::Trail, "answers", "The answers so far: go back, or take one again"),
    line(one(&[Press::Tab]), QUESTION, Action::Standing, "overview", "What is possible, what no longer, to put back, found"),
    line(one(&[Press::Tab]), &[Standing], Action::Close, "", "Back to the question"),
    line(one(&[Press::Ctrl('k')]), QUESTION, Action::Known, "", "What was known of this equipment before"),
    line(one(&[Press::Ctrl('n')]), QUESTION, Action::Note, "note", "Write a note into the record"),
    line(one(&[Press::Ctrl('q'), Press::Ctrl('c')]), &[Home, Number, Choice, List, Act, Unproven, PutBack, Finished, Standing, Known, Trail, Danger, Writing, Sure, Leaving, Help], Action::Leave, "leave", "Leave; a call stays open and can be taken up again"),
    line(one(&[Press::Ctrl('q'), Press::Ctrl('c')]), &[Closed], Action::Leave, "", "Leave the closed call, as Enter does"),
    line(one(&[Press::Ctrl('x')]), &[Number, Choice, List, Act], Action::Unable, "", "It cannot be taken or done: say why"),
    line(one(&[Press::Ctrl('y')]), &[Number, Choice, List], Action::Unsure, "", "You cannot tell which it is"),
    line(one(&[Press::Ctrl('e')]), &[Number, Choice, List, Act], Action::Stop, "", "End without a verdict: say why, in writing"),
    line(one(&[Press::Ctrl('o')]), &[Number, Choice, List, Act], Action::Insist, "", "End on your own verdict: say why, in writing"),
    line(Keys::Digits, NUMBERED, Action::Pick, "", "Choose by its number"),
    line(one(&[Press::Up]), LISTS, Action::Previous, "", "Choose the one before"),
    line(one(&[Press::Down]), LISTS, Action::Next, "", "Choose the next"),
    line(one(&[Press::Up]), &[Number, Act, PutBack, Finished, Closed, Standing, Known, Help], Action::ScrollUp, "", "Scroll up"),
    line(one(&[Press::Down]), &[Number, Act, PutBack, Finished, Closed, Standing, Known, Help], Action::ScrollDown, "", "Scroll down"),
    line(one(&[Press::PageUp]), SCROLLS, Action::ScrollUp, "", "Scroll the long text up"),
    line(one(&[Press::PageDown]), SCROLLS, Action::ScrollDown, "", "Scroll the long text down"),
    line(Keys::Reading, &[Number], Action::Type, "", "Type the reading; a bare number is in the unit asked for"),
    line(Keys::Reading, &[List], Action::Type, "", "Type a number, or words to look for"),
    line(one(&[Press::Esc]), &[List], Action::DeleteLine, "", "Forget what was typed: the whole list again"),
    line(Keys::Text, &[Writing], Action::Type, "", "Write"),
    line(one(&[Press::Backspace, Press::Ctrl('h')]), TYPING, Action::DeleteBefore, "", "Delete the character before"),
    line(one(&[Press::Delete]), TYPING, Action::DeleteAfter, "", "Delete the character after"),
    line(one(&[Press::Ctrl('w')]), TYPING, Action::DeleteWord, "", "Delete the word before"),
    line(one(&[Press::Ctrl('u')]), TYPING, Action::DeleteLine, "", "Delete the line"),
    line(one(&[Press::Left]), TYPING, Action::Left, "", "One character left"),
    line(one(&[Press::Right]), TYPING, Action::Right, "", "One character right"),
    line(one(&[Press::Home]), TYPING, Action::ToStart, "", "To the start of the line"),
    line(one(&[Press::End]), TYPING, Action::ToEnd, "", "To the end of the line"),
    line(one(&[Press::Ctrl('r')]), &[Home, Number, Choice, List, Act, Unproven, PutBack, Finished, Closed, Standing, Known, Trail, Danger, Writing, Sure, Leaving, Help], Action::Redraw, "", "Draw the screen afresh"),
    line(one(&[Press::Ctrl('z')]), &[Home, Number, Choice, List, Act, Unproven, PutBack, Finished, Closed, Standing, Known, Trail, Danger, Writing, Sure, Leaving, Help], Action::Suspend, "", "Hand the terminal to the shell; `fg` comes back"),
];
