//! What is known of values along every way through a library.
//!
//! A proof must hold on every way to its verdict: across visits, through loops, and with readings that no longer count. So
//! the graph is searched together with what is known of the few values a line of the proof is about: whether each stands,
//! and where the bands it was sorted into say that it lies. Other answers are free, and what comes after a limit may always
//! be taken: that finds every way there is, and perhaps some that are none. What a technician takes a second time, by
//! choice or since a result was doubted, is left to the walk's own guard. So a way that is found is then walked, with its
//! limits counted and answers found for all it asks, before it is shown as a walk.

mod answers;
mod bands;
mod dependence;
mod epochs;
mod glance;
mod hindsight;
mod holding;
mod interner;
mod joint;
mod map;
mod moves;
mod numbers;
mod question;
mod range;
mod script;
mod search;
mod tracked;
mod unproven;
mod walkable;

pub(super) use answers::Given;
pub(super) use bands::{holds_nothing, unreachable_bands};
pub(super) use dependence::Dependence;
pub(super) use unproven::{Unproven, unproven};
