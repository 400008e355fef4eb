//! What the first furnaces of every season meet, and what a technician's habits lead to.

use super::worker::Leaving;
use crate::bench::faults::{self, Fault};
use crate::bench::make::Make;

/// The first call at a furnace, as it is planned.
#[derive(Debug)]
pub struct Planted {
    fault: Option<&'static str>,
    /// When the owner calls, in days of the season.
    pub day: f64,
    /// Who is sent, by number from 0.
    pub technician: usize,
    /// What the technician expects.
    pub expects: Option<Guess>,
    /// How things are left.
    pub leaving: Leaving,
}

impl Planted {
    /// What is wrong.
    pub fn fault(&self) -> Option<&'static Fault> {
        named(self.fault?)
    }
}

/// What a technician takes a furnace to have before looking at it.
#[derive(Clone, Copy, Debug)]
pub struct Guess {
    /// The fault.
    pub fault: &'static str,
    /// How bad, from 0 to 1. What is just felt lies close to the bounds of the meters, and is seldom proven.
    pub severity: f64,
    /// Its numbers are written down as well, and not only what is seen.
    pub numbers: bool,
}

/// A morning of the season.
const fn morning(day: u32) -> f64 {
    day as f64 + 0.375
}

const STORIES: [Planted; 6] = [
    // The board drops the valve's voltage. It is read once while it still stands, and the valve is condemned.
    Planted {
        fault: Some("board_drops_valve_output"),
        day: morning(19),
        technician: 1,
        expects: Some(Guess {
            fault: "gas_valve_falls",
            severity: 0.5,
            numbers: true,
        }),
        leaving: Leaving::Whole,
    },
    // The furnace is put right, and its door switch left taped down.
    Planted {
        fault: Some("flame_sensor_dirty"),
        day: morning(33),
        technician: 3,
        expects: None,
        leaving: Leaving::Refused,
    },
    // The technician drives off; what was pulled stays pulled.
    Planted {
        fault: Some("gas_valve_coil_open"),
        day: morning(47),
        technician: 3,
        expects: None,
        leaving: Leaving::Abandoned,
    },
    // A yearly visit without the test that it is for.
    Planted {
        fault: None,
        day: morning(61),
        technician: 2,
        expects: None,
        leaving: Leaving::Whole,
    },
    // A fault that only a meter shows, and the numbers are made up.
    Planted {
        fault: Some("inducer_capacitor_weak"),
        day: morning(75),
        technician: 4,
        expects: None,
        leaving: Leaving::Whole,
    },
    // A weak draft is read as good enough for the switch, which proves nothing; the switch is insisted on.
    Planted {
        fault: Some("vent_blocked"),
        day: morning(89),
        technician: 1,
        expects: None,
        leaving: Leaving::Whole,
    },
];

/// What is planned at a furnace, by number from 0.
pub fn at(number: u32) -> Option<&'static Planted> {
    STORIES.get(number as usize)
}

/// What somebody who knows before looking takes a furnace without heat to have.
pub const FAVOURITES: [&str; 6] = [
    "gas_valve_falls",
    "gas_valve_coil_open",
    "igniter_open",
    "igniter_aged",
    "blower_capacitor_weak",
    "inducer_capacitor_weak",
];

/// What becomes of a furnace on which this was left open; none where it runs all the same.
pub fn consequence(restore: &str, make: &Make) -> Option<&'static Fault> {
    let fault = match restore {
        "valve_wires" => "valve_wire",
        "sensor_lead" => "sensor_lead_bad",
        "igniter_plug" => "igniter_connector_bad",
        "inducer_plug" => "inducer_wire",
        "pressure_hoses" => "draft_hose",
        "limit_wires" => "limit_wiring",
        "field_wires" => "cable_broken",
        "thermostat_base" => "thermostat_base_contact",
        "gas_cock" => "gas_turned_off",
        "return_cover" => "return_restricted",
        _ => return None,
    };
    named(fault).filter(|fault| (fault.fits)(make))
}

fn named(name: &str) -> Option<&'static Fault> {
    faults::all().find(|fault| fault.name == name)
}
