//! What a question is likely to show where no way says, and what must be asked before it.

use std::collections::{BTreeMap, BTreeSet};

use crate::bench::cost::reorder::Guard;
use crate::bench::cost::sequence::{Case, Need, Test};
use crate::bench::cost::ways::Way;

/// The tests with likely answers filled in, and with what each needs.
///
/// A question whose answer is not known for a fault shows for it what it shows for most: by weight, among the ways that ask
/// it. Where two answers are as common it stays unknown, and so it does for a way without the work that is always done
/// before that question.
pub(super) fn tests(
    guard: &Guard<'_>,
    ways: &[Way],
    orders: &[Vec<(usize, usize)>],
    cases: &[Case],
    tests: &[Test],
) -> Vec<Test> {
    let mut likely = tests.to_vec();
    for (number, test) in likely.iter_mut().enumerate() {
        let asking = Asking::of(number, orders);
        let work = work_before(ways, &asking);
        let done = |way: &Way| {
            work.iter()
                .all(|step| way.work.iter().any(|work| work.at == *step))
        };
        for scale in &mut test.scales {
            let Some(usual) = usual(&scale.of, cases) else {
                continue;
            };
            for (case, way) in ways.iter().enumerate() {
                if !asking.cases.contains_key(&case) && done(way) {
                    scale.of[case] = Some(usual);
                }
            }
        }
        test.needs = needs(guard, ways, orders, tests, &asking);
    }
    likely
}

/// The ways that ask a test: each with where it stands in their order, and its taking.
struct Asking {
    cases: BTreeMap<usize, (usize, usize)>,
}

impl Asking {
    fn of(test: usize, orders: &[Vec<(usize, usize)>]) -> Self {
        let asking = orders.iter().enumerate().filter_map(|(case, order)| {
            let at = order.iter().position(|(known, _)| *known == test)?;
            Some((case, (at, order[at].1)))
        });
        Self {
            cases: asking.collect(),
        }
    }
}

/// The answer that is met most, by weight; none where two are.
fn usual(of: &[Option<usize>], cases: &[Case]) -> Option<usize> {
    let mut weights: BTreeMap<usize, f64> = BTreeMap::new();
    for (answer, case) in of.iter().zip(cases) {
        if let Some(answer) = answer {
            *weights.entry(*answer).or_default() += case.weight;
        }
    }
    let (answer, most) = weights
        .iter()
        .max_by(|(_, one), (_, other)| one.total_cmp(other))?;
    let as_common = |weight: &&f64| (**weight - most).abs() <= 1e-9 * most;
    (weights.values().filter(as_common).count() == 1).then_some(*answer)
}

/// The work that is done before a test on every way that asks it.
fn work_before(ways: &[Way], asking: &Asking) -> BTreeSet<crate::library::Id<crate::library::Step>> {
    let before = asking.cases.iter().map(|(case, (_, taking))| {
        let way = &ways[*case];
        let done = way.work.iter().take(way.takings[*taking].after);
        done.map(|work| work.at).collect::<BTreeSet<_>>()
    });
    before.reduce(|one, other| &one & &other).unwrap_or_default()
}

/// What every way that asks a test asks before it and it may not pass, with what that has shown there.
fn needs(
    guard: &Guard<'_>,
    ways: &[Way],
    orders: &[Vec<(usize, usize)>],
    tests: &[Test],
    asking: &Asking,
) -> Vec<Need> {
    let mut always: Option<BTreeSet<usize>> = None;
    let mut blocked: BTreeSet<usize> = BTreeSet::new();
    for (case, (at, taking)) in &asking.cases {
        let takings = &ways[*case].takings;
        let taken = &takings[*taking];
        let before = &orders[*case][..*at];
        let earlier: BTreeSet<usize> = before.iter().map(|(test, _)| *test).collect();
        blocked.extend(
            before
                .iter()
                .filter(|(_, taking)| {
                    let other = &takings[*taking];
                    other.after != taken.after || !guard.may_pass(taken.at, other.at)
                })
                .map(|(test, _)| *test),
        );
        always = Some(always.map_or(earlier.clone(), |always| &always & &earlier));
    }
    let needed = always.unwrap_or_default();
    let needed = needed.intersection(&blocked);
    needed
        .map(|test| Need {
            test: *test,
            shown: shown(&tests[*test], asking),
        })
        .collect()
}

/// On each scale of a test that every asking way knows, the answers that it has there.
fn shown(needed: &Test, asking: &Asking) -> Vec<(usize, Vec<usize>)> {
    let scales = needed.scales.iter().enumerate().filter_map(|(at, scale)| {
        let answers: Option<BTreeSet<usize>> = asking.cases.keys().map(|case| scale.of[*case]).collect();
        Some((at, answers?.into_iter().collect()))
    });
    scales.collect()
}
