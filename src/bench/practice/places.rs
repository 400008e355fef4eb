//! Where a probe could go for a reading: where it should, and a few places that look as likely.

use super::groups::Groups;
use crate::bench::dice::{Dice, seed_of};
use crate::library::{Datum, Id, Library, Obtained, Reading};
use crate::source::{Safe, safe};

/// Places beside the right one.
const WRONG: usize = 3;

/// A place for a probe.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The reading that is taken there.
    pub reading: Id<Reading>,
    /// Where that is, in words.
    pub words: Safe,
}

/// The places on offer for a reading, in an order that the seed decides: the same each time it is asked for.
///
/// The wrong ones are those in the same unit first, and of them those of the same group: what a probe could be confused with.
pub fn places(library: &Library, groups: &Groups, of: Id<Reading>, seed: u64) -> Vec<Place> {
    let mut dice = Dice::new(seed_of(&[seed, of.index() as u64]));
    let group = groups
        .data
        .iter()
        .find(|group| group.members.contains(&Datum::Reading(of)));
    let near = |id: Id<Reading>| group.is_some_and(|group| group.members.contains(&Datum::Reading(id)));
    let words = |id: Id<Reading>| words(&library.readings[id]);
    let right = words(of);
    let scale = library.readings[of].scale;
    let offered = |id: Id<Reading>| {
        groups
            .data
            .iter()
            .any(|group| group.members.contains(&Datum::Reading(id)))
    };
    let mut others: Vec<((bool, bool), u64, Place)> = (library.readings.iter())
        .filter(|(id, reading)| {
            let measured = matches!(reading.source_of_value, Obtained::Measured(_));
            *id != of && measured && offered(*id)
        })
        .map(|(id, reading)| {
            let place = Place {
                reading: id,
                words: words(id),
            };
            ((reading.scale != scale, !near(id)), dice.whole(), place)
        })
        // Two in the same words could not be told apart.
        .filter(|(_, _, place)| place.words != right)
        .collect();
    others.sort_by_key(|(far, drawn, _)| (*far, *drawn));
    let mut places: Vec<Place> = others.into_iter().take(WRONG).map(|(.., place)| place).collect();
    let at = dice.below(places.len() + 1);
    places.insert(
        at,
        Place {
            reading: of,
            words: right,
        },
    );
    places
}

/// Where the probe goes, without what it should show there; what it is called, where the registry does not say.
fn words(reading: &Reading) -> Safe {
    let how = reading.taking.how.as_deref().unwrap_or_default();
    let how = how.split_whitespace().collect::<Vec<_>>().join(" ");
    let place = (how.split_inclusive(". "))
        .take_while(|sentence| !tells_what_is_good(sentence))
        .collect::<String>();
    match place.trim() {
        "" => safe(&reading.title),
        place => safe(place),
    }
}

/// Whether a sentence says what a good reading looks like.
fn tells_what_is_good(sentence: &str) -> bool {
    ["Good", "Closed:", "Open:"]
        .iter()
        .any(|word| sentence.starts_with(word))
}
