//! What the screen remembers beside the call itself.

use tui_input::Input;

use super::keys::{Place, Press};
use crate::face::Left;
use crate::face::{Home, HomeChoice};
use crate::layout::NUMBERED;
use crate::library::{Id, Restore};
use crate::source::Safe;
use crate::walk::{Ask, Command, Known, NotDone, Question, ShownOption, Standing};

/// Characters that an answer may have; no reading is longer.
pub const LONGEST_ANSWER: usize = 64;
/// Characters that anything else written may have.
pub const LONGEST_WORDS: usize = 400;

/// What is on the screen, apart from what is being typed.
#[derive(Clone, Copy, Debug)]
pub enum Scene<'a> {
    /// The first screen.
    Home(&'a Home),
    /// A call.
    Call {
        /// The question that stands.
        ask: &'a Ask,
        /// What stands beside it.
        standing: &'a Standing,
        /// What was known of the equipment before.
        known: &'a [Known],
    },
}

impl<'a> Scene<'a> {
    /// The dangers on offer.
    pub fn dangers(self) -> &'a [Safe] {
        match self {
            Self::Home(home) => &home.dangers,
            Self::Call { standing, .. } => &standing.dangers,
        }
    }

    /// Where a key is pressed while no dialog is open.
    pub fn place(self) -> Place {
        let Self::Call { ask, .. } = self else {
            return Place::Home;
        };
        match ask.question {
            Question::Number { .. } => Place::Number,
            Question::Choice { .. } if is_long(ask) => Place::List,
            Question::Choice { .. } => Place::Choice,
            Question::Act { .. } => Place::Act,
            Question::Unproven { .. } => Place::Unproven,
            Question::PutBack { .. } => Place::PutBack,
            Question::Finished => Place::Finished,
            Question::Closed => Place::Closed,
        }
    }

    /// How many can be chosen from while no dialog is open, where so much is typed.
    pub fn choices(self, typed: &str) -> usize {
        match self {
            Self::Home(home) => home.complaints.len() + home.unfinished.len(),
            Self::Call { ask, .. } => match &ask.question {
                Question::Choice { .. } => listed(ask, typed).len(),
                Question::Unproven { lacks, .. } => lacks.iter().map(|lack| lack.take.len()).sum(),
                _ => 0,
            },
        }
    }
}

/// Whether a list is searched, and its numbers are typed: it has more options than there are digits, or more than it shows.
pub fn is_long(ask: &Ask) -> bool {
    match &ask.question {
        Question::Choice { options, .. } => options.len() > NUMBERED || !ask.by_words.is_empty(),
        _ => false,
    }
}

/// The options that a list shows: those that are called by the words that are typed, of all that can be chosen, what calls them
/// best first; without words, those of the list itself.
pub fn listed<'a>(ask: &'a Ask, typed: &str) -> Vec<&'a ShownOption> {
    let Question::Choice { options, .. } = &ask.question else {
        return Vec::new();
    };
    match words_of(typed) {
        None => options.iter().collect(),
        Some(words) => {
            let all = options.iter().chain(&ask.by_words);
            let called = all.filter_map(|option| Some((option.is_called(words)?, option)));
            let mut called: Vec<_> = called.collect();
            called.sort_by_key(|(by, _)| *by);
            called.into_iter().map(|(_, option)| option).collect()
        }
    }
}

/// The words that are looked for in a list; none where nothing is typed, or the number of an option.
pub fn words_of(typed: &str) -> Option<&str> {
    let typed = typed.trim();
    let is_number = typed.chars().all(|character| character.is_ascii_digit());
    (!is_number).then_some(typed)
}

/// What is written, and what for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// A note.
    Note,
    /// Why it cannot be taken.
    Unable,
    /// Why the walk ends without a verdict.
    Stop,
    /// The technician's own verdict.
    Insist,
    /// Why something stays open.
    LeaveOpen(Id<Restore>),
}

/// What lies over the question.
#[derive(Clone, Debug)]
pub enum Dialog {
    /// All that stands beside it.
    Standing,
    /// The answers so far, with the chosen one.
    Trail(Option<usize>),
    /// The dangers, with the chosen one.
    Danger(Option<usize>),
    /// Something is written.
    Writing(Purpose, Input),
    /// Something is to be confirmed; what was there before stays.
    Sure(Command, Box<Dialog>),
    /// What was known of the equipment before this call.
    Known,
    /// The call is about to be left.
    Leaving,
    /// The keys, those of one place first.
    Help(Place, Option<Box<Dialog>>),
}

impl Dialog {
    fn place(&self) -> Place {
        match self {
            Self::Standing => Place::Standing,
            Self::Trail(_) => Place::Trail,
            Self::Danger(_) => Place::Danger,
            Self::Writing(..) => Place::Writing,
            Self::Sure(..) => Place::Sure,
            Self::Known => Place::Known,
            Self::Leaving => Place::Leaving,
            Self::Help(..) => Place::Help,
        }
    }
}

/// What is said about the last key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Said {
    /// It was not carried out.
    Not(NotDone),
    /// Something the screen itself has to say.
    Hint(&'static str),
}

/// What the screen remembers.
#[derive(Clone, Debug, Default)]
pub struct Model {
    /// What is typed as an answer.
    pub input: Input,
    /// What is chosen; nothing at first, so that a stray Enter answers nothing.
    pub chosen: Option<usize>,
    /// How far the long text is scrolled.
    pub scroll: usize,
    /// How far it can be: the view finds out.
    pub scroll_most: usize,
    /// What lies over the question.
    pub dialog: Option<Dialog>,
    /// What is said about the last key.
    pub said: Option<Said>,
    /// Whether what is being carried out leaves the question as it is.
    pub aside: bool,
}

impl Model {
    /// Where a key is pressed.
    pub fn place(&self, scene: Scene<'_>) -> Place {
        self.dialog.as_ref().map_or_else(|| scene.place(), Dialog::place)
    }
}

/// What happens to the screen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Message {
    /// A key.
    Press(Press),
    /// Text that was pasted.
    Paste(String),
    /// What was asked for is carried out, and on disk.
    CarriedOut,
    /// It is not.
    NotDone(NotDone),
    /// Keys came with the answer, before the next question was shown.
    TooEarly,
}

/// What the screen wants done.
#[derive(Clone, Debug, PartialEq)]
pub enum Effect {
    /// A command.
    CarryOut(Command),
    /// What is chosen on the first screen.
    Choose(HomeChoice),
    /// To leave the call.
    Leave(Left),
    /// The whole screen again.
    Redraw,
    /// The terminal for the shell.
    Suspend,
}
