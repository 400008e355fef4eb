//! Faults of thermostat, cable and what lies in it.

use super::{any, between, decades};
use crate::bench::electric::condition::{Interlock, Thermostat};
use crate::bench::electric::{OPEN, Sound};
use crate::bench::faults::Fault;
use crate::bench::make::Make;

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "thermostat_open",
        title: "The thermostat says that it calls, and does not",
        part: Some("thermostat"),
        verdicts: &["thermostat_open"],
        fits: any,
        strike: |condition, _, _| condition.electric.call.thermostat = Thermostat::ContactOpen,
    },
    Fault {
        name: "thermostat_blank",
        title: "The thermostat has power and stays blank",
        part: Some("thermostat"),
        verdicts: &["thermostat_blank"],
        fits: any,
        strike: |condition, _, _| condition.electric.call.thermostat = Thermostat::Blank,
    },
    Fault {
        name: "thermostat_settings",
        title: "The thermostat is not set to heat",
        part: None,
        verdicts: &["thermostat_settings"],
        fits: any,
        strike: |condition, _, _| condition.electric.call.thermostat = Thermostat::NotCalling,
    },
    Fault {
        name: "batteries_flat",
        title: "The thermostat's batteries are flat",
        part: None,
        verdicts: &["batteries_flat"],
        fits: with_batteries,
        strike: |condition, _, _| condition.electric.call.thermostat = Thermostat::BatteriesFlat,
    },
    Fault {
        name: "thermostat_base_contact",
        title: "A pin of the thermostat's base does not make contact",
        part: None,
        verdicts: &["thermostat_base_contact"],
        fits: any,
        strike: |condition, _, severity| condition.electric.call.base_ohms = decades(2_000.0, 1e6, severity),
    },
    Fault {
        name: "cable_broken",
        title: "A wire of the thermostat's cable is broken",
        part: None,
        verdicts: &["cable_broken", "cable_joint"],
        fits: any,
        strike: |condition, make, severity| {
            let call = &mut condition.electric.call;
            // The longer it runs beside live ones, the more it picks up from them.
            call.ghost = between(0.5, 9.0, severity);
            let r = make.seed % 2 == 0;
            *(if r { &mut call.r_ohms } else { &mut call.w_ohms }) = OPEN;
        },
    },
    Fault {
        name: "cable_joint",
        title: "A joint in the thermostat's cable is corroded",
        part: None,
        verdicts: &["cable_joint", "cable_broken"],
        fits: any,
        strike: |condition, make, severity| {
            let call = &mut condition.electric.call;
            let r = make.seed % 2 == 0;
            *(if r { &mut call.r_ohms } else { &mut call.w_ohms }) = decades(2_000.0, 1e6, severity);
        },
    },
    Fault {
        name: "drain_backs_up",
        title: "A float switch is open on backed-up water",
        part: None,
        verdicts: &["drain_backs_up"],
        fits: any,
        strike: |condition, _, _| condition.electric.call.interlock = Some(Interlock::FloatWet),
    },
    Fault {
        name: "float_switch_bad",
        title: "A float switch is open over a dry pan",
        part: Some("float_switch"),
        verdicts: &["float_switch_bad"],
        fits: any,
        strike: |condition, _, _| condition.electric.call.interlock = Some(Interlock::FloatDry),
    },
    Fault {
        name: "interlock_alarm",
        title: "A safety interlock holds the furnace off",
        part: None,
        verdicts: &["interlock_alarm"],
        fits: any,
        strike: |condition, _, _| condition.electric.call.interlock = Some(Interlock::Alarm),
    },
    Fault {
        name: "zone_panel_open",
        title: "A zone panel does not pass the call",
        part: None,
        verdicts: &["zone_panel_open"],
        fits: any,
        strike: |condition, _, _| condition.electric.call.interlock = Some(Interlock::Panel),
    },
];

fn with_batteries(make: &Make) -> bool {
    Sound::of(make).batteries
}
