//! Bands with fixed ends: sorted, then swept once from below.

use std::cmp::Ordering;

use crate::measure::{End, Interval};

/// The order of lower ends: which interval starts earlier.
fn from(a: End, b: End) -> Ordering {
    let open = |end| matches!(end, End::Open(_));
    a.value().total_cmp(&b.value()).then(open(a).cmp(&open(b)))
}

/// The order of upper ends: which interval stops earlier.
fn to(a: End, b: End) -> Ordering {
    a.value().total_cmp(&b.value()).then(from(b, a))
}

/// The intervals of `domain` that none of the bands takes, from below.
pub(super) fn gaps(domain: Interval, bands: &[Interval]) -> Vec<Interval> {
    let mut bands: Vec<Interval> = bands.iter().map(|band| band.intersect(domain)).collect();
    bands.retain(|band| !band.is_empty());
    bands.sort_by(|a, b| from(a.low, b.low));
    let mut gaps = Vec::new();
    let mut free = domain.low;
    for band in bands {
        gaps.push(Interval {
            low: free,
            high: beyond(band.low),
        });
        // What is free next starts where the farthest band so far stops.
        if from(free, beyond(band.high)).is_lt() {
            free = beyond(band.high);
        }
    }
    gaps.push(Interval {
        low: free,
        high: domain.high,
    });
    gaps.retain(|gap| !gap.is_empty());
    gaps
}

/// Whether bands follow one another, up or down as they are written, from one end of all numbers to the other: then there is
/// neither a gap nor an overlap. So nearly all are written, and this takes no sorting.
pub(super) fn follow_one_another(bands: impl DoubleEndedIterator<Item = Interval> + Clone) -> bool {
    rise(bands.clone()) || rise(bands.rev())
}

fn rise(bands: impl Iterator<Item = Interval>) -> bool {
    let everything = Interval::everything();
    let mut free = everything.low;
    for band in bands {
        if band.low != free || band.is_empty() {
            return false;
        }
        free = beyond(band.high);
    }
    free == beyond(everything.high)
}

/// The end of what lies on the other side of this one.
fn beyond(end: End) -> End {
    match end {
        End::Open(at) if at.is_finite() => End::Closed(at),
        End::Open(at) | End::Closed(at) => End::Open(at),
    }
}

/// Pairs of bands that share values, by position: for each band, the one before it in the sweep that reaches farthest.
///
/// That is one pair a band at most, and none is missed for good: whoever mends them all has no overlap left.
pub(super) fn overlaps(bands: &[Interval]) -> Vec<(usize, usize)> {
    let mut order: Vec<usize> = (0..bands.len()).filter(|&band| !bands[band].is_empty()).collect();
    order.sort_by(|&a, &b| from(bands[a].low, bands[b].low));
    let mut pairs = Vec::new();
    let mut farthest: Option<usize> = None;
    for band in order {
        if let Some(before) = farthest {
            if !bands[before].intersect(bands[band]).is_empty() {
                pairs.push((before.min(band), before.max(band)));
            }
            if to(bands[before].high, bands[band].high).is_ge() {
                continue;
            }
        }
        farthest = Some(band);
    }
    pairs
}

#[cfg(test)]
mod tests {
    use super::*;

    fn interval(text: &str) -> Interval {
        let (low, high) = text[1..text.len() - 1].split_once(',').unwrap();
        let end = |closed, text: &str| if closed { End::Closed } else { End::Open }(text.parse().unwrap());
        Interval {
            low: end(text.starts_with('['), low),
            high: end(text.ends_with(']'), high),
        }
    }

    fn intervals(texts: &[&str]) -> Vec<Interval> {
        texts.iter().map(|text| interval(text)).collect()
    }

    /// The form of case that the conformance kit of OMG's *Decision Model and Notation* has: in a domain of [0..100], a
    /// rule for (0..100) leaves the two end points.
    #[test]
    fn an_open_band_leaves_its_end_points() {
        let gaps = gaps(interval("[0,100]"), &intervals(&["(0,100)"]));
        assert_eq!(gaps, intervals(&["[0,0]", "[100,100]"]));
    }

    /// The ranges 0..=100, 50..=150 and 0..=200 split as the documentation of rustc's `rustc_pattern_analysis` prints
    /// it: 0..50, 50..=100, 101..=150, 151..=200, 201.. – here with the numbers between the whole ones, and what lies
    /// below nothing.
    #[test]
    fn the_pieces_that_ranges_split_into_cover_all_and_share_nothing() {
        let pieces = intervals(&[
            "(-inf,0)",
            "[0,50)",
            "[50,101)",
            "[101,151)",
            "[151,201)",
            "[201,inf)",
        ]);
        assert_eq!(gaps(Interval::everything(), &pieces), []);
        assert_eq!(overlaps(&pieces), []);
        let ranges = intervals(&["[0,100]", "[50,150]", "[0,200]"]);
        assert_eq!(
            gaps(Interval::everything(), &ranges),
            intervals(&["(-inf,0)", "(200,inf)"])
        );
        assert_eq!(overlaps(&ranges), [(0, 2), (1, 2)]);
    }

    #[test]
    fn bands_that_touch_share_a_point_or_leave_one_or_neither() {
        for (bands, gap, overlap) in [
            (["(-inf,2]", "[2,inf)"], None, true),
            (["(-inf,2)", "(2,inf)"], Some("[2,2]"), false),
            (["(-inf,2)", "[2,inf)"], None, false),
        ] {
            let bands = intervals(&bands);
            assert_eq!(gaps(Interval::everything(), &bands), intervals(gap.as_slice()));
            assert_eq!(!overlaps(&bands).is_empty(), overlap);
        }
    }

    #[test]
    fn bands_that_follow_one_another_are_seen_up_and_down() {
        for (bands, follow) in [
            (vec!["(-inf,1)", "[1,2]", "(2,inf)"], true),
            (vec!["(2,inf)", "[1,2]", "(-inf,1)"], true),
            (vec!["[1,2]", "(-inf,1)", "(2,inf)"], false),
            (vec!["(-inf,1)", "(1,inf)"], false),
            (vec!["(-inf,1]", "[1,inf)"], false),
            (vec!["(-inf,1)", "[1,2]"], false),
            (vec!["[1,inf)"], false),
            (vec![], false),
        ] {
            assert_eq!(
                follow_one_another(intervals(&bands).into_iter()),
                follow,
                "{bands:?}"
            );
        }
    }

    #[test]
    fn a_band_that_holds_nothing_takes_nothing() {
        let bands = intervals(&["(-inf,1)", "[5,3]", "(4,4)", "[1,inf)"]);
        assert_eq!(gaps(Interval::everything(), &bands), []);
        assert_eq!(overlaps(&bands), []);
    }
}
