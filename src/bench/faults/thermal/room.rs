//! Faults of the room the furnace stands in.

use super::{always, breathes_room_air, worse};
use crate::bench::faults::Fault;

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "room_starved",
        title: "The furnace room's openings are closed",
        part: None,
        verdicts: &["combustion_air_short"],
        fits: breathes_room_air,
        strike: |condition, _, severity| condition.thermal.room.starved = worse(severity, 0.7, 1.0),
    },
    Fault {
        name: "room_negative",
        title: "Exhaust fans draw the house negative",
        part: None,
        verdicts: &["room_negative", "combustion_air_short", "flue_gas_spills"],
        fits: breathes_room_air,
        strike: |condition, _, severity| condition.thermal.room.negative = worse(severity, 0.03, 0.08),
    },
    Fault {
        name: "water_heater_spills",
        title: "A water heater left alone on a large vent spills",
        part: None,
        verdicts: &["flue_gas_spills"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.room.spills = worse(severity, 0.5, 1.0),
    },
];
