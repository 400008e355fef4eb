//! The electric half in motion: a step of time from what is sensed to what is driven.

use super::blower::{BlowerVolts, Relay};
use super::call::{CALLED, CallVolts};
use super::chain::Contacts;
use super::condition::Electric;
use super::control::Latches;
use super::line::LineVolts;
use super::motor::{STALLED, STARTING};
use super::outputs::Output;
use super::sequence::{Phase, Seen, Sequence, Told};
use super::sound::Sound;
use super::thermocouple::Held;
use super::volts::{Latched, Volts};
use super::wire::OPEN;
use crate::bench::make::{Blower, Make, Pilot};
use crate::bench::process::{Drive, Process};

/// A board on less control voltage than this lets its relays go, V.
const BROWN_OUT: f64 = 17.0;

/// What a relay's coil draws, S.
const RELAY: f64 = 1.0 / 400.0;

/// What a commanded inducer's or a spark's electronics leave of the line, as a load, A.
const SPARK_AMPS: f64 = 0.1;

/// Times its full-load current at which a motor gets too hot, common practice.
const OVERLOAD: f64 = 1.15;

/// Seconds of overload after which a motor's protector opens.
const PROTECTED: f64 = 240.0;

/// The electric half of one furnace, in motion.
#[derive(Clone, Debug)]
pub struct Controls<'a> {
    make: &'a Make,
    condition: &'a Electric,
    sound: Sound,
    sequence: Sequence,
    contacts: Contacts,
    high_closed: bool,
    latches: Latches,
    volts: Volts,
    told: Told,
    pulled: bool,
    burnt: f64,
    overloaded: f64,
    powered: bool,
    resets: u32,
    amps: f64,
    starting: bool,
}

impl<'a> Controls<'a> {
    /// At rest, with what an earlier call has left.
    pub fn new(make: &'a Make, condition: &'a Electric, sound: Sound, latched: Latched) -> Self {
        let mut latches = condition.control.latched(make.fuse);
        latches.fuse |= latched.control.fuse;
        latches.breaker |= latched.control.breaker;
        let mut timings = sound.timings;
        if let Some(seconds) = condition.board.off_delay {
            timings.blower_off = seconds;
        }
        let contacts = Contacts {
            rollout_open: latched.rollout,
            ..Contacts::default()
        };
        Self {
            make,
            condition,
            sound,
            sequence: Sequence::new(timings, sound.flame_seen, make.pilot()),
            contacts,
            high_closed: false,
            latches,
            volts: Volts::default(),
            told: Told::default(),
            pulled: false,
            burnt: 0.0,
            overloaded: 0.0,
            powered: false,
            resets: 0,
            amps: 0.0,
            starting: false,
        }
    }

    /// What probes would show now.
    pub fn volts(&self) -> &Volts {
        &self.volts
    }

    /// What it leaves to the next call.
    pub fn latched(&self) -> Latched {
        Latched {
            control: self.latches,
            rollout: self.contacts.rollout_open,
        }
    }

    /// Where its sequence stands.
    pub fn phase(&self) -> Phase {
        self.sequence.phase()
    }

    /// For how long, s.
    pub fn elapsed(&self) -> f64 {
        self.sequence.elapsed()
    }

    /// How often it lost its control voltage and began anew.
    pub fn resets(&self) -> u32 {
        self.resets
    }

    /// Where its contacts stand.
    pub fn contacts(&self) -> Contacts {
        self.contacts
    }

    /// Whether the valve is pulled in.
    pub fn drives_valve(&self) -> bool {
        self.pulled
    }

