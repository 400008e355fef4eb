//! Line voltage: feed, neutral, ground, polarity, and the door switch.
//!
//! The loads' current drops its volts in the hot wire and in the neutral. What the neutral drops stands between it and
//! ground, since the two are joined at the service and nowhere else.

use super::wire::OPEN;

/// What is wrong with the line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Line {
    /// What it is fed from.
    pub feed: Feed,
    /// Resistance in the hot wire beyond a sound one's, Ω.
    pub hot_ohms: f64,
    /// Resistance in the neutral beyond a sound one's, Ω.
    pub neutral_ohms: f64,
    /// The equipment ground.
    pub ground: Ground,
    /// Whether hot and neutral are swapped.
    pub reversed: bool,
    /// Whether the door does not reach its switch.
    pub door_bent: bool,
    /// Resistance of the door switch while it is pressed, Ω.
    pub door_switch_ohms: f64,
    /// Resistance between the door switch and the board beyond a sound wire's, Ω.
    pub inner_ohms: f64,
    /// Resistance of a way from the hot wire to the cabinet, Ω.
    pub short: Option<f64>,
}

/// What feeds the furnace.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Feed {
    /// Its circuit, breaker set and switch closed.
    #[default]
    Live,
    /// The service switch is open.
    SwitchOpen,
    /// The breaker has tripped, for whatever is over now.
    Tripped,
    /// Breaker and switch are on, and nothing comes.
    Dead,
}

/// The equipment ground.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ground {
    /// Joined to the neutral at the service.
    #[default]
    Sound,
    /// The furnace's ground wire is open.
    Lost,
    /// The wire is sound, and the source's neutral is not joined to it (a portable generator).
    NotBonded,
}

/// Resistance of a sound circuit, each way, Ω: some 40 ft of copper No. 14 at 2.5 Ω for 1000 ft (from memory).
const SOUND: f64 = 0.1;

/// What a breaker of 15 A does not carry for long.
const TRIPS: f64 = 15.0;

/// Line voltages at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LineVolts {
    /// Where it enters the furnace, hot to neutral.
    pub at_furnace: f64,
    /// Behind the door switch, pressed.
    pub behind_door: f64,
    /// At the board, hot to neutral.
    pub board: f64,
    /// Board's line terminal to the cabinet.
    pub hot_to_ground: f64,
    /// Board's neutral terminal to the cabinet.
    pub neutral_to_ground: f64,
}

impl Line {
    /// Whether the breaker opens as soon as it is closed.
    pub fn trips(&self, source: f64) -> bool {
        self.short
            .is_some_and(|ohms| source / (ohms + 2.0 * SOUND) > TRIPS)
    }

    /// Whether its breaker stands tripped.
    pub fn is_tripped(&self, source: f64) -> bool {
        self.feed == Feed::Tripped || self.trips(source)
    }

    /// The voltages with these loads, A, at a source of these volts; `stray` is the share of the line that the cabinet
    /// takes on through filters and leakage when nothing holds it at ground.
    pub fn volts(&self, source: f64, amps: f64, stray: f64) -> LineVolts {
        if self.feed != Feed::Live || self.trips(source) {
            return LineVolts::default();
        }
        // Beyond the door switch, an open circuit carries no current for its drop to be worked out from.
        let door_open = self.door_switch_ohms >= OPEN;
        let inner_open = self.inner_ohms >= OPEN;
        let drawn = if door_open || inner_open { 0.0 } else { amps };
        let neutral = drawn * (SOUND + self.neutral_ohms);
        let at_furnace = (source - drawn * (2.0 * SOUND + self.hot_ohms + self.neutral_ohms)).max(0.0);
        let behind_door = match door_open {
            true => 0.0,
            false => (at_furnace - drawn * self.door_switch_ohms).max(0.0),
        };
        let board = match inner_open {
            true => 0.0,
            false => (behind_door - drawn * self.inner_ohms).max(0.0),
        };
        let (hot, neutral) = match (self.ground, self.reversed) {
            (Ground::Sound, false) => (board + neutral, neutral),
            (Ground::Sound, true) => (neutral, board + neutral),
            (Ground::Lost | Ground::NotBonded, _) => (board * stray, board * (1.0 - stray)),
        };
        let live = board > 0.0;
        LineVolts {
            at_furnace,
            behind_door,
            board,
            hot_to_ground: if live { hot } else { 0.0 },
            neutral_to_ground: if live { neutral } else { 0.0 },
        }
    }

    /// Share of a flame's current that finds its way back to the board.
    ///
    /// The board drives the rod from its hot terminal and looks for what returns by ground. Swapped wires leave nothing
    /// between the rod and ground; without ground, only what strays through capacitances returns.
    pub fn flame_return(&self) -> f64 {
        match (self.ground, self.reversed) {
            (_, true) => 0.0,
            (Ground::Sound, false) => 1.0,
            (Ground::Lost | Ground::NotBonded, false) => 0.06,
        }
    }

    /// Resistance from the cabinet to the supply's ground, Ω.
    pub fn ground_ohms(&self) -> f64 {
        match self.ground {
            Ground::Sound | Ground::NotBonded => 0.2,
            Ground::Lost => OPEN,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What a meter shows at some amperes, with the cabinet at 0.4 of the line where nothing grounds it.
    fn shown(line: &Line, amps: f64) -> LineVolts {
        line.volts(120.0, amps, 0.4)
    }

    #[test]
    fn a_loose_neutral_stands_away_from_ground_by_what_it_drops() {
        let line = Line {
            neutral_ohms: 2.0,
            ..Line::default()
        };
        let volts = shown(&line, 5.0);
        // Ohm's law: 5 A through 2 Ω and the sound wire's share.
        assert!((volts.neutral_to_ground - 5.0 * 2.1).abs() < 1e-9, "{volts:?}");
        assert!((volts.hot_to_ground - volts.board - volts.neutral_to_ground).abs() < 1e-9);
        assert!(volts.board < 110.0, "{volts:?}");
    }

    #[test]
    fn swapped_wires_put_the_neutral_terminal_at_line_voltage() {
        let line = Line {
            reversed: true,
            ..Line::default()
        };
        let volts = shown(&line, 1.0);
        // Common practice: about nothing from the line terminal to ground, line voltage from the neutral one.
        assert!(
            volts.hot_to_ground < 2.0 && volts.neutral_to_ground > 108.0,
            "{volts:?}"
        );
        assert!(volts.board > 108.0, "every motor runs all the same: {volts:?}");
    }

    #[test]
    fn a_cabinet_without_ground_wanders_between_the_wires() {
        for ground in [Ground::Lost, Ground::NotBonded] {
            let line = Line {
                ground,
                ..Line::default()
            };
            let volts = shown(&line, 1.0);
            // Common practice: about half of the line, or wandering.
            assert!((20.0..108.0).contains(&volts.hot_to_ground), "{volts:?}");
            assert!(line.flame_return() < 0.1);
        }
        // What tells them apart: the ground wire itself.
        let resistance = |ground| {
            let line = Line {
                ground,
                ..Line::default()
            };
            line.ground_ohms()
        };
        assert!(resistance(Ground::Lost) > 1.0 && resistance(Ground::NotBonded) < 1.0);
    }

    #[test]
    fn a_dead_short_trips_the_breaker_and_a_leak_does_not() {
        let short = |ohms| Line {
            short: Some(ohms),
            ..Line::default()
        };
        assert!(short(0.5).trips(120.0) && shown(&short(0.5), 1.0) == LineVolts::default());
        assert!(!short(1_000.0).trips(120.0));
    }
}
