//! The algorithms against worked cases: each file says where its values come from.

use proofwalk::bench::cost::sequence::{
    Case, Isolation, Plan, Problem, Scale, Set, Test, Trial, best_order, expected_cost, floor, groups,
    optimum,
};
use serde_json::Value;

/// More than any of these needs.
const PATIENCE: usize = 10_000_000;

fn file(name: &str) -> Value {
    let path = format!(
        "{}/tests/reference/diagnosis/{name}.json",
        env!("CARGO_MANIFEST_DIR")
    );
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// `3/10`, `13/2` or `4`.
fn fraction(value: &Value) -> f64 {
    let text = value.as_str().unwrap();
    let number = |text: &str| text.parse::<f64>().unwrap();
    match text.split_once('/') {
        Some((above, below)) => number(above) / number(below),
        None => number(text),
    }
}

fn fractions(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(fraction).collect()
}

fn problem(file: &Value) -> Problem {
    let rows: Vec<Vec<char>> = (file["D"].as_array().unwrap().iter())
        .map(|row| row.as_str().unwrap().chars().collect())
        .collect();
    let cases = fractions(&file["prior"]).into_iter().enumerate();
    let cases = cases.map(|(class, weight)| Case {
        weight,
        class,
        fixed: 0.0,
        sunk: Vec::new(),
    });
    let tests = fractions(&file["test_cost"])
        .into_iter()
        .enumerate()
        .map(|(test, cost)| {
            let column: Vec<char> = rows.iter().map(|row| row[test]).collect();
            let mut answers = column.clone();
            answers.sort_unstable();
            answers.dedup();
            let of = column.iter().map(|answer| answers.binary_search(answer).ok());
            Test {
                cost,
                scales: vec![Scale {
                    answers: answers.len(),
                    of: of.collect(),
                }],
                needs: Vec::new(),
            }
        });
    Problem::new(cases.collect(), tests.collect()).unwrap()
}

#[track_caller]
fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
}

/// What a plan costs, worked out by following each case.
fn cost_of(plan: &Plan, problem: &Problem, path: f64) -> f64 {
    match plan {
        Plan::Stop(cases) => cases
            .iter()
            .map(|case| problem.cases()[*case].weight * path)
            .sum(),
        Plan::Ask { test, then } => {
            let path = path + problem.tests()[*test].cost;
            then.iter().map(|plan| cost_of(plan, problem, path)).sum()
        }
    }
}

fn indices(value: &Value) -> Vec<Vec<usize>> {
    serde_json::from_value(value.clone()).unwrap()
}

#[test]
fn the_optimum_is_that_of_every_reference_file() {
    for name in ["amb8-costs", "chain8-equal", "huffman-all-tests"] {
        let file = file(name);
        let problem = problem(&file);
        let found = optimum(&problem, PATIENCE).unwrap();
        let expected = file["optimal_expected_cost"]["dec"].as_f64().unwrap();
        close(found.cost, expected);
        close(cost_of(&found.plan, &problem, 0.0), expected);
    }
}

#[test]
fn each_first_test_is_worth_what_the_reference_says() {
    for name in ["amb8-costs", "chain8-equal", "huffman-all-tests"] {
        let file = file(name);
        let problem = problem(&file);
        for (test, expected) in file["best_first_test"].as_object().unwrap() {
            let test: usize = test.parse().unwrap();
            let parts = problem.split(&problem.everything(), test).unwrap();
            let value: f64 = parts.iter().map(|part| optimum_within(&problem, part)).sum();
            close(
                problem.tests()[test].cost + value,
                expected["value_if_first"]["dec"].as_f64().unwrap(),
            );
        }
    }
}

/// The optimum among some of the cases, by weight in the whole.
fn optimum_within(whole: &Problem, part: &Set) -> f64 {
    let cases: Vec<Case> = part.iter().map(|case| whole.cases()[case].clone()).collect();
    let tests = whole.tests().iter().map(|test| Test {
        cost: test.cost,
        scales: (test.scales.iter())
            .map(|scale| Scale {
                answers: scale.answers,
                of: part.iter().map(|case| scale.of[case]).collect(),
            })
            .collect(),
        needs: Vec::new(),
    });
    let problem = Problem::new(cases, tests.collect()).unwrap();
    optimum(&problem, PATIENCE).unwrap().cost * problem.weight() / whole.weight()
}

#[test]
fn the_floor_stays_below_the_optimum_of_every_reference_file() {
    for name in ["amb8-costs", "chain8-equal", "huffman-all-tests"] {
        let file = file(name);
        let floor = floor(&problem(&file));
        let optimum = file["optimal_expected_cost"]["dec"].as_f64().unwrap();
        assert!(floor > 0.0 && floor <= optimum + 1e-9, "{name}: {floor}");
    }
    // Two answers at one cost each: no order comes below the entropy, 3 bits here, and halving gets there.
    close(floor(&problem(&file("chain8-equal"))), 3.0);
    let textbook = file("huffman-all-tests");
    assert!(floor(&problem(&textbook)) >= textbook["entropy_bits"].as_f64().unwrap() - 1e-5);
}

#[test]
fn the_groups_and_the_fractions_are_those_of_every_reference_file() {
    for name in ["amb8-costs", "chain8-equal", "huffman-all-tests"] {
        let file = file(name);
        let problem = problem(&file);
        let found = groups(&problem);
        let ambiguity = &file["ambiguity"];
        assert_eq!(found, indices(&ambiguity["groups"]), "{name}");
        let of_each = |group: &Vec<usize>| {
            let size = group.len();
            group.iter().map(move |case| (*case, size)).collect::<Vec<_>>()
        };
        let weight = |case: usize| problem.cases()[case].weight;
        let faults = found
            .iter()
            .flat_map(of_each)
            .map(|(case, size)| (weight(case), size));
        let isolation = Isolation::of(faults.collect());
        for at_most in 1..=3 {
            let expected = ambiguity[format!("FI_le_{at_most}")]["dec"].as_f64().unwrap();
            close(isolation.fraction(at_most).unwrap(), expected);
        }
        let mean = ambiguity["mean_group_size_prob_weighted"]["dec"]
            .as_f64()
            .unwrap();
        close(isolation.mean_size().unwrap(), mean);
    }
}

#[test]
fn trials_are_ordered_by_chance_over_cost() {
    let file = file("p-over-c");
    let costs = fractions(&file["c"]);
    let trials: Vec<Trial> = (fractions(&file["p"]).into_iter().zip(costs))
        .map(|(chance, cost)| Trial { chance, cost })
        .collect();
    let order = best_order(&trials);
    let expected: Vec<usize> = serde_json::from_value(file["order_p_over_c"].clone()).unwrap();
    assert_eq!(order, expected);
    close(
        expected_cost(&trials, &order),
        file["ECR_p_over_c"].as_f64().unwrap(),
    );
    let by_chance: Vec<usize> = serde_json::from_value(file["order_by_p_only"].clone()).unwrap();
    close(
        expected_cost(&trials, &by_chance),
        file["ECR_by_p_only"].as_f64().unwrap(),
    );
}
