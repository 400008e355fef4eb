//! How much of a fault is just too much for the draft of one furnace.

use crate::bench::condition::Thermal;
use crate::bench::make::Make;
use crate::bench::thermal::draft_of;

/// Bisections: a thousandth of the way is closer than any fault is known.
const HALVINGS: usize = 10;
/// A pressure switch opens a little below what closes it, and a label is not exact: shares of the set point.
const CLOSES: f64 = 0.92;
const OPENS: f64 = 0.80;

/// The least share, up to `most`, of what `strike` does at which the switch opens, cold or hot; `most` where it never does.
pub fn that_opens_the_switch(make: &Make, most: f64, strike: fn(&mut Thermal, f64)) -> f64 {
    let fails = |share: f64| {
        let mut thermal = Thermal::default();
        strike(&mut thermal, share);
        let (cold, hot) = draft_of(make, &thermal);
        cold < CLOSES * make.switch_set_point || hot < OPENS * make.switch_set_point
    };
    let (mut works, mut broken) = (0.0, most);
    for _ in 0..HALVINGS {
        let middle = (works + broken) / 2.0;
        if fails(middle) {
            broken = middle;
        } else {
            works = middle;
        }
    }
    broken
}
