//! Steps where calls stall, are given up or are abandoned: where a tree asks too much, or its words mislead.

use std::collections::HashMap;
use std::sync::Arc;

use foldhash::fast::RandomState;
use serde::Serialize;

use super::super::call::{Call, Ending};
use super::super::rows::Sessions;
use super::super::summary::Passage;
use super::super::visits::Visits;

/// Below so many seconds nobody stalls, however short the step.
const SHORTEST_STALL: f64 = 15.0 * 60.0;

/// A step stalls when it takes so many times the minutes that its library gives.
const TIMES_OVER: f64 = 5.0;

/// A step where calls stall, are given up or are abandoned.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Step {
    /// The step, as `tree/step`.
    pub step: String,
    /// How often calls came to it.
    pub times: u64,
    /// How often they stood at it for a quarter of an hour or more, and five times the minutes that the library gives.
    pub stalled: u64,
    /// How often a call was referred there without a verdict.
    pub given_up: u64,
    /// How often a call was left there and never ended.
    pub abandoned: u64,
    /// The longest that one stood there, in minutes.
    pub longest_minutes: f64,
    /// The calls that stalled, were given up or were abandoned there.
    pub sessions: Sessions,
}

/// Sums by step.
#[derive(Debug, Default)]
pub(in super::super) struct Steps {
    numbers: HashMap<String, usize, RandomState>,
    sums: Vec<(String, Sum)>,
}

#[derive(Debug, Default)]
struct Sum {
    times: u64,
    stalled: u64,
    given_up: u64,
    abandoned: u64,
    longest: f64,
    calls: Vec<u32>,
    /// How often a call ended or was left there.
    ended: u64,
    /// How often the walk went on to each step.
    to: HashMap<String, u64, RandomState>,
}

impl Steps {
    pub fn add(&mut self, call: &Call, number: u32) {
        for stay in &call.stays {
            let number_of_step = self.number(&stay.step);
            let (_, sum) = &mut self.sums[number_of_step];
            sum.times += 1;
            match &stay.to {
                None => sum.ended += 1,
                Some(to) => match sum.to.get_mut(&**to) {
                    Some(times) => *times += 1,
                    None => drop(sum.to.insert(to.to_string(), 1)),
                },
            }
            let seconds = stay.seconds.unwrap_or(0.0);
            sum.longest = sum.longest.max(seconds);
            let usual = stay.minutes.unwrap_or(0.0) * 60.0;
            let is_stalled = seconds >= SHORTEST_STALL.max(TIMES_OVER * usual);
            sum.stalled += u64::from(is_stalled);
            if is_stalled {
                sum.remember(number);
            }
        }
        let Some(last) = call.stays.last().filter(|stay| stay.to.is_none()) else {
            return;
        };
        let last = self.number(&last.step);
        let (_, sum) = &mut self.sums[last];
        match call.ending {
            Ending::Unproven { .. } => sum.given_up += 1,
            Ending::Open => sum.abandoned += 1,
            Ending::Verdict(_) | Ending::Outcome(_) | Ending::Insisted(_) => return,
        }
        sum.remember(number);
    }

    /// The number of a step.
    fn number(&mut self, step: &str) -> usize {
        if let Some(number) = self.numbers.get(step) {
            return *number;
        }
        self.numbers.insert(step.to_owned(), self.sums.len());
        self.sums.push((step.to_owned(), Sum::default()));
        self.sums.len() - 1
    }

    pub fn found(&mut self, visits: &Arc<Visits>) -> Vec<Step> {
        let troubled = self.sums.iter_mut().filter(|(_, sum)| !sum.calls.is_empty());
        let mut found: Vec<Step> = troubled
            .map(|(step, sum)| Step {
                step: step.clone(),
                times: sum.times,
                stalled: sum.stalled,
                given_up: sum.given_up,
                abandoned: sum.abandoned,
                longest_minutes: sum.longest / 60.0,
                sessions: Sessions::of_calls(visits, std::mem::take(&mut sum.calls)),
            })
            .collect();
        found.sort_by(|one, other| {
            let key = |step: &Step| std::cmp::Reverse(step.sessions.len());
            (key(one), &one.step).cmp(&(key(other), &other.step))
        });
        found
    }

    /// Every way on from a step, in the order of their names.
    pub fn passages(self) -> Vec<Passage> {
        let ways = self.sums.into_iter().flat_map(|(from, sum)| {
            let ended = (sum.ended > 0).then_some((None, sum.ended));
            let to = sum.to.into_iter().map(|(to, times)| (Some(to), times));
            to.chain(ended).map(move |(to, times)| Passage {
                from: from.clone(),
                to,
                times,
            })
        });
        let mut ways: Vec<Passage> = ways.collect();
        ways.sort_by(|one, other| (&one.from, &one.to).cmp(&(&other.from, &other.to)));
        ways
    }
}

impl Sum {
    /// Keeps the number of a call, once.
    fn remember(&mut self, number: u32) {
        if self.calls.last() != Some(&number) {
            self.calls.push(number);
        }
    }
}
