//! How many questions and pieces of work may still come.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use super::event::Role;
use super::possible::Search;
use super::proof;
use super::state::{Frame, Moment};
use crate::library::{
    Answers, Datum, Edge, EdgeId, Id, Input, Kind, Library, Obtained, PlateField, Step, Tree,
};

/// Questions and pieces of work which may still come, at worst; second takings and what is taken out of turn not counted.
///
/// An upper bound. A walk is made of stretches without a bounded edge, and those have no cycle: it is no longer than the
/// longest stretch from here, and one more from each bounded edge for each time that it may be taken. What can be asked
/// only once, because nothing voids it, counts once.
pub fn at_worst(library: &Library, moment: &Moment) -> usize {
    let nothing = BTreeSet::new();
    let free = Search::new(library, moment, &nothing, false);
    let search = Search::new(library, moment, &free.voided, true);
    let needs = Needs {
        library,
        moment,
        voidable: &free.voided,
    };
    let asked: BTreeMap<Id<Step>, BTreeSet<Datum>> = search
        .seen
        .iter()
        .map(|step| (*step, needs.of_step(&library[*step])))
        .collect();
    let out_of_turn: BTreeSet<Datum> = moment
        .retaking
        .map(|retaking| needs.of_datum(retaking.datum))
        .unwrap_or_default();

    let mut again = free.voided.clone();
    for (step, data) in &asked {
        if may_stay_open(&library[*step].kind) {
            again.extend(data);
        }
    }
    let once: BTreeSet<Datum> = (asked.values().flatten().chain(&out_of_turn).copied())
        .filter(|datum| !again.contains(datum))
        .collect();
    let every = |_: &Datum| true;
    let repeated = |datum: &Datum| again.contains(datum);
    let longest = |counts: &dyn Fn(&Datum) -> bool| {
        let weight = |step: Id<Step>| {
            let questions = asked
                .get(&step)
                .map_or(0, |data| data.iter().filter(|datum| counts(datum)).count());
            questions + usize::from(matches!(library[step].kind, Kind::Do { .. }))
        };
        let taken_first = out_of_turn.iter().filter(|datum| counts(datum)).count();
        Longest::new(library, &search, &weight)
            .from(moment)
            .saturating_add(taken_first)
    };
    longest(&every).min(longest(&repeated).saturating_add(once.len()))
}

/// Whether what a step asks for may stay without an answer, so that another step asks for it again.
fn may_stay_open(kind: &Kind) -> bool {
    match kind {
        Kind::Measure { unable, .. } | Kind::Plate { unable, .. } => unable.is_some(),
        Kind::Observe { unsure, unable, .. } => unsure.is_some() || unable.is_some(),
        Kind::Verdict { .. } => true,
        Kind::Do { .. } | Kind::Visit { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => false,
    }
}

/// What must be taken, as far as it does not stand for good.
struct Needs<'a> {
    library: &'a Library,
    moment: &'a Moment,
    voidable: &'a BTreeSet<Datum>,
}

impl Needs<'_> {
    fn of_step(&self, step: &Step) -> BTreeSet<Datum> {
        let (own, answers) = match &step.kind {
            Kind::Measure { reading, answers, .. } => (Datum::Reading(*reading), Some(answers)),
            Kind::Observe { sign, .. } => (Datum::Sign(*sign), None),
            Kind::Plate { field, answers, .. } => (Datum::Field(*field), Some(answers)),
            Kind::Verdict { fault, .. } => {
                let fields = proof::fields(self.library, *fault).into_iter().map(Datum::Field);
                return fields.filter(|field| !self.stands(*field)).collect();
            }
            Kind::Do { .. } | Kind::Visit { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => {
                return BTreeSet::new();
            }
        };
        let mut needs = self.of_datum(own);
        let fields = answers.into_iter().flat_map(bound_fields).map(Datum::Field);
        needs.extend(fields.filter(|field| !self.stands(*field)));
        needs
    }

    fn of_datum(&self, datum: Datum) -> BTreeSet<Datum> {
        let mut needs = BTreeSet::new();
        let mut waiting = vec![datum];
        while let Some(datum) = waiting.pop() {
            if self.stands(datum) {
                continue;
            }
            let inputs = match datum {
                Datum::Reading(id) => match &self.library.readings[id].source_of_value {
                    Obtained::WorkedOut { inputs, .. } => Some(inputs),
                    Obtained::Measured(_) => None,
                },
                Datum::Sign(_) | Datum::Field(_) => None,
            };
            match inputs {
                None => {
                    needs.insert(datum);
                }
                Some(inputs) => waiting.extend(inputs.iter().filter_map(|input| match input {
                    Input::Reading(reading) => Some(Datum::Reading(*reading)),
                    Input::Field(field) => Some(Datum::Field(*field)),
                    Input::Fixed(_) => None,
                })),
            }
        }
        needs
    }

    fn stands(&self, datum: Datum) -> bool {
        self.moment.values.contains_key(&datum) && !self.voidable.contains(&datum)
    }
}

fn bound_fields(answers: &Answers) -> Vec<Id<PlateField>> {
    match answers {
        Answers::Bands(bands) => (bands.iter())
            .flat_map(|answer| answer.band.bounds())
            .filter_map(|bound| bound.leans_on().copied())
            .collect(),
        Answers::Go(_) | Answers::Choices(_) => Vec::new(),
    }
}

/// What has a length: from a step to the end of its tree, and through a whole tree.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
enum Node {
    Step(Id<Step>),
    Tree(Id<Tree>),
}

