//! What no order of tests can come below.

use std::collections::BTreeMap;

use super::ambiguity::groups;
use super::problem::Problem;

/// A cost that no order can come below, on average over the cases: for tests of any number of answers and any costs.
///
/// A test of two answers at one cost has Huffman's bound; with three answers, or with costs that differ, that bound is none.
/// This one counts information. Let C be the class of the case that is met; classes that no test tells apart count as one.
/// Take any order of asking, which may depend on the answers, and let T be all that was asked and answered when it stops.
///
/// 1. At the end C is known from T, so the entropy H(C) is no more than the information in T about C. By the chain rule, that is
///    the sum over the tests of what each adds where it is asked, and an answer adds no more than its own entropy there.
/// 2. Take a test of k answers and one of them, the *usual*; let m be the share of all cases that give another. Asked in a
///    situation of chance P where a share q of the cases gives another, its entropy is at most φ(q) = h(q) + q·log₂(k − 1), with
///    h the entropy of two answers, and never more than log₂ k, from q = (k − 1)/k on. As no case is in two situations at once,
///    Σ P = a, the share of the calls in which it is asked, and Σ P q ≤ m. φ is concave and does not fall, so all
///    that the test adds is at most Σ P φ(q) ≤ a·φ(m/a) =: f(a) (Jensen). f is concave and does not fall either. A number that is
///    sorted on several scales adds at most what all of them do.
/// 3. A test is paid for in a share x ≥ a of the calls: x ≤ 1, and x ≥ r, the share of the cases that pay for it in any order.
/// 4. So what is paid, Σ c x, is at least the smallest sum with r ≤ x ≤ 1 and Σ f(x) ≥ H(C). For any price λ ≥ 0 of a bit, that is at
///    least λ·H(C) + Σ min (c x − λ f(x)), since what is added to the sum is not positive where the bits suffice (weak
///    duality). Each minimum is that of a convex function of one number. Every λ gives a valid bound; the best of a ladder is
///    taken.
///
/// What is fixed comes on top. Where an answer is not known the test is not asked, so such a case counts in no m.
pub fn floor(problem: &Problem) -> f64 {
    let offers = offers(problem);
    let missing = entropy(problem) - offers.iter().map(|offer| offer.bits(offer.least)).sum::<f64>();
    let bound = |step: i32| {
        let price = (f64::from(step) / STEPS_AN_OCTAVE).exp2();
        price * missing + offers.iter().map(|offer| offer.best_left(price)).sum::<f64>()
    };
    let best = (-LADDER..=LADDER).map(bound).fold(0.0, f64::max);
    problem.unavoidable() + best
}

/// How many prices of a bit are tried between one and twice it, and how many on either side of one minute.
const STEPS_AN_OCTAVE: f64 = 8.0;
const LADDER: i32 = 96;

/// What a test can add on one of its scales, and what it costs.
struct Offer {
    cost: f64,
    answers: f64,
    /// The share of the cases that do not give the usual answer.
    unusual: f64,
    /// The share of the calls that pay for it in any order.
    least: f64,
}

fn offers(problem: &Problem) -> Vec<Offer> {
    let mut offers = Vec::new();
    for (at, test) in problem.tests().iter().enumerate() {
        let share = |cases: &mut dyn Iterator<Item = usize>| {
            cases.map(|case| problem.cases()[case].weight).sum::<f64>() / problem.weight()
        };
        let all = || 0..problem.cases().len();
        let least = share(&mut all().filter(|case| problem.is_sunk(at, *case))).min(1.0);
        for scale in test.scales.iter().filter(|scale| scale.answers > 1) {
            let other = |usual: usize| {
                share(&mut all().filter(|case| scale.of[*case].is_some_and(|answer| answer != usual)))
            };
            offers.push(Offer {
                // The minimum of a sum is no less than the sum of the minima: each scale bears its part of the cost.
                cost: test.cost / test.scales.len() as f64,
                answers: scale.answers as f64,
                unusual: (0..scale.answers).map(other).fold(1.0, f64::min),
                least,
            });
        }
    }
    offers
}

impl Offer {
    /// The bits that it adds at most, paid for in a share of the calls.
    fn bits(&self, paid: f64) -> f64 {
        if paid <= 0.0 || self.unusual <= 0.0 {
            return 0.0;
        }
        let unusual = self.unusual / paid;
        if unusual >= (self.answers - 1.0) / self.answers {
            return paid * self.answers.log2();
        }
        let entropy = -unusual * unusual.log2() - (1.0 - unusual) * (1.0 - unusual).log2();
        paid * (entropy + unusual * (self.answers - 1.0).log2())
    }

    /// The least of what is paid beyond what any order pays, less what its further bits are worth at a price.
    ///
    /// The slope of the bits is log₂ k up to x = m·k/(k − 1), and log₂(x/(x − m)) from there on: it is the cost's share of
    /// the price where x = m/(1 − 2^(−c/λ)).
    fn best_left(&self, price: f64) -> f64 {
        let paid = match self.cost < price * self.answers.log2() {
            true => {
                let whole = self.unusual * self.answers / (self.answers - 1.0);
                let balanced = self.unusual / (1.0 - (-self.cost / price).exp2());
                // What costs nothing is always asked.
                let balanced = if self.cost > 0.0 { balanced } else { 1.0 };
                whole.max(balanced).min(1.0).max(self.least)
            }
            false => self.least,
        };
        let worth = price * (self.bits(paid) - self.bits(self.least));
        self.cost * (paid - self.least) - worth
    }
}

/// The entropy of what has to be found out, in bits.
fn entropy(problem: &Problem) -> f64 {
    let classes = classes(problem);
    let mut weights: BTreeMap<usize, f64> = BTreeMap::new();
    for case in problem.cases() {
        *weights.entry(root(&classes, case.class)).or_default() += case.weight;
    }
    let shares = weights.values().map(|weight| weight / problem.weight());
    shares
        .filter(|share| *share > 0.0)
        .map(|share| -share * share.log2())
        .sum()
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
