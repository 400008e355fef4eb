//! By which answers the trees come to a verdict, and how far those were given.
//!
//! Most faults have no proof of their own in the registry: a tree comes to them by what was answered on its way. Where no tree
//! is walked, the same answers must stand all the same, in whatever order they were taken.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BinaryHeap};

use super::here::Here;
use crate::bench::technician::NOT_HERE;
use crate::library::{
    Answers, Claim, ClaimKind, Datum, Edge, Fault, FieldKind, Id, Kind, Library, Remedy, Step, Tree,
};
use crate::walk::{Holding, State, claim_holds, claim_words, inputs_of};

/// What a way is to come to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Goal {
    /// A verdict.
    Verdict(Id<Fault>),
    /// An outcome of the tree, by its position.
    Return(usize),
    /// A verdict that nothing is to be done.
    NoFault,
    /// That, or the tree's own end without a verdict.
    Sound,
}

/// An answer on a way, and how it stands.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Needed {
    /// What is answered; in words, with the answer.
    pub words: String,
    /// How it stands.
    pub holding: Holding,
    /// What must be known for it.
    pub data: Vec<Datum>,
    /// It is asked again after work of the tree's own, which nobody does in free practice.
    pub after_work: bool,
    /// It was not taken, and the furnace would show something else, or nothing.
    pub otherwise: bool,
}

/// A way with what it costs: what was not taken, and what was taken and says otherwise.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Found {
    cost: u32,
    /// Its answers, in order.
    pub needed: Vec<Needed>,
}

impl Found {
    /// Whether nothing that was taken, and nothing that the furnace is known to show, speaks against it.
    pub fn is_open(&self) -> bool {
        self.cost < OTHERWISE
    }
}

/// What an answer costs that says otherwise: more than any way has questions that were not taken.
const OTHERWISE: u32 = 10_000;

/// What it costs to hope that a furnace does not show something: a way that asks more, of what every furnace shows, is nearer.
const NOT_SHOWN: u32 = 100;

/// The way from the start of one of some trees that lacks least; none where no way leads there. What the furnace shows,
/// `here`, keeps it from ways that this furnace does not have.
pub(super) fn way(
    library: &Library,
    state: &State,
    here: Option<&Here>,
    trees: impl IntoIterator<Item = Id<Tree>>,
    goal: Goal,
) -> Option<Found> {
    let mut ways = Ways {
        library,
        state,
        here,
        known: BTreeMap::new(),
    };
    let found = trees.into_iter().filter_map(|tree| ways.through(tree, goal));
    let mut found = found.min_by_key(|found| found.cost)?;
    // A loop asks the same once more.
    let mut seen: Vec<String> = Vec::new();
    found.needed.retain(|needed| {
        let fresh = !seen.contains(&needed.words);
        seen.push(needed.words.clone());
        fresh
    });
    Some(found)
}

/// The ways through trees that were looked for, each once.
struct Ways<'a> {
    library: &'a Library,
    state: &'a State,
    /// What the furnace shows, where that may be told.
    here: Option<&'a Here>,
    known: BTreeMap<(Id<Tree>, Goal), Option<Found>>,
}

/// The best way to a step so far.
struct Reached {
    cost: u32,
    /// Where it came from, and what that took.
    from: Option<Id<Step>>,
    needed: Vec<Needed>,
    /// What work on the way has made void.
    void: Vec<Datum>,
    done: bool,
}

