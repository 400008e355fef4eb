//! A call whose every question and answer is known beforehand: the library's own walk, run in this process, says what the
//! program has to ask next.

use std::sync::OnceLock;

use proofwalk::library::{Library, load};
use proofwalk::source::{Files, SourceFile};
use proofwalk::store::read_library;
use proofwalk::walk::{Answerer, Command, LibraryMark, Opened, Question, State, apply, ask, decide, open};

use super::scene::root;

/// What is asked, and what is answered.
#[derive(Clone, Debug)]
pub struct Turn {
    /// Words that stand on the screen while this is asked.
    pub asked: String,
    pub answer: Answer,
}

/// An answer, free of any face.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// A number as it is typed.
    Number(String),
    /// An option, from 1.
    Option(usize),
    /// It is done.
    Done,
    /// It is back.
    Back,
    /// The call is to be closed.
    Close,
}

/// The gate's answers, which no scenario has.
const GATE_READINGS: &str = "\n  room_co: 0 ppm\n";
const GATE_SIGNS: &str = "\n  gas_odour: none\n  people: well\n  site_condition: sound\n";

/// The board lets the valve go: from the gate to the closed call.
pub fn turns() -> &'static [Turn] {
    static TURNS: OnceLock<Vec<Turn>> = OnceLock::new();
    TURNS.get_or_init(|| walk(&with_gate("board-lets-the-valve-go.yaml")))
}

/// The text in one line with single blanks, however it was broken into lines.
pub fn squeezed(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The first turn at which a reading is typed, after so many others.
pub fn first_number_after(turns: &[Turn], position: usize) -> usize {
    let later = turns
        .iter()
        .skip(position)
        .position(|turn| matches!(turn.answer, Answer::Number(_)));
    position + later.expect("a reading is asked for")
}

fn with_gate(scenario: &str) -> Library {
    let name = format!("scenarios/{scenario}");
    let files = read_library(&root().join("trees")).expect("the built-in library can be read");
    let chosen = files
        .iter()
        .find(|file| file.name() == name)
        .expect("the scenario is there");
    let text = chosen
        .text()
        .replacen("readings:\n", &format!("readings:{GATE_READINGS}"), 1);
    let text = text.replacen("signs:\n", &format!("signs:{GATE_SIGNS}"), 1);
    let trees = files
        .iter()
        .filter(|file| !file.name().starts_with("scenarios/"))
        .cloned();
    let (library, problems) = load(Files::new(trees.chain([SourceFile::new(&name, text)]).collect()));
    assert!(problems.is_empty(), "{problems:?}");
    library
}

fn walk(library: &Library) -> Vec<Turn> {
    let scenario = &library.scenarios[0];
    let opened = Opened {
        library: LibraryMark::default(),
        tree: library.trees[scenario.tree].name.clone(),
        technician: None,
        site: None,
        equipment: None,
        program: String::new(),
        answered_from: None,
    };
    let mut state = State::default();
    for event in open(library, opened).expect("the call opens") {
        apply(library, &mut state, &event).expect("its events fit");
    }
    let mut answerer = Answerer::new(scenario);
    let mut turns = Vec::new();
    while !state.closed {
        let command = answerer
            .answer(library, &state)
            .expect("the scenario has an answer");
        turns.push(Turn {
            asked: asked(&ask(library, &state).question),
            answer: answer(library, &state, &command),
        });
        for event in decide(library, &state, &command).expect("the answer is taken") {
            apply(library, &mut state, &event).expect("its events fit");
        }
    }
    turns
}

fn asked(question: &Question) -> String {
    let words = match question {
        Question::Number { title, .. } => title.to_string(),
        Question::Choice { prompt, .. } => prompt.to_string(),
        Question::Act { text } => text[0].to_string(),
        Question::PutBack { text, .. } => text.to_string(),
        Question::Finished => "Everything is answered.".to_owned(),
        other => panic!("nobody answers {other:?}"),
    };
    squeezed(&words)
}

fn answer(library: &Library, state: &State, command: &Command) -> Answer {
    match command {
        Command::Type(text) => Answer::Number(text.clone()),
        Command::Choose(value) => match ask(library, state).question {
            Question::Choice { options, .. } => {
                let position = options.iter().position(|option| option.value == *value);
                Answer::Option(position.expect("the option is offered") + 1)
            }
            other => panic!("an option is chosen at {other:?}"),
        },
        Command::Done => Answer::Done,
        Command::PutBack(_) => Answer::Back,
        Command::Close => Answer::Close,
        other => panic!("no face is shown {other:?} here"),
    }
}
