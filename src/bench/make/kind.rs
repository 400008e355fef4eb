//! Kinds of furnace: what its sequence is, and what it has for it.

use super::Make;
use crate::bench::dice::Dice;

/// What a furnace is by its sequence.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// Induced draft and one stage.
    OneStage,
    /// Induced draft and two stages: it lights on low.
    TwoStage(Staging),
    /// A pilot lights the burners; an inducer draws, as behind a draft hood nothing of the pilot would be otherwise.
    Pilot(Pilot),
    /// One of two on one duct, which hears the call by way of the other.
    Twin(Link),
}

/// What a furnace of two stages has for them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Staging {
    /// Manifold pressure on low fire, in.w.c.
    pub low_manifold: f64,
    /// What asks for high fire.
    pub by: StagedBy,
    /// Seconds of proved flame on low before the board goes high when it is asked.
    pub after: f64,
}

/// What asks for high fire.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StagedBy {
    /// A second call of the thermostat, W2.
    Thermostat,
    /// The board's own timer.
    Timer,
}

/// What holds a pilot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pilot {
    /// It always burns, and a thermocouple holds its gas.
    Standing,
    /// A spark lights it on each call, and its flame current proves it.
    OnCall,
}

/// What joins twins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Link {
    /// A wire from board to board.
    Wire,
    /// A relay or kit of its own.
    Kit,
}

/// What a low-speed inducer draws above its low fire: low fire burns a little leaner, common practice.
const LEANER: f64 = 1.05;

impl Make {
    /// What it has for two stages, where it has two.
    pub fn staging(&self) -> Option<Staging> {
        match self.kind {
            Kind::TwoStage(staging) => Some(staging),
            _ => None,
        }
    }

    /// What holds its pilot, where it has one.
    pub fn pilot(&self) -> Option<Pilot> {
        match self.kind {
            Kind::Pilot(pilot) => Some(pilot),
            _ => None,
        }
    }

    /// What joins it to its twin, where it has one.
    pub fn link(&self) -> Option<Link> {
        match self.kind {
            Kind::Twin(link) => Some(link),
            _ => None,
        }
    }

    /// The fire it lights on, share of its input: by the square-root law, from the pressures of its plate.
    pub fn low_fire(&self) -> f64 {
        self.staging()
            .map_or(1.0, |staging| (staging.low_manifold / self.manifold).sqrt())
    }

    /// The speed at which its inducer proves the draft for that fire, share of its full speed.
    pub fn low_speed(&self) -> f64 {
        match self.staging() {
            Some(_) => LEANER * self.low_fire(),
            None => 1.0,
        }
    }
}

impl Kind {
    /// A kind for a furnace, by shares that are plausible among those in use: of those that condense, some four in ten have two
    /// stages; pilots are left among those that do not. No count is published; common practice.
    pub(super) fn drawn(dice: &mut Dice, condensing: bool, manifold: f64) -> Self {
        let share = dice.share();
        let (two_stage, pilot) = if condensing { (0.38, 0.0) } else { (0.2, 0.14) };
        let twin = 0.03;
        if share < two_stage {
            Self::TwoStage(Staging::drawn(dice, manifold))
        } else if share < two_stage + pilot {
            Self::Pilot(match dice.chance(0.35) {
                true => Pilot::Standing,
                false => Pilot::OnCall,
            })
        } else if share < two_stage + pilot + twin {
            Self::Twin(match dice.chance(0.3) {
                true => Link::Kit,
                false => Link::Wire,
            })
        } else {
            Self::OneStage
        }
    }
}

impl Staging {
    /// About half of the pressure on high, which makes some 70 per cent of the fire; timers of 5 to 10 minutes, and a
    /// thermostat's second call after two or three, are common practice.
    fn drawn(dice: &mut Dice, manifold: f64) -> Self {
        let low = manifold * dice.one_of([0.46, 0.49, 0.51]);
        let timer = dice.chance(0.4);
        Self {
            low_manifold: (low * 10.0).round() / 10.0,
            by: if timer {
                StagedBy::Timer
            } else {
                StagedBy::Thermostat
            },
            after: match timer {
                true => dice.one_of([300.0, 480.0, 600.0]),
                false => dice.one_of([120.0, 180.0]),
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn makes() -> impl Iterator<Item = Make> {
        (0..2_000).map(Make::random)
    }

    #[test]
    fn low_fire_is_some_seven_tenths_of_the_input() {
        for make in makes().filter(|make| make.staging().is_some()) {
            // Common practice: two-stage furnaces have 65 to 75 per cent of their input on low.
            assert!((0.65..0.75).contains(&make.low_fire()), "{make:?}");
            assert!(make.low_speed() < 1.0, "{make:?}");
        }
    }

    #[test]
    fn every_kind_comes_up_and_pilots_only_where_nothing_condenses() {
        let share = |is: fn(&Make) -> bool| makes().filter(is).count() as f64 / 2_000.0;
        assert!((0.2..0.4).contains(&share(|make| make.staging().is_some())));
        assert!((0.03..0.1).contains(&share(|make| make.pilot().is_some())));
        assert!((0.01..0.06).contains(&share(|make| make.link().is_some())));
        assert!(makes().all(|make| make.pilot().is_none() || !make.condensing));
        for pilot in [Pilot::Standing, Pilot::OnCall] {
            assert!(makes().any(|make| make.pilot() == Some(pilot)));
        }
        for link in [Link::Wire, Link::Kit] {
            assert!(makes().any(|make| make.link() == Some(link)));
        }
    }
}
