//! Nothing follows a library step by step on the stack.

use proofwalk::{check, library};

use crate::made::{self, Shape};

/// The stack that threads have by default.
const STACK: usize = 2 << 20;

/// Half of it: a recursion of a hundred bytes a step would not come through.
const HALF: usize = STACK / 2;

/// Checks and drops a library on a stack; the steps it has.
fn checked(shape: Shape, size: usize, stack: usize) -> usize {
    let work = move || {
        let (library, problems) = library::load(made::library(shape, size));
        assert_eq!(check::run(&library, &problems), []);
        library.steps.len()
    };
    let thread = std::thread::Builder::new().stack_size(stack).spawn(work).unwrap();
    thread.join().unwrap()
}

#[test]
fn a_chain_of_steps_does_not_use_up_the_stack() {
    assert_eq!(checked(Shape::Chain, 12_000, HALF), 12_000);
}

#[test]
fn loops_in_loops_do_not_use_up_the_stack() {
    assert_eq!(checked(Shape::Loops, 12_000, HALF), 12_000);
}

#[test]
fn visits_in_visits_do_not_use_up_the_stack() {
    assert_eq!(checked(Shape::Visits, 4_000, HALF), 7_999);
}

#[test]
fn limits_nested_as_deep_as_may_be_do_not_use_up_the_stack() {
    assert_eq!(checked(Shape::Limits, 200, STACK), 200);
}
