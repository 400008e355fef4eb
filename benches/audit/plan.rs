//! Which furnaces are called to, and when: a company's five years.

use jiff::{SignedDuration, Timestamp};
use proofwalk::bench::dice::Dice;

/// Calls at one furnace, on the average.
const EACH: usize = 5;

/// Days of the archive.
const DAYS: f64 = 5.0 * 365.0;

/// The first of them, in seconds since 1970: the first of January 2021, midnight UTC.
const BEGINS: i64 = 1_609_459_200;

/// Calls that one technician walks in five years.
const OF_A_TECHNICIAN: usize = 2_500;

/// A call that is to be made.
pub struct Visit {
    pub opened: Timestamp,
    pub equipment: u32,
    pub complaint: u8,
    pub crew: usize,
    pub seed: u64,
}

/// So many calls, in the order they are opened; the same ones each time.
pub fn visits(calls: usize) -> Vec<Visit> {
    let furnaces = calls.div_ceil(EACH);
    let crew = calls.div_ceil(OF_A_TECHNICIAN).max(2);
    let mut visits = Vec::with_capacity(calls);
    let mut dice = Dice::new(calls as u64);
    while visits.len() < calls {
        let equipment = dice.below(furnaces) as u32;
        let complaint = dice.below(6) as u8;
        let mut day = dice.between(0.0, DAYS);
        loop {
            let seconds = SignedDuration::from_secs((day * 86_400.0) as i64);
            let begins = Timestamp::from_second(BEGINS).expect("it is a time");
            visits.push(Visit {
                opened: begins.saturating_add(seconds).expect("it is a time"),
                equipment,
                complaint,
                crew,
                seed: dice.whole(),
            });
            if !dice.chance(0.08) {
                break;
            }
            day += dice.between(1.0, 30.0);
        }
    }
    visits.truncate(calls);
    visits.sort_by_key(|visit| (visit.opened, visit.equipment));
    visits
}
