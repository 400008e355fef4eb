//! How far what was taken proves what was named.

use super::here::Here;
use super::way::{Found, Goal, Needed, way};
use crate::library::{Claim, Datum, Fault, Id, Library, ProofLine, Remedy, Tree};
use crate::walk::{Holding, State, claim_holds, claim_words, proof_lines, takeable, unread_fields};

/// How far what was taken proves something.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Backing {
    /// How many lines of its proof hold, or claims of the alternative that lacks least.
    pub holds: usize,
    /// The claims that do not, each with why.
    pub lacks: Vec<String>,
    /// What can still be taken for those.
    pub takes: Vec<Datum>,
    /// How many of those are only to be had after work of the tree's own, which nobody does in free practice.
    pub after_work: usize,
    /// How many other alternatives of its proof are still open, beside those whose claims stand in `lacks`.
    pub others: usize,
    /// How many of the claims this furnace does not fulfil, where what it shows may be told.
    pub otherwise: usize,
    /// There is no registered proof, and the claims are the answers of one way through the trees.
    pub by_the_trees: bool,
}

/// What a claim weighs that was found otherwise, where alternatives are compared: more than any has claims.
const OTHERWISE: usize = 1_000;

/// Lines that are told of what a proof lacks: a whole round of questions is read by nobody.
const MOST_SHOWN: usize = 8;

impl Backing {
    /// Whether all speaks for it that can be taken before work is done.
    pub fn is_shown(&self) -> bool {
        self.holds > 0 && self.lacks.len() == self.after_work
    }

    /// Whether it is proven. What nothing speaks for is not.
    pub fn is_proven(&self) -> bool {
        self.holds > 0 && self.lacks.is_empty()
    }

    /// How far a fault is proven: by the proof that the registry has for it and its part, and where it has none by the
    /// answers that lead the trees to it.
    pub fn of(library: &Library, state: &State, fault: Id<Fault>) -> Self {
        Self::at(library, state, None, fault)
    }

    /// The same, told afterwards: what lacks is what would have shown it at this furnace.
    pub(super) fn at(library: &Library, state: &State, here: Option<&Here>, fault: Id<Fault>) -> Self {
        if !library.can_be_proven(fault) {
            return Self::impossible("its proof cannot be read");
        }
        let lines = proof_lines(library, state, fault);
        if lines.is_empty() {
            return Self::by_the_trees(library, state, here, fault);
        }
        let mut backing = Self {
            takes: unread_fields(library, state, fault)
                .into_iter()
                .map(Datum::Field)
                .collect(),
            ..Self::default()
        };
        for (line, holding) in lines {
            if holding == Holding::Holds {
                backing.holds += 1;
            } else {
                backing.add_nearest(library, state, here, line);
                backing.offer(takeable(state, line));
            }
        }
        backing
    }

    /// The first lines that it lacks in words, each after some of the caller's; and how many more there are.
    pub(super) fn lack_words(&self, before: &str) -> Vec<String> {
        let shown = self.lacks.iter().take(MOST_SHOWN);
        let mut words: Vec<String> = shown.map(|line| format!("{before}{line}")).collect();
        let more = self.lacks.len().saturating_sub(MOST_SHOWN);
        if more > 0 {
            words.push(format!("and {more} more"));
        }
        match self.others {
            0 => {}
            1 => words.push("It can be proven in one other way, which lacks no less".to_owned()),
            others => words.push(format!(
                "It can be proven in {others} other ways, which lack no less"
            )),
        }
        words
    }

    /// How far it is shown that nothing is wrong: the complaint's tree comes to its end with what was taken.
    pub fn of_nothing(library: &Library, state: &State) -> Self {
        Self::of_nothing_at(library, state, None)
    }

    /// The same, told afterwards.
    pub(super) fn of_nothing_at(library: &Library, state: &State, here: Option<&Here>) -> Self {
        let found = way(library, state, here, state.moment.complaint, Goal::Sound);
        Self::of_way(state, found)
    }

    fn by_the_trees(library: &Library, state: &State, here: Option<&Here>, fault: Id<Fault>) -> Self {
        match library.faults[fault].remedy {
            // That nothing is wrong is said of the whole complaint, and not of some corner of it.
            Remedy::None => Self::of_nothing_at(library, state, here),
            _ => {
                let goal = Goal::Verdict(fault);
                // What this complaint leads to is not shown by what would have done for another one.
                let own = way(library, state, here, state.moment.complaint, goal);
                let found = match own {
                    Some(own) if own.is_open() => Some(own),
                    own => way(library, state, here, entries(library), goal)
                        .filter(|other| other.is_open() || own.is_none())
                        .or(own),
                };
                Self::of_way(state, found)
            }
        }
    }

