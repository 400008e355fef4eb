//! What a practice call came to, in a sentence and in a word.

/// What a practice call came to, against the truth and against what was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Came {
    /// Nothing is wrong, and enough was looked at to know it.
    Sound,
    /// The right name, proven.
    Proven,
    /// The right part, proven bad, by the name of another fault of it.
    OtherFault,
    /// The right name, and all speaks for it that can be taken before the work.
    Shown,
    /// Nothing is wrong, but too little was looked at.
    SoundUnshown,
    /// The right name, not all of its proof.
    Named,
    /// The right name, and nothing of its proof.
    Guessed,
    /// Stopped with nothing condemned.
    Stopped,
    /// Stopped where nothing is wrong, and nobody was told so.
    StoppedSound,
    /// Handed on, and nothing is left that must not run.
    HandedOnSafe,
    /// Handed on, and something is left that must not run.
    HandedOnUnsafe,
    /// Handed on though nothing is wrong.
    HandedOnSound,
    /// Handed on for something else.
    HandedOn,
    /// Left as if nothing were wrong.
    Missed,
    /// Wrong, and its proof was lacking.
    WrongUnproven,
    /// Wrong.
    Wrong,
}

impl Came {
    /// All there are.
    pub const ALL: &[Self] = &[
        Self::Sound,
        Self::Proven,
        Self::OtherFault,
        Self::Shown,
        Self::SoundUnshown,
        Self::Named,
        Self::Guessed,
        Self::Stopped,
        Self::StoppedSound,
        Self::HandedOnSafe,
        Self::HandedOnUnsafe,
        Self::HandedOnSound,
        Self::HandedOn,
        Self::Missed,
        Self::WrongUnproven,
        Self::Wrong,
    ];

    /// It in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Sound => "right: nothing is wrong, and nothing was condemned",
            Self::Proven => "right, and proven",
            Self::OtherFault => {
                "the right part, and proven bad; but something else is wrong with it than was named"
            }
            Self::Shown => {
                "right: all that can be taken before the work speaks for it; the work would prove it"
            }
            Self::SoundUnshown => {
                "right that nothing is wrong, but not shown: too little was looked at to know it"
            }
            Self::Named => "the right name, but not proven",
            Self::Guessed => "a lucky guess: the right name, but nothing that was taken proves it",
            Self::Stopped => "stopped: nothing condemned, and the fault not found",
            Self::StoppedSound => "stopped: nothing named, and nobody was told that nothing is wrong",
            Self::HandedOnSafe => "handed on: safe, but not a diagnosis",
            Self::HandedOnUnsafe => "handed on: not a diagnosis, and it must not run until it is found",
            Self::HandedOnSound => "handed on or left off, though nothing is wrong",
            Self::HandedOn => "handed on or left off, but not for what was wrong",
            Self::Missed => "missed: left as if nothing were wrong",
            Self::WrongUnproven => "wrong, and not proven",
            Self::Wrong => "wrong",
        }
    }

    /// It in a word or two, for a column.
    pub fn short(self) -> &'static str {
        match self {
            Self::Sound | Self::Proven | Self::OtherFault | Self::Shown => "proven",
            Self::SoundUnshown | Self::Named => "not proven",
            Self::Guessed => "guessed",
            Self::Stopped | Self::StoppedSound => "stopped",
            Self::HandedOnSafe | Self::HandedOnUnsafe | Self::HandedOnSound | Self::HandedOn => "handed on",
            Self::Missed => "missed",
            Self::WrongUnproven | Self::Wrong => "wrong",
        }
    }

    /// Whether it was found, and shown by what was taken.
    pub fn is_solved(self) -> bool {
        matches!(self, Self::Sound | Self::Proven | Self::OtherFault | Self::Shown)
    }
}
