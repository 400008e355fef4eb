//! The gaps and overlaps of a question's bands.

use super::fields;
use super::linear::{Inequality, Undecided, Work, solve};
use super::question::Question;
use super::round;
use super::sweep;
use super::system::System;
use super::witness::Witness;
use crate::library::{BandAnswer, Id, PlateField};
use crate::measure::{End, Interval, Quantity};

/// Two bands that take one value.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::check) struct Overlap {
    /// The earlier band, by position.
    pub first: usize,
    /// The later one.
    pub second: usize,
    /// What both take.
    pub witness: Witness,
    /// They share no more than an end point.
    pub touching: bool,
}

/// Whether no band leans on the plate, and each takes up where another ends: so each value is in one of them.
pub(in crate::check) fn follow_one_another(bands: &[BandAnswer]) -> bool {
    bands.iter().all(is_fixed) && sweep::follow_one_another(bands.iter().filter_map(interval))
}

/// Values that no band takes: all the gaps where no band leans on the plate, the first that is found otherwise.
pub(in crate::check) fn gaps(question: Question<'_>) -> Result<Vec<Witness>, Undecided> {
    if follow_one_another(question.bands) {
        return Ok(Vec::new());
    }
    if question.bands.iter().all(is_fixed) {
        let fixed: Vec<Interval> = question.bands.iter().filter_map(interval).collect();
        let gaps = sweep::gaps(domain(question), &fixed);
        return Ok(gaps
            .into_iter()
            .map(|gap| Witness::of(inside(question, gap)))
            .collect());
    }
    let system = System::of(question).ok_or(Undecided)?;
    Ok(gap_of(&system, question)?.into_iter().collect())
}

/// Pairs of bands that take one value.
pub(in crate::check) fn overlaps(question: Question<'_>) -> Result<Vec<Overlap>, Undecided> {
    let bands = question.bands;
    if follow_one_another(bands) {
        return Ok(Vec::new());
    }
    let (fixed, leaning): (Vec<usize>, Vec<usize>) =
        (0..bands.len()).partition(|&band| is_fixed(&bands[band]));
    let intervals: Vec<Interval> = fixed.iter().filter_map(|&band| interval(&bands[band])).collect();
    let mut found: Vec<Overlap> = (sweep::overlaps(&intervals).into_iter())
        .map(|(first, second)| {
            let both = intervals[first]
                .intersect(intervals[second])
                .intersect(domain(question));
            (first, second, both)
        })
        .filter(|(_, _, both)| !both.is_empty())
        .map(|(first, second, both)| Overlap {
            first: fixed[first],
            second: fixed[second],
            witness: Witness::of(inside(question, both)),
            touching: is_point(both) && !is_point(intervals[first]) && !is_point(intervals[second]),
        })
        .collect();
    if !leaning.is_empty() {
        let system = System::of(question).ok_or(Undecided)?;
        found.extend(overlaps_of(&system, &leaning)?);
    }
    Ok(found)
}

/// An order of the fields that leaves the bands without gap and overlap.
pub(in crate::check) fn order_that_mends(question: Question<'_>) -> Option<Vec<Id<PlateField>>> {
    let system = System::of(question)?;
    let every: Vec<usize> = (0..question.bands.len()).collect();
    orders(system.fields()).into_iter().find(|order| {
        let ordered = system.with_order(order);
        // An order that contradicts the registry's would mend everything: there is no such plate.
        let some_plate = solve(&ordered.axioms, ordered.variables(), &mut Work::default());
        some_plate.is_ok_and(|plate| plate.is_some())
            && gap_of(&ordered, question).is_ok_and(|gap| gap.is_none())
            && overlaps_of(&ordered, &every).is_ok_and(|overlaps| overlaps.is_empty())
    })
}

/// Every order of two or three fields; more are not guessed at.
fn orders(fields: &[Id<PlateField>]) -> Vec<Vec<Id<PlateField>>> {
    match *fields {
        [a, b] => vec![vec![a, b], vec![b, a]],
        [a, b, c] => [[a, b, c], [a, c, b], [b, a, c], [b, c, a], [c, a, b], [c, b, a]]
            .map(Vec::from)
            .into(),
        _ => Vec::new(),
    }
}

fn is_fixed(answer: &BandAnswer) -> bool {
    answer.band.bounds().all(|bound| bound.leans_on().is_none())
}

fn interval(answer: &BandAnswer) -> Option<Interval> {
    answer.band.interval(&|_| None)
}

fn is_point(interval: Interval) -> bool {
    interval.low.value() == interval.high.value()
}

/// The values there are: all, and of a plate field that is positive those above nothing.
fn domain(question: Question<'_>) -> Interval {
    let positive = question
        .asked
        .is_some_and(|field| fields::is_positive(question.library, field));
    let everything = Interval::everything();
    if positive {
        Interval {
            low: End::Open(0.0),
            ..everything
        }
    } else {
        everything
    }
}

