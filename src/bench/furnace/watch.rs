//! The eye on a running furnace: it keeps the moments that a technician looks at.

use super::run::{Dropout, Extremes, Moment, Run};
use super::{CALL, PATIENCE, SOAK};
use crate::bench::electric::{Controls, Latched, Phase, Sound};
use crate::bench::process::Process;
use crate::bench::thermal::Shown;

/// Seconds of flame after which a question about the blower is asked.
const TWO_MINUTES: f64 = 120.0;

/// Seconds after the blower's start at which the flue gas is looked at again.
const AFTER_BLOWER: f64 = 30.0;

/// Volts across a contact that a meter does not take for closed.
const FLICKERS: f64 = 2.0;

/// Voltage at which a valve's coil still holds, V.
const HOLDS: f64 = 12.0;

/// Seconds for which a flame must not have spread any further before it counts as steady.
const STEADY: f64 = 2.0;

/// Seconds after which a sequence that starts over and over without a flame is seen through.
const LOOPS: f64 = 300.0;

/// A run as it comes about.
pub(super) struct Watch {
    run: Run,
    now: Moment,
    started: bool,
    waited: f64,
    wants_heat: bool,
    over: bool,
    blower_for: f64,
    stopped_for: f64,
    still: f64,
    limit_was_open: bool,
    fire: Extremes,
    best_current: f64,
    best_bathed: f64,
    spread_ago: f64,
    has_closed: bool,
}

impl Watch {
    pub(super) fn new(sound: Sound) -> Self {
        let nothing = Moment::default();
        Self {
            run: Run {
                sound,
                rest: nothing,
                draft: nothing,
                warm_up: None,
                trial: None,
                lit: 0.0,
                burned: 0.0,
                two_minutes: None,
                low: None,
                pilot: 0.0,
                before_blower: None,
                after_blower: None,
                steady: None,
                dropout: None,
                whole: Extremes::new(),
                fire: None,
                limit_opened: None,
                limit_opened_after: false,
                limit_open_cold: false,
                rollout_open: false,
                phase: Phase::Idle,
                end: nothing,
                latched: Latched::default(),
                resets: 0,
            },
            now: nothing,
            started: false,
            waited: 0.0,
            wants_heat: true,
            over: false,
            blower_for: 0.0,
            stopped_for: 0.0,
            still: 0.0,
            limit_was_open: false,
            fire: Extremes::new(),
            best_current: 0.0,
            best_bathed: 0.0,
            spread_ago: 0.0,
            has_closed: false,
        }
    }

    /// Whether the thermostat is still set to call.
    pub(super) fn wants_heat(&self) -> bool {
        self.wants_heat
    }

    /// Whether nothing more is to be seen.
    pub(super) fn is_over(&self) -> bool {
        self.over
    }

    /// For how long nothing has been switched, s.
    pub(super) fn still(&self) -> f64 {
        self.still
    }

    /// Looks at what a step has led to; whether the call failed with it.
    pub(super) fn see(&mut self, controls: &Controls, process: &Process, shown: Shown, seconds: f64) -> bool {
        let last = self.now;
        let volts = controls.volts();
        self.now = Moment {
            at: last.at + seconds,
            volts: *volts,
            shown,
        };
        if !self.started {
            self.started = true;
            self.run.rest = self.now;
            self.run.limit_open_cold = !volts.chain.limits_seen && volts.control.board > 0.0;
            self.limit_was_open = controls.contacts().limit_open;
        }
        if !self.wants_heat {
            self.after_the_call(controls, seconds);
            return false;
        }
        self.run.whole.note(volts);
        self.run.pilot = self.run.pilot.max(shown.pilot);
        self.waited = if self.still_waits(controls) {
            self.waited + seconds
        } else {
            0.0
        };
        match controls.phase() {
            Phase::Draft | Phase::Prepurge => self.draft(),
            Phase::WarmUp if self.run.trial.is_none() => self.run.warm_up = Some(self.now),
            Phase::Trial => self.in_trial(),
            _ => {}
        }
        self.fire(controls, process, &last, seconds);
        let opened = controls.contacts().limit_open && !self.limit_was_open;
        if opened {
            self.run.limit_opened = Some(last.shown.limit.max(shown.limit));
        }
        let tried = self.run.trial.is_some() && self.run.lit == 0.0;
        let gave_up = tried && !matches!(controls.phase(), Phase::Trial | Phase::WarmUp);
        let loops = self.run.burned == 0.0 && self.now.at > LOOPS;
        let failed = gave_up || loops || self.waited > PATIENCE || self.run.dropout.is_some();
        self.run.end = self.now;
        self.run.phase = controls.phase();
        if failed && self.run.draft.at == 0.0 {
            self.run.draft = self.now;
        }
        failed
    }

