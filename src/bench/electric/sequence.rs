//! The board's sequence: what it switches on when, by what it is told and what it sees.
//!
//! Call → limits closed and pressure switch open → inducer → switch closes → prepurge → igniter → gas → flame → blower. A flame
//! that is not seen, or is lost, is tried again a few times; then it locks out. An open limit stops the gas and keeps inducer
//! and blower running. With two stages it lights on low and goes high when it has burned there for long enough and is asked. With
//! a pilot lit on call, the spark stays on until the pilot is proved, and only then the burners get gas; over a standing pilot they
//! get it at once. Common practice for furnaces with induced draft.

use super::outputs::Timings;
use crate::bench::make::Pilot;

/// What the board sees.
#[derive(Clone, Copy, Debug, Default)]
pub struct Seen {
    /// It has enough control voltage to work.
    pub powered: bool,
    /// W is called.
    pub call: bool,
    /// Limits and rollout switches are closed.
    pub limits: bool,
    /// The pressure switch is closed.
    pub switch: bool,
    /// Flame current at its input, µA; of a pilot, where that is what it watches.
    pub flame: f64,
    /// High fire is asked for.
    pub second: bool,
}

/// What it tells its relays.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Told {
    /// Inducer.
    pub inducer: bool,
    /// Igniter.
    pub igniter: bool,
    /// Gas valve.
    pub valve: bool,
    /// Blower.
    pub blower: bool,
    /// The pilot's gas, where a pilot is lit on call.
    pub pilot: bool,
    /// High fire.
    pub high: bool,
}

/// Where it stands in its sequence.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Phase {
    /// No call, or nothing may start.
    #[default]
    Idle,
    /// The inducer runs, the switch is open.
    Draft,
    /// Draft is proved.
    Prepurge,
    /// The igniter warms up.
    WarmUp,
    /// Gas, and no flame proved yet.
    Trial,
    /// The flame is proved.
    Heat,
    /// The call is over.
    Postpurge,
    /// Between two tries.
    Interpurge,
    /// A limit is open.
    Limit,
    /// It sees a flame where none may be.
    Uncalled,
    /// Too many tries.
    Lockout,
}

/// A flame current that may not stand before the gas is on, µA.
const UNCALLED: f64 = 0.5;

/// Seconds without flame until a board takes it for lost; standards ask for some 2 at most, by memory.
const LOST: f64 = 1.0;

/// Seconds for which a pilot may be sparked at before it is given up; modules have some 15 to 90 (common practice).
const PILOT_TRIAL: f64 = 60.0;

/// Seconds of a proved flame after which earlier tries no longer count.
const FORGIVEN: f64 = 60.0;

/// The sequence in motion.
#[derive(Clone, Debug)]
pub struct Sequence {
    timings: Timings,
    flame_seen: f64,
    pilot: Option<Pilot>,
    phase: Phase,
    elapsed: f64,
    tries: u8,
    lost: f64,
    blower: bool,
    idle_blower: f64,
}

impl Sequence {
    /// At rest; flame is seen from this current on, µA.
    pub fn new(timings: Timings, flame_seen: f64, pilot: Option<Pilot>) -> Self {
        Self {
            timings,
            flame_seen,
            pilot,
            phase: Phase::Idle,
            elapsed: 0.0,
            tries: 0,
            lost: 0.0,
            blower: false,
            idle_blower: 0.0,
        }
    }

    /// Where it stands.
    pub fn phase(&self) -> Phase {
        self.phase
    }

    /// For how long, s.
    pub fn elapsed(&self) -> f64 {
        self.elapsed
    }

    /// Goes on by some seconds with what it sees.
    pub fn step(&mut self, seen: &Seen, seconds: f64) -> Told {
        if !seen.powered {
            *self = Self::new(self.timings, self.flame_seen, self.pilot);
            return Told::default();
        }
        self.elapsed += seconds;
        if let Some(next) = self.next(seen, seconds) {
            self.phase = next;
            self.elapsed = 0.0;
            self.lost = 0.0;
        }
        self.time_blower(seconds);
        Told {
            inducer: !matches!(self.phase, Phase::Idle | Phase::Lockout),
            igniter: self.lights(),
            valve: matches!(self.phase, Phase::Trial | Phase::Heat),
            blower: self.blower,
            pilot: self.pilot == Some(Pilot::OnCall)
                && matches!(self.phase, Phase::WarmUp | Phase::Trial | Phase::Heat),
            high: self.phase == Phase::Heat && seen.second && self.elapsed >= self.timings.high_after,
        }
    }

