//! Hoses and ports between the housing and the pressure switch.

use super::condition::{Hoses, Inducer};

/// What the hoses carry to the switch.
#[derive(Clone, Copy, Debug)]
pub struct Carried {
    port: f64,
    hose: f64,
    water: f64,
    felt: f64,
}

impl Carried {
    /// The hoses of a furnace.
    pub fn new(hoses: &Hoses, inducer: &Inducer) -> Self {
        let sign = if hoses.swapped { -1.0 } else { 1.0 };
        Self {
            port: 1.0 - inducer.port_plugged,
            hose: sign * (1.0 - hoses.split),
            water: hoses.water,
            felt: 1.0 - hoses.switch_port_plugged,
        }
    }

    /// At the port on the housing, at tees close to the switch, and what its diaphragm feels, in.w.c.
    pub fn of(&self, draft: f64) -> (f64, f64, f64) {
        let housing = draft * self.port;
        // Water holds its own height off, whichever way the draft pulls.
        let held = housing.abs().min(self.water);
        let switch = (housing - held * housing.signum()) * self.hose;
        (housing, switch, switch * self.felt)
    }
}
