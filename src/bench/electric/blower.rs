//! The blower's motor as it is fed: on a speed wire, by 24 V on a tap, or by a command of its own.

use super::motor::{Motor, STARTING};
use super::wire::OPEN;
use crate::bench::make::{Blower, Make};

/// What is at the blower at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BlowerVolts {
    /// At the board's own pin for heat, V; none where it sends a command that no meter reads.
    pub pin: f64,
    /// At the motor's heating tap: line voltage, or 24 V, V.
    pub tap: f64,
    /// At the motor's power plug, V.
    pub power: f64,
    /// Its current, A.
    pub amps: f64,
    /// What it makes of it, as its kind counts it.
    pub turns: f64,
}

/// An electronic motor runs on less line voltage than this no longer, V.
const ELECTRONIC: f64 = 90.0;

/// A tap of 24 V counts as on from here, V.
const COMMANDED: f64 = 15.0;

/// How far friction takes an electronic motor back, per share of its load.
const TAKEN_BACK: f64 = 0.25;

impl BlowerVolts {
    /// What is at it with its relay told and carried or not, at these volts of line and control; `flow` is the air it
    /// moves as a share of the maker's, `before` what it was a moment ago.
    pub fn at(
        make: &Make,
        motor: &Motor,
        relay: Relay,
        line: f64,
        control: f64,
        flow: f64,
        before: &Self,
    ) -> Self {
        let rated = make.blower_amps;
        let live = |volts: f64, on: bool| if on { volts } else { 0.0 };
        let whole = motor.wire_ohms < OPEN;
        if make.blower == Blower::Tapped {
            let pin = live(line, relay.closed);
            let tap = motor.at_plug(live(pin, relay.carries), before.amps);
            let turns = motor.speed(tap / 120.0, true);
            let running = if tap > 0.0 {
                rated * motor.current(turns, flow)
            } else {
                0.0
            };
            let starts = before.turns == 0.0 && turns > 0.0;
            return Self {
                pin,
                tap,
                power: tap,
                amps: if starts { rated * STARTING } else { running },
                turns,
            };
        }
        let pin = live(control, relay.closed);
        let tap = live(pin, relay.carries && whole);
        let runs = tap >= COMMANDED && line >= ELECTRONIC && !motor.is_stuck();
        let turns = (1.0 - TAKEN_BACK * motor.drag).max(0.0) * (1.0 - motor.command_lost);
        Self {
            pin,
            tap,
            power: line,
            amps: if runs {
                rated * motor.current(1.0, flow)
            } else {
                0.0
            },
            turns: if runs { turns } else { 0.0 },
        }
    }
}

/// Its relay on the board.
#[derive(Clone, Copy, Debug)]
pub struct Relay {
    /// Whether it brings voltage to its pin.
    pub closed: bool,
    /// Whether the pin goes on into the wire.
    pub carries: bool,
}
