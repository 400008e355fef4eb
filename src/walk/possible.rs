//! What can still be the fault, and what a walk no longer comes to.

use std::collections::{BTreeMap, BTreeSet};

use super::apply::{inputs_of, worked_out_from};
use super::event::Role;
use super::route::leads_to;
use super::state::{Moment, State, Value};
use crate::library::{Answers, BandAnswer, Datum, Edge, Fault, Id, Kind, Library, PlateField, Step, Tree};

/// The faults that a walk can still end in, nearest first.
///
/// Values that stand decide their questions, unless work on the way may make them void. Plate bounds that are not known
/// decide nothing.
pub fn possible(library: &Library, moment: &Moment) -> Vec<Id<Fault>> {
    let voidable = voidable(library, moment);
    Search::new(library, moment, &voidable, true).faults
}

/// What work may make void on some way that a walk may still go, were nothing decided by what stands.
pub(super) fn voidable(library: &Library, moment: &Moment) -> BTreeSet<Datum> {
    let nothing = BTreeSet::new();
    Search::new(library, moment, &nothing, false).voided
}

/// The answers of a trail with the faults that a walk could no longer come to after each.
pub fn ruled_out(library: &Library, state: &State) -> Vec<Vec<Id<Fault>>> {
    ruled_out_but(library, state, &possible(library, &state.moment))
}

/// The same, where it is known which faults are possible now.
pub(super) fn ruled_out_but(library: &Library, state: &State, now: &[Id<Fault>]) -> Vec<Vec<Id<Fault>>> {
    let before = state
        .trail
        .iter()
        .map(|answered| answered.was_possible(|moment| possible(library, moment)));
    let sets: Vec<&[Id<Fault>]> = before.chain([now]).collect();
    let given = state.trail.iter().map(|answered| answered.given);
    sets.windows(2)
        .zip(given)
        .map(|(pair, given)| match given {
            true => {
                let after: BTreeSet<Id<Fault>> = pair[1].iter().copied().collect();
                let gone: BTreeSet<Id<Fault>> = pair[0]
                    .iter()
                    .copied()
                    .filter(|fault| !after.contains(fault))
                    .collect();
                gone.into_iter().collect()
            }
            // What could not be taken and work that was done show nothing.
            false => Vec::new(),
        })
        .collect()
}

/// A flood from where a walk stands through every step that it may still come to.
pub(super) struct Search<'a> {
    library: &'a Library,
    moment: &'a Moment,
    voidable: &'a BTreeSet<Datum>,
    decide: bool,
    /// The steps that it has come to, in that order; those after the first `left` wait to be left.
    pub reached: Vec<Id<Step>>,
    left: usize,
    /// Whether it has come to a step.
    marks: Vec<bool>,
    /// Visits that lead into a tree, to know where its returns go.
    visits: BTreeMap<Id<Tree>, BTreeSet<Id<Step>>>,
    /// Outcomes that were reached.
    pub returned: BTreeSet<(Id<Tree>, usize)>,
    /// In the order in which they were come to.
    pub faults: Vec<Id<Fault>>,
    faults_seen: BTreeSet<Id<Fault>>,
    /// What work on the way may make void.
    pub voided: BTreeSet<Datum>,
    /// What of that is named by a step, and does not only follow from another.
    voided_by_work: BTreeSet<Datum>,
}

impl<'a> Search<'a> {
    pub fn new(
        library: &'a Library,
        moment: &'a Moment,
        voidable: &'a BTreeSet<Datum>,
        decide: bool,
    ) -> Self {
        let mut search = Search {
            library,
            moment,
            voidable,
            decide,
            reached: Vec::new(),
            left: 0,
            marks: vec![false; library.steps.len()],
            visits: BTreeMap::new(),
            returned: BTreeSet::new(),
            faults: Vec::new(),
            faults_seen: BTreeSet::new(),
            voided: BTreeSet::new(),
            voided_by_work: BTreeSet::new(),
        };
        search.run();
        search
    }

    fn run(&mut self) {
        let frames = &self.moment.frames;
        // What is nearest comes first.
        if let Some(top) = frames.last() {
            self.reach(top.step);
        }
        for pair in frames.windows(2).rev() {
            if pair[1].role == Role::Visit {
                self.visits.entry(pair[1].tree).or_default().insert(pair[0].step);
                if let Kind::Visit {
                    on_verdict: Some(edge),
                    ..
                } = &self.library[pair[0].step].kind
                {
                    self.follow(edge);
                }
            }
            if pair[1].role == Role::Danger {
                // What a danger interrupts comes back with every value void.
                self.reach(pair[0].step);
                self.voided.extend(self.moment.values.keys().copied());
            }
        }
        while let Some(step) = self.reached.get(self.left).copied() {
            self.left += 1;
            self.leave(step);
        }
    }

    fn reach(&mut self, step: Id<Step>) {
        if let Some(mark @ false) = self.marks.get_mut(step.index()) {
            *mark = true;
            self.reached.push(step);
        }
    }

    /// Whether it has come to a step.
    pub fn has_reached(&self, step: Id<Step>) -> bool {
        self.marks.get(step.index()).copied().unwrap_or_default()
    }

