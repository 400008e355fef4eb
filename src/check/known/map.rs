//! Which steps lead where, backwards, and which steps have to do with which values.

use std::collections::HashMap;

use super::dependence::Dependence;
use crate::library::{Answers, Claim, ClaimKind, Datum, Id, Kind, Library, PlateField, Remedy, Step, Tree};
use crate::measure::Band;

/// A library turned round: from where each step is come to, across the trees that visit one another.
#[derive(Debug)]
pub(super) struct Map {
    /// Where the nodes before each node begin in `before`; there is one more at the end.
    starts: Vec<u32>,
    before: Vec<u32>,
    /// Steps that ask for a value.
    asking: HashMap<Datum, Vec<Id<Step>>>,
    /// Steps after which something else may be known of a value.
    touching: HashMap<Datum, Vec<Id<Step>>>,
    /// The visits of each tree.
    visitors: Vec<Vec<Id<Step>>>,
    /// Trees in which an edge is bounded, as every loop has one.
    looping: Vec<bool>,
}

/// Steps come first among the nodes; behind them stand the ways in which each tree can end.
struct Nodes {
    /// By tree, the node of its first outcome; the next is the second's. The node before it is its noted verdict's.
    returns: Vec<u32>,
    count: usize,
}

impl Nodes {
    fn of(library: &Library) -> Self {
        let mut count = library.steps.len();
        let returns = library.trees.iter().map(|(_, tree)| {
            let first = count + 1;
            count = first + tree.outcomes.len();
            first as u32
        });
        let returns = returns.collect();
        Self { returns, count }
    }

    fn returned(&self, tree: Id<Tree>, outcome: usize) -> u32 {
        self.returns[tree.index()] + outcome as u32
    }

    fn noted(&self, tree: Id<Tree>) -> u32 {
        self.returns[tree.index()] - 1
    }
}

impl Map {
    pub fn of(library: &Library, dependence: &Dependence) -> Self {
        let nodes = Nodes::of(library);
        let mut ways: Vec<(u32, u32)> = Vec::new();
        let mut map = Self {
            starts: Vec::new(),
            before: Vec::new(),
            asking: HashMap::new(),
            touching: HashMap::new(),
            visitors: vec![Vec::new(); library.trees.len()],
            looping: vec![false; library.trees.len()],
        };
        for (index, step) in library.steps.iter().enumerate() {
            let id = Id::new(index);
            lead(library, &nodes, id, step, &mut ways);
            if let Kind::Visit { tree, .. } = step.kind {
                map.visitors[tree.index()].push(id);
            }
            map.looping[step.tree.index()] |= step.edges().any(|edge| edge.limit.is_some());
            if let Some(datum) = asked(step) {
                map.asking.entry(datum).or_default().push(id);
            }
            let mut touched = touched(library, dependence, step);
            touched.sort_unstable();
            touched.dedup();
            for datum in touched {
                map.touching.entry(datum).or_default().push(id);
            }
        }
        map.turn_round(nodes.count, ways);
        map
    }

    fn turn_round(&mut self, nodes: usize, ways: Vec<(u32, u32)>) {
        let mut starts = vec![0u32; nodes + 1];
        for &(_, to) in &ways {
            starts[to as usize + 1] += 1;
        }
        for node in 0..nodes {
            starts[node + 1] += starts[node];
        }
        let mut next = starts.clone();
        self.before = vec![0; ways.len()];
        for (from, to) in ways {
            let at = &mut next[to as usize];
            self.before[*at as usize] = from;
            *at += 1;
        }
        self.starts = starts;
    }

    /// The steps from which one of `goals` can be come to, by position; whoever is visited may return to any visitor.
    pub fn leading_to(&self, library: &Library, goals: &[Id<Step>]) -> Vec<bool> {
        let mut found = vec![false; self.starts.len()];
        let mut waiting: Vec<u32> = goals.iter().map(|goal| goal.index() as u32).collect();
        while let Some(node) = waiting.pop() {
            if !std::mem::replace(&mut found[node as usize], true) {
                let (from, to) = (self.starts[node as usize], self.starts[node as usize + 1]);
                waiting.extend(&self.before[from as usize..to as usize]);
            }
        }
        found.truncate(library.steps.len());
        found
    }

    /// The steps that ask for a value.
    pub fn asking(&self, datum: Datum) -> &[Id<Step>] {
        self.asking.get(&datum).map_or(&[], Vec::as_slice)
    }

