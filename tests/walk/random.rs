//! Random walks of the built-in library.

use std::cell::Cell;

use proofwalk::library::{Datum, FieldKind, Library};
use proofwalk::walk::{
    Command, Doubt, Event, State, Wanted, apply, at_worst, decide, fold, open, possible, wanted,
};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

use crate::built_in::built_in;
use crate::call::opened;

/// A number that the question's own plausible range holds, at this share of its width.
fn number(library: &Library, leaf: Datum, share: f64) -> Option<String> {
    let (range, scale) = match leaf {
        Datum::Reading(id) => (library.readings[id].plausible?, library.readings[id].scale),
        Datum::Field(id) => match &library.plate[id].kind {
            FieldKind::Number { plausible, scale } => (*plausible, *scale),
            FieldKind::Choices(_) => return None,
        },
        Datum::Sign(_) => return None,
    };
    let (low, high) = (range.low.number_in(scale), range.high.number_in(scale));
    Some(format!("{:.3}", low + (high - low) * share))
}

fn command(library: &Library, state: &State, pick: u16) -> Option<Command> {
    let share = f64::from(pick) / f64::from(u16::MAX);
    Some(match wanted(library, state) {
        Wanted::Value { .. } if pick.is_multiple_of(29) => Command::Unable("no".to_owned()),
        Wanted::Value { leaf, .. } => {
            let choices = match leaf {
                Datum::Sign(id) => library.signs[id].values.len(),
                Datum::Field(id) => match &library.plate[id].kind {
                    FieldKind::Choices(choices) => choices.len(),
                    FieldKind::Number { .. } => 0,
                },
                Datum::Reading(_) => 0,
            };
            match number(library, leaf, share) {
                Some(text) => Command::Type(text),
                None => Command::Choose(usize::from(pick) % choices),
            }
        }
        Wanted::Work(_) => Command::Done,
        _ => return None,
    })
}

/// Walks with these picks; the moments before each answer that was no second taking, and how many answers came after.
fn walk(library: &Library, tree: &str, picks: &[u16]) -> (Vec<Event>, State, Vec<usize>) {
    let mut state = State::default();
    let mut log = Vec::new();
    let mut worst = Vec::new();
    let mut events = open(library, opened(tree)).unwrap();
    for pick in picks {
        for event in events.drain(..) {
            apply(library, &mut state, &event).unwrap();
            log.push(event);
        }
        let Some(command) = command(library, &state, *pick) else {
            break;
        };
        worst.push(at_worst(library, &state.moment));
        // A plate in the wrong order is refused; the next pick tries another number.
        match decide(library, &state, &command) {
            Ok(next) => events = next,
            Err(_) => {
                worst.pop();
            }
        }
    }
    (log, state, worst)
}

#[test]
fn a_random_walk_is_its_log_and_never_longer_than_at_worst() {
    let library = built_in();
    let complaints: Vec<String> = (library.trees.iter())
        .filter(|(_, tree)| tree.complaint.is_some())
        .map(|(id, _)| library.trees[id].name.clone())
        .collect();
    let compared = Cell::new(0);
    let mut runner = TestRunner::new(Config::with_cases(150));
    let picks = (0..complaints.len(), prop::collection::vec(any::<u16>(), 120));
    runner
        .run(&picks, |(tree, picks)| {
            let (log, state, worst) = walk(&library, &complaints[tree], &picks);
            let folded = fold(&library, &log).unwrap();
            prop_assert_eq!(format!("{folded:?}"), format!("{state:?}"));
            let again = log.iter().any(|event| {
                matches!(
                    event,
                    Event::Doubted {
                        why: Doubt::Borderline,
                        ..
                    }
                )
            });
            if !again && state.ended.is_some() {
                compared.set(compared.get() + 1);
                for (answer, worst) in worst.iter().enumerate() {
                    prop_assert!(
                        *worst >= state.trail.len().saturating_sub(answer),
                        "{} left after answer {}, at worst {}",
                        state.trail.len() - answer,
                        answer,
                        worst
                    );
                }
            }
            if let Some(fault) = state.moment.stated.last() {
                for answered in &state.trail {
                    prop_assert!(
                        possible(&library, &answered.before).contains(fault),
                        "what came out was possible all along"
                    );
                }
            }
            Ok(())
        })
        .unwrap();
    assert!(
        compared.get() > 20,
        "only {} walks came to an end",
        compared.get()
    );
}
