//! Each electric fault shows at the probes as the trade says: common practice, where no other source is named.

mod burning;
mod command;
mod heat;
mod supply;

use proofwalk::bench::condition::Condition;
use proofwalk::bench::faults;
use proofwalk::bench::furnace::Furnace;
use proofwalk::bench::make::Make;

use crate::sound::{reading, sign};

/// What a probe must show.
enum Shows {
    /// A reading below so much.
    Below(&'static str, f64),
    /// A reading of at least so much.
    AtLeast(&'static str, f64),
    /// A sign's value.
    Is(&'static str, &'static str),
}

/// Holds a fault, at many furnaces and severities, against what must be shown.
fn shows(name: &str, expected: &[Shows]) {
    let fault = faults::all().find(|fault| fault.name == name);
    let fault = fault.unwrap_or_else(|| panic!("no fault {name}"));
    let mut struck = 0;
    for seed in 0..60 {
        let make = Make::random(seed);
        // Behind a pilot the sequence is another, and what comes by way of a twin is cut off there: see `kinds`.
        let other = make.pilot().is_some() || make.link().is_some();
        if other || !(fault.fits)(&make) {
            continue;
        }
        struck += 1;
        let mut condition = Condition::default();
        (fault.strike)(&mut condition, &make, (seed % 5) as f64 / 4.0);
        let furnace = Furnace { make, condition };
        let run = furnace.run();
        for expected in expected {
            let holds = match *expected {
                Shows::Below(probe, bound) => {
                    reading(probe, &furnace, &run).is_some_and(|value| value < bound)
                }
                Shows::AtLeast(probe, bound) => {
                    reading(probe, &furnace, &run).is_some_and(|value| value >= bound)
                }
                Shows::Is(probe, value) => sign(probe, &furnace, &run) == Some(value),
            };
            let shown = match *expected {
                Shows::Below(probe, _) | Shows::AtLeast(probe, _) => {
                    format!("{probe} {:?}", reading(probe, &furnace, &run))
                }
                Shows::Is(probe, _) => format!("{probe} {:?}", sign(probe, &furnace, &run)),
            };
            assert!(holds, "{name}, furnace {seed}: {shown}");
        }
    }
    assert!(struck > 0, "no furnace can have {name}");
}

/// Off the scale of an ohmmeter, Ω.
const OFF_SCALE: f64 = 1e6;
