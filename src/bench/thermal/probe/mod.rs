//! Where a technician's gauges, probes and eyes go on the thermal side.

mod air;
mod draft;
mod fire;
mod flue;
mod gas;
mod noise;
mod room;
mod water;

use crate::bench::furnace::{Furnace, Moment, Run};
use crate::bench::probe::{ReadingProbe, SignProbe};
use crate::bench::thermal::spread::{Own, spread};

/// The probe of a reading of the thermal side.
pub fn reading(name: &str) -> Option<ReadingProbe> {
    let rooms = [
        gas::reading,
        draft::reading,
        air::reading,
        flue::reading,
        room::reading,
        water::reading,
    ];
    rooms.iter().find_map(|room| room(name))
}

/// The probe of a sign of the thermal side.
pub fn sign(name: &str) -> Option<SignProbe> {
    let rooms = [
        gas::sign,
        draft::sign,
        fire::sign,
        air::sign,
        flue::sign,
        room::sign,
        noise::sign,
        water::sign,
    ];
    rooms.iter().find_map(|room| room(name))
}

/// The last moment at which a flame stood.
fn burning(run: &Run) -> Option<&Moment> {
    run.steady.as_ref().or(run.two_minutes.as_ref())
}

/// A moment of a flame that has burned for so many seconds; none where it was lost before.
fn burning_for(run: &Run, seconds: f64) -> Option<&Moment> {
    burning(run).filter(|_| run.burned >= seconds)
}

/// Whether something that needs taking apart, or a camera that reaches, can be seen at this furnace.
fn can_be_seen(furnace: &Furnace, what: Own, share: f64) -> bool {
    spread(furnace.make.seed, what, 0.0, 1.0) < share
}
