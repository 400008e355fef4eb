//! The words the line face knows, beside the answers: one table for what they do and for the help.

/// What a word asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wish {
    /// The words.
    Help,
    /// The question again.
    Again,
    /// What stands beside it.
    Overview,
    /// What was known of the equipment before.
    Known,
    /// The answers so far.
    Answers,
    /// There is a danger.
    Danger,
    /// Back to an answer.
    Back,
    /// To take a value again.
    Retake,
    /// To write a note.
    Note,
    /// It cannot be taken.
    Unable,
    /// The technician cannot tell.
    Unsure,
    /// It is done, or put back.
    Done,
    /// To take what a proof lacks.
    Take,
    /// It stays open.
    LeaveOpen,
    /// To end without a verdict.
    Stop,
    /// To end on one's own verdict.
    Insist,
    /// To close the call.
    Close,
    /// To leave the call for later.
    Leave,
}

/// A line of the table.
pub struct Word {
    /// The word.
    pub word: &'static str,
    /// What follows it, for the help.
    pub rest: &'static str,
    /// What it asks for.
    pub wish: Wish,
    /// What the help says.
    pub help: &'static str,
}

const fn word(word: &'static str, rest: &'static str, wish: Wish, help: &'static str) -> Word {
    Word {
        word,
        rest,
        wish,
        help,
    }
}

/// Every word.
pub static WORDS: &[Word] = &[
    word(
        "danger",
        "[number]",
        Wish::Danger,
        "there is a danger: what to do about it",
    ),
    word("help", "", Wish::Help, "these words"),
    word(
        "question",
        "",
        Wish::Again,
        "the question again; an empty line does the same",
    ),
    word(
        "overview",
        "",
        Wish::Overview,
        "what is possible, no longer reached, to be put back, found",
    ),
    word(
        "known",
        "",
        Wish::Known,
        "what was known of this equipment before",
    ),
    word(
        "answers",
        "",
        Wish::Answers,
        "the answers so far, with their numbers",
    ),
    word(
        "back",
        "number",
        Wish::Back,
        "take back the answer of that number, and all after it",
    ),
    word(
        "retake",
        "number",
        Wish::Retake,
        "take the reading of that number again",
    ),
    word("note", "words", Wish::Note, "write a note into the record"),
    word("unable", "why", Wish::Unable, "it cannot be taken or done"),
    word("unsure", "", Wish::Unsure, "you cannot tell which answer it is"),
    word(
        "done",
        "",
        Wish::Done,
        "what was to be done is done, or is put back",
    ),
    word("take", "number", Wish::Take, "take what a proof lacks"),
    word(
        "open",
        "why",
        Wish::LeaveOpen,
        "it cannot be put back and stays open",
    ),
    word("stop", "why", Wish::Stop, "end the walk without a verdict"),
    word("insist", "why", Wish::Insist, "end the walk on your own verdict"),
    word("close", "", Wish::Close, "close the call"),
    word(
        "leave",
        "",
        Wish::Leave,
        "leave the call for later; it is all saved",
    ),
];

/// The wish that a line starts with, and the rest of the line.
pub fn wish(line: &str) -> Option<(Wish, &str)> {
    let (first, rest) = line.split_once(char::is_whitespace).unwrap_or((line, ""));
    let word = WORDS.iter().find(|word| word.word.eq_ignore_ascii_case(first))?;
    // `Done in the attic` is no command: words that take nothing stand alone.
    let fits = !word.rest.is_empty() || rest.trim().is_empty();
    fits.then_some((word.wish, rest.trim()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_told_from_an_answer() {
        assert_eq!(
            wish("note the tap was loose"),
            Some((Wish::Note, "the tap was loose"))
        );
        assert_eq!(wish("BACK  3"), Some((Wish::Back, "3")));
        assert_eq!(wish("3.5 V"), None);
        assert_eq!(wish("notes"), None);
        assert_eq!(wish("done yesterday"), None);
    }

    #[test]
    fn no_word_means_two_things() {
        for (number, word) in WORDS.iter().enumerate() {
            assert!(
                WORDS[..number].iter().all(|other| other.word != word.word),
                "{}",
                word.word
            );
        }
    }
}
