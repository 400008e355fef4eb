//! Where the calls of each tree went, step by step.

use std::collections::{BTreeMap, HashMap};

use super::spoken;
use crate::audit::{Audit, Passage};
use crate::source::Safe;

/// Most steps of a tree; the least visited are left out.
const STEPS: usize = 36;

/// The ways through one tree. A step from which a call went back to the tree that had asked for this one has no way on.
#[derive(Debug)]
pub(in super::super) struct Ways {
    /// The tree.
    pub tree: Safe,
    /// Its steps, those that lead on before those they lead to.
    pub steps: Vec<Stop>,
    /// The ways between them.
    pub ways: Vec<Way>,
    /// Steps that are left out.
    pub left_out: usize,
}

/// One step.
#[derive(Debug)]
pub(in super::super) struct Stop {
    /// Its name.
    pub name: Safe,
    /// How often a call came to it.
    pub came: u64,
    /// How often one ended or was left there.
    pub ended: u64,
}

/// One way between two steps, by their places in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) struct Way {
    pub from: usize,
    pub to: usize,
    pub times: u64,
}

/// Every tree of an audit that calls went through, the most walked first.
pub(in super::super) fn ways(audit: &Audit) -> Vec<Ways> {
    let mut trees: BTreeMap<&str, Vec<&Passage>> = BTreeMap::new();
    for passage in &audit.passages {
        let (tree, _) = split(&passage.from);
        trees.entry(tree).or_default().push(passage);
    }
    let mut found: Vec<Ways> = trees
        .into_iter()
        .map(|(tree, passages)| of_tree(tree, &passages))
        .collect();
    found.sort_by_key(|ways| std::cmp::Reverse(ways.steps.iter().map(|step| step.came).max()));
    found
}

fn split(path: &str) -> (&str, &str) {
    path.split_once('/').unwrap_or(("", path))
}

fn of_tree(tree: &str, passages: &[&Passage]) -> Ways {
    let mut numbers: HashMap<&str, usize> = HashMap::new();
    let mut names: Vec<&str> = Vec::new();
    let mut number = |name| {
        *numbers.entry(name).or_insert_with(|| {
            names.push(name);
            names.len() - 1
        })
    };
    let (mut edges, mut ends) = (Vec::new(), Vec::new());
    for passage in passages {
        let (from, times) = (number(&passage.from), passage.times);
        match &passage.to {
            Some(to) => edges.push(Way {
                from,
                to: number(to),
                times,
            }),
            None => ends.push((from, times)),
        }
    }
    let (mut into, mut out) = (vec![0; names.len()], vec![0; names.len()]);
    let mut ended = vec![0; names.len()];
    for edge in &edges {
        into[edge.to] += edge.times;
        out[edge.from] += edge.times;
    }
    for (step, times) in ends {
        ended[step] += times;
        out[step] += times;
    }
    let came = |step: usize| u64::max(into[step], out[step]);
    let mut order = in_order(&edges, &into, &out);
    let mut by_visits = order.clone();
    by_visits.sort_by_key(|step| std::cmp::Reverse(came(*step)));
    let shown: Vec<usize> = by_visits.into_iter().take(STEPS).collect();
    order.retain(|step| shown.contains(step));
    let mut place = vec![None; names.len()];
    for (at, step) in order.iter().enumerate() {
        place[*step] = Some(at);
    }
    let ways = edges.iter().filter_map(|edge| {
        Some(Way {
            from: place[edge.from]?,
            to: place[edge.to]?,
            times: edge.times,
        })
    });
    let ways = ways.collect();
    let steps = order.iter().map(|step| {
        let (of, name) = split(names[*step]);
        Stop {
            name: match of == tree {
                true => spoken(name),
                false => spoken(names[*step]),
            },
            came: came(*step),
            ended: ended[*step],
        }
    });
    Ways {
        tree: spoken(tree),
        steps: steps.collect(),
        ways,
        left_out: names.len() - order.len(),
    }
}

/// The steps so that each stands before those it leads to, but for ways that lead back; the most used way goes straight down.
fn in_order(edges: &[Way], into: &[u64], out: &[u64]) -> Vec<usize> {
    let mut next: Vec<Vec<(u64, usize)>> = vec![Vec::new(); into.len()];
    for edge in edges {
        next[edge.from].push((edge.times, edge.to));
    }
    next.iter_mut().for_each(|ways| ways.sort_unstable());
    // From where calls came in, the busiest last: what is done last comes first.
    let mut starts: Vec<usize> = (0..into.len()).collect();
    starts.sort_by_key(|step| (out[*step] <= into[*step], out[*step].saturating_sub(into[*step])));
    let mut seen = vec![false; into.len()];
    let mut done = Vec::with_capacity(into.len());
    for start in starts {
        let mut waiting = Vec::new();
        if !std::mem::replace(&mut seen[start], true) {
            waiting.push((start, 0));
        }
        while let Some((step, tried)) = waiting.last_mut() {
            let Some((_, to)) = next[*step].get(*tried).copied() else {
                done.push(*step);
                waiting.pop();
                continue;
            };
            *tried += 1;
            if !std::mem::replace(&mut seen[to], true) {
                waiting.push((to, 0));
            }
        }
    }
    done.reverse();
    done
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tree(ways: &[(&str, &str, u64)]) -> Ways {
        let passages: Vec<Passage> = (ways.iter())
            .map(|(from, to, times)| Passage {
                from: format!("t/{from}"),
                to: (!to.is_empty()).then(|| format!("t/{to}")),
                times: *times,
            })
            .collect();
        of_tree("t", &passages.iter().collect::<Vec<_>>())
    }

    fn names(ways: &Ways) -> Vec<&str> {
        ways.steps.iter().map(|step| step.name.as_str()).collect()
    }

    #[test]
    fn steps_stand_before_those_they_lead_to_with_the_most_used_way_first() {
        let ways = tree(&[
            ("start", "seldom", 2),
            ("start", "often", 9),
            ("often", "end", 7),
            ("seldom", "end", 1),
            ("end", "", 3),
        ]);
        assert_eq!(names(&ways), ["start", "often", "seldom", "end"]);
        let came: Vec<u64> = ways.steps.iter().map(|step| step.came).collect();
        assert_eq!(came, [11, 9, 2, 8]);
        // From the others, and from five of this one, calls went back to the tree before.
        let ended: Vec<u64> = ways.steps.iter().map(|step| step.ended).collect();
        assert_eq!(ended, [0, 0, 0, 3]);
    }

    #[test]
    fn a_circle_has_a_way_back() {
        let ways = tree(&[("a", "b", 5), ("b", "a", 2), ("b", "c", 3)]);
        assert!(ways.ways.iter().any(|way| way.to < way.from && way.times == 2));
        assert_eq!(names(&ways), ["a", "b", "c"]);
    }

    #[test]
    fn a_long_tree_keeps_what_is_visited_most() {
        let steps: Vec<String> = (0..100).map(|number| format!("s{number}")).collect();
        let long: Vec<(&str, &str, u64)> = (steps.windows(2).enumerate())
            .map(|(at, pair)| (&*pair[0], &*pair[1], 200 - at as u64))
            .collect();
        let ways = tree(&long);
        assert_eq!((ways.steps.len(), ways.left_out), (STEPS, 64));
        assert_eq!(names(&ways)[0], "s0");
    }
}
