//! Faults of the heat exchanger.

use super::least::that_opens_the_switch;
use super::{always, worse};
use crate::bench::condition::Thermal;
use crate::bench::faults::Fault;
use crate::bench::make::{Make, Taps};

fn sooted(thermal: &mut Thermal, share: f64) {
    thermal.flue.primary_sooted = share;
}

fn plugged(thermal: &mut Thermal, share: f64) {
    thermal.flue.secondary_plugged = share;
}

/// Whether a plugged primary weakens what the switch sees.
fn sees_primary(make: &Make) -> bool {
    make.switch_taps == Taps::AcrossChoke
}

/// Whether a plugged secondary does.
fn sees_secondary(make: &Make) -> bool {
    matches!(make.switch_taps, Taps::AcrossChoke | Taps::BetweenCells)
}

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "exchanger_cracked",
        title: "The heat exchanger is cracked",
        part: None,
        verdicts: &["exchanger_cracked", "exchanger_suspect", "exchanger_fails_test"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.flue.cracked = worse(severity, 0.15, 0.5),
    },
    Fault {
        name: "primary_sooted",
        title: "Soot fills the exchanger's passages, and the draft is weak",
        part: None,
        verdicts: &["exchanger_plugged"],
        fits: sees_primary,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.95, sooted);
            sooted(&mut condition.thermal, worse(severity, least, 0.95));
        },
    },
    Fault {
        name: "primary_sooted_unseen",
        title: "Soot fills the exchanger's passages, and the switch sees all the more draft",
        part: None,
        verdicts: &["exchanger_plugged"],
        fits: |make| !sees_primary(make),
        strike: |condition, _, severity| condition.thermal.flue.primary_sooted = worse(severity, 0.62, 0.85),
    },
    Fault {
        name: "secondary_plugged",
        title: "Deposits fill the secondary exchanger, and the draft is weak",
        part: None,
        verdicts: &["secondary_plugged", "exchanger_plugged"],
        fits: |make| make.condensing && sees_secondary(make),
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.95, plugged);
            plugged(&mut condition.thermal, worse(severity, least, 0.95));
        },
    },
    Fault {
        name: "secondary_plugged_unseen",
        title: "Deposits fill the secondary exchanger, and the switch sees all the more draft",
        part: None,
        verdicts: &["exchanger_plugged"],
        fits: |make| make.condensing && !sees_secondary(make),
        strike: |condition, _, severity| {
            condition.thermal.flue.secondary_plugged = worse(severity, 0.62, 0.85)
        },
    },
];