    /// Goes on by some seconds. `wanted` is whether the thermostat is set to call, `flow` the air that moves as a share of
    /// the maker's.
    pub fn step(&mut self, process: &Process, flow: f64, wanted: bool, seconds: f64) -> Drive {
        let Self { condition, sound, .. } = *self;
        let line = condition.line.volts(sound.source, self.amps, sound.stray);
        let called = self.volts.call.board >= CALLED;
        let relay = self.valve_relay();
        let load = if relay { self.valve_load() } else { OPEN };
        let control = condition.control.volts(
            line.board,
            self.siemens(load),
            called,
            self.make.fuse,
            &mut self.latches,
        );
        let call = self.call(control.board, wanted, process.high_water);
        let second = self.second_call(call.board);
        self.contacts.sense(
            &condition.chain,
            &condition.switch,
            &sound.marks,
            process.limit_temperature,
            process.rollout_temperature,
            process.switch_draft,
        );
        let chain = (self.contacts).volts(&condition.chain, &condition.switch, control.board, load);
        let flame_current = self.flame_current(process, &line);
        let thermocouple = match self.make.pilot() {
            Some(Pilot::Standing) => condition.thermocouple.in_flame(process.pilot),
            _ => Held::default(),
        };
        let seen = Seen {
            powered: control.board >= BROWN_OUT,
            call: call.board >= CALLED,
            limits: chain.limits_seen,
            switch: chain.switch_seen,
            flame: self.flame_seen(flame_current, thermocouple.holds),
            second: second.is_some_and(|(_, asked)| asked),
        };
        self.resets += u32::from(self.powered && !seen.powered);
        self.powered = seen.powered;
        self.told = self.sequence.step(&seen, seconds);
        self.volts = Volts {
            line,
            control,
            call,
            chain,
            flame_current,
            bathed: process.sensor_bathed,
            thermocouple,
            starting: self.starting,
            ..self.volts
        };
        self.switch_on(flow, relay);
        self.second_stage(second.map_or(0.0, |(volts, _)| volts), process.switch_draft);
        self.protect_blower(seconds);
        self.burnt = if process.flame > 0.0 {
            self.burnt + seconds
        } else {
            0.0
        };
        self.load_for_next();
        self.drive()
    }

    /// The call as it comes to the board: to one of two twins by way of the other.
    fn call(&self, control: f64, wanted: bool, high_water: bool) -> CallVolts {
        let Self { condition, sound, .. } = *self;
        let call = (condition.call).volts(control, wanted, sound.batteries, high_water);
        let passes = self.make.link().is_none_or(|link| condition.twin.passes(link));
        match passes {
            true => call,
            false => CallVolts { board: 0.0, ..call },
        }
    }

    /// W2 at the board, and whether high fire is asked for; none with one stage.
    fn second_call(&self, first: f64) -> Option<(f64, bool)> {
        let staging = self.make.staging()?;
        let stages = &self.condition.stages;
        let call = stages.call(staging, first);
        Some((call, stages.is_asked(staging, call)))
    }

    fn second_stage(&mut self, call: f64, draft: f64) {
        if self.make.staging().is_none() {
            return;
        }
        let stages = &self.condition.stages;
        self.high_closed = stages.closed(self.sound.marks.high_switch_closes, draft, self.high_closed);
        self.volts.stage = stages.volts(call, self.told.high, self.volts.valve_pin, self.high_closed);
    }

    fn valve_relay(&self) -> bool {
        let lets_go = (self.condition.board.valve_lets_go).is_some_and(|after| self.burnt >= after);
        self.told.valve && self.condition.board.closes(Output::Valve) && !lets_go
    }

    /// What the valve's pin is loaded with, Ω.
    fn valve_load(&self) -> f64 {
        match self.condition.board.carries(Output::Valve) {
            true => self.condition.coil.circuit_ohms(self.sound.coil_ohms),
            false => OPEN,
        }
    }

    fn flame_current(&self, process: &Process, line: &LineVolts) -> f64 {
        let standing = self.make.pilot() == Some(Pilot::Standing);
        let driven = line.board > 0.0 && !self.condition.board.no_sensing;
        if standing || !driven {
            return 0.0;
        }
        let returned = self.condition.line.flame_return();
        (self.condition.sensing).current(self.sound.flame_current, process.sensor_bathed, returned)
    }

    /// What the board takes for a flame; over a standing pilot it knows none but the one that the thermocouple holds.
    fn flame_seen(&self, current: f64, held: bool) -> f64 {
        if self.make.pilot() == Some(Pilot::Standing) {
            return if held { 2.0 * self.sound.flame_seen } else { 0.0 };
        }
        match (self.condition.board.deaf, self.condition.board.sees_things) {
            (true, _) => 0.0,
            (false, true) => current + 2.0 * self.sound.flame_seen,
            (false, false) => current,
        }
    }

