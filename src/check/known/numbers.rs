//! What is known of one number.

use crate::library::{Id, PlateField};
use crate::measure::{Band, End, Interval};

/// What a bound is measured from: nothing, or a share of a plate field. Two bounds of one term compare whatever the plate
/// says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::check) struct Term(pub Option<(f64, Id<PlateField>)>);

/// What is known of one number: how far it lies from each term, as every band it was sorted into says.
#[derive(Clone, Debug, Default, PartialEq)]
pub(in crate::check) struct Numbers(Vec<(Term, Interval)>);

/// Numbers to compare and hash by: the bits of each part.
pub(super) type Key = Vec<(u64, usize, u64, bool, u64, bool)>;

impl Numbers {
    /// What is known once the number was sorted into a band as well.
    pub fn and(&self, band: &Band<Id<PlateField>>) -> Self {
        let mut known = self.clone();
        for condition in &band.conditions {
            let term = Term(condition.bound.share);
            let end = condition.bound.offset.map_or(0.0, |offset| offset.base());
            known.narrow(term, side(condition.relation, end));
        }
        known
    }

    fn narrow(&mut self, term: Term, to: Interval) {
        let place = self.0.iter().position(|(known, _)| *known == term);
        match place {
            Some(at) => self.0[at].1 = self.0[at].1.intersect(to),
            None => {
                self.0.push((term, to));
                self.0.sort_by_key(|(term, _)| term_key(*term));
            }
        }
    }

    /// What is still known once a plate field is read anew.
    pub fn without(&self, field: Id<PlateField>) -> Self {
        let kept = |term: &Term| term.0.is_none_or(|(_, leans_on)| leans_on != field);
        Self(self.0.iter().filter(|(term, _)| kept(term)).copied().collect())
    }

    /// How far it lies from each term.
    pub fn parts(&self) -> impl Iterator<Item = (Term, Interval)> + '_ {
        self.0.iter().copied()
    }

    /// Whether two bounds of one term leave nothing between them.
    pub fn is_plainly_empty(&self) -> bool {
        self.0.iter().any(|(_, interval)| interval.is_empty())
    }

    /// Whether no plate is needed to decide what it leaves.
    pub fn is_fixed(&self) -> bool {
        self.0.iter().all(|(term, _)| term.0.is_none())
    }

    /// Whether the bounds of one term alone put it within what `other` says.
    pub fn is_plainly_within(&self, other: &Self) -> bool {
        other.0.iter().all(|(term, wide)| {
            let mine = self.0.iter().find(|(known, _)| known == term);
            mine.is_some_and(|(_, narrow)| narrow.is_within(*wide))
        })
    }

    /// The same to the bit where it is the same.
    pub fn key(&self) -> Key {
        let parts = self.0.iter().map(|(term, interval)| {
            let (share, field) = term_key(*term);
            let (low, low_open) = end_key(interval.low);
            let (high, high_open) = end_key(interval.high);
            (share, field, low, low_open, high, high_open)
        });
        parts.collect()
    }
}

/// Where a band puts a number, if no bound of it leans on the plate: what [`Numbers`] would say of it, without keeping it.
pub(super) fn fixed(band: &Band<Id<PlateField>>) -> Option<Interval> {
    let mut all = Interval::everything();
    for condition in &band.conditions {
        if condition.bound.share.is_some() {
            return None;
        }
        let end = condition.bound.offset.map_or(0.0, |offset| offset.base());
        all = all.intersect(side(condition.relation, end));
    }
    Some(all)
}

fn side(relation: crate::measure::Relation, end: f64) -> Interval {
    let end = if relation.is_strict() {
        End::Open(end)
    } else {
        End::Closed(end)
    };
    let everything = Interval::everything();
    match relation.is_lower() {
        true => Interval {
            low: end,
            ..everything
        },
        false => Interval {
            high: end,
            ..everything
        },
    }
}

fn term_key(term: Term) -> (u64, usize) {
    term.0
        .map_or((0, 0), |(share, field)| (share.to_bits(), field.index() + 1))
}

fn end_key(end: End) -> (u64, bool) {
    // Nothing has two signs.
    ((end.value() + 0.0).to_bits(), matches!(end, End::Open(_)))
}
