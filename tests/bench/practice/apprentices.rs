//! Apprentices of whom it is known what they do, and a practice call from its beginning to its debrief.

use proofwalk::bench::faults::Fault;
use proofwalk::bench::furnace::Furnace;
use proofwalk::bench::practice::{ByPractice, Debrief, Exercise, Level, Mode, Reference, Setup, debrief};
use proofwalk::bench::simulated::{Probes, Simulated};
use proofwalk::bench::trials::play;
use proofwalk::library::Library;
use proofwalk::walk::{Again, Command, LibraryMark, Opened, Question, ShownOption, State, apply, retrace};

/// What a practice call came to.
pub struct Practised {
    pub debrief: Debrief,
    pub state: State,
    /// What was wrong.
    pub truth: Vec<&'static Fault>,
    /// Every question as it was asked.
    pub asked: Vec<String>,
}

/// Answers a question, asked again or not.
pub type Apprentice = dyn FnMut(&Question, Option<&Again>) -> Command;

/// The beginning of a practice call at a furnace.
pub fn opened(tree: &str, setup: Setup) -> Opened {
    Opened {
        library: LibraryMark::default(),
        tree: tree.to_owned(),
        technician: None,
        site: None,
        equipment: None,
        program: String::new(),
        answered_from: Some(setup.mark()),
    }
}

/// Practises until the call is closed.
pub fn practise(
    library: &Library,
    setup: Setup,
    mut answer: impl FnMut(&Question, Option<&Again>) -> Command,
) -> Practised {
    let probes = Probes::of(library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    let (subject, drawn) = setup.draw(library, build).unwrap();
    let played = play(library, subject, setup.seed, build).unwrap().unwrap();
    let truth = played.truth.iter().map(|(fault, _)| *fault).collect();
    let reference = Reference::new(library, played, setup.mode, &mut drawn.machine.clone());
    let mut exercise = Exercise::new(library, setup, drawn.machine, &[]);
    let mut state = State::default();
    let mut events = exercise.open(library, opened(drawn.tree, setup)).unwrap();
    let mut asked = Vec::new();
    let mut log = Vec::new();
    for _ in 0..3_000 {
        for event in events.drain(..) {
            apply(library, &mut state, &event).unwrap();
            log.push(event);
        }
        if state.closed {
            let rules = ByPractice::of(state.opened.as_ref().unwrap()).unwrap();
            let retraced = retrace(library, &log, &rules).map(drop);
            assert_eq!(
                retraced,
                Ok(()),
                "{setup:?}: what was practised follows from its library"
            );
            let debrief = debrief(library, &reference, exercise.score(), &state, false);
            return Practised {
                debrief,
                state,
                truth,
                asked,
            };
        }
        let ask = exercise.ask(library, &state);
        asked.push(format!("{:?} {:?}", ask.question, ask.why));
        let command = answer(&ask.question, ask.again.as_ref());
        events = exercise.decide(library, &state, &command).unwrap();
    }
    unreachable!("{setup:?} comes to no end");
}

/// Does what is asked, and puts the probe at one place after the other.
pub fn follows() -> impl FnMut(&Question, Option<&Again>) -> Command {
    let mut place = 0;
    move |question, again| {
        place = if matches!(again, Some(Again::Elsewhere { .. })) {
            place + 1
        } else {
            0
        };
        match question {
            Question::Choice { .. } => Command::Choose(place),
            Question::Act { .. } => Command::Done,
            Question::Unproven { .. } => Command::Stop("not proven".to_owned()),
            Question::PutBack { restore, .. } => Command::PutBack(*restore),
            Question::Finished => Command::Close,
            Question::Number { .. } | Question::Closed => {
                unreachable!("{question:?} is not for an apprentice")
            }
        }
    }
}

pub fn setups(mode: Mode) -> impl Iterator<Item = Setup> {
    let levels = [Level::Common, Level::Any, Level::Hard];
    (0..6).flat_map(move |seed| levels.map(|level| Setup { seed, level, mode }))
}

/// Names what is not proven.
pub const ALL_THE_SAME: &str = "Name it all the same";

/// Where in a list something begins so.
pub fn at(options: &[ShownOption], text: &str) -> Option<usize> {
    let mut texts = options.iter().map(|option| option.text.as_str());
    texts.position(|option| option.starts_with(text))
}

/// Leaves the gate out, and names what is called by some words, whatever it lacks.
pub fn names(words: &'static str) -> impl FnMut(&Question, Option<&Again>) -> Command {
    move |question, _| match question {
        Question::Choice { options, prompt, .. } => {
            if prompt.as_str().starts_with("You stand") {
                return Command::Choose(1);
            }
            let named = format!("Name it: {words}");
            match at(options, ALL_THE_SAME).or_else(|| at(options, &named)) {
                Some(at) => Command::Choose(at),
                None => Command::Type(words.to_owned()),
            }
        }
        Question::Act { .. } => Command::Done,
        Question::PutBack { restore, .. } => Command::PutBack(*restore),
        _ => Command::Close,
    }
}

pub const SOUND: Setup = Setup {
    seed: 6,
    level: Level::Any,
    mode: Mode::Free,
};

pub const TRANSFORMER_DEAD: Setup = Setup {
    seed: 9,
    level: Level::Common,
    mode: Mode::Free,
};

/// A debrief's page, as lines.
pub fn page(debrief: &Debrief) -> String {
    let sections = debrief.sections();
    let lines = sections.iter().flat_map(|section| {
        let lines = section.lines.iter().map(ToString::to_string);
        std::iter::once(section.heading.to_string()).chain(lines)
    });
    lines.collect::<Vec<_>>().join("\n")
}
