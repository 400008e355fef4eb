//! How much the trees ask of something, seen from a complaint.

use std::collections::{BTreeMap, VecDeque};

use crate::library::{Datum, Fault, Id, Kind, Library, Tree};

/// How often the trees that a complaint leads to ask for each datum and state each fault; what is asked some visits away counts
/// so many times less. It leans on the complaint and the library alone, so that it tells nothing of the furnace.
pub struct Near {
    asked: BTreeMap<Datum, f64>,
    stated: BTreeMap<Id<Fault>, f64>,
}

impl Near {
    /// As seen from a complaint's tree; where there is none yet, nothing is near.
    pub fn of(library: &Library, complaint: Option<Id<Tree>>) -> Self {
        let mut near = Self {
            asked: BTreeMap::new(),
            stated: BTreeMap::new(),
        };
        let mut seen: Vec<Id<Tree>> = complaint.into_iter().collect();
        let mut waiting: VecDeque<(Id<Tree>, f64)> = complaint.map(|tree| (tree, 1.0)).into_iter().collect();
        while let Some((tree, visits)) = waiting.pop_front() {
            for at in library.trees[tree].steps.clone() {
                let asks = match &library[Id::new(at)].kind {
                    Kind::Measure { reading, .. } => Datum::Reading(*reading),
                    Kind::Observe { sign, .. } => Datum::Sign(*sign),
                    Kind::Plate { field, .. } => Datum::Field(*field),
                    Kind::Verdict { fault, .. } => {
                        *near.stated.entry(*fault).or_default() += 1.0 / visits;
                        continue;
                    }
                    Kind::Visit { tree, .. } => {
                        if !seen.contains(tree) {
                            seen.push(*tree);
                            waiting.push_back((*tree, visits + 1.0));
                        }
                        continue;
                    }
                    Kind::Do { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => continue,
                };
                *near.asked.entry(asks).or_default() += 1.0 / visits;
            }
        }
        near
    }

    /// How much a datum is asked for.
    pub fn asked(&self, datum: Datum) -> f64 {
        self.asked.get(&datum).copied().unwrap_or_default()
    }

    /// How much a fault is stated.
    pub fn stated(&self, fault: Id<Fault>) -> f64 {
        self.stated.get(&fault).copied().unwrap_or_default()
    }
}
