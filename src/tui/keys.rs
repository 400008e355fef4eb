//! The keys: one table for what they do, the key bar, and the help.

mod table;

pub use table::TABLE;

/// A key as it arrives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Press {
    /// A character.
    Char(char),
    /// A letter with the control key.
    Ctrl(char),
    /// A function key.
    F(u8),
    /// Enter.
    Enter,
    /// Escape.
    Esc,
    /// Tabulator.
    Tab,
    /// Deletes backwards.
    Backspace,
    /// Deletes forwards.
    Delete,
    /// Left arrow.
    Left,
    /// Right arrow.
    Right,
    /// Up arrow.
    Up,
    /// Down arrow.
    Down,
    /// To the start.
    Home,
    /// To the end.
    End,
    /// A page up.
    PageUp,
    /// A page down.
    PageDown,
}

impl std::fmt::Display for Press {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Char(character) => write!(f, "{character}"),
            Self::Ctrl(letter) => write!(f, "Ctrl-{}", letter.to_ascii_uppercase()),
            Self::F(number) => write!(f, "F{number}"),
            Self::PageUp => f.write_str("PgUp"),
            Self::PageDown => f.write_str("PgDn"),
            other => write!(f, "{other:?}"),
        }
    }
}

/// Where a key is pressed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The first screen.
    Home,
    /// A number is asked for.
    Number,
    /// One of several is asked for.
    Choice,
    /// One of more than there are digits for is asked for, or one that is found by words.
    List,
    /// Something is to be done.
    Act,
    /// A verdict is not proven.
    Unproven,
    /// Something must be put back.
    PutBack,
    /// The call can be closed.
    Finished,
    /// The call is closed.
    Closed,
    /// All that stands beside the question.
    Standing,
    /// The answers so far.
    Trail,
    /// The dangers.
    Danger,
    /// Something is written.
    Writing,
    /// Something is to be confirmed.
    Sure,
    /// What was known of the equipment before this call.
    Known,
    /// The call is about to be left.
    Leaving,
    /// The help.
    Help,
}

/// What a key does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Action {
    /// Answers, carries out what is chosen.
    Answer,
    /// Chooses by number.
    Pick,
    /// Chooses the one before.
    Previous,
    /// Chooses the next.
    Next,
    /// Types a character.
    Type,
    /// Deletes the character before.
    DeleteBefore,
    /// Deletes the character after.
    DeleteAfter,
    /// Deletes the word before.
    DeleteWord,
    /// Deletes the line.
    DeleteLine,
    /// One character left.
    Left,
    /// One character right.
    Right,
    /// To the start of the line.
    ToStart,
    /// To the end of the line.
    ToEnd,
    /// Scrolls up.
    ScrollUp,
    /// Scrolls down.
    ScrollDown,
    /// Says that it cannot be taken.
    Unable,
    /// Says that the technician cannot tell.
    Unsure,
    /// Leaves open what was to be put back.
    LeaveOpen,
    /// Opens the answers so far.
    Trail,
    /// Takes a value again.
    Retake,
    /// Opens all that stands beside the question.
    Standing,
    /// Shows what was known of the equipment before.
    Known,
    /// Writes a note.
    Note,
    /// Ends without a verdict.
    Stop,
    /// Ends on the technician's own verdict.
    Insist,
    /// Opens the dangers.
    Danger,
    /// Opens the help.
    Help,
    /// Goes back to what was there before.
    Close,
    /// Says yes.
    Yes,
    /// Leaves the call for later.
    Leave,
    /// Draws the screen afresh.
    Redraw,
    /// Hands the terminal back to the shell.
    Suspend,
}

/// Which keys a line of the table means.
#[derive(Clone, Copy, Debug)]
pub enum Keys {
    /// Each of these.
    These(&'static [Press]),
    /// `1` to `9`.
    Digits,
    /// Any character but `?`, which no reading contains.
    Reading,
    /// Any character.
    Text,
}

impl Keys {
    /// Whether a key is meant.
    pub fn mean(self, press: Press) -> bool {
        match (self, press) {
            (Self::These(presses), press) => presses.contains(&press),
            (Self::Digits, Press::Char(character)) => matches!(character, '1'..='9'),
            (Self::Reading, Press::Char(character)) => character != '?',
            (Self::Text, Press::Char(_)) => true,
            _ => false,
        }
    }

    /// What the key bar calls them: the first is enough.
    pub fn short(self) -> String {
        match self {
            Self::These(presses) => presses.first().map(Press::to_string).unwrap_or_default(),
            other => other.to_string(),
        }
    }
}

impl std::fmt::Display for Keys {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::These(presses) => {
                let names: Vec<String> = presses.iter().map(Press::to_string).collect();
                f.write_str(&names.join(" or "))
            }
            Self::Digits => f.write_str("1-9"),
            Self::Reading | Self::Text => f.write_str("characters"),
        }
    }
}

/// A line of the table.
#[derive(Debug)]
pub struct Binding {
    /// The keys.
    pub keys: Keys,
    /// Where they do it.
    pub places: &'static [Place],
    /// What they do.
    pub action: Action,
    /// The word on the key bar; empty where it is not shown there.
    pub word: &'static str,
    /// What the help says.
    pub help: &'static str,
}

/// What a key does in a place.
pub fn action(place: Place, press: Press) -> Option<Action> {
    bindings(place)
        .find(|binding| binding.keys.mean(press))
        .map(|binding| binding.action)
}

/// The keys of a place, the most important first.
pub fn bindings(place: Place) -> impl Iterator<Item = &'static Binding> {
    TABLE
        .iter()
        .filter(move |binding| binding.places.contains(&place))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn presses() -> impl Iterator<Item = Press> {
        use Press::{Backspace, Delete, Down, End, Enter, Esc, Home, Left, PageDown, PageUp, Right, Tab, Up};
        let named = [
            Enter, Esc, Tab, Backspace, Delete, Left, Right, Up, Down, Home, End, PageUp, PageDown,
        ];
        (' '..='~')
            .map(Press::Char)
            .chain(('a'..='z').map(Press::Ctrl))
            .chain((1..=12).map(Press::F))
            .chain(named)
    }

    #[test]
    fn no_key_means_two_things_in_one_place() {
        for place in TABLE.iter().flat_map(|binding| binding.places) {
            for press in presses() {
                let meant: Vec<_> = bindings(*place)
                    .filter(|binding| binding.keys.mean(press))
                    .collect();
                assert!(meant.len() <= 1, "{place:?} {press}: {meant:?}");
            }
        }
    }

    #[test]
    fn danger_and_help_are_one_key_away_everywhere() {
        for place in TABLE.iter().flat_map(|binding| binding.places) {
            if !matches!(place, Place::Danger | Place::Closed) {
                assert_eq!(
                    action(*place, Press::Ctrl('d')),
                    Some(Action::Danger),
                    "{place:?}"
                );
            }
            if *place != Place::Help {
                assert_eq!(action(*place, Press::F(1)), Some(Action::Help), "{place:?}");
            }
        }
    }
}
