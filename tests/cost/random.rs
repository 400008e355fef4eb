//! The algorithms against brute force, over small problems made at random.

use proofwalk::bench::cost::sequence::{
    Case, Misfit, Need, NoOptimum, Plan, Problem, Scale, Set, Test, Trial, best_order, expected_cost, floor,
    groups, optimum,
};
use proptest::prelude::*;

const PATIENCE: usize = 10_000_000;

fn case(weight: f64, class: usize) -> Case {
    Case {
        weight,
        class,
        fixed: 0.0,
        sunk: Vec::new(),
    }
}

fn test(cost: f64, answers: usize, of: &[Option<usize>]) -> Test {
    let of = of.to_vec();
    Test {
        cost,
        scales: vec![Scale { answers, of }],
        needs: Vec::new(),
    }
}

/// Up to six cases and four tests of two or three answers, some unknown, some proving; some tests on two scales.
fn problems(unknown: bool) -> impl Strategy<Value = Problem> {
    let answer = prop_oneof![8 => (0_usize..3).prop_map(Some), u32::from(unknown) => Just(None)];
    let scales = prop::collection::vec(prop::collection::vec(answer, 6), 1..3);
    // A test needs one in front of it, whatever that has shown or where it has shown one of two answers.
    let need = prop::option::weighted(0.3, (0_usize..4, any::<bool>(), 0_usize..3));
    let tests = prop::collection::vec((0_u32..5, scales, need), 1..5);
    let cases = prop::collection::vec(
        (
            1_u32..6,
            0_usize..4,
            0_u32..3,
            prop::collection::vec(0_usize..4, 0..2),
        ),
        2..7,
    );
    (cases, tests).prop_map(|(cases, tests)| {
        let (count, most) = (cases.len(), tests.len());
        let tests = tests
            .into_iter()
            .enumerate()
            .map(|(at, (cost, scales, need))| Test {
                cost: f64::from(cost),
                needs: (need.into_iter().filter(|(test, ..)| *test < at))
                    .map(|(test, whatever, not)| Need {
                        test,
                        shown: match whatever {
                            true => Vec::new(),
                            false => vec![(0, (0..3).filter(|answer| *answer != not).collect())],
                        },
                    })
                    .collect(),
                scales: (scales.into_iter())
                    .map(|of| Scale {
                        answers: 3,
                        of: of[..count].to_vec(),
                    })
                    .collect(),
            });
        let cases = cases.into_iter().map(|(weight, class, fixed, sunk)| Case {
            weight: f64::from(weight),
            class,
            fixed: f64::from(fixed),
            sunk: sunk.into_iter().filter(|test| *test < most).collect(),
        });
        Problem::new(cases.collect(), tests.collect()).unwrap()
    })
}

/// Every order there is, with nothing remembered and nothing left out: what is paid for each case on the way, tests that
/// prove it included once.
fn brute(problem: &Problem, among: &Set, asked: &[usize]) -> f64 {
    let proven = |case: usize| {
        let tests = 0..problem.tests().len();
        let paying = tests.filter(|test| asked.contains(test) || problem.is_sunk(*test, case));
        let paid: f64 = paying.map(|test| problem.tests()[test].cost).sum();
        problem.cases()[case].weight * (paid + problem.cases()[case].fixed)
    };
    if problem.is_settled(among) {
        return among.iter().map(proven).sum();
    }
    let cases: Vec<usize> = among.iter().collect();
    let class = |case: usize| problem.cases()[case].class;
    let told_from = |one: usize, other: usize| class(one) != class(other) && problem.tells_apart(one, other);
    if !cases
        .iter()
        .any(|one| cases.iter().any(|other| told_from(*one, *other)))
    {
        return cases.into_iter().map(proven).sum();
    }
    let mut before = Set::none(problem.tests().len());
    asked.iter().for_each(|test| before.insert(*test));
    let splits = (0..problem.tests().len()).filter_map(|test| {
        let of_use = |parts: &Vec<Set>| parts.len() > 1 || !before.contains(test);
        let parts = problem.split(among, test).filter(of_use)?;
        if !problem.may_ask(among, &before, test) {
            return None;
        }
        let asked: Vec<usize> = asked.iter().copied().chain([test]).collect();
        Some(parts.iter().map(|part| brute(problem, part, &asked)).sum::<f64>())
    });
    splits.fold(f64::INFINITY, f64::min)
}

/// Huffman's cost of binary questions of every kind, at one each (Huffman 1952; Cormen et al., *Introduction to
/// Algorithms*, 15.3): the sum of all that is merged.
fn huffman(weights: &[u32]) -> u32 {
    let mut waiting: Vec<u32> = weights.to_vec();
    let mut cost = 0;
    while waiting.len() > 1 {
        waiting.sort_unstable_by(|one, other| other.cmp(one));
        let merged = waiting.pop().unwrap() + waiting.pop().unwrap();
        cost += merged;
        waiting.push(merged);
    }
    cost
}

