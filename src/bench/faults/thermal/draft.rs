//! Faults of the inducer's wheel and housing, and of what carries its draft to the switch.

use super::least::that_opens_the_switch;
use super::{always, worse};
use crate::bench::condition::Thermal;
use crate::bench::faults::Fault;
use crate::bench::make::{Make, Taps};

fn loose(thermal: &mut Thermal, share: f64) {
    thermal.inducer.wheel_loose = share;
}

fn dirty(thermal: &mut Thermal, share: f64) {
    thermal.inducer.wheel_dirty = share;
}

fn gasket(thermal: &mut Thermal, share: f64) {
    thermal.inducer.gasket_leaks = share;
}

fn choke(thermal: &mut Thermal, share: f64) {
    thermal.inducer.choke_wrong = share;
}

fn across_choke(make: &Make) -> bool {
    make.switch_taps == Taps::AcrossChoke
}

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "inducer_wheel_loose",
        title: "The inducer's wheel slips on its shaft",
        part: None,
        verdicts: &["inducer_wheel_loose"],
        fits: always,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.9, loose);
            loose(&mut condition.thermal, worse(severity, least, 0.9));
        },
    },
    Fault {
        name: "inducer_wheel_dirty",
        title: "The inducer's wheel is caked",
        part: None,
        verdicts: &["inducer_wheel_dirty"],
        fits: always,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.85, dirty);
            dirty(&mut condition.thermal, worse(severity, least, 0.85));
        },
    },
    Fault {
        name: "inducer_gasket",
        title: "The inducer's gasket is torn",
        part: None,
        verdicts: &["inducer_gasket"],
        // Across the choke, what leaks in behind the exchanger strengthens the draft.
        fits: |make| !across_choke(make),
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 3.0, gasket);
            gasket(&mut condition.thermal, worse(severity, least, 3.0));
        },
    },
    Fault {
        name: "inducer_choke_wrong",
        title: "The inducer's choke is missing",
        part: None,
        verdicts: &["inducer_port"],
        fits: across_choke,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.95, choke);
            choke(&mut condition.thermal, worse(severity, least, 0.95));
        },
    },
    Fault {
        name: "inducer_port",
        title: "The port on the inducer's housing is plugged",
        part: None,
        verdicts: &["inducer_port", "draft_port_or_hose"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.inducer.port_plugged = worse(severity, 0.6, 1.0),
    },
    Fault {
        name: "draft_hose",
        title: "The pressure switch's hose is split or off",
        part: None,
        verdicts: &["draft_hose", "draft_port_or_hose"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.hoses.split = worse(severity, 0.55, 1.0),
    },
    Fault {
        name: "draft_hoses_swapped",
        title: "The pressure switch's hoses are on each other's ports",
        part: None,
        verdicts: &["draft_hoses_swapped"],
        fits: |make| matches!(make.switch_taps, Taps::CollectorToBurnerBox | Taps::AcrossChoke),
        strike: |condition, _, _| condition.thermal.hoses.swapped = true,
    },
    Fault {
        name: "water_in_hose",
        title: "Water stands in the pressure switch's hose",
        part: None,
        verdicts: &["water_in_hose"],
        fits: always,
        strike: |condition, make, severity| {
            condition.thermal.hoses.water = make.switch_set_point * worse(severity, 1.1, 2.5);
        },
    },
    Fault {
        name: "reference_plugged",
        title: "The pressure switch's port that should be open to the room is plugged",
        part: None,
        verdicts: &["switch_port_plugged"],
        fits: |make| make.switch_taps == Taps::CollectorToRoom,
        strike: |condition, _, severity| {
            condition.thermal.hoses.switch_port_plugged = worse(severity, 0.55, 1.0)
        },
    },
    Fault {
        name: "switch_port_plugged",
        title: "The pressure switch's own port is plugged",
        part: None,
        verdicts: &["switch_port_plugged"],
        fits: always,
        strike: |condition, _, severity| {
            condition.thermal.hoses.switch_port_plugged = worse(severity, 0.55, 1.0)
        },
    },
];
