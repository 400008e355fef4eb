//! Names that look like one: those of equipment, and those of technicians, that differ in case, blanks and punctuation only.
//!
//! Compared are their letters and digits, composed (Unicode's normalization form KC, so that two codings of one `É` are one) and
//! lower-cased, and where two numbers are parted: `1-12` is not like `11-2`, but `F-12` is like `f12`. A name without any is like no other. They are never taken for one, since they may well be two. But where they are one, a
//! call at one name is no callback of a call at the other.

use std::hash::{BuildHasher, Hasher};
use std::sync::Arc;

use foldhash::fast::RandomState;
use serde::Serialize;
use unicode_normalization::UnicodeNormalization;

use super::super::rows::Rows;
use super::super::summary::SessionRef;
use super::super::visits::{NO_NAME, NameNo, Visits};

/// Names that look like one, of equipment and of technicians.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LookAlikes {
    /// Of equipment.
    pub equipment: Rows<Alike>,
    /// Of technicians.
    pub technicians: Rows<Alike>,
}

/// Names that look like one: two at least.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Alike {
    /// The names, that with most calls first.
    pub names: Vec<Spelling>,
}

/// One of them.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Spelling {
    /// The name, as it stands in its calls.
    pub name: String,
    /// How many calls have it.
    pub calls: u64,
    /// The latest of them.
    pub latest: SessionRef,
}

/// How often a name is used, and in which call last.
#[derive(Clone, Copy, Debug, Default)]
struct Used {
    calls: u32,
    latest: u32,
}

/// Looks for names that look like one.
pub(in super::super) fn look_alikes(visits: &Arc<Visits>) -> LookAlikes {
    LookAlikes {
        equipment: alike(visits, Visits::equipment),
        technicians: alike(visits, Visits::technician),
    }
}

/// Those of what each call names. An archive has a name for each furnace, so no second text is made of any.
fn alike(visits: &Arc<Visits>, named: fn(&Visits, u32) -> NameNo) -> Rows<Alike> {
    let uses = uses(visits, named);
    let hasher = RandomState::default();
    let mut hashed: Vec<(u64, NameNo)> = (0..)
        .zip(&uses)
        .filter(|(_, used)| used.calls > 0)
        .filter_map(|(name, _)| Some((hash(&hasher, visits.named(name)?)?, name)))
        .collect();
    hashed.sort_unstable();
    let mut groups: Vec<Box<[(NameNo, Used)]>> = Vec::new();
    for same in hashed.chunk_by_mut(|(one, _), (other, _)| one == other) {
        if same.len() < 2 {
            continue;
        }
        // Two hashes may be one by chance.
        let text = |(_, name): &(u64, NameNo)| visits.named(*name).unwrap_or_default();
        same.sort_unstable_by(|one, other| compared(text(one)).cmp(compared(text(other))));
        let alike = same.chunk_by(|one, other| compared(text(one)).eq(compared(text(other))));
        for group in alike.filter(|group| group.len() > 1) {
            let mut group: Box<[_]> = (group.iter())
                .map(|(_, name)| (*name, uses[*name as usize]))
                .collect();
            group.sort_unstable_by(|(one, first), (other, second)| {
                let by_name = || visits.named(*one).cmp(&visits.named(*other));
                second.calls.cmp(&first.calls).then_with(by_name)
            });
            groups.push(group);
        }
    }
    groups.sort_unstable_by(|one, other| visits.named(one[0].0).cmp(&visits.named(other[0].0)));
    Rows::of(visits, groups, |visits, group| Alike {
        names: (group.iter())
            .map(|(name, used)| Spelling {
                name: visits.owned(*name).unwrap_or_default(),
                calls: used.calls.into(),
                latest: visits.session(used.latest),
            })
            .collect(),
    })
}

/// How each name is used, by its number.
fn uses(visits: &Visits, named: fn(&Visits, u32) -> NameNo) -> Vec<Used> {
    let mut uses: Vec<Used> = Vec::new();
    for call in 0..visits.len() as u32 {
        let name = named(visits, call);
        if name == NO_NAME {
            continue;
        }
        let place = name as usize;
        if uses.len() <= place {
            uses.resize(place + 1, Used::default());
        }
        let used = &mut uses[place];
        if used.calls == 0 || visits.opened(call) >= visits.opened(used.latest) {
            used.latest = call;
        }
        used.calls += 1;
    }
    uses
}

/// What is compared of a name: its letters and digits, and where two numbers are parted.
fn compared(name: &str) -> impl Iterator<Item = char> {
    let (mut before, mut is_parted) = (None, false);
    // Upper case first: only so is `ß` like `SS`.
    let composed = name.nfkc().flat_map(char::to_uppercase);
    let lower = composed.flat_map(char::to_lowercase);
    let taken = lower.flat_map(move |character| {
        if !character.is_alphanumeric() {
            is_parted = true;
            return [None, None];
        }
        let parts_numbers = is_parted && character.is_numeric() && before.is_some_and(char::is_numeric);
        (before, is_parted) = (Some(character), false);
        [parts_numbers.then_some('-'), Some(character)]
    });
    taken.flatten()
}

/// A hash of that; none where there is nothing to compare.
fn hash(hasher: &RandomState, name: &str) -> Option<u64> {
    let mut characters = compared(name).peekable();
    characters.peek()?;
    let mut hash = hasher.build_hasher();
    characters.for_each(|character| hash.write_u32(character.into()));
    Some(hash.finish())
}
