//! Which steps stand on a sheet, in which order they are numbered, and which way leads to each.

use std::collections::{HashMap, VecDeque};

use super::{Part, Refusal, TooLarge};
use crate::library::{Id, Library, Step, Tree};

/// Most steps on a sheet: more can be drawn, and not be read.
const MOST_STEPS: usize = 400;

/// Most ways between them.
const MOST_WAYS: usize = 2000;

/// The steps of a sheet by their numbers, counted from 0.
///
/// Each step hangs on the first way by which it can be reached. Of the steps that hang on one, the one that most comes after
/// stands below it, the others beside it: so the sheet stays narrow however long the tree is.
pub(super) struct Plan {
    /// The steps, by their numbers.
    pub steps: Vec<Id<Step>>,
    /// On which step each hangs; none for the first, and for those that no way leads to.
    pub parents: Vec<Option<usize>>,
    /// Which step stands below each.
    pub below: Vec<Option<usize>>,
    numbers: HashMap<Id<Step>, usize>,
}

/// The steps as they are found, before they are numbered.
#[derive(Default)]
struct Found {
    steps: Vec<Id<Step>>,
    places: HashMap<Id<Step>, usize>,
    parents: Vec<Option<usize>>,
    depths: Vec<usize>,
    ways: usize,
}

impl Plan {
    /// The plan of a tree, or of the part of it that was asked for.
    ///
    /// # Errors
    ///
    /// Where no step is called as `part.from` says, or there are more steps than a sheet can hold.
    pub fn new(library: &Library, tree: Id<Tree>, part: &Part) -> Result<Self, Refusal> {
        let all = library.trees[tree].steps.clone();
        let mut found = Found::default();
        match &part.from {
            Some(name) => {
                let mut steps = all.clone().map(Id::new);
                let from = steps.find(|step| library[*step].name == *name);
                let from = from.ok_or_else(|| Refusal::NoSuchStep {
                    name: name.clone(),
                    steps: all.map(|step| library[Id::new(step)].name.clone()).collect(),
                })?;
                found.reach(library, from, part.depth)?;
            }
            None if part.depth.is_none() => {
                // What no way leads to is drawn too: who looks at the picture may be looking for that.
                let start = library.trees[tree].start;
                for root in start.into_iter().chain(all.map(Id::new)) {
                    found.reach(library, root, None)?;
                }
            }
            None => {
                let start = library.trees[tree].start.or(all.map(Id::new).next());
                if let Some(root) = start {
                    found.reach(library, root, part.depth)?;
                }
            }
        }
        Ok(found.numbered(library))
    }

    /// The number of a step; none where it is not on the sheet.
    pub fn number(&self, step: Id<Step>) -> Option<usize> {
        self.numbers.get(&step).copied()
    }
}

impl Found {
    /// Finds what can be reached, breadth first, so that each step hangs on the shortest way to it.
    fn reach(&mut self, library: &Library, root: Id<Step>, depth: Option<usize>) -> Result<(), TooLarge> {
        if self.places.contains_key(&root) {
            return Ok(());
        }
        let mut waiting = VecDeque::from([self.add(root, None, 0)]);
        while let Some(at) = waiting.pop_front() {
            let edges = library[self.steps[at]].edges().collect::<Vec<_>>();
            self.ways += edges.len();
            if self.steps.len() > MOST_STEPS || self.ways > MOST_WAYS {
                return Err(TooLarge { most: MOST_STEPS });
            }
            if depth.is_some_and(|depth| self.depths[at] >= depth) {
                continue;
            }
            for edge in edges {
                if !self.places.contains_key(&edge.go) {
                    waiting.push_back(self.add(edge.go, Some(at), self.depths[at] + 1));
                }
            }
        }
        Ok(())
    }

    fn add(&mut self, step: Id<Step>, parent: Option<usize>, depth: usize) -> usize {
        let place = self.steps.len();
        self.steps.push(step);
        self.places.insert(step, place);
        self.parents.push(parent);
        self.depths.push(depth);
        place
    }

    fn numbered(self, library: &Library) -> Plan {
        let count = self.steps.len();
        let mut children = vec![Vec::new(); count];
        let mut weights = vec![1; count];
        for place in (0..count).rev() {
            if let Some(parent) = self.parents[place] {
                children[parent].push(place);
                weights[parent] += weights[place];
            }
        }
        let goes_on = |place: usize| library[self.steps[place]].edges().next().is_some();
        let heaviest = |children: &[usize]| {
            let going = children.iter().copied().filter(|child| goes_on(*child));
            going.min_by_key(|child| std::cmp::Reverse(weights[*child]))
        };
        let below: Vec<Option<usize>> = children.iter().map(|children| heaviest(children)).collect();

        // A step, then what stands beside it, then what stands below it: the order in which the sheet is read.
        let mut order = Vec::with_capacity(count);
        let roots = (0..count).rev().filter(|place| self.parents[*place].is_none());
        let mut waiting: Vec<usize> = roots.collect();
        while let Some(place) = waiting.pop() {
            order.push(place);
            waiting.extend(below[place]);
            let beside = children[place]
                .iter()
                .filter(|child| Some(**child) != below[place]);
            waiting.extend(beside);
        }
        let mut numbers = vec![0; count];
        for (number, place) in order.iter().enumerate() {
            numbers[*place] = number;
        }
        let renumbered = |of: &[Option<usize>]| -> Vec<Option<usize>> {
            let renumber = |place: &usize| of[*place].map(|other| numbers[other]);
            order.iter().map(renumber).collect()
        };
        Plan {
            parents: renumbered(&self.parents),
            below: renumbered(&below),
            steps: order.iter().map(|place| self.steps[*place]).collect(),
            numbers: (self.steps.iter().zip(&numbers))
                .map(|(step, number)| (*step, *number))
                .collect(),
        }
    }
}