/// A short number inside an interval, and a plausible one where there is one.
fn inside(question: Question<'_>, interval: Interval) -> Quantity {
    let believed = question.plausible.map_or(interval, |range| {
        let range = Interval {
            low: End::Closed(range.low.base()),
            high: End::Closed(range.high.base()),
        };
        interval.intersect(range)
    });
    let interval = if believed.low.value() < believed.high.value() {
        believed
    } else {
        interval
    };
    let (low, high) = (interval.low.value(), interval.high.value());
    let quantity = |base: f64| Quantity::from_base(base, question.scale.dimension());
    if is_point(interval) {
        return quantity(low);
    }
    let number = |base: f64| {
        if base.is_finite() {
            quantity(base).number_in(question.scale)
        } else {
            base
        }
    };
    Quantity::new(round::between(number(low), number(high)), question.scale)
}

/// A plate and a value in no band: believed ones if there are, a believed plate at least, or any.
fn gap_of(system: &System<'_>, question: Question<'_>) -> Result<Option<Witness>, Undecided> {
    // The bands with fixed ends leave a few stretches, however many they are; the others are only asked about those.
    let (fixed, leaning): (Vec<_>, Vec<_>) =
        (0..question.bands.len()).partition(|&at| is_fixed(&question.bands[at]));
    let fixed: Vec<Interval> = fixed
        .into_iter()
        .filter_map(|at| interval(&question.bands[at]))
        .collect();
    let stretches: Vec<_> = sweep::gaps(domain(question), &fixed)
        .into_iter()
        .map(|gap| system.inside(gap))
        .collect();
    let search = |believed: &[Inequality]| {
        let mut work = Work::default();
        for stretch in &stretches {
            let given = [&system.axioms[..], believed, stretch].concat();
            if let Some(witness) = uncovered(system, &leaning, given, &mut work)? {
                return Ok(Some(witness));
            }
        }
        Ok(None)
    };
    match search(&[])? {
        Some(any) => Ok(Some(believed(system, search).unwrap_or(any))),
        None => Ok(None),
    }
}

/// The best witness that a search finds: a believed value on a believed plate, or the plate at least.
///
/// A search that grows too large is no reason to give up here: some witness is known already.
fn believed(
    system: &System<'_>,
    search: impl Fn(&[Inequality]) -> Result<Option<Witness>, Undecided>,
) -> Option<Witness> {
    let (plate, value) = system.plausible();
    let both = [&plate[..], &value].concat();
    [both, plate]
        .into_iter()
        .find_map(|believed| search(&believed).ok().flatten())
}

/// Breaks one condition of every band, taking the next as soon as no plate is left.
fn uncovered(
    system: &System<'_>,
    bands: &[usize],
    given: Vec<Inequality>,
    work: &mut Work,
) -> Result<Option<Witness>, Undecided> {
    let mut broken = given;
    let mut chosen: Vec<usize> = Vec::new();
    let mut next = 0;
    let mut solution = None;
    loop {
        let Some(&band) = bands.get(chosen.len()) else {
            return Ok(solution.map(|solution| system.witness(&solution)));
        };
        if let Some(condition) = system.bands[band].get(next) {
            broken.push(condition.negated());
            match solve(&broken, system.variables(), work)? {
                Some(found) => {
                    solution = Some(found);
                    chosen.push(next);
                    next = 0;
                }
                None => {
                    broken.pop();
                    next += 1;
                }
            }
        } else if let Some(last) = chosen.pop() {
            broken.pop();
            next = last + 1;
        } else {
            return Ok(None);
        }
    }
}

/// For each band, the first before it with which it shares a value, where one of the two is among `leaning`.
fn overlaps_of(system: &System<'_>, leaning: &[usize]) -> Result<Vec<Overlap>, Undecided> {
    let mut work = Work::default();
    let mut found = Vec::new();
    let mut leans = vec![false; system.bands.len()];
    for &band in leaning {
        leans[band] = true;
    }
    for second in 1..system.bands.len() {
        let before = (0..second).filter(|&first| leans[first] || leans[second]);
        for first in before {
            if let Some(overlap) = overlap_of(system, first, second, &mut work)? {
                found.push(overlap);
                break;
            }
        }
    }
    Ok(found)
}

fn overlap_of(
    system: &System<'_>,
    first: usize,
    second: usize,
    work: &mut Work,
) -> Result<Option<Overlap>, Undecided> {
    let search = |believed: &[Inequality], bands: &[Inequality], work: &mut Work| {
        let all = [&system.axioms[..], believed, bands].concat();
        let solution = solve(&all, system.variables(), work)?;
        Ok(solution.map(|solution| system.witness(&solution)))
    };
    let both = [&system.bands[first][..], &system.bands[second][..]].concat();
    let Some(any) = search(&[], &both, work)? else {
        return Ok(None);
    };
    let open = |bands: &[Inequality]| bands.iter().map(|one| one.strictly()).collect::<Vec<_>>();
    let inner = search(&[], &open(&both), work)?;
    // A band of one value has no inside to share.
    let mut wide = |band: usize| Ok(search(&[], &open(&system.bands[band]), work)?.is_some());
    let touching = inner.is_none() && wide(first)? && wide(second)?;
    let shown = if inner.is_some() { open(&both) } else { both };
    let better = believed(system, |believed| search(believed, &shown, &mut Work::default()));
    let mut witness = better.or(inner).unwrap_or(any);
    let named = system.fields_of(&[first, second]);
    witness.plate.retain(|(field, _)| named.contains(field));
    Ok(Some(Overlap {
        first,
        second,
        witness,
        touching,
    }))
}
