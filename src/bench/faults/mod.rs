//! The faults a furnace can have: each a change of a physical cause, by how much it is out.

mod electric;
mod thermal;

use super::condition::Condition;
use super::make::Make;

/// A fault of the simulated furnace.
#[derive(Clone, Copy, Debug)]
pub struct Fault {
    /// Its name, the registry's fault name where there is one.
    pub name: &'static str,
    /// What it is, in a line.
    pub title: &'static str,
    /// The part that is bad; none where a condition is put right.
    pub part: Option<&'static str>,
    /// The verdicts that name it, the most exact first: its own, a group with it, and what it honestly looks like where
    /// no field measurement tells them apart. None where every way to it is handed on.
    pub verdicts: &'static [&'static str],
    /// Whether a furnace of this make can have it (a spark igniter has no glow).
    pub fits: fn(&Make) -> bool,
    /// Breaks it: `severity` from 0 (just beyond what still works) to 1 (as bad as it gets).
    pub strike: fn(&mut Condition, &Make, severity: f64),
}

/// All faults, in a fixed order.
pub fn all() -> impl Iterator<Item = &'static Fault> {
    electric::all().chain(thermal::all())
}
