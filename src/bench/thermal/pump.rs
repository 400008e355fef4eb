//! The condensate pump: a small tank, a float that starts it, and a second one higher up that stops the furnace.
//!
//! # Equations
//!
//! `tank = tank + (what drips - what is pumped) * time`.
//!
//! # References
//!
//! - Tanks of about half a gallon, pumps of 20 to 80 gal/h at low lift, a high-water switch in series with R: common practice.

use super::condition::{Flue, Pump as Wrong};
use super::spread::{Own, spread};
use super::water::made;
use crate::bench::make::Make;

/// What the tank holds up to the high-water switch, gallons.
const HOLDS: f64 = 0.4;
/// What a pump moves, gal/h.
const MOVES: f64 = 40.0;
/// Shares of the tank at which its float starts it and stops it.
const STARTS: f64 = 0.75;
const STOPS: f64 = 0.2;
/// What the tank holds beyond its high-water switch before it runs over, share.
const RUNS_OVER: f64 = 1.1;

/// The pump of a furnace, or none.
#[derive(Clone, Copy, Debug)]
pub struct Pump {
    fitted: bool,
    /// Share of the tank that fills in a second of full fire.
    fills: f64,
    /// The same, that the pump moves.
    empties: f64,
    wired: bool,
    level: f64,
    runs: bool,
}

impl Pump {
    /// The pump of a furnace, as its earlier calls left it: one that does not pump is full by the time somebody is called.
    pub fn new(make: &Make, flue: &Flue, wrong: &Wrong) -> Self {
        let fitted = make.condensing && make.condensate_pump;
        let fills = if fitted {
            made(make) * (1.0 - flue.trap_blocked)
        } else {
            0.0
        };
        let turns = if wrong.dead || wrong.unfed { 0.0 } else { 1.0 };
        let empties = MOVES * turns * (1.0 - wrong.line_plugged);
        let keeps_up = empties > fills;
        Self {
            fitted,
            fills: fills / 3_600.0 / HOLDS,
            empties: empties / 3_600.0 / HOLDS,
            wired: !wrong.unwired,
            level: match keeps_up {
                true => spread(make.seed, Own::PumpLevel, STOPS, STARTS),
                false => RUNS_OVER,
            },
            runs: false,
        }
    }

    /// Goes on by some seconds at a share of the rated fire; whether water lifts a high-water switch that is wired.
    pub fn step(&mut self, fire: f64, seconds: f64) -> bool {
        if !self.fitted {
            return false;
        }
        self.runs = self.level >= if self.runs { STOPS } else { STARTS };
        let pumped = if self.runs { self.empties } else { 0.0 };
        self.level = (self.level + (self.fills * fire - pumped) * seconds).clamp(0.0, RUNS_OVER);
        self.wired && self.level >= 1.0
    }

    /// Whether it runs over.
    pub fn runs_over(&self) -> bool {
        self.fitted && self.level >= RUNS_OVER
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn make() -> Make {
        let made = (0..500).map(Make::random).find(|make| make.condensate_pump);
        made.unwrap_or_else(|| unreachable!("no furnace with a pump"))
    }

    fn after_a_day(wrong: Wrong) -> (bool, bool) {
        let mut pump = Pump::new(&make(), &Flue::default(), &wrong);
        let lifts = (0..24 * 360).any(|_| pump.step(1.0, 10.0));
        (lifts, pump.runs_over())
    }

    #[test]
    fn a_pump_in_order_keeps_up_with_a_day_of_fire() {
        assert_eq!(after_a_day(Wrong::default()), (false, false));
    }

    #[test]
    fn one_that_does_not_pump_lifts_its_high_water_switch_or_runs_over_where_that_is_not_wired() {
        for wrong in [
            Wrong {
                dead: true,
                ..Wrong::default()
            },
            Wrong {
                unfed: true,
                ..Wrong::default()
            },
            Wrong {
                line_plugged: 1.0,
                ..Wrong::default()
            },
        ] {
            assert!(after_a_day(wrong).0, "{wrong:?}");
            let unwired = Wrong {
                unwired: true,
                ..wrong
            };
            assert_eq!(after_a_day(unwired), (false, true), "{wrong:?}");
        }
        let works = Wrong {
            unwired: true,
            ..Wrong::default()
        };
        assert_eq!(
            after_a_day(works),
            (false, false),
            "nobody notices while it works"
        );
    }

    #[test]
    fn a_furnace_fills_the_tank_within_hours() {
        // Common practice: up to about a gallon an hour in all but the largest furnaces, so half a gallon takes an hour and more.
        let pump = Pump::new(&make(), &Flue::default(), &Wrong::default());
        let hours = 1.0 / pump.fills / 3_600.0;
        assert!((0.3..3.0).contains(&hours), "{hours}");
    }
}
