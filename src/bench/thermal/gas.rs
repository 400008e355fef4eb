//! Gas from the supply to the orifices.
//!
//! # Equations
//!
//! Flow through an orifice goes with the square root of the pressure before it, so heat does too. What pipe, supply
//! regulator and valve seat lose goes with the square of the flow, so with the manifold pressure itself; both together give
//! the manifold pressure without a search: `manifold = min(set, supply / (1 + losses at full flow / plate's manifold))`. A valve of two
//! stages has a regulator for each.
//!
//! # References
//!
//! - The square-root law: the register's `input_at_manifold_pressure`.
//! - Natural gas is supplied at 5 to 9 in.w.c., propane at 11 (common practice).

use super::condition::{Gas, Shut};
use super::heat::towards;
use super::orifices::Orifices;
use super::spread::{Own, spread};
use crate::bench::make::Make;

/// Seconds in which a valve gets warm.
const VALVE_WARMS: f64 = 150.0;
/// Seconds in which a plunger that is no longer held drops.
const LETS_GO: f64 = 1.0;
/// Seconds in which a wet regulator freezes.
const FREEZES: f64 = 120.0;
/// Seconds after which a manifold gauge shows a steady pressure.
const GAUGE_SETTLES: f64 = 1.0;
/// By how much a regulator's outlet follows its inlet beyond the highest, share for each in.w.c.
const FOLLOWS: f64 = 0.02;
/// Above its highest, a supply that holds the valve's disc shut, in.w.c.
const HOLDS_SHUT: f64 = 4.0;

/// Supply, valve and orifices.
#[derive(Clone, Copy, Debug)]
pub struct GasTrain {
    shut: bool,
    rest: f64,
    set: f64,
    low_set: f64,
    high_stuck: bool,
    plate: f64,
    /// Lost in pipe and supply regulator, and in the valve, for each in.w.c. of manifold pressure.
    pipe_loss: f64,
    valve_loss: f64,
    /// Heat at the plate's manifold pressure, BTU/h.
    heat_at_plate: f64,
    icing: f64,
    lets_go: f64,
    leaks: f64,
    opens: bool,
    warm: f64,
    /// Share of its stroke that the valve's plunger still holds.
    held: f64,
    ice: f64,
    fed_for: f64,
    was_high: bool,
    air_left: f64,
    now: GasFlow,
}

/// Pressures and heat at a moment.
#[derive(Clone, Copy, Debug, Default)]
pub struct GasFlow {
    /// At the valve's inlet, in.w.c.
    pub inlet: f64,
    /// Since the valve was last fed, in.w.c.
    pub inlet_lowest: f64,
    /// Behind the valve, in.w.c.
    pub manifold: f64,
    /// Since the valve was last fed and had opened, in.w.c.
    pub manifold_lowest: f64,
    /// Of the gas that leaves the orifices, BTU/h.
    pub heat: f64,
}

impl GasTrain {
    /// The gas train of a furnace.
    pub fn new(make: &Make, gas: &Gas, orifices: &Orifices) -> Self {
        let rest = supply(make, gas, orifices);
        let loses = orifices.loses / make.manifold;
        let open = 1.0 - gas.valve_stuck;
        let beyond = (rest - make.inlet_max).max(0.0);
        let misled =
            (1.0 + gas.reference) * (1.0 + FOLLOWS * beyond) * spread(make.seed, Own::Regulator, 0.97, 1.03);
        let set = make.manifold * (1.0 + gas.regulator) * misled;
        Self {
            shut: gas.shut != Shut::Open,
            rest,
            set,
            low_set: make.staging().map_or(set, |staging| {
                staging.low_manifold * (1.0 + gas.low_regulator) * misled
            }),
            high_stuck: gas.high_stuck,
            plate: make.manifold,
            pipe_loss: (spread(make.seed, Own::PipeLoss, 0.15, 0.35) + gas.supply_drop) * loses,
            valve_loss: spread(make.seed, Own::SeatLoss, 0.4, 0.8) * loses / (open * open).max(1e-6),
            heat_at_plate: orifices.at_plate,
            icing: gas.icing,
            lets_go: gas.valve_lets_go,
            leaks: gas.valve_leaks,
            opens: open > 1e-3 && beyond < HOLDS_SHUT,
            warm: 0.0,
            held: 1.0,
            ice: 0.0,
            fed_for: 0.0,
            was_high: false,
            air_left: gas.air_in_line,
            now: GasFlow {
                inlet: rest,
                inlet_lowest: rest,
                ..GasFlow::default()
            },
        }
    }

