//! What a furnace was built and set up as, before anything breaks: its plate, its kind and where it stands.

mod kind;
mod random;

pub use kind::{Kind, Link, Pilot, StagedBy, Staging};

/// A furnace as its maker meant it. Fields named like the plate's are what the plate says.
#[derive(Clone, Debug, PartialEq)]
pub struct Make {
    /// What it is by its sequence.
    pub kind: Kind,
    /// Whether the plate says propane; natural gas otherwise.
    pub propane: bool,
    /// Whether it condenses, with a secondary exchanger, trap and plastic vent.
    pub condensing: bool,
    /// Input rate, BTU/h.
    pub input: f64,
    /// Steady-state efficiency, share of input.
    pub efficiency: f64,
    /// Altitude, ft.
    pub altitude: f64,
    /// Outdoor temperature, °F.
    pub outdoor: f64,
    /// Room temperature, °F.
    pub indoor: f64,
    /// Lowest temperature rise, °F.
    pub rise_min: f64,
    /// Highest temperature rise, °F.
    pub rise_max: f64,
    /// Manifold pressure, in.w.c.
    pub manifold: f64,
    /// Lowest supply pressure, in.w.c.
    pub inlet_min: f64,
    /// Highest supply pressure, in.w.c.
    pub inlet_max: f64,
    /// Highest total external static pressure, in.w.c.
    pub static_max: f64,
    /// Temperature at which the limit opens, °F.
    pub limit_opens: f64,
    /// Set point of the pressure switch, in.w.c.
    pub switch_set_point: f64,
    /// Where the pressure switch's ports are led.
    pub switch_taps: Taps,
    /// Lit by a spark, at the burners or at a pilot; by a hot surface otherwise.
    pub spark: bool,
    /// Igniter's supply voltage, V.
    pub igniter_volts: f64,
    /// Igniter's lowest cold resistance, Ω.
    pub igniter_ohm_min: f64,
    /// Igniter's highest cold resistance, Ω.
    pub igniter_ohm_max: f64,
    /// Igniter's warm-up current, A.
    pub igniter_amps: f64,
    /// Inducer's speed commanded by the board; switched line voltage otherwise.
    pub inducer_commanded: bool,
    /// Inducer's run capacitor, µF, where one is fitted.
    pub inducer_uf: Option<f64>,
    /// Kind of blower motor.
    pub blower: Blower,
    /// Blower's run capacitor, µF (tapped motors).
    pub blower_uf: f64,
    /// Blower's full-load current, A.
    pub blower_amps: f64,
    /// Whether the board carries a low-voltage fuse.
    pub fuse: bool,
    /// Whether its condensate ends in a pump.
    pub condensate_pump: bool,
    /// Seed of everything small that differs from furnace to furnace.
    pub seed: u64,
}

impl Make {
    /// Full-load speed of an inducer on line voltage, rpm: two poles and the usual slip; some turn at half of it (common
    /// practice).
    pub fn inducer_rpm(&self) -> f64 {
        match self.seed % 5 {
            0 => 1_550.0,
            of => 3_000.0 + 50.0 * of as f64,
        }
    }

    /// Airflow at the middle of the plate's range of rise, ft³/min: the sensible heat of standard air, 1.08 BTU/h per
    /// ft³/min and °F.
    pub fn airflow(&self) -> f64 {
        self.input * self.efficiency / (1.08 * (self.rise_min + self.rise_max) / 2.0)
    }
}

/// Where the ports of a pressure switch are led.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taps {
    /// One hose from the collector, the other port open to the room.
    CollectorToRoom,
    /// From the collector and from the burner box.
    CollectorToBurnerBox,
    /// Across the choke at the inducer.
    AcrossChoke,
    /// Between the primary and the secondary exchanger.
    BetweenCells,
}

/// Kind of blower motor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blower {
    /// Tapped, line voltage on a speed wire, with a run capacitor.
    Tapped,
    /// Electronic, constant torque, 24 V on its speed taps.
    ConstantTorque,
    /// Electronic, constant airflow, low-voltage command.
    ConstantAirflow,
}
