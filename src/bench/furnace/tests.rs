//! Furnaces run through their calls.

use super::*;
use crate::bench::faults;
use crate::bench::probe;

fn sign(name: &str, furnace: &Furnace, run: &Run) -> &'static str {
    probe::sign(name).unwrap()(furnace, run).unwrap_or("-")
}

#[test]
fn show() {
    let mut count = std::collections::BTreeMap::new();
    for seed in 0..200 {
        let furnace = Furnace {
            make: Make::random(seed),
            condition: Condition::default(),
        };
        let run = furnace.run();
        *count.entry(look(&furnace, &run)).or_insert(0) += 1;
        if run.dropout.is_some() || run.lit < 0.99 {
            println!(
                "{seed} {:?} {:?}",
                furnace.make,
                run.dropout.map(|d| (d.after, d.valve))
            );
            println!("  {:?} {:?} limit {:?}", run.phase, run.fire, run.limit_opened);
            println!("  {:?}", run.end.shown);
        }
    }
    println!("healthy {count:?}");
    for fault in faults::all() {
        for severity in [0.0, 0.5, 1.0] {
            let mut count = std::collections::BTreeMap::new();
            for seed in 0..60 {
                let make = Make::random(seed);
                if !(fault.fits)(&make) {
                    continue;
                }
                let mut condition = Condition::default();
                (fault.strike)(&mut condition, &make, severity);
                let furnace = Furnace { make, condition };
                let run = furnace.run();
                *count.entry(look(&furnace, &run)).or_insert(0) += 1;
            }
            println!("{} {severity}: {count:?}", fault.name);
        }
    }
}

fn look(furnace: &Furnace, run: &Run) -> String {
    [
        "inducer",
        "igniter_in_warm_up",
        "flame_after_ignition",
        "dropout_time",
        "blower",
        "full_run",
        "three_cycles",
        "limit_opens_when",
    ]
    .map(|name| sign(name, furnace, run))
    .join(" ")
}
