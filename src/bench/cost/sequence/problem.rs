//! What can be wrong, and what can be asked: the matrix of cases and tests.

use std::fmt;

use super::set::Set;

/// One way in which something can be wrong.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// How often it is met, relative to the others; 0 counts in no average, and still must be told apart.
    pub weight: f64,
    /// What has to be found out of it: cases of one class need not be told apart.
    pub class: usize,
    /// What every order pays for it beside its tests.
    pub fixed: f64,
    /// The tests that every order pays for it, whether they help to find it or not: those that prove it.
    pub sunk: Vec<usize>,
}

/// A way of sorting what a test shows.
#[derive(Clone, Debug, PartialEq)]
pub struct Scale {
    /// Into how many answers; the answers are numbered from 0.
    pub answers: usize,
    /// The answer of each case, where it is known.
    pub of: Vec<Option<usize>>,
}

/// Something that can be asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Test {
    /// What it costs to ask; only once, however often what it showed is sorted.
    pub cost: f64,
    /// The ways in which what it shows is sorted.
    pub scales: Vec<Scale>,
    /// What must have been asked before it.
    pub needs: Vec<Need>,
}

/// A test that must have been asked before another.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// Which.
    pub test: usize,
    /// What it must have shown, for each scale that this depends on: one of these answers.
    pub shown: Vec<(usize, Vec<usize>)>,
}

/// Cases and tests that fit together.
///
/// A test may be used among some cases only where the answer of each of them is known on a scale that they share: what is
/// not known is never made up.
#[derive(Clone, Debug)]
pub struct Problem {
    cases: Vec<Case>,
    tests: Vec<Test>,
    /// By test, the cases that pay for it in any order: what proves them, and what must be asked before that.
    sunk: Vec<Set>,
    weight: f64,
}

/// Why cases and tests do not fit together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Misfit {
    /// A weight or a cost is negative or no number.
    NoAmount,
    /// No case has any weight.
    NoWeight,
    /// A scale has not one answer for each case, or one beyond its answers.
    Scale {
        /// Of which test.
        test: usize,
    },
    /// A case pays for a test that is not there.
    Sunk {
        /// Which case.
        case: usize,
    },
    /// A test needs another, or a scale of it, that is not there.
    Need {
        /// Which test.
        test: usize,
    },
}

impl fmt::Display for Misfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoAmount => {
                f.write_str("a weight or a cost is negative or no number; give each one from 0 on")
            }
            Self::NoWeight => f.write_str("no case has any weight; give one at least a weight above 0"),
            Self::Scale { test } => write!(
                f,
                "a scale of test {test} does not have one of its answers, or none, for each case"
            ),
            Self::Sunk { case } => write!(f, "case {case} is proven by a test that is not there"),
            Self::Need { test } => write!(f, "test {test} needs a test or a scale that is not there"),
        }
    }
}

impl std::error::Error for Misfit {}

impl Problem {
    /// Cases and the tests that tell them apart.
    ///
    /// # Errors
    ///
    /// Where an amount is negative or no number, no case has any weight, or a number points at nothing.
    pub fn new(cases: Vec<Case>, tests: Vec<Test>) -> Result<Self, Misfit> {
        let costs = tests.iter().map(|test| test.cost);
        let amounts = cases.iter().flat_map(|case| [case.weight, case.fixed]);
        if !amounts
            .chain(costs)
            .all(|amount| amount.is_finite() && amount >= 0.0)
        {
            return Err(Misfit::NoAmount);
        }
        let weight: f64 = cases.iter().map(|case| case.weight).sum();
        if !(weight.is_finite() && weight > 0.0) {
            return Err(Misfit::NoWeight);
        }
        for (at, test) in tests.iter().enumerate() {
            let fits = |scale: &Scale| {
                scale.of.len() == cases.len()
                    && scale.of.iter().flatten().all(|answer| *answer < scale.answers)
            };
            if !test.scales.iter().all(fits) {
                return Err(Misfit::Scale { test: at });
            }
            let scales = |need: &Need| tests.get(need.test).map(|needed| needed.scales.len());
            let is_there = |need: &Need| need.shown.iter().all(|(scale, _)| Some(*scale) < scales(need));
            if !test
                .needs
                .iter()
                .all(|need| scales(need).is_some() && is_there(need))
            {
                return Err(Misfit::Need { test: at });
            }
        }
        let mut sunk = vec![Set::none(cases.len()); tests.len()];
        for (at, case) in cases.iter().enumerate() {
            let mut waiting = case.sunk.clone();
            while let Some(test) = waiting.pop() {
                let paying = sunk.get_mut(test).ok_or(Misfit::Sunk { case: at })?;
                if !paying.contains(at) {
                    paying.insert(at);
                    waiting.extend(tests[test].needs.iter().map(|need| need.test));
                }
            }
        }
        Ok(Self {
            cases,
            tests,
            sunk,
            weight,
        })
    }

