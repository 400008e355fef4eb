//! Walking one way, up to the next question with several answers.

use std::collections::BTreeMap;
use std::rc::Rc;

use super::scales::{Scales, Sorting};
use super::{End, Shown, Sorted, Taken, Taking, Way, Work};
use crate::library::{
    Answers, Datum, Edge, EdgeId, Fault, Id, Input, Kind, Library, Obtained, PlateField, Remedy, Step,
    return_edge,
};
use crate::measure::{Band, Interval, Quantity};
use crate::walk::{inputs_of, leans_on};

/// How many steps a way is followed.
const LONGEST: usize = 2_000;

/// What comes of walking on from a question to the next, or to an end.
pub(super) enum Next<'l> {
    Branches(Vec<Walker<'l>>),
    End(Box<Way>),
    /// It is longer than a way is followed.
    TooLong,
    /// Two faults were noted, or a step could not be read.
    Nowhere,
}

/// A way that is being walked.
#[derive(Clone)]
pub(super) struct Walker<'l> {
    frames: Vec<Frame>,
    /// What stands, with its taking.
    standing: BTreeMap<Datum, usize>,
    /// What work has voided, with that work.
    voided: BTreeMap<Datum, Vec<Id<Step>>>,
    /// The bands that numbers are known to lie in, each with its taking.
    bands: Vec<(usize, &'l Band<Id<PlateField>>)>,
    noted: Option<Id<Fault>>,
    steps: usize,
    way: Way,
}

#[derive(Clone)]
struct Frame {
    step: Id<Step>,
    counts: BTreeMap<EdgeId, u32>,
}

/// The likeliest way is walked on first.
impl Ord for Walker<'_> {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        let by_share = self.way.share.total_cmp(&other.way.share);
        by_share.then_with(|| other.steps.cmp(&self.steps))
    }
}

impl PartialOrd for Walker<'_> {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Walker<'_> {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Walker<'_> {}

impl<'l> Walker<'l> {
    /// Where a tree starts.
    pub fn at(start: Id<Step>) -> Self {
        Self {
            frames: vec![Frame::at(start)],
            standing: BTreeMap::new(),
            voided: BTreeMap::new(),
            bands: Vec::new(),
            noted: None,
            steps: 0,
            way: Way {
                // What it ends in is known when it does.
                end: End::Outcome(0),
                share: 1.0,
                takings: Vec::new(),
                work: Vec::new(),
                sorted: Vec::new(),
            },
        }
    }

    /// Walks on until a question has several answers that it may take.
    pub fn on(mut self, library: &'l Library, scales: &Scales) -> Next<'l> {
        loop {
            self.steps += 1;
            if self.steps > LONGEST {
                return Next::TooLong;
            }
            let Some(frame) = self.frames.last() else {
                return Next::Nowhere;
            };
            let at = frame.step;
            let step = &library[at];
            match &step.kind {
                Kind::Measure { reading, answers, .. } => {
                    match self.question(library, scales, at, Datum::Reading(*reading), answers) {
                        Some(branches) => return Next::Branches(branches),
                        None => continue,
                    }
                }
                Kind::Observe { sign, answers, .. } => {
                    match self.question(library, scales, at, Datum::Sign(*sign), answers) {
                        Some(branches) => return Next::Branches(branches),
                        None => continue,
                    }
                }
                Kind::Plate { field, answers, .. } => {
                    match self.question(library, scales, at, Datum::Field(*field), answers) {
                        Some(branches) => return Next::Branches(branches),
                        None => continue,
                    }
                }
                Kind::Do { go, voids, .. } => {
                    let minutes = step.minutes.unwrap_or_default();
                    self.way.work.push(Work { at, minutes });
                    voids.iter().for_each(|datum| self.void(library, *datum, at));
                    self.take(go);
                }
                Kind::Visit { tree, .. } => match library.trees[*tree].start {
                    Some(start) => self.frames.push(Frame::at(start)),
                    None => return Next::Nowhere,
                },
                Kind::Return { outcome } => {
                    self.frames.pop();
                    let Some(visit) = self.frames.last() else {
                        let end = self.noted.map_or(End::Outcome(*outcome), End::Fault);
                        return self.ended(end);
                    };
                    let Kind::Visit { returns, .. } = &library[visit.step].kind else {
                        return Next::Nowhere;
                    };
                    match return_edge(returns, *outcome) {
                        Some(edge) => self.take(edge),
                        None => return Next::Nowhere,
                    }
                }
                Kind::Verdict { fault, .. } => {
                    let remedy = library.faults[*fault].remedy;
                    if remedy != Remedy::None && self.noted.is_some_and(|noted| noted != *fault) {
                        return Next::Nowhere;
                    }
                    let Some((depth, edge)) = self.noting(library).filter(|_| remedy != Remedy::ShutDown)
                    else {
                        let end = End::Fault(self.noted.unwrap_or(*fault));
                        return self.ended(end);
                    };
                    if remedy != Remedy::None {
                        self.noted = Some(*fault);
                    }
                    self.frames.truncate(depth);
                    self.take(edge);
                }
                Kind::Unresolved { .. } => return Next::Nowhere,
            }
        }
    }

    fn ended(self, end: End) -> Next<'l> {
        Next::End(Box::new(Way { end, ..self.way }))
    }

    /// The nearest visit that notes a verdict and goes on: how many trees the walk stands in there, and its edge.
    fn noting(&self, library: &'l Library) -> Option<(usize, &'l Edge)> {
        let visits = self.frames.iter().enumerate().rev().skip(1);
        visits
            .into_iter()
            .find_map(|(at, frame)| match &library[frame.step].kind {
                Kind::Visit { on_verdict, .. } => on_verdict.as_ref().map(|edge| (at + 1, edge)),
                _ => None,
            })
    }

