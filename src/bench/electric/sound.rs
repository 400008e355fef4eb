//! How the electric parts of one furnace differ from the next one's while all are in order.

use super::chain::Marks;
use super::ignition::Element;
use super::outputs::Timings;
use crate::bench::dice::Dice;
use crate::bench::make::Make;

/// Sets the dice of the electric half apart from others that are thrown for the same furnace.
const ELECTRIC: u64 = 0xe1ec;

/// How far the second stage's switch is set above the first one's, times what the square of the speed makes of the draft: far
/// enough that low speed does not close it.
pub const ABOVE: f64 = 1.2;

/// What sound parts of this furnace have; the ranges are common practice.
#[derive(Clone, Copy, Debug)]
pub struct Sound {
    /// Line voltage with no load, V.
    pub source: f64,
    /// Share of the line that a cabinet without ground takes on.
    pub stray: f64,
    /// Whether the thermostat lives on batteries.
    pub batteries: bool,
    /// The board's timings.
    pub timings: Timings,
    /// Flame current from which the board sees a flame, µA.
    pub flame_seen: f64,
    /// Flame current of a clean rod in a good flame, µA.
    pub flame_current: f64,
    /// Voltage on the flame rod's lead, V.
    pub sensing_volts: f64,
    /// The valve's coil, Ω.
    pub coil_ohms: f64,
    /// The igniter.
    pub element: Element,
    /// What the switches are marked with.
    pub marks: Marks,
    /// The inducer's current at rated speed, A.
    pub inducer_amps: f64,
    /// The inducer's winding, Ω.
    pub inducer_ohms: f64,
    /// The blower's run capacitor as a share of its label.
    pub capacitor: f64,
    /// A joint between burners and cabinet, Ω.
    pub joint_ohms: f64,
    /// A wire end to end, Ω.
    pub lead_ohms: f64,
    /// Cooling and accessory circuits, Ω, where there are any.
    pub cooling_ohms: Option<f64>,
    /// The lowest of the accessories' circuits, Ω.
    pub accessory_ohms: Option<f64>,
}

impl Sound {
    /// The sound parts of a furnace.
    pub fn of(make: &Make) -> Self {
        let mut dice = Dice::of(&[ELECTRIC, make.seed]);
        let (least, most) = (make.igniter_ohm_min, make.igniter_ohm_max);
        let marks = |limit: f64, switch: f64| Marks {
            limit_opens: make.limit_opens + limit,
            switch_closes: make.switch_set_point * (1.0 + switch),
            high_switch_closes: make.switch_set_point * (1.0 + switch) * ABOVE / make.low_speed().powi(2),
        };
        Self {
            source: dice.between(117.0, 124.0),
            stray: dice.between(0.35, 0.65),
            batteries: dice.chance(0.3),
            timings: Timings::drawn(&mut dice, make),
            flame_seen: dice.between(0.7, 1.0),
            flame_current: dice.between(2.8, 5.5),
            sensing_volts: dice.between(75.0, 115.0),
            coil_ohms: dice.between(48.0, 90.0),
            element: Element {
                volts: make.igniter_volts,
                amps: make.igniter_amps,
                cold_ohms: dice.between(least + 0.15 * (most - least), most - 0.3 * (most - least)),
            },
            marks: marks(dice.between(-4.0, 4.0), dice.between(-0.03, 0.03)),
            inducer_amps: dice.between(0.8, 1.6),
            inducer_ohms: dice.between(9.0, 40.0),
            capacitor: dice.between(0.975, 1.025),
            joint_ohms: dice.between(0.05, 0.4),
            lead_ohms: dice.between(0.05, 0.3),
            cooling_ohms: dice.chance(0.7).then(|| dice.between(9.0, 18.0)),
            accessory_ohms: dice.chance(0.4).then(|| dice.between(12.0, 60.0)),
        }
    }
}
