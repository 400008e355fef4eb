//! What is made to measure is sound, so that checking it means looking at all of it.

use proofwalk::{check, library, walk};

use crate::made::{self, Shape};

#[test]
fn every_shape_is_sound() {
    for shape in Shape::ALL {
        let (library, problems) = library::load(made::library(shape, 1000));
        let found = made::faults(shape, check::run(&library, &problems));
        assert_eq!(found.first(), None, "{shape:?} of {} findings", found.len());
        assert!(library.steps.len() >= 1000, "{shape:?}");
    }
}

#[test]
fn the_worked_calls_of_a_mixed_library_end_as_they_say() {
    let (library, _) = library::load(made::library(Shape::Mixed, 2000));
    assert!(!library.scenarios.is_empty());
    for scenario in &library.scenarios {
        let run = walk::rehearse(&library, scenario);
        assert!(
            run.departures.is_empty(),
            "{}: {:?}",
            scenario.title,
            run.departures
        );
    }
}
