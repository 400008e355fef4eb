//! Sequential testing: in which order to ask, so that what is wrong is known for the least cost. Knows nothing of trees.
//!
//! A [`Problem`] is the matrix of the field: cases against tests, with the answer of each case to each test as far as it is
//! known. [`optimum()`] finds the cheapest order of all, [`floor()`] what no order can come below, [`groups()`] what no
//! test tells apart, [`best_order`] the order of trials that each find one thing.

mod ambiguity;
mod floor;
mod optimum;
mod problem;
mod set;
mod trials;

pub use ambiguity::{Isolation, groups};
pub use floor::floor;
pub use optimum::{NoOptimum, Optimum, Plan, optimum};
pub use problem::{Case, Misfit, Need, Problem, Scale, Test};
pub use set::Set;
pub use trials::{Trial, best_order, expected_cost};