    /// The supply at the valve's inlet with nothing flowing, in.w.c.
    pub fn at_rest(&self) -> f64 {
        if self.leaks > 0.0 {
            self.rest - self.pipe_loss * self.leaks.powi(2) * self.plate
        } else {
            self.rest
        }
    }

    /// Goes on by some seconds, fed or not, and fed on the second stage too or not.
    pub fn step(&mut self, fed: bool, high: bool, seconds: f64) -> GasFlow {
        let high = high && !self.high_stuck;
        let set = if high { self.set } else { self.low_set };
        // A gauge is read on one stage or on the other.
        if high != self.was_high {
            self.fed_for = 0.0;
        }
        self.was_high = high;
        let open = fed && self.opens && !self.shut;
        self.warm = towards(self.warm, f64::from(u8::from(fed)), seconds, VALVE_WARMS);
        let holds = self.lets_go == 0.0 || self.warm < 1.0 - self.lets_go;
        self.held = if holds {
            1.0
        } else {
            towards(self.held, 0.0, seconds, LETS_GO)
        };
        let supply = self.rest * (1.0 - self.icing * self.ice);
        let manifold = if open {
            let full = supply / (1.0 + self.pipe_loss + self.valve_loss);
            full.min(set) * self.held * self.held
        } else if self.shut {
            0.0
        } else {
            self.plate * self.leaks.powi(2) * (supply / self.rest.max(0.1))
        };
        let flow = (manifold / self.plate).sqrt();
        // It goes on freezing while anything flows through it.
        self.ice = towards(self.ice, f64::from(u8::from(flow > 0.05)), seconds, FREEZES);
        let inlet = supply - self.pipe_loss * manifold;
        let heat = if self.air_left > 0.0 {
            self.air_left -= flow * seconds;
            0.0
        } else {
            self.heat_at_plate * flow
        };
        if fed {
            let before = self.now;
            let first = self.fed_for <= 0.0;
            self.fed_for += seconds;
            let settling = self.fed_for <= GAUGE_SETTLES;
            self.now.inlet_lowest = if first {
                inlet
            } else {
                before.inlet_lowest.min(inlet)
            };
            self.now.manifold_lowest = if first || settling {
                manifold
            } else {
                before.manifold_lowest.min(manifold)
            };
        } else {
            self.fed_for = 0.0;
        }
        self.now = GasFlow {
            inlet,
            manifold,
            heat,
            ..self.now
        };
        self.now
    }
}

/// The supply with nothing flowing, in.w.c.
fn supply(make: &Make, gas: &Gas, orifices: &Orifices) -> f64 {
    if gas.shut == Shut::Upstream {
        return 0.0;
    }
    if gas.lock_up > 0.0 {
        return make.inlet_max + gas.lock_up;
    }
    let usual = if orifices.fuel.usual_manifold > 7.0 {
        spread(make.seed, Own::Supply, 11.0, 12.5)
    } else {
        spread(make.seed, Own::Supply, 6.5, 8.5)
    };
    // A supply that is right lies well within the plate's range; one of the other gas stands as that gas does.
    let room = make.inlet_max - make.inlet_min;
    let right = if gas.other_gas {
        usual
    } else {
        usual.clamp(make.inlet_min + 0.4 * room, make.inlet_max - 0.15 * room)
    };
    right * (1.0 - gas.supply_lacks)
}
