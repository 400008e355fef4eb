//! Where a technician's probes and eyes go on the electric side.

mod air;
mod control;
mod draft;
mod fire;
mod line;
mod sequence;
mod uncalled;

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
        uncalled::reading,
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
        uncalled::sign,
    ];
    rooms.iter().find_map(|room| room(name))
}

/// The moment at which the furnace draws most: its current stands in the neutral. What a starting motor takes is gone before
/// a meter settles, and counts only where nothing ever comes further than starting.
fn loaded(run: &Run) -> &Moment {
    let moments = [
        Some(&run.draft),
        run.warm_up.as_ref(),
        run.trial.as_ref(),
        run.fire_moment(),
        Some(&run.end),
    ];
    let moments = moments.into_iter().flatten();
    let neutral = |moment: &Moment| moment.volts.line.neutral_to_ground;
    let most = |best, moment| {
        if neutral(moment) > neutral(best) {
            moment
        } else {
            best
        }
    };
    let settled = moments.clone().filter(|moment| !moment.volts.starting);
    match settled.fold(&run.rest, most) {
        settled if neutral(settled) > 0.0 => settled,
        _ => moments.fold(&run.rest, most),
    }
}

/// The moment of a question about the blower: two minutes of flame, or the last of a flame that burned shorter.
fn blower(run: &Run) -> &Moment {
    run.two_minutes.as_ref().unwrap_or(&run.end)
}

/// Whether nothing runs with the doors on, though it does with the switch held.
fn door_open(furnace: &Furnace) -> bool {
    furnace.condition.electric.line.door_bent
}