    fn of_way(state: &State, found: Option<Found>) -> Self {
        let Some(Found { needed, .. }) = found else {
            return Self::impossible("no tree comes to it");
        };
        let mut backing = Self {
            by_the_trees: true,
            ..Self::default()
        };
        for needed in needed {
            let Needed {
                words,
                holding,
                data,
                after_work,
                otherwise,
            } = needed;
            if after_work {
                backing.after_work += 1;
                backing.lacks.push(format!("{words} (not taken after the work)"));
                continue;
            }
            let taken = data.first().is_some_and(|datum| state.value(*datum).is_some());
            backing.add(&words, holding, taken, otherwise);
            if matches!(holding, Holding::Missing | Holding::Borderline) {
                let open = |datum: &Datum| {
                    let stands = state.value(*datum).is_some() && holding == Holding::Missing;
                    !stands && !state.could_not.contains_key(datum)
                };
                backing.offer(data.into_iter().filter(open));
            }
        }
        backing
    }

    fn impossible(why: &str) -> Self {
        Self {
            lacks: vec![why.to_owned()],
            ..Self::default()
        }
    }

    /// Of a line that does not hold, the alternative that lacks least, claim by claim: all of them in one sentence are read
    /// by nobody.
    fn add_nearest(&mut self, library: &Library, state: &State, here: Option<&Here>, line: &ProofLine) {
        let otherwise = |claim: &Claim, holding: Holding| {
            holding == Holding::Missing && here.is_some_and(|here| here.rules_out(claim))
        };
        let lack = |claims: &&Vec<Claim>| -> usize {
            let each = claims.iter().map(|claim| match claim_holds(state, claim) {
                Holding::Holds => 0,
                holding if otherwise(claim, holding) => OTHERWISE,
                Holding::Missing if state.could_not.contains_key(&claim.datum()) => OTHERWISE,
                Holding::Missing | Holding::Borderline => 1,
                Holding::Contradicted => OTHERWISE,
            });
            each.sum()
        };
        let Some(nearest) = line.alternatives.iter().min_by_key(lack) else {
            return;
        };
        for claim in nearest {
            let taken = state.value(claim.datum()).is_some();
            let holding = claim_holds(state, claim);
            self.add(
                &claim_words(library, claim),
                holding,
                taken,
                otherwise(claim, holding),
            );
        }
        let open = line.alternatives.iter().filter(|claims| lack(claims) < OTHERWISE);
        self.others += open.count().saturating_sub(1);
    }

    /// Adds a claim; `taken` where there is a value, though it may not be enough, `otherwise` where the furnace would have
    /// shown something else.
    fn add(&mut self, words: &str, holding: Holding, taken: bool, otherwise: bool) {
        let because = match holding {
            Holding::Holds => {
                self.holds += 1;
                return;
            }
            Holding::Missing if taken => "taken, but what it is held against was not read",
            Holding::Missing if otherwise => "not taken, and at this furnace it is not so",
            Holding::Missing => "not taken",
            Holding::Borderline => "too near to its bound to tell",
            Holding::Contradicted => "what was taken shows something else",
        };
        let lack = format!("{words} ({because})");
        if !self.lacks.contains(&lack) {
            self.otherwise += usize::from(otherwise);
            self.lacks.push(lack);
        }
    }

    fn offer(&mut self, data: impl IntoIterator<Item = Datum>) {
        for datum in data {
            if !self.takes.contains(&datum) {
                self.takes.push(datum);
            }
        }
    }
}

/// The trees that a call can begin with. What only visits lead to leans on what was answered before it; and a danger's tree
/// takes the danger for granted.
fn entries(library: &Library) -> impl Iterator<Item = Id<Tree>> {
    let is_danger = |id: Id<Tree>| library.dangers.iter().any(|danger| danger.tree == id);
    let begins = move |(id, complaint): &(Id<Tree>, bool)| {
        (*complaint || library.gate == Some(*id)) && !is_danger(*id)
    };
    (library.trees.iter())
        .map(|(id, tree)| (id, tree.complaint.is_some()))
        .filter(begins)
        .map(|(id, _)| id)
}