    /// Whether the sequence waits for something that may never come.
    fn still_waits(&self, controls: &Controls) -> bool {
        matches!(
            controls.phase(),
            Phase::Idle | Phase::Draft | Phase::Limit | Phase::Uncalled | Phase::Lockout | Phase::Postpurge
        ) || self.run.burned == 0.0 && controls.volts().control.board == 0.0
    }

    /// Keeps the last moment; of a switch that closes and opens again, one at which it was open: a meter shows the flicker.
    fn draft(&mut self) {
        let open = self.now.volts.chain.switch >= FLICKERS;
        // A board that begins anew proves its draft anew, with an inducer that comes up to speed again.
        self.has_closed &= self.now.volts.inducer_turns > 0.0;
        let flickers = self.has_closed && self.run.draft.volts.chain.switch >= FLICKERS;
        if open || !flickers {
            self.run.draft = self.now;
        }
        // What stood open before the inducer was at speed is forgotten with the first moment at which it is closed.
        self.has_closed |= !open;
    }

    fn in_trial(&mut self) {
        let better = |trial: &Moment| self.now.volts.valve > trial.volts.valve;
        if self.run.trial.as_ref().is_none_or(better) {
            self.run.trial = Some(self.now);
        }
    }

    fn fire(&mut self, controls: &Controls, process: &Process, last: &Moment, seconds: f64) {
        let volts = &self.now.volts;
        let burned_before = self.run.burned;
        let was_lit = burned_before > 0.0;
        let burns = process.flame > 0.0;
        // The board may still ask for gas while the chain, or its own relay, has let the valve go.
        let fed = controls.drives_valve() && volts.valve >= HOLDS;
        if !was_lit && self.run.trial.is_some() {
            self.fire.note_chain(volts);
            self.run.fire = Some(self.fire);
        }
        if was_lit {
            self.fire.note(volts);
            self.best_current = self.best_current.max(volts.flame_current);
            self.best_bathed = self.best_bathed.max(volts.bathed);
            // A signal that goes because the gas was shut says nothing about the sensing.
            if self.spread_ago >= STEADY && fed && volts.flame_current < self.fire.flame_current {
                self.fire.flame_current = volts.flame_current;
                self.fire.bathed = volts.bathed;
            }
        }
        if was_lit && !(burns && fed) {
            let moment = if fed { self.now } else { *last };
            self.run.dropout = Some(Dropout {
                after: burned_before,
                valve: volts.valve,
                moment,
            });
            self.run.fire = Some(self.closed());
            return;
        }
        if !burns {
            return;
        }
        let spreads = process.flame > self.run.lit;
        self.spread_ago = if spreads { 0.0 } else { self.spread_ago + seconds };
        self.run.lit = self.run.lit.max(process.flame);
        self.run.burned += seconds;
        if !volts.stage.told {
            self.run.low = Some(self.now);
        } else if !last.volts.stage.told {
            self.still = 0.0;
        }
        self.blower(seconds);
        if self.run.burned <= TWO_MINUTES {
            self.run.two_minutes = Some(self.now);
        } else {
            self.run.steady = Some(self.now);
        }
        self.run.fire = Some(self.closed());
        if self.run.burned >= CALL {
            self.wants_heat = false;
            self.waited = 0.0;
        }
    }

    /// The recordings so far; of a flame that was never steady, the signal at its best.
    fn closed(&self) -> Extremes {
        let mut fire = self.fire;
        if fire.flame_current.is_infinite() {
            fire.flame_current = self.best_current;
            fire.bathed = self.best_bathed;
        }
        fire
    }

    fn blower(&mut self, seconds: f64) {
        let turns = self.now.volts.blower.turns > 0.0;
        self.still += seconds;
        if !turns {
            self.run.before_blower = Some(self.now);
            return;
        }
        if self.blower_for == 0.0 {
            self.still = 0.0;
        }
        self.blower_for += seconds;
        if self.run.after_blower.is_none() && self.blower_for >= AFTER_BLOWER {
            self.run.after_blower = Some(self.now);
        }
    }

    fn after_the_call(&mut self, controls: &Controls, seconds: f64) {
        let opened = controls.contacts().limit_open && !self.limit_was_open;
        self.run.limit_opened_after |= opened;
        let stopped = self.now.volts.blower.turns == 0.0;
        self.stopped_for = if stopped { self.stopped_for + seconds } else { 0.0 };
        self.waited += seconds;
        self.over = opened || self.stopped_for > SOAK || self.waited > LOOPS + SOAK;
    }

    pub(super) fn into_run(mut self, controls: &Controls) -> Run {
        self.run.rollout_open = controls.contacts().rollout_open;
        self.run.latched = controls.latched();
        self.run.resets = controls.resets();
        self.run
    }
}
