//! Verdicts that some way reaches without their proof.

use std::collections::{BTreeMap, BTreeSet};

use super::answers::{Given, answers};
use super::dependence::Dependence;
use super::epochs::Epochs;
use super::glance::{AT_ONCE, Glancing};
use super::hindsight::{Fate, Hindsight};
use super::map::Map;
use super::moves::{How, lines_of};
use super::question::Question;
use super::script::{Act, Script};
use super::search::{Bounds, Search, beginnings, work};
use super::tracked::Tracked;
use super::walkable::Walkable;
use crate::library::graph::Graph;
use crate::library::{Claim, Datum, Id, Kind, Library, ProofLine, Step, Tree};
use crate::source::FileId;

/// How many places a walk to one verdict is looked for in, and to all of them together.
const PLACES: usize = 100_000;
const PLACES_IN_ALL: usize = 1_000_000;

/// How many searches for unproven verdicts may be as long as one may; then each has so much work at most.
const LONG_SEARCHES: usize = 4;
const SHORT_SEARCH: usize = 10_000;

/// What trying to walk a way costs, for each of its steps, in places.
const TRYING: usize = 8;

/// Ways of leaving a line open that are tried; nobody writes more.
const OPEN: usize = 64;

/// A verdict that some way reaches without its proof.
#[derive(Debug)]
pub(in crate::check) struct Unproven<'l> {
    pub verdict: Id<Step>,
    /// The line of the proof that need not hold.
    pub line: &'l ProofLine,
    /// The steps of the way, from where the call begins.
    pub steps: Vec<Id<Step>>,
    /// Answers that lead along it; none where none were found.
    pub walk: Option<Walk<'l>>,
}

/// A walk along a way.
#[derive(Debug)]
pub(in crate::check) struct Walk<'l> {
    pub answers: Vec<Given>,
    /// What the line claims and does not hold at the end, one of each of its alternatives.
    pub lacking: Vec<&'l Claim>,
}

/// Every verdict that some way reaches without its proof, each with a shortest such way.
pub(in crate::check) fn unproven<'l>(
    library: &'l Library,
    dependence: &'l Dependence,
    graph: &Graph,
) -> Vec<Unproven<'l>> {
    let lines = unsettled(library, dependence, graph, lines(library, graph));
    if lines.is_empty() {
        return Vec::new();
    }
    let mut prover = Prover {
        library,
        graph,
        map: Map::of(library, dependence),
        dependence,
        left: PLACES_IN_ALL,
        work: LONG_SEARCHES * work(library),
    };
    let mut failing: BTreeMap<Id<Step>, Vec<Failing<'l>>> = BTreeMap::new();
    for (line, verdicts) in lines.into_values() {
        for (verdict, way) in prover.failing(line, &verdicts) {
            failing.entry(verdict).or_default().push(Failing { line, way });
        }
    }
    let shown = failing.into_iter();
    shown
        .filter_map(|(verdict, failing)| prover.shown(verdict, failing))
        .collect()
}

/// A line that need not hold, and a way on which it does not, as far as is known.
struct Failing<'l> {
    line: &'l ProofLine,
    /// None where what can be known there is more than was looked at.
    way: Option<Script<'l>>,
}

/// A line, and all the verdicts that need it.
type Needed<'l> = (&'l ProofLine, Vec<Id<Step>>);

/// Lines by where they stand: two never stand at one place.
type Lines<'l> = BTreeMap<(FileId, u32), Needed<'l>>;

/// Every line that a verdict needs which a call can come to, with all the verdicts that need it.
fn lines<'l>(library: &'l Library, graph: &Graph) -> Lines<'l> {
    let mut lines = Lines::new();
    for (index, step) in library.steps.iter().enumerate() {
        let Kind::Verdict { fault, .. } = step.kind else {
            continue;
        };
        let id = Id::new(index);
        if !graph.is_entered(step.tree) || !graph.is_reached_from_start(id) {
            continue;
        }
        for line in lines_of(library, fault).into_iter().flatten() {
            let place = (line.at.file, line.at.start);
            lines.entry(place).or_insert((line, Vec::new())).1.push(id);
        }
    }
    lines
}