    /// Whether what lights the gas is on: at a pilot, until it is proved.
    fn lights(&self) -> bool {
        match self.pilot {
            None => matches!(self.phase, Phase::WarmUp | Phase::Trial),
            Some(Pilot::OnCall) => self.phase == Phase::WarmUp,
            Some(Pilot::Standing) => false,
        }
    }

    /// How a pilot's proving goes on.
    fn prove_pilot(&mut self, pilot: Pilot, flame: f64) -> Option<Phase> {
        match pilot {
            Pilot::Standing => Some(Phase::Trial),
            Pilot::OnCall if flame >= self.flame_seen => Some(Phase::Trial),
            Pilot::OnCall => (self.elapsed >= PILOT_TRIAL).then(|| self.again()),
        }
    }

    fn next(&mut self, seen: &Seen, seconds: f64) -> Option<Phase> {
        let over = |length: f64| self.elapsed >= length;
        let waits_for_call = matches!(self.phase, Phase::Idle | Phase::Postpurge | Phase::Lockout);
        if !seen.call && !waits_for_call {
            return Some(Phase::Postpurge);
        }
        if !seen.limits
            && !matches!(self.phase, Phase::Limit | Phase::Lockout)
            && (seen.call || !waits_for_call)
        {
            return Some(Phase::Limit);
        }
        match self.phase {
            // A switch that is closed already proves nothing: the board waits for it to open.
            Phase::Idle => (seen.call && !seen.switch).then_some(Phase::Draft),
            Phase::Limit => seen.limits.then_some(Phase::Idle),
            Phase::Postpurge => (over(self.timings.postpurge) || seen.call).then_some(Phase::Idle),
            Phase::Lockout => None,
            Phase::Interpurge => over(self.timings.interpurge).then_some(Phase::Draft),
            Phase::Draft => seen.switch.then_some(Phase::Prepurge),
            _ if !seen.switch => Some(Phase::Draft),
            Phase::Prepurge => over(self.timings.prepurge).then_some(match self.pilot {
                // The first spark makes a flame current that is asked for, so it is looked for before.
                Some(Pilot::OnCall) if seen.flame >= UNCALLED => Phase::Uncalled,
                _ => Phase::WarmUp,
            }),
            Phase::WarmUp => match self.pilot {
                Some(pilot) => self.prove_pilot(pilot, seen.flame),
                None if !over(self.timings.warm_up) => None,
                None if seen.flame >= UNCALLED => Some(Phase::Uncalled),
                None => Some(Phase::Trial),
            },
            Phase::Uncalled => (seen.flame < UNCALLED).then_some(Phase::Prepurge),
            Phase::Trial if !over(self.timings.trial) => None,
            Phase::Trial if seen.flame >= self.flame_seen => Some(Phase::Heat),
            Phase::Trial => Some(self.again()),
            Phase::Heat => {
                if self.elapsed > FORGIVEN {
                    self.tries = 0;
                }
                self.lost = if seen.flame < self.flame_seen {
                    self.lost + seconds
                } else {
                    0.0
                };
                (self.lost > LOST).then(|| self.again())
            }
        }
    }

    fn again(&mut self) -> Phase {
        self.tries += 1;
        match self.tries >= self.timings.tries {
            true => Phase::Lockout,
            false => Phase::Interpurge,
        }
    }

    fn time_blower(&mut self, seconds: f64) {
        match self.phase {
            Phase::Limit => {
                self.blower = true;
                self.idle_blower = 0.0;
            }
            Phase::Heat => {
                self.blower |= self.elapsed >= self.timings.blower_on;
                self.idle_blower = 0.0;
            }
            _ => {
                self.idle_blower += seconds;
                self.blower &= self.idle_blower < self.timings.blower_off;
            }
        }
    }
}

#[cfg(test)]
mod tests;
