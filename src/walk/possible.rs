//! What can still be the fault, and what was ruled out.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::event::Role;
use super::state::{Moment, State, Value};
use crate::library::{Answers, Datum, Edge, Fault, Id, Kind, Library, PlateField, Step, Tree};

/// The faults that a walk can still end in, nearest first.
///
/// Values that stand decide their questions, unless work on the way may make them void. Plate bounds that are not known
/// decide nothing.
pub fn possible(library: &Library, moment: &Moment) -> Vec<Id<Fault>> {
    Search::new(library, &known(library, moment)).faults
}

/// The answers of a trail with the faults that each ruled out.
pub fn ruled_out(library: &Library, state: &State) -> Vec<Vec<Id<Fault>>> {
    let moments = state
        .trail
        .iter()
        .map(|answered| &answered.before)
        .chain([&state.moment]);
    let sets: Vec<BTreeSet<Id<Fault>>> = moments
        .map(|moment| possible(library, moment).into_iter().collect())
        .collect();
    sets.windows(2)
        .map(|pair| pair[0].difference(&pair[1]).copied().collect())
        .collect()
}

/// What is known where a walk stands: the values that stand, and will still stand when the walk comes to need them.
pub(super) struct Known<'a> {
    moment: &'a Moment,
    /// What work on the way may make void.
    voidable: BTreeSet<Datum>,
    /// Whether values decide questions at all.
    decides: bool,
}

/// What is known where a walk stands.
pub(super) fn known<'a>(library: &Library, moment: &'a Moment) -> Known<'a> {
    let nothing = Known {
        moment,
        voidable: BTreeSet::new(),
        decides: false,
    };
    Known {
        moment,
        voidable: Search::new(library, &nothing).voided,
        decides: true,
    }
}

/// The steps that a walk may still come to.
pub(super) fn reachable(library: &Library, known: &Known<'_>) -> BTreeSet<Id<Step>> {
    Search::new(library, known).seen
}

impl Known<'_> {
    /// Whether a question about a datum will not be asked.
    pub fn stands(&self, datum: Datum) -> bool {
        self.decides && self.moment.values.contains_key(&datum) && !self.voidable.contains(&datum)
    }

    /// The edges that a walk may take from a step, each followed by what comes after its limit.
    pub fn edges<'l>(&self, library: &'l Library, step: Id<Step>) -> Vec<&'l Edge> {
        let step = &library[step];
        let settled = match &step.kind {
            Kind::Measure { reading, answers, .. } => self.settled(Datum::Reading(*reading), answers),
            Kind::Observe { sign, answers, .. } => self.settled(Datum::Sign(*sign), answers),
            Kind::Plate { field, answers, .. } => self.settled(Datum::Field(*field), answers),
            _ => None,
        };
        match settled {
            Some(edge) => chain(edge),
            None => step.edges(),
        }
    }

    /// The edge that a value which stands, and is sure to stand when the walk comes here, leads to.
    fn settled<'e>(&self, datum: Datum, answers: &'e Answers) -> Option<&'e Edge> {
        if !self.stands(datum) {
            return None;
        }
        let value = self.moment.values.get(&datum)?.value;
        let fields = |field: &Id<PlateField>| self.moment.values.get(&Datum::Field(*field))?.value.number();
        match (answers, value) {
            (Answers::Go(edge), _) => Some(edge),
            (Answers::Bands(bands), Value::Number(number)) => {
                let found = bands
                    .iter()
                    .find(|answer| answer.band.contains(number, &fields) == Some(true));
                // An unknown plate field leaves other bands open.
                let known = bands
                    .iter()
                    .all(|answer| answer.band.contains(number, &fields).is_some());
                found.filter(|_| known).map(|answer| &answer.edge)
            }
            (Answers::Choices(choices), Value::Choice(choice)) => choices
                .iter()
                .find(|answer| answer.value == choice)
                .map(|answer| &answer.edge),
            _ => None,
        }
    }
}

/// An edge, followed by what comes after its limit.
fn chain(edge: &Edge) -> Vec<&Edge> {
    std::iter::successors(Some(edge), |edge| edge.limit.as_ref().map(|limit| &*limit.then)).collect()
}

struct Search<'a> {
    library: &'a Library,
    known: &'a Known<'a>,
    seen: BTreeSet<Id<Step>>,
    waiting: VecDeque<Id<Step>>,
    /// Visits that lead into a tree, to know where its returns go.
    visits: BTreeMap<Id<Tree>, BTreeSet<Id<Step>>>,
    /// Outcomes that were reached.
    returned: BTreeSet<(Id<Tree>, usize)>,
    faults: Vec<Id<Fault>>,
    voided: BTreeSet<Datum>,
}

impl<'a> Search<'a> {
    fn new(library: &'a Library, known: &'a Known<'a>) -> Self {
        let mut search = Search {
            library,
            known,
            seen: BTreeSet::new(),
            waiting: VecDeque::new(),
            visits: BTreeMap::new(),
            returned: BTreeSet::new(),
            faults: Vec::new(),
            voided: BTreeSet::new(),
        };
        search.run();
        search
    }

    fn run(&mut self) {
        let frames = &self.known.moment.frames;
        for pair in frames.windows(2) {
            if pair[1].role == Role::Visit {
                self.visits.entry(pair[1].tree).or_default().insert(pair[0].step);
            }
            if pair[1].role == Role::Danger {
                // What a danger interrupts comes back with every value void.
                self.reach(pair[0].step);
                self.voided.extend(self.known.moment.values.keys().copied());
            }
        }
        if let Some(top) = frames.last() {
            self.reach(top.step);
        }
        while let Some(step) = self.waiting.pop_front() {
            self.leave(step);
        }
    }

    fn reach(&mut self, step: Id<Step>) {
        if self.seen.insert(step) {
            self.waiting.push_back(step);
        }
    }

    fn follow(&mut self, edge: &Edge) {
        for edge in chain(edge) {
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
                    self.voided.insert(*datum);
                    // What was worked out from it, and what it was worked out from, goes with it.
                    self.voided.extend(super::apply::inputs_of(library, *datum));
                    self.voided.extend(
                        library
                            .readings
                            .iter()
                            .map(|(id, _)| Datum::Reading(id))
                            .filter(|reading| super::apply::inputs_of(library, *reading).contains(datum)),
                    );
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
                if !self.faults.contains(fault) {
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
            .known
            .moment
            .frames
            .first()
            .filter(|frame| frame.role == Role::Gate);
        if gate.is_some_and(|frame| frame.tree == tree)
            && let Some(start) = self
                .known
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
        if let Some(edge) = self.known.settled(datum, answers) {
            return self.follow(edge);
        }
        for edge in answers.edges().chain(others.into_iter().flatten()) {
            self.follow(edge);
        }
    }
}
