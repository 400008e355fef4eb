//! Where a technician's probes and eyes go on the electric side.

mod air;
mod control;
mod draft;
mod fire;
mod line;
mod sequence;

use crate::bench::furnace::{Furnace, Moment, Run};
use crate::bench::probe::{ReadingProbe, SignProbe};

/// The probe of a reading of the electric side.
pub fn reading(name: &str) -> Option<ReadingProbe> {
    let rooms = [
        line::reading,
        control::reading,
        draft::reading,
        fire::reading,
        air::reading,
    ];
    rooms.iter().find_map(|room| room(name))
}

/// The probe of a sign of the electric side.
pub fn sign(name: &str) -> Option<SignProbe> {
    let rooms = [
        sequence::sign,
        line::sign,
        control::sign,
        draft::sign,
        fire::sign,
        air::sign,
    ];
    rooms.iter().find_map(|room| room(name))
}

/// A moment at which the furnace draws its current: under fire, or as far as it came.
fn loaded(run: &Run) -> &Moment {
    run.fire_moment().unwrap_or(&run.end)
}

/// The moment of a question about the blower: two minutes of flame, or the last of a flame that burned shorter.
fn blower(run: &Run) -> &Moment {
    run.two_minutes.as_ref().unwrap_or(&run.end)
}

/// Whether nothing runs with the doors on, though it does with the switch held.
fn door_open(furnace: &Furnace) -> bool {
    furnace.condition.electric.line.door_bent
}
