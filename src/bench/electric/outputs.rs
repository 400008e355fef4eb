//! The control board: its outputs, its timings, and what goes wrong with either.

use crate::bench::dice::Dice;
use crate::bench::make::Make;

/// What is wrong with the board.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Board {
    /// Whether the inducer's relay does not close.
    pub no_inducer: bool,
    /// Whether the igniter's relay does not close.
    pub no_igniter: bool,
    /// Whether the valve's relay does not close.
    pub no_valve: bool,
    /// Whether the blower's relay does not close.
    pub no_blower: bool,
    /// Seconds of fire after which the warm valve relay lets go.
    pub valve_lets_go: Option<f64>,
    /// Whether the inducer's relay is welded shut.
    pub inducer_welded: bool,
    /// Whether no voltage is put on the flame rod.
    pub no_sensing: bool,
    /// Whether its flame input takes no notice of the signal.
    pub deaf: bool,
    /// Whether its flame input sees a flame that nobody else does.
    pub sees_things: bool,
    /// An output whose crimp or pin in the board's plug does not carry.
    pub loose: Option<Output>,
    /// Whether water has run onto it, and which output that took.
    pub wet: Option<Output>,
    /// Seconds that the blower runs on after the call, where that is set too short.
    pub off_delay: Option<f64>,
}

/// An output of the board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Output {
    /// To the inducer.
    Inducer,
    /// To the igniter.
    Igniter,
    /// To the gas valve.
    Valve,
    /// To the blower.
    Blower,
}

impl Board {
    /// Whether an output's relay brings voltage to its pin when it is told to.
    pub fn closes(&self, output: Output) -> bool {
        let dead = match output {
            Output::Inducer => self.no_inducer,
            Output::Igniter => self.no_igniter,
            Output::Valve => self.no_valve,
            Output::Blower => self.no_blower,
        };
        !dead && self.wet != Some(output)
    }

    /// Whether what is at a pin goes on into its wire.
    pub fn carries(&self, output: Output) -> bool {
        self.loose != Some(output)
    }
}

/// The board's timings, s, within what boards have by common practice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Timings {
    /// From a proven draft to the igniter.
    pub prepurge: f64,
    /// From the igniter to the gas.
    pub warm_up: f64,
    /// Gas without a proven flame.
    pub trial: f64,
    /// From a lost flame to the next try.
    pub interpurge: f64,
    /// From the flame to the blower.
    pub blower_on: f64,
    /// From the end of the call to the blower's end.
    pub blower_off: f64,
    /// From the end of the call to the inducer's end.
    pub postpurge: f64,
    /// Tries before it locks out.
    pub tries: u8,
    /// From the proved flame to high fire, where that is called; infinite with one stage.
    pub high_after: f64,
}

impl Timings {
    /// Timings of one kind of board.
    pub fn drawn(dice: &mut Dice, make: &Make) -> Self {
        Self {
            prepurge: dice.one_of([15.0, 20.0, 30.0]),
            warm_up: if make.spark {
                0.0
            } else {
                dice.one_of([17.0, 20.0, 30.0])
            },
            trial: dice.one_of([4.0, 5.0, 7.0]),
            interpurge: dice.one_of([30.0, 60.0]),
            blower_on: dice.one_of([30.0, 30.0, 45.0]),
            blower_off: dice.one_of([90.0, 100.0, 120.0, 180.0]),
            postpurge: dice.one_of([5.0, 15.0, 30.0]),
            tries: dice.one_of([3, 4, 5]),
            high_after: make.staging().map_or(f64::INFINITY, |staging| staging.after),
        }
    }
}
