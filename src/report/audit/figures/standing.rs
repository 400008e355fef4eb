//! Where each complaint, part and technician stands in the funnel of all.
//!
//! What is held against the rate of all are settled calls alone: a group whose calls are a few days old has had no time to see any of them
//! come back, and one that checks its own repairs at once has not been called back.

use super::{NOT_DONE, all, days, short, spoken};
use crate::audit::statistics::partial_pooling::Pooled;
use crate::audit::statistics::shrinkage::Expected;
use crate::audit::statistics::{Count, LEVEL, dispersion, false_discovery, funnel};
use crate::audit::{Audit, Rate, TOO_SMALL, Tally};
use crate::source::{Safe, safe};

/// An adjusted chance at most this is worth looking at.
const LOOK: f64 = 0.05;

/// What the groups are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Groups {
    Complaints,
    Parts,
    Technicians,
}

/// Every group of a kind, and what they are held against.
#[derive(Debug)]
pub(in super::super) struct Standings {
    groups: Groups,
    window: u32,
    /// The settled calls of all, and those that came back on another visit.
    pub all: Count,
    /// By how much more the groups scatter than chance, where that is evident.
    pub factor: Option<f64>,
    /// In the order of their names; the one that is not named comes last.
    pub each: Vec<Standing>,
}

/// One of them.
#[derive(Debug)]
pub(in super::super) struct Standing {
    /// What it is called; none for the calls that do not name their technician.
    pub name: Option<Safe>,
    /// Its closed calls that could come back, and those that did so far.
    pub closed: Count,
    /// Its settled calls, and those that came back on another visit.
    pub count: Count,
    /// Callbacks that make a misdiagnosis suspected.
    pub suspected: u64,
    /// Where in the funnel.
    pub place: Place,
    /// How often chance would put any of them as far out, all that are looked at considered.
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
            Self::TooFew => UNDER,
            Self::Within => "within",
            Self::Low => "low",
            Self::VeryLow => "very low",
            Self::High => "high",
            Self::VeryHigh => "very high",
        }
    }
}

/// Of fewer than [`TOO_SMALL`].
pub(in super::super) const UNDER: &str = "under 20";
const _: () = assert!(TOO_SMALL == 20, "the word says so");

impl Groups {
    /// Each kind.
    pub const ALL: [Self; 3] = [Self::Complaints, Self::Parts, Self::Technicians];

    /// That none of them has calls enough.
    fn none_has(self) -> &'static str {
        match self {
            Self::Complaints => "No complaint has",
            Self::Parts => "No part has",
            Self::Technicians => "Nobody has",
        }
    }

    /// Those of which more comes back than chance explains, and what to do about it.
    fn above(self, names: &str, all: &str) -> String {
        match self {
            Self::Complaints => format!(
                "More calls come back that began with {names} than chance explains, against {all} of all: read those calls, and see \
                 where that tree ends too soon."
            ),
            Self::Parts => format!(
                "More calls come back that condemned {names} than chance explains, against {all} of all: read those calls, and see \
                 whether the proof condemns parts that are good, or what else wears them out."
            ),
            Self::Technicians => format!(
                "More comes back of {names} than chance explains, against {all} of all: read those calls before anything is \
                 concluded."
            ),
        }
    }
}

impl Standing {
    fn of(name: Option<Safe>, tally: &Tally) -> Self {
        let count = |rate: &Rate| Count::new(rate.count, rate.of);
        Self {
            name,
            closed: count(&tally.callbacks),
            count: count(&tally.settled),
            suspected: tally.suspected_misdiagnoses,
            place: Place::TooFew,
            chance: None,
        }
    }

    /// What it is called, or that it has no name.
    pub fn called(&self) -> Safe {
        self.name.clone().unwrap_or_else(|| safe("(not named)"))
    }

    /// Whether one should look, though many are looked at.
    pub fn is_worth_a_look(&self) -> bool {
        self.chance.is_some_and(|chance| chance <= LOOK)
    }
}

impl Standings {
    /// The rate of all settled calls; 0 where there is none.
    pub fn rate(&self) -> f64 {
        self.all.rate().unwrap_or(0.0)
    }

    /// Whether any call of all is settled; otherwise all closed calls are shown, and nothing is concluded from them.
    pub fn is_settled(&self) -> bool {
        self.all.of > 0
    }

    /// The calls of a group that are shown.
    pub fn shown(&self, standing: &Standing) -> Count {
        match self.is_settled() {
            true => standing.count,
            false => standing.closed,
        }
    }

