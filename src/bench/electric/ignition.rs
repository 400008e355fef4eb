//! What lights the gas: a hot surface by its power, or a spark by its gap.

use super::wire::{OPEN, divided};

/// What is wrong with igniter or spark.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Igniter {
    /// Times by which the element's resistance has grown beyond its own when new; 0 in order, `OPEN` broken.
    pub grown: f64,
    /// Resistance that a crack adds once the element is hot, Ω.
    pub crack_ohms: f64,
    /// Resistance of its plug's pins, Ω.
    pub plug_ohms: f64,
    /// Resistance in its wires, Ω.
    pub wire_ohms: f64,
    /// What is wrong with a spark.
    pub spark: Spark,
}

/// What is wrong with a spark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Spark {
    /// Nothing.
    #[default]
    Sound,
    /// The gap is too wide, or its tip burnt away.
    Gap,
    /// The porcelain is cracked.
    Cracked,
    /// The lead is broken or off.
    Lead,
    /// Its source gives none.
    Source,
}

/// Share of its own power below which a hot surface does not light gas. By memory of makers' sheets, which give some 85 to
/// 100 V as the least for a 120 V element: its square.
const LIGHTS: f64 = 0.62;

/// Share of its own power below which an eye behind the sight glass calls it dark.
const SEEN: f64 = 0.25;

/// A sound element: what its plate says of it, and what this one has.
#[derive(Clone, Copy, Debug)]
pub struct Element {
    /// Its supply, V.
    pub volts: f64,
    /// Its warm-up current, A.
    pub amps: f64,
    /// Its resistance at room temperature, Ω.
    pub cold_ohms: f64,
}

/// What shows at the igniter at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Glow {
    /// Volts at its plug.
    pub plug: f64,
    /// Its current, A.
    pub amps: f64,
    /// Whether an eye sees it glow or spark.
    pub seen: bool,
    /// Whether it lights gas.
    pub lights: bool,
}

impl Igniter {
    /// Its resistance at room temperature, Ω.
    pub fn cold_ohms(&self, element: &Element) -> f64 {
        (element.cold_ohms * (1.0 + self.grown)).min(OPEN)
    }

    /// A hot surface that is warmed up at these volts from the board.
    pub fn warm(&self, board: f64, element: &Element) -> Glow {
        let own = element.volts / element.amps;
        let hot = own * (1.0 + self.grown) + self.crack_ohms;
        let load = hot + self.plug_ohms;
        let plug = divided(board, self.wire_ohms, load);
        let amps = plug / load;
        // A crack gets hot as well, but it is not what lights the gas.
        let power = amps * amps * own * (1.0 + self.grown) / (element.volts * element.amps);
        Glow {
            plug,
            amps,
            seen: power >= SEEN,
            lights: power >= LIGHTS,
        }
    }

    /// A spark, with its source switched on or off.
    pub fn spark(&self, on: bool) -> Glow {
        let jumps = on && self.spark == Spark::Sound;
        Glow {
            seen: jumps,
            lights: jumps,
            ..Glow::default()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Silicon carbide: 4 A at 120 V, 40 to 90 Ω cold (common practice).
    const CARBIDE: Element = Element {
        volts: 120.0,
        amps: 4.0,
        cold_ohms: 60.0,
    };

    #[test]
    fn a_sound_element_draws_its_label_and_lights_gas_down_to_some_ninety_five_volts() {
        let sound = Igniter::default();
        let glow = sound.warm(120.0, &CARBIDE);
        assert!((glow.amps - 4.0).abs() < 1e-9 && glow.lights && glow.seen);
        // By memory of makers' sheets: 85 to 100 V are the least for an element of 120 V.
        assert!(sound.warm(100.0, &CARBIDE).lights && !sound.warm(85.0, &CARBIDE).lights);
    }

    #[test]
    fn a_crack_that_opens_hot_measures_well_cold() {
        let cracked = Igniter {
            crack_ohms: 300.0,
            ..Igniter::default()
        };
        assert_eq!(cracked.cold_ohms(&CARBIDE), CARBIDE.cold_ohms);
        let glow = cracked.warm(120.0, &CARBIDE);
        assert!(glow.plug > 119.0 && glow.amps < 0.5 * CARBIDE.amps && !glow.seen);
    }

    #[test]
    fn a_burnt_pin_has_its_volts_before_it_and_no_current_behind() {
        let burnt = Igniter {
            plug_ohms: 500.0,
            ..Igniter::default()
        };
        let glow = burnt.warm(120.0, &CARBIDE);
        assert!(glow.plug > 119.0 && glow.amps < 0.5, "{glow:?}");
    }
}