/// What two first looks leave: of each line the verdicts at which it may not hold.
fn unsettled<'l>(
    library: &'l Library,
    dependence: &'l Dependence,
    graph: &Graph,
    mut lines: Lines<'l>,
) -> Lines<'l> {
    let beginnings = beginnings(library);
    let mut hindsight = Hindsight::new(library, dependence, graph, &beginnings);
    let mut unclear: Vec<Needed<'l>> = Vec::new();
    for (line, verdicts) in lines.values_mut() {
        let mut left = Vec::new();
        verdicts.retain(|verdict| match fate(&mut hindsight, line, *verdict) {
            Fate::Never => false,
            Fate::May => true,
            Fate::Unclear => {
                left.push(*verdict);
                false
            }
        });
        if !left.is_empty() {
            unclear.push((line, left));
        }
    }
    settle(library, dependence, graph, &beginnings, &mut unclear);
    for (line, verdicts) in unclear {
        let needed = lines.entry((line.at.file, line.at.start));
        needed.or_insert((line, Vec::new())).1.extend(verdicts);
    }
    lines.retain(|_, (_, verdicts)| !verdicts.is_empty());
    lines
}

/// Whether a line may not hold at a verdict, as far as a look back shows.
fn fate<'l>(hindsight: &mut Hindsight<'_, 'l>, line: &'l ProofLine, verdict: Id<Step>) -> Fate {
    let mut all = Fate::May;
    for claims in &line.alternatives {
        let mut one = Fate::Never;
        for claim in claims {
            match hindsight.look(Question::Shown(claim), verdict) {
                Fate::Never => {}
                Fate::May => {
                    one = Fate::May;
                    break;
                }
                Fate::Unclear => one = Fate::Unclear,
            }
        }
        match one {
            Fate::Never => return Fate::Never,
            Fate::Unclear => all = Fate::Unclear,
            Fate::May => {}
        }
    }
    all
}

/// Leaves out what a first look shows: of each line the verdicts at which it always holds.
fn settle(
    library: &Library,
    dependence: &Dependence,
    graph: &Graph,
    beginnings: &[Id<Tree>],
    lines: &mut Vec<Needed<'_>>,
) {
    let glancing = Glancing::new(library, dependence, graph);
    let mut rest = lines.as_mut_slice();
    while !rest.is_empty() {
        let fitting = fitting(rest);
        // A line that does not fit alone is searched for.
        let (some, others) = rest.split_at_mut(fitting.max(1));
        rest = others;
        let claims = some[..fitting]
            .iter()
            .flat_map(|(line, _)| line.alternatives.iter().flatten());
        let questions: Vec<Question<'_>> = claims.map(Question::Shown).collect();
        let Some(glance) = glancing.at(&questions, beginnings) else {
            return;
        };
        let mut first = 0;
        for (line, verdicts) in &mut some[..fitting] {
            let alternatives: Vec<u64> = (line.alternatives.iter())
                .map(|claims| {
                    let bits = (first..first + claims.len()).fold(0, |bits, at| bits | 1 << at);
                    first += claims.len();
                    bits
                })
                .collect();
            verdicts.retain(|verdict| match glance.missing(library, *verdict) {
                Some(missing) => alternatives.iter().all(|claims| claims & missing != 0),
                None => false,
            });
        }
    }
    lines.retain(|(_, verdicts)| !verdicts.is_empty());
}