/// Lengths of the longest ways, each worked out once, and without recursion: a tree may be 100,000 steps deep.
struct Longest<'a> {
    library: &'a Library,
    search: &'a Search<'a>,
    weight: &'a dyn Fn(Id<Step>) -> usize,
    /// The bounded edges of each tree: which, how often, and where they lead.
    bounded: BTreeMap<Id<Tree>, Vec<(EdgeId, u32, Id<Step>)>>,
    lengths: HashMap<Node, usize>,
}

impl<'a> Longest<'a> {
    fn new(library: &'a Library, search: &'a Search<'a>, weight: &'a dyn Fn(Id<Step>) -> usize) -> Self {
        let mut bounded: BTreeMap<Id<Tree>, Vec<_>> = BTreeMap::new();
        for step in &search.seen {
            for edge in search.open_edges(&library[*step]) {
                if let Some(limit) = &edge.limit {
                    bounded
                        .entry(library[*step].tree)
                        .or_default()
                        .push((edge.id, limit.at_most, edge.go));
                }
            }
        }
        Self {
            library,
            search,
            weight,
            bounded,
            lengths: HashMap::new(),
        }
    }

    /// From where a walk stands to its end.
    fn from(mut self, moment: &Moment) -> usize {
        let mut total: usize = 0;
        let mut above: Option<&Frame> = None;
        for frame in moment.frames.iter().rev() {
            let here = match above.map(|above| above.role) {
                Some(Role::Visit) => self.after(frame.step),
                _ => self.length(Node::Step(frame.step)),
            };
            total = total
                .saturating_add(here)
                .saturating_add(self.bounded(frame.tree, Some(frame)));
            above = Some(frame);
        }
        if let (Some(Role::Gate), Some(tree)) = (above.map(|frame| frame.role), moment.complaint) {
            total = total.saturating_add(self.length(Node::Tree(tree)));
        }
        total
    }

    /// The longest way on from a visit that is being made.
    fn after(&mut self, visit: Id<Step>) -> usize {
        let ways: Vec<Id<Step>> = self.unlimited(visit).map(|edge| edge.go).collect();
        ways.into_iter()
            .map(|step| self.length(Node::Step(step)))
            .max()
            .unwrap_or_default()
    }

    fn unlimited(&self, step: Id<Step>) -> impl Iterator<Item = &'a Edge> + use<'a> {
        let search = self.search;
        let edges = search.open_edges(&self.library[step]).into_iter();
        edges.filter(|edge| edge.limit.is_none() && search.seen.contains(&edge.go))
    }

    /// What the bounded edges of a tree may add, less what a walk in it has taken already.
    fn bounded(&mut self, tree: Id<Tree>, frame: Option<&Frame>) -> usize {
        let edges = self.bounded.get(&tree).cloned().unwrap_or_default();
        let lengths = edges.into_iter().map(|(id, at_most, go)| {
            let taken = frame
                .and_then(|frame| frame.counts.get(&id))
                .copied()
                .unwrap_or_default();
            let left = at_most.saturating_sub(taken) as usize;
            left.saturating_mul(self.length(Node::Step(go)))
        });
        lengths.fold(0, usize::saturating_add)
    }

    fn length(&mut self, node: Node) -> usize {
        let mut waiting = vec![(node, false)];
        while let Some((node, entered)) = waiting.pop() {
            if entered {
                let length = self.add_up(node);
                self.lengths.insert(node, length);
            } else if !self.lengths.contains_key(&node) {
                // A circle has no length; the checker refuses a library with one.
                self.lengths.insert(node, 0);
                waiting.push((node, true));
                waiting.extend(self.below(node).into_iter().map(|node| (node, false)));
            }
        }
        self.known(node)
    }

    fn known(&self, node: Node) -> usize {
        self.lengths.get(&node).copied().unwrap_or_default()
    }

    fn below(&self, node: Node) -> Vec<Node> {
        match node {
            Node::Step(step) => {
                let inside = match &self.library[step].kind {
                    Kind::Visit { tree, .. } => Some(Node::Tree(*tree)),
                    _ => None,
                };
                self.unlimited(step)
                    .map(|edge| Node::Step(edge.go))
                    .chain(inside)
                    .collect()
            }
            Node::Tree(tree) => {
                let bounded = self
                    .bounded
                    .get(&tree)
                    .into_iter()
                    .flatten()
                    .map(|(_, _, go)| *go);
                self.library.trees[tree]
                    .start
                    .into_iter()
                    .chain(bounded)
                    .map(Node::Step)
                    .collect()
            }
        }
    }

    fn add_up(&self, node: Node) -> usize {
        match node {
            Node::Step(step) => {
                let on = self
                    .unlimited(step)
                    .map(|edge| self.known(Node::Step(edge.go)))
                    .max();
                let inside = match &self.library[step].kind {
                    Kind::Visit { tree, .. } => self.known(Node::Tree(*tree)),
                    _ => 0,
                };
                (self.weight)(step)
                    .saturating_add(inside)
                    .saturating_add(on.unwrap_or_default())
            }
            Node::Tree(tree) => {
                let first = self.library.trees[tree]
                    .start
                    .map_or(0, |step| self.known(Node::Step(step)));
                let bounded = self.bounded.get(&tree).into_iter().flatten();
                let again = bounded
                    .map(|(_, at_most, go)| (*at_most as usize).saturating_mul(self.known(Node::Step(*go))));
                again.fold(first, usize::saturating_add)
            }
        }
    }
}
