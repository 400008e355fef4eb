//! What is the same for everybody with a seed, and for whoever takes a call up again.

use proofwalk::bench::furnace::Furnace;
use proofwalk::bench::practice::{Exercise, Level, Mode, Setup};
use proofwalk::bench::simulated::{Probes, Simulated};
use proofwalk::walk::{Command, Question};

use super::apprentices::{Apprentice, follows, names, opened, practise};
use crate::told::with;

#[test]
fn the_same_seed_is_the_same_furnace_and_another_is_another() {
    let library = with(None);
    let truth = |setup: Setup| practise(&library, setup, follows()).debrief.truth;
    let of = |seed| Setup {
        seed,
        level: Level::Any,
        mode: Mode::Guided,
    };
    assert_eq!(truth(of(1)), truth(of(1)));
    assert!((2..8).any(|seed| truth(of(seed)) != truth(of(1))));
    let free = Setup {
        mode: Mode::Free,
        ..of(1)
    };
    let stop = practise(&library, free, |question, _| match question {
        Question::Choice { options, .. } if options.len() == 2 => Command::Choose(1),
        Question::Choice { .. } => Command::Stop("only a look".to_owned()),
        _ => Command::Close,
    });
    assert_eq!(stop.debrief.truth, truth(of(1)), "the mode changes the furnace");
}

#[test]
fn a_call_that_is_taken_up_anywhere_goes_on_as_it_would_have() {
    let library = with(None);
    let probes = Probes::of(&library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    for mode in [Mode::Guided, Mode::Free] {
        let setup = Setup {
            seed: 4,
            level: Level::Common,
            mode,
        };
        let (_, drawn) = setup.draw(&library, build).unwrap();
        let fresh = || Exercise::new(&library, setup, drawn.machine.clone(), &[]);
        let mut answer: Box<Apprentice> = match mode {
            Mode::Guided => Box::new(follows()),
            Mode::Free => Box::new(names("Filter loaded")),
        };
        let mut kept = fresh();
        let mut log = kept.open(&library, opened(drawn.tree, setup)).unwrap();
        loop {
            let mut taken_up = fresh();
            let state = taken_up.take_up(&library, &log).unwrap();
            assert!(
                taken_up.go_on(&library, &state).unwrap().is_empty(),
                "nothing was cut off"
            );
            assert_eq!(taken_up.score(), kept.score());
            if state.closed {
                break;
            }
            let ask = kept.ask(&library, &state);
            let command = answer(&ask.question, ask.again.as_ref());
            let events = kept.decide(&library, &state, &command).unwrap();
            // Which list an apprentice looks at is not kept; what a meter shows is the same.
            if mode == Mode::Guided {
                assert_eq!(taken_up.decide(&library, &state, &command).unwrap(), events);
            }
            log.extend(events);
        }
        assert!(kept.score().minutes > 0.0 || mode == Mode::Free);
    }
}