    /// Asks, or goes by what stands. None where it went on, as there is one answer.
    fn question(
        &mut self,
        library: &'l Library,
        scales: &Scales,
        at: Id<Step>,
        datum: Datum,
        answers: &'l Answers,
    ) -> Option<Vec<Self>> {
        let (taking, fresh) = match self.standing.get(&datum) {
            Some(taking) => (*taking, false),
            None => (self.taken(library, at, datum), true),
        };
        if let Answers::Go(edge) = answers {
            self.take(edge);
            return None;
        }
        let Sorting { scale, position } = scales.of(at, answers);
        let shown = &self.way.takings[taking].shown;
        let before = shown
            .iter()
            .find(|shown| shown.scale == scale)
            .map(|shown| shown.answer);
        let may_be: Vec<usize> = (0..position.len())
            .filter(|answer| match before {
                Some(before) => position[*answer] == before,
                None => self.may_lie(taking, answers, *answer),
            })
            .collect();
        let branches = may_be.iter().map(|answer| {
            let mut branch = self.clone();
            branch.way.share /= may_be.len() as f64;
            branch.way.sorted.push(Sorted {
                at,
                taking,
                answer: *answer,
                fresh,
            });
            if before.is_none() {
                Rc::make_mut(&mut branch.way.takings[taking]).shown.push(Shown {
                    scale: Rc::clone(&scale),
                    answer: position[*answer],
                });
            }
            branch.answer(taking, answers, *answer);
            branch
        });
        Some(branches.collect())
    }

    fn answer(&mut self, taking: usize, answers: &'l Answers, answer: usize) {
        match answers {
            Answers::Go(edge) => self.take(edge),
            Answers::Bands(bands) => {
                self.bands.push((taking, &bands[answer].band));
                self.take(&bands[answer].edge);
            }
            Answers::Choices(choices) => self.take(&choices[answer].edge),
        }
    }

    /// Whether a value may lie in a band, by all bands without a plate field that it is known to lie in.
    fn may_lie(&self, taking: usize, answers: &Answers, answer: usize) -> bool {
        let Answers::Bands(bands) = answers else {
            return true;
        };
        let known = self
            .bands
            .iter()
            .filter(|(of, _)| *of == taking)
            .map(|(_, band)| *band);
        let known = known.chain([&bands[answer].band]);
        let numbers = known.flat_map(|band| &band.conditions).filter_map(|condition| {
            let bound: Option<Quantity> = condition.bound.value(&|_| None);
            Some((condition.relation, bound?))
        });
        !Interval::from_conditions(numbers).is_empty()
    }

    /// Takes a value, and those that it is worked out from.
    fn taken(&mut self, library: &Library, at: Id<Step>, datum: Datum) -> usize {
        let taken = self.leaves(library, at, datum);
        let minutes = match library[at].minutes {
            // The step's own minutes are for all that is taken for it.
            Some(minutes) if taken.is_some() => minutes,
            _ => taken.unwrap_or_default(),
        };
        let number = self.push(at, datum);
        Rc::make_mut(&mut self.way.takings[number]).minutes = minutes;
        number
    }

    /// Takes what a value is worked out from and does not stand; the minutes of all that, none where nothing is taken.
    fn leaves(&mut self, library: &Library, at: Id<Step>, datum: Datum) -> Option<f64> {
        let taking = match datum {
            Datum::Reading(id) => &library.readings[id].taking,
            Datum::Sign(id) => &library.signs[id].taking,
            Datum::Field(_) => return Some(0.0),
        };
        let own = taking.minutes.unwrap_or_default();
        let Datum::Reading(id) = datum else {
            return Some(own);
        };
        let Obtained::WorkedOut { inputs, .. } = &library.readings[id].source_of_value else {
            return Some(own);
        };
        let mut all = None;
        for input in inputs {
            let input = match input {
                Input::Reading(input) => Datum::Reading(*input),
                Input::Field(_) | Input::Fixed(_) => continue,
            };
            if !self.standing.contains_key(&input) {
                let minutes = self.leaves(library, at, input);
                self.push(at, input);
                all = minutes.map(|minutes| minutes + all.unwrap_or_default()).or(all);
            }
        }
        all
    }

    fn push(&mut self, at: Id<Step>, datum: Datum) -> usize {
        let number = self.way.takings.len();
        self.standing.insert(datum, number);
        self.way.takings.push(Rc::new(Taking {
            what: Taken {
                datum,
                since: self.voided.get(&datum).cloned().unwrap_or_default(),
            },
            at,
            minutes: 0.0,
            after: self.way.work.len(),
            shown: Vec::new(),
        }));
        number
    }

    /// Takes a value away, with those that were worked out from it and those it was worked out from.
    fn void(&mut self, library: &Library, datum: Datum, by: Id<Step>) {
        let inputs = inputs_of(library, datum);
        let leans = |from: &Datum| leans_on(library, *from, datum);
        let gone: Vec<Datum> = self
            .standing
            .keys()
            .copied()
            .filter(leans)
            .chain(inputs)
            .chain([datum])
            .collect();
        for datum in gone {
            self.standing.remove(&datum);
            self.voided.entry(datum).or_default().push(by);
        }
    }

    fn take(&mut self, edge: &Edge) {
        let Some(frame) = self.frames.last_mut() else {
            return;
        };
        let mut edge = edge;
        while let Some(limit) = &edge.limit {
            let count = frame.counts.entry(edge.id).or_default();
            if *count < limit.at_most {
                *count += 1;
                break;
            }
            edge = &limit.then;
        }
        frame.step = edge.go;
    }
}

impl Frame {
    fn at(step: Id<Step>) -> Self {
        Self {
            step,
            counts: BTreeMap::new(),
        }
    }
}
