//! The thermocouple of a standing pilot, and the magnet that it holds.
//!
//! # Equations
//!
//! A source behind its own resistance: `volts = emf * (contact + magnet) / (own + contact + magnet)` connected, and the whole
//! `emf` alone. The magnet holds by its ampere-turns: a dirty contact raises what the nut shows, and starves it. In an open
//! circuit no current flows, so the nut shows the whole `emf`, and nothing is held.
//!
//! # References
//!
//! - 25 to 35 mV alone, about half of it under load, and a magnet that lets go below some 4 to 6 mV under load: common practice.

/// What is wrong with thermocouple and magnet.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Thermocouple {
    /// Share of its voltage that a worn junction lacks.
    pub weak: f64,
    /// Share of it that stands out of the flame.
    pub out_of_flame: f64,
    /// Share of the magnet's turns that are shorted.
    pub magnet_shorted: f64,
    /// Whether the magnet's armature does not stay, whatever flows.
    pub lets_go: bool,
    /// What a dirty contact in its circuit puts in the way, mΩ.
    pub contact: f64,
    /// Whether a spill, rollout or limit switch in its circuit is open.
    pub chain_open: bool,
}

/// What shows at it at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Held {
    /// At its nut, connected, mV.
    pub connected: f64,
    /// Unscrewed, mV.
    pub alone: f64,
    /// Across the switches and joints between nut and valve, mV.
    pub on_the_way: f64,
    /// Whether the magnet holds the pilot's gas.
    pub holds: bool,
}

/// In a good flame, alone, mV.
const EMF: f64 = 30.0;
/// Resistance of the thermocouple, and of a sound magnet, mΩ.
const OWN: f64 = 25.0;
const MAGNET: f64 = 20.0;
/// Share of a sound circuit's ampere-turns from which the magnet holds.
const HOLDS: f64 = 0.4;
/// A pilot of so small a size leaves it cold, and one so much larger warms it through.
const COLD: f64 = 0.2;
const WARMS: f64 = 0.4;

impl Thermocouple {
    /// What it gives in a pilot flame of this size, a share of a good one's, once it is warm.
    pub fn in_flame(&self, pilot: f64) -> Held {
        let warm = ((pilot - COLD) / WARMS).clamp(0.0, 1.0);
        let alone = EMF * warm * (1.0 - self.weak) * (1.0 - self.out_of_flame);
        if self.chain_open {
            return Held {
                connected: alone,
                alone,
                on_the_way: alone,
                holds: false,
            };
        }
        let turns = 1.0 - self.magnet_shorted;
        let magnet = MAGNET * turns;
        let amps = alone / (OWN + self.contact + magnet);
        let sound = EMF / (OWN + MAGNET);
        Held {
            connected: amps * (self.contact + magnet),
            alone,
            on_the_way: amps * self.contact,
            holds: !self.lets_go && amps * turns >= HOLDS * sound,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_good_thermocouple_gives_its_millivolts_alone_and_about_half_under_load() {
        let good = Thermocouple::default().in_flame(1.0);
        // Common practice: 25 to 35 mV alone, 10 mV and more connected.
        assert!((25.0..35.0).contains(&good.alone) && (10.0..20.0).contains(&good.connected));
        assert!(good.holds);
        assert!(
            !Thermocouple::default().in_flame(0.1).holds,
            "a flame that hardly burns"
        );
    }

    #[test]
    fn a_magnet_lets_a_weak_one_go_at_some_five_millivolts() {
        let connected = |weak| {
            Thermocouple {
                weak,
                ..Thermocouple::default()
            }
            .in_flame(1.0)
        };
        let last = (0..100)
            .map(|percent| connected(f64::from(percent) / 100.0))
            .filter(|held| held.holds)
            .map(|held| held.connected)
            .fold(f64::INFINITY, f64::min);
        // Common practice: it lets go below some 4 to 6 mV under load.
        assert!((4.0..6.0).contains(&last), "{last}");
    }

    #[test]
    fn shorted_turns_take_the_volts_only_while_it_is_connected_and_an_open_switch_takes_none() {
        let shorted = Thermocouple {
            magnet_shorted: 0.9,
            ..Thermocouple::default()
        }
        .in_flame(1.0);
        assert!(shorted.connected < 8.0 && shorted.alone > 20.0 && !shorted.holds);
        let dirty = Thermocouple {
            contact: 90.0,
            ..Thermocouple::default()
        }
        .in_flame(1.0);
        assert!(dirty.connected > 15.0 && dirty.on_the_way > 10.0 && !dirty.holds);
        let open = Thermocouple {
            chain_open: true,
            ..Thermocouple::default()
        }
        .in_flame(1.0);
        assert!(open.connected == open.alone && !open.holds);
    }
}
