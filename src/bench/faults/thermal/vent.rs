//! Faults of vent, intake and condensate.

use super::least::that_opens_the_switch;
use super::{always, condensing, sees_intake, worse};
use crate::bench::condition::Thermal;
use crate::bench::faults::Fault;

fn terminal(thermal: &mut Thermal, share: f64) {
    thermal.flue.terminal_blocked = share;
}

fn halfway(thermal: &mut Thermal, share: f64) {
    thermal.flue.vent_obstructed = share;
}

fn overlong(thermal: &mut Thermal, share: f64) {
    thermal.flue.vent_overlong = share;
}

fn sags(thermal: &mut Thermal, share: f64) {
    thermal.flue.vent_sags = share;
}

fn intake(thermal: &mut Thermal, share: f64) {
    thermal.flue.intake_blocked = share;
}

fn dry(thermal: &mut Thermal, share: f64) {
    thermal.flue.trap_dry = share;
}

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "vent_blocked",
        title: "Nest, leaves or ice at the end of the vent",
        part: None,
        verdicts: &["vent_blocked", "vent_stays_blocked"],
        fits: always,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.95, terminal);
            terminal(&mut condition.thermal, worse(severity, least, 0.95));
        },
    },
    Fault {
        name: "vent_obstructed",
        title: "Something in the vent, out of sight of its ends",
        part: None,
        verdicts: &["vent_blocked"],
        fits: always,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.95, halfway);
            halfway(&mut condition.thermal, worse(severity, least, 0.95));
        },
    },
    Fault {
        name: "vent_overlong",
        title: "The vent is longer or narrower than the maker's table",
        part: None,
        verdicts: &["vent_overlong"],
        fits: always,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 20.0, overlong);
            overlong(&mut condition.thermal, least * worse(severity, 1.0, 2.0));
        },
    },
    Fault {
        name: "vent_sags",
        title: "A sag in the vent holds water",
        part: None,
        verdicts: &["vent_sags"],
        fits: always,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.95, sags);
            sags(&mut condition.thermal, worse(severity, least, 0.95));
        },
    },
    Fault {
        name: "vent_parted",
        title: "A joint of the vent has parted",
        part: None,
        verdicts: &["vent_parted"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.flue.vent_parted = worse(severity, 0.1, 0.9),
    },
    Fault {
        name: "intake_blocked",
        title: "The screen of the intake is blocked",
        part: None,
        verdicts: &["vent_blocked", "vent_stays_blocked"],
        fits: sees_intake,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 0.95, intake);
            intake(&mut condition.thermal, worse(severity, least, 0.95));
        },
    },
    Fault {
        name: "intake_blocked_unseen",
        title: "The screen of the intake is blocked, and the switch sees all the more draft",
        part: None,
        verdicts: &["vent_blocked", "vent_stays_blocked"],
        fits: |make| make.condensing && !sees_intake(make),
        strike: |condition, _, severity| condition.thermal.flue.intake_blocked = worse(severity, 0.68, 0.9),
    },
    Fault {
        name: "flue_gas_recirculates",
        title: "The intake draws the furnace's own flue gas",
        part: None,
        verdicts: &["flue_gas_recirculates"],
        fits: condensing,
        strike: |condition, _, severity| condition.thermal.flue.drawn_back = worse(severity, 0.14, 0.45),
    },
    Fault {
        name: "wind",
        title: "Wind is driven into the vent",
        part: None,
        verdicts: &["flue_gas_recirculates"],
        fits: always,
        strike: |condition, make, severity| {
            condition.thermal.flue.wind = make.switch_set_point * worse(severity, 1.8, 3.5);
        },
    },
    Fault {
        name: "drain_trap_blocked",
        title: "The condensate trap is blocked and the collector floods",
        part: None,
        verdicts: &["drain_trap_blocked"],
        fits: condensing,
        strike: |condition, _, severity| condition.thermal.flue.trap_blocked = worse(severity, 0.9, 1.0),
    },
    Fault {
        name: "drain_trap_dry",
        title: "The condensate trap is dry or left off",
        part: None,
        verdicts: &["drain_trap_dry"],
        // Across the choke, what the trap lets in strengthens the draft.
        fits: |make| condensing(make) && make.switch_taps != crate::bench::make::Taps::AcrossChoke,
        strike: |condition, make, severity| {
            let least = that_opens_the_switch(make, 5.0, dry);
            dry(&mut condition.thermal, worse(severity, least, 5.0));
        },
    },
];
