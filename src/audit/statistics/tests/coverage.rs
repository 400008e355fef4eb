//! How often intervals hold what they claim, on calls made up by chance from rates that are known.

use super::super::{Count, exact, funnel, jeffreys, shrinkage, survival, weights, wilson};
use super::Chance;
use survival::{Curve, Wait};

/// The share of rounds in which something held.
fn held(rounds: usize, seed: u64, mut round: impl FnMut(&mut Chance) -> bool) -> f64 {
    let mut chance = Chance(seed);
    (0..rounds).filter(|_| round(&mut chance)).count() as f64 / rounds as f64
}

/// On the average of rates and sizes that an office meets, not at each: counts are whole, so that no interval can do that.
#[test]
fn intervals_of_a_rate_hold_as_often_as_they_claim() {
    let share = |interval: fn(u64, u64, f64) -> (f64, f64)| {
        held(20_000, 11, |chance| {
            let (rate, of) = (0.02 + 0.2 * chance.share(), 20 + chance.next() % 180);
            let (low, high) = interval(chance.count(of, rate), of, 0.95);
            low <= rate && rate <= high
        })
    };
    let (wilson, jeffreys, exact) = (
        share(wilson::at_level),
        share(jeffreys::interval),
        share(exact::interval),
    );
    assert!((0.94..0.965).contains(&wilson), "{wilson}");
    assert!((0.935..0.96).contains(&jeffreys), "{jeffreys}");
    // The exact one holds at least as often, everywhere.
    assert!((0.95..0.99).contains(&exact), "{exact}");
}

/// Callbacks come after an exponential time for a part of the calls, and calls were closed at any time of the last sixty days.
#[test]
fn the_curve_holds_where_calls_were_closed_lately() {
    let (part, mean, at): (f64, f64, f64) = (0.3, 20.0, 30.0);
    let truth = 1.0 - part * (1.0 - (-at / mean).exp());
    let mut flattered = 0.0;
    let rounds = 1_000;
    let curve = held(rounds, 5, |chance| {
        let mut count = 0;
        let waits: Vec<Wait> = (0..120)
            .map(|_| {
                let watched = 60.0 * chance.share();
                let comes = match chance.share() < part {
                    true => chance.waiting(mean),
                    false => f64::INFINITY,
                };
                count += u64::from(comes <= watched.min(at));
                Wait {
                    time: comes.min(watched),
                    came: comes <= watched,
                }
            })
            .collect();
        flattered += count as f64 / 120.0 / rounds as f64;
        let estimate = Curve::of(waits).at(at, 0.95);
        estimate.low <= truth && truth <= estimate.high
    });
    assert!((0.935..0.965).contains(&curve), "{curve}");
    // What the curve is for: counting alone misses a fifth of the callbacks here.
    assert!(flattered < 0.85 * (1.0 - truth), "{flattered}");
}

/// Rates of technicians scatter about 10 % as a beta distribution of 4 and 36: the fourth smallest of 39 equal chances.
fn scattered(chance: &mut Chance) -> f64 {
    let mut shares: Vec<f64> = (0..39).map(|_| chance.share()).collect();
    shares.sort_by(f64::total_cmp);
    shares[3]
}

#[test]
fn drawn_in_rates_hold_and_are_nearer_than_raw_ones() {
    let (mut raw, mut drawn, mut within, mut all) = (0.0, 0.0, 0, 0);
    let mut chance = Chance(3);
    for _ in 0..25 {
        let rates: Vec<f64> = (0..25).map(|_| scattered(&mut chance)).collect();
        let mut count = |rate: &f64| {
            let of = 8 + chance.next() % 120;
            Count::new(chance.count(of, *rate), of)
        };
        let groups: Vec<Count> = rates.iter().map(&mut count).collect();
        let scatter = shrinkage::Scatter::of(&groups).unwrap();
        for (group, rate) in groups.iter().zip(&rates) {
            let expected = scatter.expected(*group, 0.95);
            raw += (group.rate().unwrap() - rate).powi(2);
            drawn += (expected.rate - rate).powi(2);
            within += usize::from(expected.low <= *rate && *rate <= expected.high);
            all += 1;
        }
    }
    let within = within as f64 / all as f64;
    // A little too narrow, since the scatter itself is estimated: the page says so.
    assert!((0.87..0.97).contains(&within), "{within}");
    assert!(drawn < 0.6 * raw, "{drawn} {raw}");
}

#[test]
fn groups_like_all_others_seldom_lie_outside_the_funnel() {
    let outside = |level: f64| {
        1.0 - held(20_000, 8, |chance| {
            let of = 5 + chance.next() % 200;
            let count = chance.count(of, 0.08);
            let (low, high) = funnel::limits(of, 0.08, level);
            low <= count && count <= high
        })
    };
    let (warn, act) = (outside(funnel::WARN), outside(funnel::ACT));
    assert!((0.01..0.05).contains(&warn), "{warn}");
    assert!((0.0003..0.002).contains(&act), "{act}");
}

/// Shares of faults drawn from what the author's weights count as: there the interval must hold exactly.
#[test]
fn weights_hold_as_often_as_they_claim() {
    for author in [vec![1.0; 3], vec![6.0, 1.0, 1.0, 0.5]] {
        let prior = weights::prior(&author);
        let scale: f64 = author.iter().sum();
        let share = held(4_000, 21, |chance| {
            let shares: Vec<f64> = prior.iter().map(|prior| gamma(chance, *prior)).collect();
            let counts = verdicts(chance, &shares, 30);
            let whole: f64 = shares.iter().sum();
            let first = weights::learned(&author, &counts, 0.95)[0];
            let truth = scale * shares[0] / whole;
            first.low <= truth && truth <= first.high
        });
        assert!((0.94..0.96).contains(&share), "{share}");
    }
}

/// How often each of several faults is met in so many verdicts.
fn verdicts(chance: &mut Chance, shares: &[f64], many: u64) -> Vec<u64> {
    let whole: f64 = shares.iter().sum();
    let mut counts = vec![0; shares.len()];
    for _ in 0..many {
        let mut left = chance.share() * whole;
        let fault = shares.iter().position(|share| {
            left -= share;
            left <= 0.0
        });
        counts[fault.unwrap_or(shares.len() - 1)] += 1;
    }
    counts
}

/// Of a gamma distribution: G. Marsaglia and W. W. Tsang, A simple method for generating gamma variables, ACM Transactions on
/// Mathematical Software 26 (2000).
fn gamma(chance: &mut Chance, shape: f64) -> f64 {
    if shape < 1.0 {
        return gamma(chance, shape + 1.0) * chance.share().powf(1.0 / shape);
    }
    let d = shape - 1.0 / 3.0;
    loop {
        let normal = (-2.0 * chance.share().ln()).sqrt() * (std::f64::consts::TAU * chance.share()).cos();
        let v = (1.0 + normal / (9.0 * d).sqrt()).powi(3);
        if v > 0.0 && chance.share().ln() < normal.powi(2) / 2.0 + d - d * v + d * v.ln() {
            return d * v;
        }
    }
}