    /// Brings voltage to what is told to run.
    fn switch_on(&mut self, flow: f64, relay: bool) {
        let Self { condition, sound, .. } = *self;
        let board = &condition.board;
        let line = self.volts.line.board;
        let live = |volts: f64, on: bool| if on { volts } else { 0.0 };
        self.switch_inducer(line);

        let igniter = self.told.igniter && board.closes(Output::Igniter);
        let supply = live(sound.element.volts * line / 120.0, igniter);
        self.volts.igniter_pin = supply;
        self.volts.glow = match self.make.spark {
            true => condition.igniter.spark(igniter && board.carries(Output::Igniter)),
            false => (condition.igniter).warm(live(supply, board.carries(Output::Igniter)), &sound.element),
        };

        // The relay's state at the start of the step: the chain was worked out with its load.
        let pin = live(self.volts.chain.relay, relay);
        self.volts.valve_pin = pin;
        self.volts.valve = match board.carries(Output::Valve) {
            true => condition.coil.at_valve(pin, sound.coil_ohms),
            false => 0.0,
        };
        self.pulled = condition.coil.pulled(self.volts.valve, self.pulled);

        let relay = Relay {
            closed: self.told.blower && board.closes(Output::Blower),
            carries: board.carries(Output::Blower),
        };
        let control = self.volts.control.board;
        let before = self.volts.blower;
        self.volts.blower =
            BlowerVolts::at(self.make, &condition.blower, relay, line, control, flow, &before);
    }

    /// A tapped motor's own protector: it opens on its heat, and stays open for longer than a call.
    fn protect_blower(&mut self, seconds: f64) {
        let blower = &mut self.volts.blower;
        let overloaded = blower.amps > OVERLOAD * self.make.blower_amps;
        let tapped = self.make.blower == Blower::Tapped;
        if tapped && blower.turns > 0.0 && overloaded {
            self.overloaded += seconds;
        }
        if self.overloaded > PROTECTED {
            blower.turns = 0.0;
            blower.amps = 0.0;
        }
    }

    fn switch_inducer(&mut self, line: f64) {
        let Self { condition, sound, .. } = *self;
        let (board, motor) = (&condition.board, &condition.inducer);
        let closed = (self.told.inducer && board.closes(Output::Inducer)) || board.inducer_welded;
        let pin = if closed { line } else { 0.0 };
        let carried = if board.carries(Output::Inducer) { pin } else { 0.0 };
        let plug = motor.at_plug(carried, sound.inducer_amps);
        let turns = motor.speed(plug / 120.0, self.make.inducer_uf.is_some());
        self.volts.inducer_pin = pin;
        self.volts.inducer_plug = plug;
        self.volts.inducer_turns = match self.make.inducer_commanded {
            true => turns.min(1.0) * (1.0 - motor.command_lost),
            false => turns,
        };
    }

    /// What this step's loads take from the line in the next.
    fn load_for_next(&mut self) {
        let volts = &self.volts;
        let inducer = match (volts.inducer_plug > 0.0, volts.inducer_turns > 0.0) {
            (false, _) => 0.0,
            (true, false) if self.condition.inducer.winding_open => 0.0,
            (true, false) => STALLED,
            (true, true) if self.sequence.phase() == Phase::Draft && self.sequence.elapsed() == 0.0 => {
                STARTING
            }
            (true, true) => 1.0,
        };
        let igniter = match self.make.spark {
            true => SPARK_AMPS,
            false => volts.glow.amps * self.sound.element.volts / 120.0,
        };
        let blower = volts.blower.amps > STALLED * self.make.blower_amps;
        self.starting = inducer == STARTING || blower;
        self.amps = inducer * self.sound.inducer_amps + igniter + volts.blower.amps;
    }

    /// What relays and valve conduct between R and C, S.
    fn siemens(&self, valve_load: f64) -> f64 {
        let told = [
            self.told.inducer,
            self.told.igniter,
            self.told.valve,
            self.told.blower,
        ];
        let relays = told.into_iter().filter(|on| *on).count();
        let second = match self.volts.stage.valve > 0.0 {
            true => 1.0 / self.sound.coil_ohms,
            false => 0.0,
        };
        relays as f64 * RELAY + 1.0 / valve_load + second
    }

    fn drive(&self) -> Drive {
        let stage = &self.volts.stage;
        let full_speed = stage.told && !self.condition.stages.speed_stays_low;
        let low = self.make.low_fire();
        Drive {
            inducer: self.volts.inducer_turns * if full_speed { 1.0 } else { self.make.low_speed() },
            valve_fed: self.pulled,
            high_fed: self.condition.coil.pulled(stage.valve, stage.valve > 0.0),
            pilot_fed: self.told.pilot || self.volts.thermocouple.holds,
            igniting: self.volts.glow.lights,
            blower: self.volts.blower.turns
                * match (stage.told, self.make.blower) {
                    (true, _) => 1.0,
                    (false, Blower::Tapped | Blower::ConstantAirflow) => low,
                    // Airflow goes with the root of the torque.
                    (false, Blower::ConstantTorque) => low * low,
                },
        }
    }
}
