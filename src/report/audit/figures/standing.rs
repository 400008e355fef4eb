//! Where each technician stands in the funnel.

use super::all;
use crate::audit::statistics::shrinkage::{Expected, Scatter};
use crate::audit::statistics::{Count, LEVEL, dispersion, false_discovery, funnel};
use crate::audit::{Audit, TOO_SMALL};

/// An adjusted chance at most this is worth looking at.
const LOOK: f64 = 0.05;

/// Every technician, and what they are held against.
#[derive(Debug)]
pub(in super::super) struct Standings {
    /// The rate of all calls.
    pub rate: f64,
    /// By how much more the technicians scatter than chance, where that is evident.
    pub factor: Option<f64>,
    /// In the order of their names; those who are not named come last.
    pub each: Vec<Standing>,
}

/// One of them.
#[derive(Debug)]
pub(in super::super) struct Standing {
    /// Who.
    pub technician: Option<String>,
    /// Their calls that could come back, and those that did.
    pub count: Count,
    /// Where in the funnel.
    pub place: Place,
    /// How often chance would put anybody as far out, all that are looked at considered.
    pub chance: Option<f64>,
}

/// Where in the funnel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Place {
    TooFew,
    Within,
    Low,
    VeryLow,
    High,
    VeryHigh,
}

impl Place {
    /// In words, at most nine columns.
    pub fn words(self) -> &'static str {
        match self {
            Self::TooFew => "too few",
            Self::Within => "within",
            Self::Low => "low",
            Self::VeryLow => "very low",
            Self::High => "high",
            Self::VeryHigh => "very high",
        }
    }
}

impl Standing {
    /// Whether one should look, though many are looked at.
    pub fn is_worth_a_look(&self) -> bool {
        self.chance.is_some_and(|chance| chance <= LOOK)
    }
}

impl Standings {
    /// Whether anybody has calls enough to be held against the rate of all.
    pub fn has_looked(&self) -> bool {
        self.each.iter().any(|standing| standing.place != Place::TooFew)
    }

    /// What looking at all of them comes to.
    pub fn told(&self) -> String {
        if !self.has_looked() {
            return format!(
                "Nobody has {TOO_SMALL} calls yet that could come back, so that nobody is held against the rate of all."
            );
        }
        let look: Vec<&str> = (self.each.iter())
            .filter(|standing| standing.is_worth_a_look())
            .map(|standing| standing.technician.as_deref().unwrap_or("(not named)"))
            .collect();
        match look.is_empty() {
            true => "With as many looked at, none differs by more than chance explains.".to_owned(),
            false => format!(
                "With as many looked at, still farther off than chance explains: {}. Read their calls before anything is concluded: \
                 houses and machines differ.",
                look.join(", ")
            ),
        }
    }

    /// The limits of a group of a size, as shares.
    pub fn limits(&self, of: u64, level: f64) -> (f64, f64) {
        if let Some(factor) = self.factor {
            return dispersion::limits(of, self.rate, level, factor);
        }
        let (low, high) = funnel::limits(of, self.rate, level);
        let share = |count: u64| count as f64 / of.max(1) as f64;
        (share(low), share(high))
    }

    /// What to expect of each, drawn towards all; nothing where they are too few to tell how much they differ.
    pub fn expected(&self) -> Vec<Option<Expected>> {
        let counts: Vec<Count> = self.each.iter().map(|standing| standing.count).collect();
        let scatter = Scatter::of(&counts);
        let expected = |count: &Count| scatter.map(|scatter| scatter.expected(*count, LEVEL));
        counts.iter().map(expected).collect()
    }

    fn place(&self, group: Count) -> Place {
        let Some(rate) = group.rate().filter(|_| group.of >= TOO_SMALL) else {
            return Place::TooFew;
        };
        let (warn, act) = (
            self.limits(group.of, funnel::WARN),
            self.limits(group.of, funnel::ACT),
        );
        match rate {
            rate if rate < act.0 => Place::VeryLow,
            rate if rate > act.1 => Place::VeryHigh,
            rate if rate < warn.0 => Place::Low,
            rate if rate > warn.1 => Place::High,
            _ => Place::Within,
        }
    }

    fn chance(&self, group: Count) -> f64 {
        match self.factor {
            Some(factor) => dispersion::chance(group, self.rate, factor),
            None => funnel::chance(group, self.rate),
        }
    }
}

/// Every technician of an audit.
pub(in super::super) fn standings(audit: &Audit) -> Standings {
    let counts: Vec<Count> = (audit.by_technician.iter())
        .map(|row| Count::new(row.tally.callbacks.count, row.tally.callbacks.of))
        .collect();
    let large: Vec<Count> = counts
        .iter()
        .filter(|count| count.of >= TOO_SMALL)
        .copied()
        .collect();
    let mut standings = Standings {
        rate: all(audit).rate().unwrap_or(0.0),
        factor: dispersion::evident(&large),
        each: Vec::new(),
    };
    let chances: Vec<f64> = large.iter().map(|count| standings.chance(*count)).collect();
    let mut adjusted = false_discovery::adjusted(&chances).into_iter();
    let each = audit
        .by_technician
        .iter()
        .zip(&counts)
        .map(|(row, count)| Standing {
            technician: row.technician.clone(),
            count: *count,
            place: standings.place(*count),
            chance: match count.of >= TOO_SMALL {
                true => adjusted.next(),
                false => None,
            },
        });
    let each = each.collect();
    standings.each = each;
    standings
}
