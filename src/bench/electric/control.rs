//! Control voltage: transformer, low-voltage fuse, and the circuits that load them.
//!
//! The transformer is a voltage behind a resistance: at 40 VA it gives its 24 V, without load some 8 % more. Regulation of
//! five to ten percent is common practice for transformers of this size.

use super::wire::OPEN;

/// What is wrong with transformer, fuse and 24 V circuits.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Control {
    /// Whether the primary is on the 240 V tap.
    pub wrong_tap: bool,
    /// Whether the wires to the primary are open.
    pub feed_open: bool,
    /// Share of the secondary's voltage that is lost to shorted or open turns.
    pub lost: f64,
    /// Resistance of loads that were added right at the transformer, Ω.
    pub added: Option<f64>,
    /// Resistance of a short in the thermostat's cable, R to C, Ω.
    pub cable_short: Option<f64>,
    /// Resistance of a shorted cooling circuit, Ω.
    pub cooling_short: Option<f64>,
    /// Resistance of a shorted humidifier or other accessory, Ω.
    pub accessory_short: Option<f64>,
    /// Whether the fuse is blown, for whatever is over now.
    pub fuse_blown: bool,
}

/// No load, at 120 V on the primary, V.
const UNLOADED: f64 = 25.8;

/// Resistance of the windings as the secondary shows it, Ω: 25.8 V falls to 24 V at 40 VA.
const WINDINGS: f64 = 1.08;

/// Low-voltage fuse, A: three or five are printed on boards, common practice.
const FUSE: f64 = 5.0;

/// What the board itself draws, Ω.
const BOARD: f64 = 110.0;

/// Where the transformer has a breaker of its own, it carries this much, A.
const OWN_BREAKER: f64 = 3.5;

/// What has let go on the control side and stays so.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Latches {
    /// The low-voltage fuse is blown.
    pub fuse: bool,
    /// The transformer's own breaker has tripped.
    pub breaker: bool,
}

/// Control voltages at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ControlVolts {
    /// At the transformer's primary.
    pub primary: f64,
    /// At the secondary with its load off.
    pub unloaded: f64,
    /// At the board, R to C.
    pub board: f64,
}

impl Control {
    /// What has let go before anything is switched on.
    pub fn latched(&self, fused: bool) -> Latches {
        // The cooling circuit was last energised in another season.
        let shorted = self.fuse_blown || self.cooling_short.is_some();
        Latches {
            fuse: fused && shorted,
            breaker: !fused && self.cooling_short.is_some(),
        }
    }

    /// The voltages at a line of these volts. `siemens` is what the switched loads behind the fuse conduct, `called`
    /// whether accessories are switched on. Lets go what cannot carry it.
    pub fn volts(
        &self,
        line: f64,
        siemens: f64,
        called: bool,
        fused: bool,
        latches: &mut Latches,
    ) -> ControlVolts {
        let primary = if self.feed_open { 0.0 } else { line };
        let tap = if self.wrong_tap { 0.5 } else { 1.0 };
        let unloaded = primary / 120.0 * UNLOADED * tap * (1.0 - self.lost);
        let accessory = self.accessory_short.filter(|_| called);
        let shorts = [self.cable_short, accessory];
        let behind_fuse = shorts
            .into_iter()
            .flatten()
            .fold(1.0 / BOARD + siemens, |sum, ohms| sum + 1.0 / ohms);
        let before_fuse = self.added.map_or(0.0, |ohms| 1.0 / ohms);
        let behind_fuse = if latches.fuse { 0.0 } else { behind_fuse };
        let loaded = match latches.breaker {
            true => 0.0,
            false => unloaded / (1.0 + WINDINGS * (behind_fuse + before_fuse)),
        };
        latches.fuse |= fused && loaded * behind_fuse > FUSE;
        latches.breaker |= !fused && loaded * (behind_fuse + before_fuse) > OWN_BREAKER;
        let dead = latches.fuse || latches.breaker;
        ControlVolts {
            primary,
            unloaded,
            board: if dead { 0.0 } else { loaded },
        }
    }

    /// Resistance of the thermostat's cable, R to C, off the board and with the thermostat off its base, Ω.
    pub fn cable_ohms(&self) -> f64 {
        self.cable_short.unwrap_or(OPEN)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn board(control: &Control, siemens: f64, fused: bool) -> (f64, Latches) {
        let mut latches = control.latched(fused);
        let volts = control.volts(120.0, siemens, true, fused, &mut latches);
        (volts.board, latches)
    }

    #[test]
    fn a_transformer_gives_its_volts_at_its_rated_load_and_a_little_more_without() {
        // 40 VA at 24 V: 1.667 A, of which the board takes its share.
        let rated = 40.0 / 24.0 / 24.0 - 1.0 / BOARD;
        let (loaded, _) = board(&Control::default(), rated, true);
        assert!((loaded - 24.0).abs() < 0.1, "{loaded}");
        let regulation = UNLOADED / loaded - 1.0;
        // Common practice for small transformers: five to ten per cent from no load to full.
        assert!((0.05..0.10).contains(&regulation), "{regulation}");
    }

    #[test]
    fn a_shorted_circuit_blows_the_fuse_or_trips_the_breaker_where_none_is_fitted() {
        let control = Control {
            accessory_short: Some(0.5),
            ..Control::default()
        };
        let (volts, latches) = board(&control, 0.0, true);
        assert!(volts == 0.0 && latches.fuse && !latches.breaker);
        let (volts, latches) = board(&control, 0.0, false);
        assert!(volts == 0.0 && latches.breaker && !latches.fuse);
    }

    #[test]
    fn a_valve_and_a_few_relays_blow_nothing() {
        let (volts, latches) = board(&Control::default(), 0.5 / 24.0 + 4.0 / 400.0, true);
        assert!((20.4..26.4).contains(&volts) && latches == Latches::default());
    }

    #[test]
    fn the_wrong_tap_halves_it() {
        let control = Control {
            wrong_tap: true,
            ..Control::default()
        };
        let (volts, _) = board(&control, 0.0, true);
        // 120 V on a tap for 240 V.
        assert!((11.0..14.0).contains(&volts), "{volts}");
    }
}
