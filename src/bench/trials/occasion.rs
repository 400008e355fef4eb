//! Why somebody calls about a furnace that is in order.
//!
//! Owners call for what they notice, and a sound furnace ticks, smells of dust on its first heat and leaves a room over a garage
//! cold. Such calls come in with the same complaints as those about faults, so that the complaint tells nothing.

use crate::bench::dice::Dice;
use crate::bench::make::{Make, Pilot};
use crate::library::Library;

/// A call about a furnace that is in order.
#[derive(Clone, Copy, Debug)]
pub struct Occasion {
    /// The tree of the complaint.
    pub tree: &'static str,
    /// What it was, told afterwards.
    pub why: &'static str,
    /// How often, beside the others.
    weight: usize,
    /// Which furnaces are called about so.
    fits: fn(&Make) -> bool,
}

const fn at_any(tree: &'static str, weight: usize, why: &'static str) -> Occasion {
    let fits = |_: &Make| true;
    Occasion {
        tree,
        why,
        weight,
        fits,
    }
}

const fn at(fits: fn(&Make) -> bool, tree: &'static str, weight: usize, why: &'static str) -> Occasion {
    Occasion {
        tree,
        why,
        weight,
        fits,
    }
}

/// Every one, as a furnace in order shows it (common practice). The weights are nobody's figures: they lie as close as they can
/// to how often the simulated faults come in with the same complaint.
const ALL: &[Occasion] = &[
    at(
        |make| make.pilot().is_none(),
        "no-heat",
        20,
        "The thermostat had been turned down, and somebody turned it up again before you came",
    ),
    at(
        |make| make.pilot() == Some(Pilot::Standing),
        "pilot-furnace",
        20,
        "The pilot had gone out in a gust, and somebody lit it again before you came",
    ),
    at(
        |make| make.pilot() == Some(Pilot::OnCall),
        "pilot-furnace",
        20,
        "A pilot that is lit for each call is out between calls, as it should be",
    ),
    at_any(
        "not-enough-heat",
        5,
        "One side of the house loses more than it gets: a room over a garage stays cold at a sound furnace",
    ),
    at_any("noise", 1, "Sheet metal ticks as it cools, at any furnace"),
    at_any("smell", 1, "Dust burned off on the first call of the season"),
    at_any(
        "does-not-stop",
        2,
        "In the coldest nights a furnace of the right size hardly stops",
    ),
    at_any(
        "airflow",
        1,
        "Moving air feels cool on the skin though it is warm, and far from the blower little of it is felt",
    ),
    at_any(
        "delayed-ignition",
        1,
        "A duct snapped as it warmed; the burners light softly",
    ),
    at_any(
        "condensate",
        2,
        "Water had been spilled beside it; what drains there drains",
    ),
    at_any("tune-up", 5, "It was the yearly service"),
    at_any("combustion-check", 2, "The owner wanted to be sure"),
];

/// Why somebody calls about a sound furnace; none where a library has no tree for any of it.
pub(super) fn occasion_of(library: &Library, make: &Make, dice: &mut Dice) -> Option<&'static Occasion> {
    let known = || {
        let fits =
            |occasion: &&Occasion| (occasion.fits)(make) && library.trees.find(occasion.tree).is_some();
        ALL.iter().filter(fits)
    };
    let mut drawn = dice.below(known().map(|occasion| occasion.weight).sum());
    known().find(|occasion| {
        let is_it = drawn < occasion.weight;
        drawn = drawn.saturating_sub(occasion.weight);
        is_it
    })
}
