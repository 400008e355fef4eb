//! What can be asked of a furnace: each reading, sign and plate field by its registered name.

pub mod absent;
mod owner;
mod pilot;
mod plate;
mod stages;
mod twins;

pub use plate::plate;

use super::electric;
use super::furnace::{Furnace, Run};
use super::human;
use super::thermal;

/// What a reading is, in the unit it is registered in; none where the state in which it is taken does not come up, or
/// this furnace has no such part.
pub type ReadingProbe = fn(&Furnace, &Run) -> Option<f64>;

/// Which of its registered values a sign shows.
pub type SignProbe = fn(&Furnace, &Run) -> Option<&'static str>;

/// What stands in a plate field; of a figure that belongs to a stage, the one of the stage that a run was tested on.
pub type PlateProbe = fn(&Furnace, &Run) -> Option<Printed>;

/// What is printed on a plate, a label or a diagram.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Printed {
    /// A number in the field's unit.
    Number(f64),
    /// The name of one of the field's values.
    Word(&'static str),
}

/// The probe of a reading.
pub fn reading(name: &str) -> Option<ReadingProbe> {
    let half = electric::probe::reading(name).or_else(|| thermal::probe::reading(name));
    let kinds = || {
        let one = stages::reading(name).or_else(|| pilot::reading(name));
        one.or_else(|| twins::reading(name))
    };
    half.or_else(|| owner::reading(name)).or_else(kinds)
}

/// The probe of a sign.
pub fn sign(name: &str) -> Option<SignProbe> {
    let half = electric::probe::sign(name).or_else(|| thermal::probe::sign(name));
    let kinds = || {
        let one = stages::sign(name).or_else(|| pilot::sign(name));
        one.or_else(|| twins::sign(name))
    };
    let own = half.or_else(|| owner::sign(name)).or_else(kinds);
    own.or_else(|| human::sign(name))
}
