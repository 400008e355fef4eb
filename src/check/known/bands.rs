//! Bands that no way can reach, because the number is already known to lie elsewhere.

use std::collections::{BTreeMap, BTreeSet};

use super::dependence::Dependence;
use super::glance::{AT_ONCE, Glancing};
use super::hindsight::{Fate, Hindsight};
use super::joint::Joint;
use super::map::{Map, asked};
use super::moves::{How, moves};
use super::numbers::{Numbers, fixed};
use super::question::Question;
use super::search::{Bounds, Search, beginnings, work};
use super::tracked::Tracked;
use crate::library::graph::Graph;
use crate::library::{Answers, Datum, Id, Kind, Library, PlateField, Step};
use crate::measure::Band;

/// The bands of each step that no way can reach, though the step can be reached; by position.
///
/// A band that holds no value at all is not among them.
pub(in crate::check) fn unreachable_bands(
    library: &Library,
    dependence: &Dependence,
    graph: &Graph,
) -> BTreeMap<Id<Step>, Vec<usize>> {
    let asked = settled_before(library, dependence, graph);
    if asked.is_empty() {
        return BTreeMap::new();
    }
    let map = Map::of(library, dependence);
    let asked = asked.into_iter();
    asked
        .flat_map(|(datum, steps)| unreachable(library, graph, dependence, &map, datum, &steps))
        .collect()
}

/// Numbers that always stand already where some steps ask for them and sort them, with those steps.
fn settled_before(
    library: &Library,
    dependence: &Dependence,
    graph: &Graph,
) -> BTreeMap<Datum, Vec<Id<Step>>> {
    let mut sorting: BTreeMap<Datum, Vec<Id<Step>>> = BTreeMap::new();
    for (index, step) in library.steps.iter().enumerate() {
        let id = Id::new(index);
        if let (Some(datum), true) = (asked(step), bands(library, id) > 0) {
            sorting.entry(datum).or_default().push(id);
        }
    }
    let beginnings = beginnings(library);
    let mut hindsight = Hindsight::new(library, dependence, graph, &beginnings);
    let mut standing: BTreeMap<Datum, Vec<Id<Step>>> = BTreeMap::new();
    for (datum, steps) in &mut sorting {
        steps.retain(|step| match hindsight.look(Question::Stands(*datum), *step) {
            Fate::Never => {
                standing.entry(*datum).or_default().push(*step);
                false
            }
            Fate::May => false,
            Fate::Unclear => true,
        });
    }
    sorting.retain(|_, steps| !steps.is_empty());
    let glancing = Glancing::new(library, dependence, graph);
    let data: Vec<Datum> = sorting.keys().copied().collect();
    for data in data.chunks(AT_ONCE) {
        let questions: Vec<Question<'_>> = data.iter().map(|datum| Question::Stands(*datum)).collect();
        let Some(glance) = glancing.at(&questions, &beginnings) else {
            break;
        };
        for (at, datum) in data.iter().enumerate() {
            if let Some(steps) = sorting.get_mut(datum) {
                let stands = |step: &Id<Step>| {
                    glance
                        .missing(library, *step)
                        .is_some_and(|bits| bits >> at & 1 == 0)
                };
                steps.retain(stands);
            }
        }
    }
    for (datum, steps) in sorting {
        standing.entry(datum).or_default().extend(steps);
    }
    standing.retain(|_, steps| !steps.is_empty());
    standing
}

fn unreachable(
    library: &Library,
    graph: &Graph,
    dependence: &Dependence,
    map: &Map,
    datum: Datum,
    sorting: &[Id<Step>],
) -> BTreeMap<Id<Step>, Vec<usize>> {
    let data = map.with_fields(library, &[], vec![datum]);
    let bounds = Bounds {
        steps: map.leading_to(library, sorting),
        trees: map.trees_with(library, sorting, &data),
    };
    let mut tracked = Tracked::new(library, dependence, data);
    let mut reached: BTreeMap<Id<Step>, BTreeSet<usize>> = BTreeMap::new();
    let mut search = Search::new(&mut tracked, graph, bounds, work(library));
    while let Some((_, step, state)) = search.next() {
        let count = bands(library, step);
        if count == 0 || !sorting.contains(&step) {
            continue;
        }
        let taken = moves(search.tracked, step, state);
        let reached = reached.entry(step).or_default();
        reached.extend(taken.iter().filter_map(|way| match way.how {
            How::Answer(band) => Some(band),
            _ => None,
        }));
    }
    if search.is_cut_short() {
        return BTreeMap::new();
    }
    let missing = reached.into_iter().map(|(step, reached)| {
        let missing = (0..bands(library, step)).filter(|band| !reached.contains(band));
        (step, missing.collect::<Vec<_>>())
    });
    missing.filter(|(_, missing)| !missing.is_empty()).collect()
}

/// Whether no number lies in a band, whatever the plate says; `of` is a reading or a plate field with a number.
pub(in crate::check) fn holds_nothing(library: &Library, of: Datum, band: &Band<Id<PlateField>>) -> bool {
    if let (Datum::Reading(_), Some(values)) = (of, fixed(band)) {
        return values.is_empty();
    }
    let numbers = Numbers::default().and(band);
    if numbers.is_plainly_empty() {
        return true;
    }
    let Some(scale) = library.scale_of(of) else {
        return false;
    };
    let mut joint = Joint::new(library, scale);
    // What cannot be decided may hold something.
    let possible = joint.know(of, &numbers).and_then(|()| joint.is_possible());
    possible == Ok(false)
}

/// How many bands a step sorts its number into.
fn bands(library: &Library, step: Id<Step>) -> usize {
    match &library[step].kind {
        Kind::Measure { answers, .. } | Kind::Plate { answers, .. } => match answers {
            Answers::Bands(bands) => bands.len(),
            Answers::Go(_) | Answers::Choices(_) => 0,
        },
        _ => 0,
    }
}