    /// Values, and all the plate fields that what is known of them may lean on.
    pub fn with_fields(&self, library: &Library, claims: &[&Claim], data: Vec<Datum>) -> Vec<Datum> {
        let mut all = data;
        for claim in claims {
            all.push(claim.datum());
            if let ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) = &claim.what {
                all.extend(leaned_on(band));
            }
        }
        let mut at = 0;
        while at < all.len() {
            let datum = all[at];
            if all[..at].contains(&datum) {
                all.swap_remove(at);
                continue;
            }
            at += 1;
            for step in self.asking(datum) {
                if let Kind::Measure { answers, .. } | Kind::Plate { answers, .. } = &library[*step].kind
                    && let Answers::Bands(bands) = answers
                {
                    let fields = bands.iter().flat_map(|answer| leaned_on(&answer.band));
                    let new: Vec<Datum> = fields.filter(|field| !all.contains(field)).collect();
                    all.extend(new);
                }
            }
        }
        all
    }

    /// Values that a walk over these steps may be asked for twice.
    pub fn asked_again(&self, library: &Library, steps: &[bool]) -> Vec<Datum> {
        let again = self.asking.iter().filter(|(_, asking)| {
            let mut asking = asking.iter().filter(|step| steps[step.index()]);
            // A tree that is entered twice, or that has a loop in it, asks again with one step.
            let once = |step: &&Id<Step>| {
                let tree = library[**step].tree;
                self.visitors[tree.index()].len() < 2 && !self.looping[tree.index()]
            };
            match (asking.next(), asking.next()) {
                (Some(only), None) => !once(&only),
                (first, _) => first.is_some(),
            }
        });
        let mut data: Vec<Datum> = again.map(|(datum, _)| *datum).collect();
        data.sort_unstable();
        data
    }

    /// Trees in which, or in a tree they visit, one of these steps stands or something may become known of one of these values.
    pub fn trees_with(&self, library: &Library, steps: &[Id<Step>], data: &[Datum]) -> Vec<bool> {
        let touching = data
            .iter()
            .flat_map(|datum| self.touching.get(datum).into_iter().flatten());
        let mut with = vec![false; library.trees.len()];
        let mut waiting: Vec<Id<Tree>> = touching.chain(steps).map(|step| library[*step].tree).collect();
        while let Some(tree) = waiting.pop() {
            if !std::mem::replace(&mut with[tree.index()], true) {
                let visitors = self.visitors[tree.index()].iter();
                waiting.extend(visitors.map(|visit| library[*visit].tree));
            }
        }
        with
    }
}

fn leaned_on(band: &Band<Id<PlateField>>) -> impl Iterator<Item = Datum> + '_ {
    band.bounds()
        .filter_map(|bound| bound.leans_on().copied().map(Datum::Field))
}

/// The value that a step asks for.
pub(super) fn asked(step: &Step) -> Option<Datum> {
    match &step.kind {
        Kind::Measure { reading, .. } => Some(Datum::Reading(*reading)),
        Kind::Observe { sign, .. } => Some(Datum::Sign(*sign)),
        Kind::Plate { field, .. } => Some(Datum::Field(*field)),
        Kind::Do { .. }
        | Kind::Visit { .. }
        | Kind::Verdict { .. }
        | Kind::Return { .. }
        | Kind::Unresolved { .. } => None,
    }
}

/// Every value of which something else may be known after a step.
fn touched(library: &Library, dependence: &Dependence, step: &Step) -> Vec<Datum> {
    let mut touched: Vec<Datum> = asked(step).into_iter().collect();
    match &step.kind {
        Kind::Measure { reading, .. } => {
            touched.extend(dependence.inputs(Datum::Reading(*reading)));
        }
        Kind::Do { voids, .. } => touched.extend(voids.iter().flat_map(|datum| dependence.gone_with(*datum))),
        Kind::Verdict { fault, .. } => {
            let lines = super::moves::lines_of(library, *fault).into_iter().flatten();
            let claims = lines.flat_map(|line| line.alternatives.iter().flatten());
            touched.extend(claims.map(Claim::datum));
        }
        Kind::Observe { .. }
        | Kind::Plate { .. }
        | Kind::Visit { .. }
        | Kind::Return { .. }
        | Kind::Unresolved { .. } => {}
    }
    touched
}

/// The ways on from a step, across trees.
fn lead(library: &Library, nodes: &Nodes, id: Id<Step>, step: &Step, ways: &mut Vec<(u32, u32)>) {
    let from = id.index() as u32;
    let mut way = |from: u32, to: u32| ways.push((from, to));
    match &step.kind {
        Kind::Visit {
            tree,
            returns,
            on_verdict,
        } => {
            if let Some(start) = library.trees[*tree].start {
                way(from, start.index() as u32);
            }
            for (outcome, edge) in returns {
                for edge in edge.chain() {
                    way(nodes.returned(*tree, *outcome), edge.go.index() as u32);
                }
            }
            match on_verdict {
                Some(edge) => {
                    for edge in edge.chain() {
                        way(nodes.noted(*tree), edge.go.index() as u32);
                    }
                }
                None => way(nodes.noted(*tree), nodes.noted(step.tree)),
            }
        }
        Kind::Return { outcome } => way(from, nodes.returned(step.tree, *outcome)),
        Kind::Verdict { fault, .. } => {
            if library.faults[*fault].remedy != Remedy::ShutDown {
                way(from, nodes.noted(step.tree));
            }
        }
        Kind::Unresolved { .. } => {}
        Kind::Measure { .. } | Kind::Observe { .. } | Kind::Do { .. } | Kind::Plate { .. } => {
            for edge in step.edges() {
                way(from, edge.go.index() as u32);
            }
        }
    }
}
