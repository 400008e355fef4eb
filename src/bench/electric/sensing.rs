//! The flame signal: an alternating voltage on a rod, of which the flame lets one direction through.
//!
//! A flame conducts better from the large burner to the small rod than back, which leaves a few microamperes of direct current.
//! The rest is resistances: in series with the flame (coating, lead, burner ground) they must be as large as the flame's own
//! to matter; across it, a leaking insulator passes both half-waves and takes the voltage from the flame.

use super::wire::{OPEN, divided};

/// What is wrong with the sensing of the flame.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sensing {
    /// Share of the signal that a coating takes, which an abrasive pad takes off.
    pub coated: f64,
    /// Share of the signal that a rod takes that is burnt beyond cleaning.
    pub worn: f64,
    /// Whether rod or porcelain is cracked.
    pub cracked: bool,
    /// Share of the rod that stands out of the flame.
    pub bent: f64,
    /// Resistance from rod to bracket, where it leaks, Ω.
    pub leak: Option<f64>,
    /// Resistance of the lead beyond a sound one's, Ω.
    pub lead_ohms: f64,
    /// Resistance between burners and cabinet beyond a sound joint's, Ω.
    pub ground_ohms: f64,
    /// Direct current that flows without a flame, µA.
    pub standing: f64,
}

/// What the flame itself resists with, Ω: some 100 V drive a few microamperes through it.
const FLAME: f64 = 25e6;

/// What stands between the board's source and the lead, Ω.
const SOURCE: f64 = 1e6;

/// What a cracked porcelain, wet with soot, passes to the bracket, Ω.
const CRACKED: f64 = 8e4;

/// A sound insulator, as makers' sheets and ohmmeters have it: off the scale.
const SOUND: f64 = 1e8;

impl Sensing {
    /// From rod to bracket, Ω.
    pub fn insulation(&self) -> f64 {
        match self.cracked {
            true => CRACKED,
            false => self.leak.unwrap_or(SOUND),
        }
    }

    /// The flame current, µA, where a sound rod in a good flame gives `sound`; `bathed` how well flame stands before it,
    /// `returned` the share that finds its way back to the board.
    pub fn current(&self, sound: f64, bathed: f64, returned: f64) -> f64 {
        let rod = (1.0 - self.coated) * (1.0 - self.worn) * (1.0 - self.bent);
        let leak = divided(1.0, SOURCE, self.insulation()) / divided(1.0, SOURCE, SOUND);
        let way = divided(1.0, self.lead_ohms + self.ground_ohms, FLAME);
        let lead = if self.lead_ohms >= OPEN { 0.0 } else { 1.0 };
        sound * bathed * rod * leak * way * returned + self.standing * lead
    }

    /// The same with a known-good rod in the same place.
    pub fn with_good_rod(&self) -> Self {
        Self {
            lead_ohms: self.lead_ohms,
            ground_ohms: self.ground_ohms,
            ..Self::default()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// In a good flame, of a rod that gives 4 µA: common practice has two to six for a sound one.
    fn current(sensing: &Sensing) -> f64 {
        sensing.current(4.0, 1.0, 1.0)
    }

    #[test]
    fn a_sound_rod_gives_its_microamperes_and_none_without_a_flame() {
        assert!((current(&Sensing::default()) - 4.0).abs() < 0.01);
        assert_eq!(Sensing::default().current(4.0, 0.0, 1.0), 0.0);
    }

    #[test]
    fn in_series_only_what_resists_like_a_flame_matters_and_across_it_far_less_does() {
        let series = |ohms| Sensing {
            ground_ohms: ohms,
            ..Sensing::default()
        };
        // Ohm's law on a flame of some tens of megohms: a joint of ten ohms takes nothing.
        assert!(current(&series(10.0)) > 3.99);
        assert!(current(&series(2.5e8)) < 0.5);
        let leak = |ohms| Sensing {
            leak: Some(ohms),
            ..Sensing::default()
        };
        assert!(current(&leak(5e4)) < 0.3);
        assert!(current(&leak(2e7)) > 3.5);
    }

    #[test]
    fn a_good_rod_in_the_same_place_helps_where_the_rod_was_bad() {
        let worn = Sensing {
            worn: 0.9,
            ..Sensing::default()
        };
        assert!(current(&worn) < 0.5 && current(&worn.with_good_rod()) > 3.9);
        let no_lead = Sensing {
            lead_ohms: OPEN,
            ..Sensing::default()
        };
        assert!(current(&no_lead.with_good_rod()) < 0.2);
    }
}
