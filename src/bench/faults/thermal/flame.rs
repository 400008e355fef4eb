//! Faults of burners and flame.

use super::{always, breathes_room_air, worse};
use crate::bench::faults::Fault;

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "burners_dirty",
        title: "Lint and rust keep the primary air away",
        part: None,
        verdicts: &["burners_dirty", "flue_gas_unsafe"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.burners.dirty = worse(severity, 0.35, 0.8),
    },
    Fault {
        name: "orifice_plugged",
        title: "An orifice is plugged by an insect or by rust",
        part: None,
        verdicts: &["burners_dirty"],
        fits: always,
        strike: |condition, make, severity| {
            condition.thermal.burners.orifice_plugged = worse(severity, 0.75, 1.0);
            condition.thermal.burners.plugged_burner = (make.seed % 4) as u8;
        },
    },
    Fault {
        name: "carryover_bad",
        title: "Burners or carryovers stand out of line",
        part: None,
        verdicts: &["carryover_bad"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.burners.out_of_line = worse(severity, 0.45, 1.0),
    },
    Fault {
        name: "igniter_misplaced",
        title: "The igniter or electrode stands where no gas comes",
        part: None,
        verdicts: &["igniter_misplaced"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.burners.igniter_away = worse(severity, 0.55, 1.0),
    },
    Fault {
        name: "contaminated_air",
        title: "Lint and vapours of the room settle on burners and flame sensor",
        part: None,
        verdicts: &["burners_dirty", "flame_sensor_dirty", "flue_gas_unsafe"],
        fits: breathes_room_air,
        strike: |condition, _, severity| {
            condition.thermal.burners.dirty = worse(severity, 0.3, 0.6);
            condition.electric.sensing.coated = worse(severity, 0.3, 0.9);
        },
    },
    Fault {
        name: "flame_lifts",
        title: "Too much primary air lifts the flame off the burners",
        part: None,
        verdicts: &["flame_lifts"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.burners.airy = worse(severity, 0.6, 1.5),
    },
];
