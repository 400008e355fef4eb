//! What no order of tests can come below.

use std::collections::BTreeMap;

use super::ambiguity::groups;
use super::problem::Problem;

/// A cost that no order can come below, on average over the cases: for tests of any number of answers and any costs, and
/// whatever the answers are that are not known.
///
/// A test of two answers has Huffman's bound; with three answers, or with costs that differ, that bound is none. This one
/// counts information. Let C be the class of the case that is met; cases that no test tells apart count as one class. Take
/// any order of asking, which may depend on the answers, and let T be all that was asked and answered when it stops.
///
/// 1. At the end C is known from T, so the entropy H(C) is no more than the information in T about C.
/// 2. By the chain rule, that is the sum over the tests of what each adds when it is asked. An answer out of k, whatever has
///    been answered before, adds log₂ k bits at most; a number that is sorted on several scales, the sum of theirs. What
///    was asked already adds nothing. So a test that is paid for in a share x of the calls adds x · Σ log₂ k at most, with
///    0 ≤ x ≤ 1.
/// 3. The case of proof: a test that proves a case is paid for wherever that case is met. So x ≥ r, the share of the cases
///    that it proves.
/// 4. What is paid for tests is Σ x c. The smallest such sum with r ≤ x ≤ 1 and Σ x · Σ log₂ k ≥ H(C) is a linear
///    programme of one constraint beside bounds: it is solved by taking the most bits for the least cost first.
///
/// No order pays less than that, and what is fixed comes on top. Answers that are not known change neither H(C) nor the
/// number of answers of a test.
pub fn floor(problem: &Problem) -> f64 {
    let mut missing = entropy(problem);
    let mut offers: Vec<(f64, f64)> = Vec::new();
    for (at, test) in problem.tests().iter().enumerate() {
        let bits: f64 = test.scales.iter().map(|scale| (scale.answers.max(1) as f64).log2()).sum();
        let proving = problem.cases().iter().enumerate().filter(|(case, _)| problem.is_sunk(at, *case));
        let paid = proving.map(|(_, case)| case.weight).sum::<f64>() / problem.weight();
        missing -= paid * bits;
        let left = (1.0 - paid).max(0.0);
        offers.push((left * bits, left * test.cost));
    }
    offers.retain(|(bits, _)| *bits > 0.0);
    offers.sort_by(|(bits, cost), (other_bits, other_cost)| (cost / bits).total_cmp(&(other_cost / other_bits)));
    let mut paid = 0.0;
    for (bits, cost) in offers {
        if missing <= 0.0 {
            break;
        }
        paid += cost * (missing / bits).min(1.0);
        missing -= bits;
    }
    problem.unavoidable() + paid
}

/// The entropy of what has to be found out, in bits.
fn entropy(problem: &Problem) -> f64 {
    let classes = classes(problem);
    let mut weights: BTreeMap<usize, f64> = BTreeMap::new();
    for case in problem.cases() {
        *weights.entry(root(&classes, case.class)).or_default() += case.weight;
    }
    let shares = weights.values().map(|weight| weight / problem.weight());
    shares.filter(|share| *share > 0.0).map(|share| -share * share.log2()).sum()
}

/// For each class, another that it cannot be told from, up to one that stands for all of them.
fn classes(problem: &Problem) -> BTreeMap<usize, usize> {
    let mut above = BTreeMap::new();
    for group in groups(problem) {
        let mut members = group.iter().map(|case| problem.cases()[*case].class);
        let Some(first) = members.next() else { continue };
        for class in members {
            let (one, other) = (root(&above, first), root(&above, class));
            if one != other {
                above.insert(other, one);
            }
        }
    }
    above
}

fn root(above: &BTreeMap<usize, usize>, class: usize) -> usize {
    let mut class = class;
    while let Some(next) = above.get(&class) {
        class = *next;
    }
    class
}