    /// The cases.
    pub fn cases(&self) -> &[Case] {
        &self.cases
    }

    /// The tests.
    pub fn tests(&self) -> &[Test] {
        &self.tests
    }

    /// All cases.
    pub fn everything(&self) -> Set {
        Set::all(self.cases.len())
    }

    /// The weight of all cases together.
    pub fn weight(&self) -> f64 {
        self.weight
    }

    /// What every order pays on average: what is fixed, and the tests that prove.
    pub fn unavoidable(&self) -> f64 {
        let weight = |case: usize| self.cases[case].weight;
        let fixed = self
            .cases
            .iter()
            .map(|case| case.weight * case.fixed)
            .sum::<f64>();
        let proof = self.sunk.iter().zip(&self.tests);
        let proof = proof.map(|(paying, test)| paying.iter().map(weight).sum::<f64>() * test.cost);
        (fixed + proof.sum::<f64>()) / self.weight
    }

    /// Whether a case pays for a test in any order.
    pub fn is_sunk(&self, test: usize, case: usize) -> bool {
        self.sunk[test].contains(case)
    }

    /// What asking a test costs among some cases beyond what they pay in any order; by weight, not yet an average.
    pub fn extra(&self, among: &Set, test: usize) -> f64 {
        let paying = among.iter().filter(|case| !self.is_sunk(test, *case));
        paying.map(|case| self.cases[case].weight).sum::<f64>() * self.tests[test].cost
    }

    /// Whether a test may be asked among some cases: all that it needs was asked, and has shown what it had to.
    pub fn may_ask(&self, among: &Set, asked: &Set, test: usize) -> bool {
        self.tests[test].needs.iter().all(|need| {
            let fits = |(scale, answers): &(usize, Vec<usize>)| {
                let of = &self.tests[need.test].scales[*scale].of;
                among
                    .iter()
                    .all(|case| of[case].is_some_and(|answer| answers.contains(&answer)))
            };
            asked.contains(need.test) && need.shown.iter().all(fits)
        })
    }

    /// The cases sorted by their answers to a test; none where it may not be used among them.
    pub fn split(&self, among: &Set, test: usize) -> Option<Vec<Set>> {
        let known = |scale: &&Scale| among.iter().all(|case| scale.of[case].is_some());
        let mut scales = self.tests[test].scales.iter().filter(known);
        let mut parts = sorted(among, scales.next()?, self.cases.len());
        for scale in scales {
            parts = parts
                .iter()
                .flat_map(|part| sorted(part, scale, self.cases.len()))
                .collect();
        }
        Some(parts)
    }

    /// Whether all of some cases are of one class.
    pub fn is_settled(&self, among: &Set) -> bool {
        let mut classes = among.iter().map(|case| self.cases[case].class);
        let first = classes.next();
        classes.all(|class| Some(class) == first)
    }

    /// Whether some test has a known answer for both of two cases, and not the same one.
    pub fn tells_apart(&self, one: usize, other: usize) -> bool {
        let differ = |scale: &Scale| matches!((scale.of[one], scale.of[other]), (Some(a), Some(b)) if a != b);
        self.tests.iter().any(|test| test.scales.iter().any(differ))
    }
}

/// The cases sorted by their answers on a scale.
fn sorted(among: &Set, scale: &Scale, size: usize) -> Vec<Set> {
    let mut parts: Vec<Option<Set>> = vec![None; scale.answers];
    for case in among.iter() {
        if let Some(answer) = scale.of[case] {
            parts[answer].get_or_insert_with(|| Set::none(size)).insert(case);
        }
    }
    parts.into_iter().flatten().collect()
}
