//! What is worked out in free practice: whoever has measured all of it has it.

use proofwalk::bench::condition::Condition;
use proofwalk::bench::furnace::Furnace;
use proofwalk::bench::make::Make;
use proofwalk::bench::practice::{Exercise, Level, Mode, Setup};
use proofwalk::bench::simulated::{Probes, Simulated};
use proofwalk::library::{Datum, Library};
use proofwalk::walk::{Command, Event, LibraryMark, Opened, Question, State, apply};

use crate::told::with;

struct Practice<'l> {
    library: &'l Library,
    exercise: Exercise<Simulated<'l>>,
    state: State,
}

impl Practice<'_> {
    fn apply(&mut self, events: &[Event]) {
        for event in events {
            apply(self.library, &mut self.state, event).unwrap();
        }
    }

    fn does(&mut self, command: &Command) {
        let events = self.exercise.decide(self.library, &self.state, command).unwrap();
        self.apply(&events);
    }

    /// Chooses a reading by its name, and has it taken.
    fn takes(&mut self, reading: &str) -> Datum {
        let datum = Datum::Reading(self.library.readings.find(reading).unwrap());
        let title = self.library.title_of(datum);
        let ask = self.exercise.ask(self.library, &self.state);
        let Question::Choice { options, .. } = &ask.question else {
            panic!("{ask:?}");
        };
        let mut all = options.iter().chain(&ask.by_words);
        let option = all
            .find(|option| option.text.as_str().starts_with(title))
            .unwrap();
        self.does(&Command::Choose(option.value));
        while let Question::Act { .. } = self.exercise.ask(self.library, &self.state).question {
            self.does(&Command::Done);
        }
        datum
    }
}

#[test]
fn a_sum_whose_parts_were_all_taken_is_known_and_costs_nothing_more() {
    let library = with(None);
    let probes = Probes::of(&library);
    let furnace = Furnace {
        make: Make::random(3),
        condition: Condition::default(),
    };
    let (level, mode) = (Level::Common, Mode::Free);
    let setup = Setup { seed: 3, level, mode };
    let opened = Opened {
        library: LibraryMark::default(),
        tree: "no-heat".to_owned(),
        technician: None,
        site: None,
        equipment: None,
        program: String::new(),
        answered_from: Some(setup.mark()),
    };
    let exercise = Exercise::new(&library, setup, Simulated::new(&probes, furnace), &[]);
    let events = exercise.open(&library, opened).unwrap();
    let mut practice = Practice {
        library: &library,
        exercise,
        state: State::default(),
    };
    practice.apply(&events);
    // Straight to the furnace.
    practice.does(&Command::Choose(1));
    for part in ["return_static", "supply_static"] {
        let part = practice.takes(part);
        assert!(practice.state.value(part).is_some());
    }
    let minutes = practice.exercise.score().minutes;
    let sum = practice.takes("total_external_static");
    assert!(
        practice.state.value(sum).is_some(),
        "{:?}",
        practice.state.could_not
    );
    assert_eq!(practice.exercise.score().minutes, minutes);
}
