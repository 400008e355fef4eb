//! The order of trials that each find one thing, and nothing else.

/// A trial that finds what is wrong with some chance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trial {
    /// The chance that it finds it; those of all trials add up to 1 at most, as only one thing is wrong.
    pub chance: f64,
    /// What it costs.
    pub cost: f64,
}

/// The expected cost of making trials in an order, until one finds it: Σᵢ (1 − Σⱼ₍ⱼ₍ᵢ₎ pⱼ) cᵢ.
pub fn expected_cost(trials: &[Trial], order: &[usize]) -> f64 {
    let mut left = 1.0;
    let mut cost = 0.0;
    for trial in order.iter().map(|at| trials[*at]) {
        cost += left * trial.cost;
        left -= trial.chance;
    }
    cost
}

/// The order of least expected cost: by chance over cost, the largest first; those alike stay as they were.
///
/// Two neighbours i, j cost L·cᵢ + (L − pᵢ)·cⱼ with L of the chance left, and the other way about L·cⱼ + (L − pⱼ)·cᵢ; nothing
/// else changes. The first is the smaller where pⱼ·cᵢ ≤ pᵢ·cⱼ. So any other order gets no dearer by sorting its neighbours
/// (Kadane & Simon 1977; Heckerman, Breese & Rommelse 1995).
pub fn best_order(trials: &[Trial]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..trials.len()).collect();
    // What costs nothing comes first, even where it finds nothing.
    let worth = |at: usize| match trials[at] {
        Trial { cost: 0.0, .. } => f64::INFINITY,
        Trial { chance, cost } => chance / cost,
    };
    order.sort_by(|one, other| worth(*other).total_cmp(&worth(*one)));
    order
}
