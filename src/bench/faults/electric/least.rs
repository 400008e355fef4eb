//! How much of a fault is just too much for one furnace.

use crate::bench::condition::{Condition, Thermal};
use crate::bench::electric::speed_to_slip;
use crate::bench::furnace::Furnace;
use crate::bench::make::Make;
use crate::bench::thermal::draft_of;

/// A sound pressure switch closes within some per cent of its label: share of it that no sound one closes on.
const TOO_LITTLE: f64 = 0.95;

/// Share of the draft by which a drifted switch stands beyond it.
const BEYOND: f64 = 1.05;

/// Slip at which the inducer just no longer closes the switch, draft going with the square of its speed (fan laws).
pub fn slip_that_opens_the_switch(make: &Make) -> f64 {
    let (cold, _) = draft_of(make, &Thermal::default());
    speed_to_slip((TOO_LITTLE * make.switch_set_point / cold).sqrt())
}

/// Share of its set point by which a switch must have drifted to stay open on a sound furnace's draft.
pub fn drift_that_stays_open(make: &Make) -> f64 {
    let (cold, hot) = draft_of(make, &Thermal::default());
    BEYOND * cold.max(hot) / make.switch_set_point - 1.0
}

/// Degrees below its mark at which a limit opens in a sound furnace's steady fire, °F.
pub fn limit_that_opens_in_steady_fire(make: &Make) -> f64 {
    let sound = Furnace {
        make: make.clone(),
        condition: Condition::default(),
    };
    let run = sound.run();
    let steady = run.steady.map_or(make.limit_opens, |steady| steady.shown.limit);
    run.sound.marks.limit_opens - steady
}