/// How many of these lines, from the first on, can be looked for at once.
fn fitting(lines: &[Needed<'_>]) -> usize {
    let mut claims = 0;
    let fits = lines.iter().take_while(|(line, _)| {
        claims += line.alternatives.iter().map(Vec::len).sum::<usize>();
        claims <= AT_ONCE
    });
    fits.count()
}

struct Prover<'s, 'l> {
    library: &'l Library,
    graph: &'s Graph,
    dependence: &'l Dependence,
    map: Map,
    /// How many places may still be looked at in search of walks.
    left: usize,
    /// How much work may still be spent on searches.
    work: usize,
}

impl<'l> Prover<'_, 'l> {
    /// Those of the verdicts at which the line need not hold, each with a way there; also those of which it is not known
    /// that it holds.
    fn failing(&mut self, line: &'l ProofLine, verdicts: &[Id<Step>]) -> Vec<(Id<Step>, Option<Script<'l>>)> {
        let data = self.data(line);
        let bounds = Bounds {
            steps: self.map.leading_to(self.library, verdicts),
            trees: self.map.trees_with(self.library, verdicts, &data),
        };
        let mut tracked = Tracked::new(self.library, self.dependence, data);
        let mut open: BTreeSet<Id<Step>> = verdicts.iter().copied().collect();
        let mut found = Vec::new();
        let work = work(self.library).min(self.work).max(SHORT_SEARCH);
        let mut search = Search::new(&mut tracked, self.graph, bounds, work);
        while !open.is_empty()
            && let Some((fact, step, state)) = search.next()
        {
            if open.contains(&step) && !search.tracked.holds(state, line) {
                open.remove(&step);
                found.push((step, Some(search.way_to(fact))));
            }
        }
        if search.is_cut_short() {
            found.extend(open.into_iter().map(|verdict| (verdict, None)));
        }
        self.work = self.work.saturating_sub(work - search.left());
        found
    }

    fn data(&self, line: &ProofLine) -> Vec<Datum> {
        let claims: Vec<&Claim> = line.alternatives.iter().flatten().collect();
        self.map.with_fields(self.library, &claims, Vec::new())
    }

    /// A way to show: the shortest that can be walked, else the one that was found.
    fn shown(&mut self, verdict: Id<Step>, failing: Vec<Failing<'l>>) -> Option<Unproven<'l>> {
        let lines: Vec<&ProofLine> = failing.iter().map(|failing| failing.line).collect();
        if let Some(walk) = self.walk(verdict, &lines) {
            return Some(walk);
        }
        let walked = failing.iter().find_map(|failing| {
            let walk = self.along(failing.way.as_ref()?, failing.line)?;
            Some((failing, Some(walk)))
        });
        let (failing, walk) = walked.or_else(|| Some((failing.first()?, None)))?;
        Some(Unproven {
            verdict,
            line: failing.line,
            steps: failing.way.as_ref().map_or(vec![verdict], steps),
            walk,
        })
    }

    /// The shortest way that a walk can take to a verdict without one of these lines.
    fn walk(&mut self, verdict: Id<Step>, lines: &[&'l ProofLine]) -> Option<Unproven<'l>> {
        let leading = self.map.leading_to(self.library, &[verdict]);
        let mut data: Vec<Datum> = lines.iter().flat_map(|line| self.data(line)).collect();
        data.extend(self.map.asked_again(self.library, &leading));
        let mut tracked = Tracked::new(self.library, self.dependence, data);
        let mut walkable = Walkable::new(&mut tracked, &leading);
        let budget = PLACES.min(self.left);
        // The more is remembered at a place, the more it takes.
        let size = 1 + walkable.tracked.count() / 16;
        let mut tried = 0;
        let mut shown = None;
        while walkable.found() * size + tried < budget
            && let Some((place, step, state)) = walkable.next()
        {
            if step != verdict {
                continue;
            }
            let open: Vec<&'l ProofLine> = (lines.iter().copied())
                .filter(|line| !walkable.tracked.holds(state, line))
                .collect();
            if open.is_empty() {
                continue;
            }
            let way = walkable.way_to(place);
            tried += way.len() * open.len() * TRYING;
            let mut answered = open.into_iter();
            let answered = answered.find_map(|line| Some((line, self.along(&way, line)?)));
            if let Some((line, walk)) = answered {
                shown = Some(Unproven {
                    verdict,
                    line,
                    steps: steps(&way),
                    walk: Some(walk),
                });
                break;
            }
        }
        self.left = self.left.saturating_sub(walkable.found() * size + tried);
        shown
    }

    /// A walk along a way that leaves a line open at its end.
    fn along(&self, way: &Script<'l>, line: &'l ProofLine) -> Option<Walk<'l>> {
        let (verdict, _) = way.last()?;
        let ways = Epochs::along(self.library, self.dependence, way);
        let open = ways.iter().flat_map(|way| way.failing(*verdict, line));
        open.take(OPEN).find_map(|way| {
            Some(Walk {
                answers: answers(&way)?,
                lacking: way.lacking,
            })
        })
    }
}

/// The steps of a way; a visit that was entered and comes back stands there once.
fn steps(way: &Script<'_>) -> Vec<Id<Step>> {
    let mut steps = Vec::with_capacity(way.len());
    let mut ended = false;
    for (step, act) in way {
        let back = matches!(act, Act::Take(How::Returned(_) | How::Noted, ..));
        if !(back && ended) {
            steps.push(*step);
        }
        ended = matches!(act, Act::End);
    }
    steps
}