    fn follow(&mut self, edge: &Edge) {
        let mut edge = edge;
        self.reach(edge.go);
        while let Some(limit) = &edge.limit {
            edge = &limit.then;
            self.reach(edge.go);
        }
    }

    fn leave(&mut self, id: Id<Step>) {
        let library = self.library;
        let step = &library[id];
        match &step.kind {
            Kind::Measure {
                reading,
                answers,
                unable,
                ..
            } => self.question(Datum::Reading(*reading), answers, [unable.as_ref(), None]),
            Kind::Observe {
                sign,
                answers,
                unsure,
                unable,
                ..
            } => self.question(Datum::Sign(*sign), answers, [unsure.as_ref(), unable.as_ref()]),
            Kind::Plate {
                field,
                answers,
                unable,
            } => {
                self.question(Datum::Field(*field), answers, [unable.as_ref(), None]);
            }
            Kind::Do { go, voids, .. } => {
                for datum in voids {
                    // Another step may have voided it before: looking through all readings again would find no more.
                    if !self.voided_by_work.insert(*datum) {
                        continue;
                    }
                    self.voided.insert(*datum);
                    // What was worked out from it, and what it was worked out from, goes with it.
                    self.voided.extend(inputs_of(library, *datum));
                    self.voided.extend(worked_out_from(library, *datum));
                }
                self.follow(go);
            }
            Kind::Visit { tree, on_verdict, .. } => {
                self.visits.entry(*tree).or_default().insert(id);
                if let Some(start) = library.trees[*tree].start {
                    self.reach(start);
                }
                if let Some(edge) = on_verdict {
                    self.follow(edge);
                }
                self.come_back(*tree);
            }
            Kind::Verdict { fault, .. } => {
                if self.faults_seen.insert(*fault) {
                    self.faults.push(*fault);
                }
            }
            Kind::Return { outcome } => {
                self.returned.insert((step.tree, *outcome));
                self.gate_opens(step.tree);
                self.come_back(step.tree);
            }
            Kind::Unresolved { edges, .. } => edges.iter().for_each(|edge| self.follow(edge)),
        }
    }

    /// The gate's return leads to the complaint, which the walk has yet to enter.
    fn gate_opens(&mut self, tree: Id<Tree>) {
        let gate = self
            .moment
            .frames
            .first()
            .filter(|frame| frame.role == Role::Gate);
        if gate.is_some_and(|frame| frame.tree == tree)
            && let Some(start) = self
                .moment
                .complaint
                .and_then(|tree| self.library.trees[tree].start)
        {
            self.reach(start);
        }
    }

    /// Takes the edges of every visit of a tree for the outcomes that were reached.
    fn come_back(&mut self, tree: Id<Tree>) {
        let library = self.library;
        let visits = self.visits.get(&tree).cloned().unwrap_or_default();
        for visit in visits {
            if let Kind::Visit {
                returns, on_verdict, ..
            } = &library[visit].kind
            {
                for (outcome, edge) in returns {
                    if self.returned.contains(&(tree, *outcome)) {
                        self.follow(edge);
                    }
                }
                if let Some(edge) = on_verdict {
                    self.follow(edge);
                }
            }
        }
    }

    fn question(&mut self, datum: Datum, answers: &Answers, others: [Option<&Edge>; 2]) {
        if let Some(edge) = self.settled(datum, answers) {
            let edge = edge.clone();
            return self.follow(&edge);
        }
        for edge in answers.edges().chain(others.into_iter().flatten()) {
            self.follow(edge);
        }
    }

    /// The edges that may be taken from a step, each followed by what comes after its limit.
    pub fn open_edges<'e>(&self, step: &'e Step) -> Vec<&'e Edge> {
        let question = match &step.kind {
            Kind::Measure { reading, answers, .. } => Some((Datum::Reading(*reading), answers)),
            Kind::Observe { sign, answers, .. } => Some((Datum::Sign(*sign), answers)),
            Kind::Plate { field, answers, .. } => Some((Datum::Field(*field), answers)),
            _ => None,
        };
        let settled = question.and_then(|(datum, answers)| self.settled(datum, answers));
        match settled {
            Some(edge) => edge.chain().collect(),
            None => step.edges().collect(),
        }
    }

    /// The edge that a value which stands, and is sure to stand when the walk comes here, leads to.
    fn settled<'e>(&self, datum: Datum, answers: &'e Answers) -> Option<&'e Edge> {
        if !self.decide || self.voidable.contains(&datum) {
            return None;
        }
        let value = self.moment.values.get(&datum)?.value;
        let field = |id: Id<PlateField>| self.moment.values.get(&Datum::Field(id))?.value.number();
        if let (Answers::Bands(bands), Value::Number(number)) = (answers, value) {
            // An unknown plate field leaves other bands open.
            let open = |answer: &BandAnswer| answer.band.contains(number, &|id| field(*id)).is_none();
            if bands.iter().any(open) {
                return None;
            }
        }
        leads_to(answers, value, &field)
    }
}