proptest! {
    #[test]
    fn the_optimum_is_what_brute_force_finds(problem in problems(true)) {
        let expected = brute(&problem, &problem.everything(), &[]) / problem.weight();
        match optimum(&problem, PATIENCE) {
            Ok(found) => prop_assert!((found.cost - expected).abs() < 1e-9, "{} is not {expected}", found.cost),
            Err(why) => {
                prop_assert_eq!(why, NoOptimum::Unsettled);
                prop_assert!(expected.is_infinite());
            }
        }
    }

    #[test]
    fn the_floor_is_never_above_the_optimum(problem in prop_oneof![problems(true), problems(false)]) {
        if let Ok(found) = optimum(&problem, PATIENCE) {
            let floor = floor(&problem);
            prop_assert!(floor <= found.cost + 1e-9, "{floor} is above {}", found.cost);
        }
    }

    #[test]
    fn cases_are_in_one_group_exactly_where_their_answers_are_alike(problem in problems(false)) {
        let groups = groups(&problem);
        let group_of = |case: usize| groups.iter().position(|group| group.contains(&case));
        for one in 0..problem.cases().len() {
            for other in 0..problem.cases().len() {
                let alike = group_of(one) == group_of(other);
                prop_assert_eq!(alike, !problem.tells_apart(one, other));
            }
        }
    }

    #[test]
    fn with_every_question_of_two_answers_the_optimum_is_huffmans(weights in prop::collection::vec(1_u32..40, 2..7)) {
        let count = weights.len();
        let tests = (1_usize..(1 << count) - 1).map(|members| {
            let of: Vec<_> = (0..count).map(|case| Some(members >> case & 1)).collect();
            test(1.0, 2, &of)
        });
        let cases = weights.iter().enumerate().map(|(class, weight)| case(f64::from(*weight), class));
        let problem = Problem::new(cases.collect(), tests.collect()).unwrap();
        let found = optimum(&problem, PATIENCE).unwrap().cost * problem.weight();
        prop_assert!((found - f64::from(huffman(&weights))).abs() < 1e-6);
    }

    #[test]
    fn no_order_of_trials_is_better_than_by_chance_over_cost(
        trials in prop::collection::vec((0_u32..9, 0_u32..9), 1..6)
    ) {
        let trials: Vec<Trial> = trials.into_iter()
            .map(|(chance, cost)| Trial { chance: f64::from(chance) / 50.0, cost: f64::from(cost) })
            .collect();
        let best = expected_cost(&trials, &best_order(&trials));
        let mut order: Vec<usize> = (0..trials.len()).collect();
        permutations(&mut order, 0, &mut |order| assert!(best <= expected_cost(&trials, order) + 1e-9));
    }
}

fn permutations(order: &mut Vec<usize>, from: usize, each: &mut impl FnMut(&[usize])) {
    if from == order.len() {
        return each(order);
    }
    for at in from..order.len() {
        order.swap(from, at);
        permutations(order, from + 1, each);
        order.swap(from, at);
    }
}

/// By hand: three cases at 1, 1, 2. A test of three answers at 3 tells all apart: 3. Two of two answers at 1 and 2, the
/// first telling the heavy one from the others: 1 + ½·2 = 2.
#[test]
fn several_cheap_tests_can_be_better_than_a_dear_one_of_three_answers() {
    let cases = vec![case(1.0, 0), case(1.0, 1), case(2.0, 2)];
    let all = test(3.0, 3, &[Some(0), Some(1), Some(2)]);
    let heavy = test(1.0, 2, &[Some(0), Some(0), Some(1)]);
    let light = test(2.0, 2, &[Some(0), Some(1), Some(0)]);
    let problem = Problem::new(cases, vec![all, light, heavy]).unwrap();
    let found = optimum(&problem, PATIENCE).unwrap();
    assert!((found.cost - 2.0).abs() < 1e-9);
    assert!(matches!(found.plan, Plan::Ask { test: 2, .. }));
}

/// A test whose answer is not known for a case is not asked while that case is left, however cheap.
#[test]
fn what_is_not_known_is_not_made_up() {
    let cases = || vec![case(1.0, 0), case(1.0, 1), case(1.0, 2)];
    let cheap = test(1.0, 2, &[Some(0), Some(1), None]);
    let dear = test(9.0, 2, &[Some(0), Some(0), Some(1)]);
    let problem = Problem::new(cases(), vec![cheap.clone(), dear]).unwrap();
    let found = optimum(&problem, PATIENCE).unwrap();
    assert!((found.cost - (9.0 + 2.0 / 3.0)).abs() < 1e-9);
    let stuck = Problem::new(cases(), vec![cheap]).unwrap();
    assert_eq!(optimum(&stuck, PATIENCE).unwrap_err(), NoOptimum::Unsettled);
}

#[test]
fn the_search_gives_up_when_its_patience_is_at_an_end() {
    let cases = vec![case(1.0, 0), case(1.0, 1)];
    let problem = Problem::new(cases, vec![test(1.0, 2, &[Some(0), Some(1)])]).unwrap();
    assert_eq!(optimum(&problem, 1).unwrap_err(), NoOptimum::TooLarge);
}

#[test]
fn what_does_not_fit_together_is_refused() {
    let one = || vec![case(1.0, 0)];
    assert_eq!(
        Problem::new(vec![case(0.0, 0)], Vec::new()).unwrap_err(),
        Misfit::NoWeight
    );
    assert_eq!(
        Problem::new(vec![case(-1.0, 0)], Vec::new()).unwrap_err(),
        Misfit::NoAmount
    );
    let beyond = Problem::new(one(), vec![test(1.0, 2, &[Some(2)])]);
    assert_eq!(beyond.unwrap_err(), Misfit::Scale { test: 0 });
    let proven = Case {
        sunk: vec![0],
        ..case(1.0, 0)
    };
    assert_eq!(
        Problem::new(vec![proven], Vec::new()).unwrap_err(),
        Misfit::Sunk { case: 0 }
    );
    let needs = |shown| Test {
        needs: vec![Need { test: 0, shown }],
        ..test(1.0, 2, &[Some(0)])
    };
    assert_eq!(
        Problem::new(one(), vec![needs(vec![(1, vec![0])])]).unwrap_err(),
        Misfit::Need { test: 0 }
    );
}