    /// Where a group stands, in words.
    pub fn words(&self, standing: &Standing) -> &'static str {
        match self.is_settled() {
            true => standing.place.words(),
            false => NOT_DONE,
        }
    }

    /// Whether any has calls enough to be held against the rate of all.
    pub fn has_looked(&self) -> bool {
        self.each.iter().any(|standing| standing.place != Place::TooFew)
    }

    /// What looking at all of them comes to.
    pub fn told(&self) -> String {
        if !self.has_looked() {
            return format!(
                "{} {TOO_SMALL} calls yet whose {} are over, so that none is held against the rate of all.",
                self.groups.none_has(),
                days(self.window)
            );
        }
        let look: Vec<String> = (self.each.iter())
            .filter(|standing| standing.is_worth_a_look())
            .map(|standing| standing.called().to_string())
            .collect();
        match look.is_empty() {
            true => {
                "Allowing for how many are looked at, none differs by more than chance explains.".to_owned()
            }
            false => format!(
                "Allowing for how many are looked at, still farther off than chance explains: {}. Read their calls before anything is \
                 concluded: houses and machines differ.",
                look.join(", ")
            ),
        }
    }

    /// What to see to, where more comes back of some than chance explains; `some` shortens a list of names.
    pub fn above(&self, some: impl Fn(&[&str]) -> String) -> Option<String> {
        let above = (self.each.iter()).filter(|standing| standing.is_worth_a_look());
        let above = above.filter(|standing| standing.count.rate() > self.all.rate());
        let names: Vec<&str> = (above.filter_map(|standing| standing.name.as_ref()))
            .map(Safe::as_str)
            .collect();
        let all = super::percent(self.rate());
        (!names.is_empty()).then(|| self.groups.above(&some(&names), &all))
    }

    /// The limits of a group of a size, as shares.
    pub fn limits(&self, of: u64, level: f64) -> (f64, f64) {
        if let Some(factor) = self.factor {
            return dispersion::limits(of, self.rate(), level, factor);
        }
        let (low, high) = funnel::limits(of, self.rate(), level);
        let share = |count: u64| count as f64 / of.max(1) as f64;
        (share(low), share(high))
    }

    /// What to expect of each, drawn towards all; nothing where they are too few to tell how much they differ.
    ///
    /// Nor is there anything of those with too few calls to be held against all: their calls say how much rates differ, but a rate of
    /// somebody with one call would be read for more than it is.
    pub fn expected(&self) -> Vec<Option<Expected>> {
        let counts: Vec<Count> = self.each.iter().map(|standing| standing.count).collect();
        let pooled = Pooled::of(&counts);
        let expected = |standing: &Standing| {
            let pooled = pooled.as_ref().filter(|_| standing.place != Place::TooFew)?;
            Some(pooled.expected(standing.count, LEVEL))
        };
        self.each.iter().map(expected).collect()
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
            Some(factor) => dispersion::chance(group, self.rate(), factor),
            None => funnel::chance(group, self.rate()),
        }
    }
}

/// Every group of a kind in an audit that has calls which could come back.
pub(in super::super) fn standings(audit: &Audit, groups: Groups) -> Standings {
    let each: Vec<Standing> = match groups {
        Groups::Complaints => (audit.by_tree.iter())
            .map(|row| Standing::of(Some(spoken(&row.tree)), &row.tally))
            .collect(),
        Groups::Parts => (audit.by_part.iter())
            .map(|row| Standing::of(Some(spoken(&row.part)), &row.tally))
            .collect(),
        Groups::Technicians => (audit.by_technician.iter())
            .map(|row| Standing::of(row.technician.as_deref().map(short), &row.tally))
            .collect(),
    };
    let mut each: Vec<Standing> = each.into_iter().filter(|one| one.closed.of > 0).collect();
    let large: Vec<Count> = (each.iter().map(|one| one.count))
        .filter(|count| count.of >= TOO_SMALL)
        .collect();
    let mut standings = Standings {
        groups,
        window: audit.window_days,
        all: all(audit),
        factor: dispersion::evident(&large),
        each: Vec::new(),
    };
    let chances: Vec<f64> = large.iter().map(|count| standings.chance(*count)).collect();
    let mut adjusted = false_discovery::adjusted(&chances).into_iter();
    for standing in &mut each {
        standing.place = standings.place(standing.count);
        if standing.place != Place::TooFew {
            standing.chance = adjusted.next();
        }
    }
    standings.each = each;
    standings
}
