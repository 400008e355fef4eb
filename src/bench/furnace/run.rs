//! What one call showed: the moments at which a technician looks.

use crate::bench::electric::{Latched, Phase, Sound, Volts};
use crate::bench::thermal::Shown;

/// What could be measured and seen at a moment.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Moment {
    /// Seconds since the call began.
    pub at: f64,
    /// Electric.
    pub volts: Volts,
    /// Gas, flame, draft, air and heat.
    pub shown: Shown,
}

/// What recordings kept over a stretch of time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extremes {
    /// Lowest line voltage at the board, V.
    pub line: f64,
    /// Lowest control voltage, V.
    pub control: f64,
    /// Lowest call, V.
    pub call: f64,
    /// Highest voltage across the limit, V.
    pub limit: f64,
    /// Highest voltage across the rollout switch, V.
    pub rollout: f64,
    /// Highest voltage across the pressure switch, V.
    pub switch: f64,
    /// Lowest voltage at the board's valve pin, V; infinite where nothing burned.
    pub valve_pin: f64,
    /// Lowest flame current while a flame stood, µA; infinite where none did.
    pub flame_current: f64,
    /// How well the sensor's place was bathed as that current flowed.
    pub bathed: f64,
}

/// How a flame was lost during the call.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dropout {
    /// Seconds that it had burned.
    pub after: f64,
    /// Volts across the valve's terminals as it went.
    pub valve: f64,
    /// The last moment at which it still burned, or at which it went out with its valve still fed.
    pub moment: Moment,
}

/// One call for heat, from cold to its end or to where it failed.
#[derive(Clone, Debug)]
pub struct Run {
    /// What this furnace's sound parts have.
    pub sound: Sound,
    /// The call stands and nothing has moved yet.
    pub rest: Moment,
    /// The inducer at full speed, before the igniter: or the last moment at which that was waited for.
    pub draft: Moment,
    /// The end of the warm-up, of the first try.
    pub warm_up: Option<Moment>,
    /// The moment of the first trial at which the valve had most.
    pub trial: Option<Moment>,
    /// The largest share of the burners that burned.
    pub lit: f64,
    /// Seconds that the first flame burned.
    pub burned: f64,
    /// Two minutes of flame, or the last moment of a flame that burned shorter.
    pub two_minutes: Option<Moment>,
    /// The last moment on low fire, of a furnace with two stages.
    pub low: Option<Moment>,
    /// The largest flame of the pilot, share of a good one's; of a standing one, with its knob held in.
    pub pilot: f64,
    /// Just before the blower started, with a flame.
    pub before_blower: Option<Moment>,
    /// Half a minute after it started.
    pub after_blower: Option<Moment>,
    /// The last moment of a flame that burned longer than two minutes: steady fire, or just before it was lost.
    pub steady: Option<Moment>,
    /// How the flame was lost, where it was.
    pub dropout: Option<Dropout>,
    /// What recordings kept from the start of the call.
    pub whole: Extremes,
    /// What recordings kept from the trial to the dropout, or to the end of the call; none where no trial came.
    pub fire: Option<Extremes>,
    /// The disc's temperature as the limit opened under fire, °F.
    pub limit_opened: Option<f64>,
    /// Whether the limit opened after the call.
    pub limit_opened_after: bool,
    /// Whether the limit was open from the start.
    pub limit_open_cold: bool,
    /// Whether a rollout switch has tripped.
    pub rollout_open: bool,
    /// Where the sequence stood at the end of the call.
    pub phase: Phase,
    /// The last moment of the call.
    pub end: Moment,
    /// What it left behind.
    pub latched: Latched,
    /// How often the board lost its control voltage and began anew.
    pub resets: u32,
}

impl Extremes {
    pub(super) fn new() -> Self {
        Self {
            line: f64::INFINITY,
            control: f64::INFINITY,
            call: f64::INFINITY,
            limit: 0.0,
            rollout: 0.0,
            switch: 0.0,
            valve_pin: f64::INFINITY,
            flame_current: f64::INFINITY,
            bathed: 0.0,
        }
    }

    pub(super) fn note(&mut self, volts: &Volts) {
        self.note_chain(volts);
        self.valve_pin = self.valve_pin.min(volts.valve_pin);
    }

    /// What is recorded from the trial on, before anything burns.
    pub(super) fn note_chain(&mut self, volts: &Volts) {
        self.line = self.line.min(volts.line.board);
        self.control = self.control.min(volts.control.board);
        self.call = self.call.min(volts.call.board);
        self.limit = self.limit.max(volts.chain.limit);
        self.rollout = self.rollout.max(volts.chain.rollout);
        self.switch = self.switch.max(volts.chain.switch);
    }
}

impl Run {
    /// The flame's moment that a question about the fire is about: steady, or the last one that burned.
    pub fn fire_moment(&self) -> Option<&Moment> {
        let dropout = self.dropout.as_ref().map(|dropout| &dropout.moment);
        dropout.or(self.steady.as_ref()).or(self.two_minutes.as_ref())
    }

    /// Whether the fire that is tested is low fire: a flame that never came, or was lost before the furnace went high.
    pub fn is_tested_on_low(&self) -> bool {
        match self.dropout {
            Some(dropout) => dropout.moment.volts.stage.valve == 0.0,
            None => self.lit == 0.0,
        }
    }
}