impl Ways<'_> {
    fn through(&mut self, tree: Id<Tree>, goal: Goal) -> Option<Found> {
        if let Some(known) = self.known.get(&(tree, goal)) {
            return known.clone();
        }
        // A tree that visits itself comes no nearer by that.
        self.known.insert((tree, goal), None);
        let found = self.search(tree, goal);
        self.known.insert((tree, goal), found.clone());
        found
    }

    /// The shortest way by what its answers cost (Dijkstra, 1959).
    fn search(&mut self, tree: Id<Tree>, goal: Goal) -> Option<Found> {
        let library = self.library;
        let start = library.trees[tree].start?;
        let mut reached: BTreeMap<Id<Step>, Reached> = BTreeMap::new();
        let mut waiting = BinaryHeap::from([Reverse((0, start))]);
        reached.insert(
            start,
            Reached {
                cost: 0,
                from: None,
                needed: Vec::new(),
                void: Vec::new(),
                done: false,
            },
        );
        let mut best: Option<Found> = None;
        while let Some(Reverse((cost, at))) = waiting.pop() {
            if best.as_ref().is_some_and(|best| best.cost <= cost) {
                break;
            }
            let Some(here) = reached.get_mut(&at).filter(|here| !here.done) else {
                continue;
            };
            here.done = true;
            let void = here.void.clone();
            if let Some(last) = self.comes_to(at, goal) {
                let whole = Found {
                    cost: cost + last.cost,
                    needed: [back(&reached, at), last.needed].concat(),
                };
                if best.as_ref().is_none_or(|best| whole.cost < best.cost) {
                    best = Some(whole);
                }
            }
            for (go, taken, voids) in self.onward(at, &void) {
                let cost = cost + taken.cost;
                if reached.get(&go).is_some_and(|known| known.cost <= cost) {
                    continue;
                }
                let void = [void.as_slice(), voids.as_slice()].concat();
                reached.insert(
                    go,
                    Reached {
                        cost,
                        from: Some(at),
                        needed: taken.needed,
                        void,
                        done: false,
                    },
                );
                waiting.push(Reverse((cost, go)));
            }
        }
        best
    }

    /// What a step itself still takes to come to the goal; none where it does not.
    fn comes_to(&mut self, at: Id<Step>, goal: Goal) -> Option<Found> {
        let library = self.library;
        let here = match (&library[at].kind, goal) {
            (Kind::Verdict { fault, .. }, Goal::Verdict(named)) => *fault == named,
            (Kind::Verdict { fault, .. }, Goal::NoFault | Goal::Sound) => {
                library.faults[*fault].remedy == Remedy::None
            }
            (Kind::Return { outcome }, Goal::Return(wanted)) => *outcome == wanted,
            (Kind::Return { .. }, Goal::Sound) => true,
            (Kind::Visit { tree, .. }, Goal::Verdict(_) | Goal::NoFault) => {
                return self.through(*tree, goal);
            }
            (Kind::Visit { tree, .. }, Goal::Sound) => return self.through(*tree, Goal::NoFault),
            _ => false,
        };
        here.then(Found::default)
    }

    /// Where a step leads, what that takes, and what it makes void.
    fn onward(&mut self, at: Id<Step>, void: &[Datum]) -> Vec<(Id<Step>, Found, Vec<Datum>)> {
        let library = self.library;
        match &library[at].kind {
            Kind::Measure {
                reading,
                answers,
                unable,
                ..
            } => self.answered(Datum::Reading(*reading), answers, unable.iter(), void),
            Kind::Observe {
                sign,
                answers,
                unable,
                unsure,
                ..
            } => self.answered(Datum::Sign(*sign), answers, unable.iter().chain(unsure), void),
            Kind::Plate {
                field,
                answers,
                unable,
            } => self.answered(Datum::Field(*field), answers, unable.iter(), void),
            Kind::Do { go, voids, .. } => vec![(go.go, Found::default(), self.void_with(voids))],
            Kind::Visit { tree, returns, .. } => returns
                .iter()
                .filter_map(|(outcome, edge)| {
                    let found = self.through(*tree, Goal::Return(*outcome))?;
                    Some((edge.go, found, Vec::new()))
                })
                .collect(),
            Kind::Verdict { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => Vec::new(),
        }
    }

    /// What work makes void: with a value, all that it is worked out from and all that is worked out from it.
    fn void_with(&self, voids: &[Datum]) -> Vec<Datum> {
        let library = self.library;
        let mut all = Vec::new();
        for datum in voids {
            all.push(*datum);
            all.extend(inputs_of(library, *datum));
            let readings = library.readings.iter().map(|(id, _)| Datum::Reading(id));
            all.extend(readings.filter(|reading| inputs_of(library, *reading).contains(datum)));
        }
        all
    }

    fn answered<'e>(
        &self,
        datum: Datum,
        answers: &Answers,
        without: impl Iterator<Item = &'e Edge>,
        void: &[Datum],
    ) -> Vec<(Id<Step>, Found, Vec<Datum>)> {
        let is_void = void.contains(&datum);
        let claims = claims(self.library, datum, answers);
        let answers = claims.into_iter().map(|(go, claim)| {
            let found = self.stands(datum, claim.as_ref(), is_void);
            (go, found, Vec::new())
        });
        let without = without.map(|edge| (edge.go, self.not_shown(datum, is_void), Vec::new()));
        answers.chain(without).collect()
    }

    /// Whether the furnace itself was found not to show it: whoever only says so has not looked.
    fn is_not_here(&self, datum: Datum) -> bool {
        self.state
            .could_not
            .get(&datum)
            .is_some_and(|why| why == NOT_HERE)
    }

    /// What it takes to go on without an answer.
    fn not_shown(&self, datum: Datum, is_void: bool) -> Found {
        if self.is_not_here(datum) && !is_void {
            return Found::default();
        }
        let taken = self.state.value(datum).is_some() && !is_void;
        let shows = self.here.map(|here| here.shows(datum));
        let otherwise = !taken && !is_void && shows == Some(true);
        Found {
            cost: match shows {
                _ if taken || otherwise => OTHERWISE,
                Some(false) => 1,
                _ => NOT_SHOWN,
            },
            needed: vec![Needed {
                words: format!("{}: not to be had at this furnace", self.library.title_of(datum)),
                holding: match taken {
                    true => Holding::Contradicted,
                    false => Holding::Missing,
                },
                data: vec![datum],
                after_work: is_void,
                otherwise,
            }],
        }
    }

    fn stands(&self, datum: Datum, claim: Option<&Claim>, after_work: bool) -> Found {
        let holding = match claim {
            // What stands was taken before it.
            _ if after_work => Holding::Missing,
            Some(claim) => claim_holds(self.state, claim),
            None if self.state.value(datum).is_some() => Holding::Holds,
            None => Holding::Missing,
        };
        // What is not to be had here is no nearer than what was found otherwise.
        let missing = holding == Holding::Missing && !after_work;
        let otherwise = missing
            && (self.is_not_here(datum)
                || self.here.is_some_and(|here| match claim {
                    Some(claim) => here.rules_out(claim),
                    None => !here.shows(datum),
                }));
        let words = match claim {
            // Where every answer will do, to list them all says nothing.
            Some(claim) if !is_any(self.library, claim) => claim_words(self.library, claim),
            _ => self.library.title_of(datum).to_owned(),
        };
        let bands = claim.into_iter().flat_map(bounds);
        let data = std::iter::once(datum).chain(bands).collect();
        Found {
            cost: match holding {
                Holding::Holds => 0,
                _ if otherwise => OTHERWISE,
                Holding::Missing | Holding::Borderline => 1,
                Holding::Contradicted => OTHERWISE,
            },
            needed: vec![Needed {
                words,
                holding,
                data,
                after_work,
                otherwise,
            }],
        }
    }
}

/// What was needed on the way to a step.
fn back(reached: &BTreeMap<Id<Step>, Reached>, at: Id<Step>) -> Vec<Needed> {
    let mut at = reached.get(&at);
    let mut parts = Vec::new();
    while let Some(here) = at {
        parts.push(here.needed.as_slice());
        at = here.from.and_then(|from| reached.get(&from));
    }
    parts.into_iter().rev().flatten().cloned().collect()
}

/// What each way out of a question claims of its answer; nothing where any answer will do.
fn claims(library: &Library, datum: Datum, answers: &Answers) -> Vec<(Id<Step>, Option<Claim>)> {
    match answers {
        Answers::Go(edge) => vec![(edge.go, None)],
        Answers::Bands(bands) => (bands.iter())
            .filter_map(|answer| {
                let what = match datum {
                    Datum::Reading(id) => ClaimKind::Reading(id, answer.band.clone()),
                    Datum::Field(id) => ClaimKind::FieldNumber(id, answer.band.clone()),
                    Datum::Sign(_) => return None,
                };
                Some((answer.edge.go, Some(Claim { at: answer.at, what })))
            })
            .collect(),
        Answers::Choices(choices) => {
            // Values that lead the same way are one answer.
            let mut ways: Vec<(Id<Step>, Claim)> = Vec::new();
            for answer in choices {
                let what = match datum {
                    Datum::Sign(id) => ClaimKind::Sign(id, vec![answer.value]),
                    Datum::Field(id) if matches!(library.plate[id].kind, FieldKind::Choices(_)) => {
                        ClaimKind::FieldChoice(id, vec![answer.value])
                    }
                    _ => continue,
                };
                let same = ways.iter_mut().find(|(go, _)| *go == answer.edge.go);
                match same.map(|(_, claim)| &mut claim.what) {
                    Some(ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values)) => {
                        values.push(answer.value);
                    }
                    _ => ways.push((answer.edge.go, Claim { at: answer.at, what })),
                }
            }
            ways.into_iter().map(|(go, claim)| (go, Some(claim))).collect()
        }
    }
}

/// Whether every answer fulfils a claim.
fn is_any(library: &Library, claim: &Claim) -> bool {
    match &claim.what {
        ClaimKind::Sign(id, values) => values.len() == library.signs[*id].values.len(),
        ClaimKind::FieldChoice(id, values) => match &library.plate[*id].kind {
            FieldKind::Choices(choices) => values.len() == choices.len(),
            FieldKind::Number { .. } => false,
        },
        ClaimKind::Reading(..) | ClaimKind::FieldNumber(..) => false,
    }
}

/// The plate fields that the bounds of a claim lean on.
fn bounds(claim: &Claim) -> Vec<Datum> {
    match &claim.what {
        ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => {
            let fields = band.bounds().filter_map(|bound| bound.leans_on());
            fields.map(|field| Datum::Field(*field)).collect()
        }
        ClaimKind::Sign(..) | ClaimKind::FieldChoice(..) => Vec::new(),
    }
}
