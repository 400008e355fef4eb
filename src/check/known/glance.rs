//! A first look at what may be missing at each step: quick, and sure where it says that nothing is.
//!
//! Each question is a bit: a claim that may not be shown, or a value that may not stand. A step sets bits and clears bits,
//! whatever they were before, so sixty-four questions cost as much as one. A tree is gone through once, for both of what may
//! be on entering it (a bit that is set, and one that is not); those who visit it then read off how it ends. What several
//! answers show together is not seen here: what is left open is searched.

use super::dependence::Dependence;
use super::question::Question;
use crate::library::graph::Graph;
use crate::library::{Answers, Datum, Edge, Id, Kind, Library, Remedy, Step, Tree};

/// How many questions are asked at once.
pub(super) const AT_ONCE: usize = u64::BITS as usize;

/// Bits for a tree that is entered with every bit set, and for one that is entered with none.
#[derive(Clone, Copy, Default, PartialEq)]
struct Bits {
    full: u64,
    none: u64,
}

impl Bits {
    fn after(self, clears: u64, sets: u64) -> Self {
        Self {
            full: (self.full & !clears) | sets,
            none: (self.none & !clears) | sets,
        }
    }

    /// Through a tree that ends so.
    fn through(self, end: Self) -> Self {
        let through = |bits: u64| end.none | (end.full & bits);
        Self {
            full: through(self.full),
            none: through(self.none),
        }
    }

    fn or(self, other: Self) -> Self {
        Self {
            full: self.full | other.full,
            none: self.none | other.none,
        }
    }

    /// Where the tree is entered with these bits.
    fn entered_with(self, bits: u64) -> u64 {
        self.none | (self.full & bits)
    }
}

/// What may be missing at each step.
pub(super) struct Glance {
    at: Vec<Option<Bits>>,
    /// By tree, what may be missing where it is entered; none where no call comes to it.
    entered: Vec<Option<u64>>,
}

impl Glance {
    /// The questions that may be missing at a step, a bit each; none where no call comes there.
    pub fn missing(&self, library: &Library, step: Id<Step>) -> Option<u64> {
        let entered = self.entered[library[step].tree.index()]?;
        Some(self.at[step.index()]?.entered_with(entered))
    }
}

/// How a tree can end, with the bits there.
#[derive(Clone, Default)]
struct Ends {
    returned: Vec<Option<Bits>>,
    stated: Option<Bits>,
}

/// Everything that every look needs.
pub(super) struct Glancing<'l> {
    library: &'l Library,
    dependence: &'l Dependence,
    /// The trees, each behind those that it visits; none where trees visit each other in a circle.
    order: Option<Vec<Id<Tree>>>,
}

impl<'l> Glancing<'l> {
    pub fn new(library: &'l Library, dependence: &'l Dependence, graph: &Graph) -> Self {
        Self {
            library,
            dependence,
            order: graph.visited_first(),
        }
    }

    /// Looks for at most [`AT_ONCE`] things; nothing where trees visit each other in a circle.
    pub fn at(&self, questions: &[Question<'l>], beginnings: &[Id<Tree>]) -> Option<Glance> {
        let order = self.order.as_ref()?;
        let mut look = Look {
            glancing: self,
            questions,
            at: vec![None; self.library.steps.len()],
            ends: vec![Ends::default(); self.library.trees.len()],
            waiting: Vec::new(),
        };
        for tree in order {
            look.through(*tree);
        }
        let mut entered: Vec<Option<u64>> = vec![None; self.library.trees.len()];
        for tree in beginnings {
            entered[tree.index()] = Some(u64::MAX);
        }
        for tree in order.iter().rev() {
            let Some(bits) = entered[tree.index()] else {
                continue;
            };
            for step in self.library.trees[*tree].steps.clone() {
                if let (Kind::Visit { tree, .. }, Some(at)) = (&self.library.steps[step].kind, look.at[step])
                {
                    *entered[tree.index()].get_or_insert(0) |= at.entered_with(bits);
                }
            }
        }
        Some(Glance { at: look.at, entered })
    }
}

struct Look<'g, 'l> {
    glancing: &'g Glancing<'l>,
    questions: &'g [Question<'l>],
    at: Vec<Option<Bits>>,
    ends: Vec<Ends>,
    waiting: Vec<Id<Step>>,
}

impl<'l> Look<'_, 'l> {
    fn through(&mut self, tree: Id<Tree>) {
        let library = self.glancing.library;
        self.ends[tree.index()].returned = vec![None; library.trees[tree].outcomes.len()];
        let Some(start) = library.trees[tree].start else {
            return;
        };
        let entering = Bits {
            full: u64::MAX,
            none: 0,
        };
        self.come_to(start, entering);
        while let Some(step) = self.waiting.pop() {
            if let Some(bits) = self.at[step.index()] {
                self.follow(step, bits);
            }
        }
    }

    fn come_to(&mut self, step: Id<Step>, bits: Bits) {
        let known = &mut self.at[step.index()];
        let all = known.map_or(bits, |known| known.or(bits));
        if *known != Some(all) {
            *known = Some(all);
            self.waiting.push(step);
        }
    }

    fn take(&mut self, edge: Option<&Edge>, bits: Bits) {
        for edge in edge.into_iter().flat_map(Edge::chain) {
            self.come_to(edge.go, bits);
        }
    }

    fn follow(&mut self, id: Id<Step>, bits: Bits) {
        let library = self.glancing.library;
        let step = &library[id];
        match &step.kind {
            Kind::Measure {
                reading,
                answers,
                unable,
                ..
            } => {
                let datum = Datum::Reading(*reading);
                self.take(unable.as_ref(), bits);
                self.answer(datum, answers, bits);
            }
            Kind::Observe {
                sign,
                answers,
                unsure,
                unable,
                ..
            } => {
                self.take(unable.as_ref(), bits);
                self.take(unsure.as_ref(), bits);
                self.answer(Datum::Sign(*sign), answers, bits);
            }
            Kind::Plate {
                field,
                answers,
                unable,
            } => {
                self.take(unable.as_ref(), bits);
                self.answer(Datum::Field(*field), answers, bits);
            }
            Kind::Do { go, voids, .. } => {
                let sets = self.voided(voids);
                self.take(Some(go), bits.after(0, sets));
            }
            Kind::Visit {
                tree,
                returns,
                on_verdict,
            } => self.visit(step.tree, *tree, returns, on_verdict.as_ref(), bits),
            Kind::Return { outcome } => {
                let end = &mut self.ends[step.tree.index()].returned[*outcome];
                *end = Some(end.map_or(bits, |end| end.or(bits)));
            }
            Kind::Verdict { fault, .. } => {
                if library.faults[*fault].remedy != Remedy::ShutDown {
                    self.stated(step.tree, bits);
                }
            }
            Kind::Unresolved { .. } => {}
        }
    }

    fn stated(&mut self, tree: Id<Tree>, bits: Bits) {
        let end = &mut self.ends[tree.index()].stated;
        *end = Some(end.map_or(bits, |end| end.or(bits)));
    }

    fn visit(
        &mut self,
        from: Id<Tree>,
        tree: Id<Tree>,
        returns: &[(usize, Edge)],
        on_verdict: Option<&Edge>,
        bits: Bits,
    ) {
        for (outcome, edge) in returns {
            if let Some(end) = self.ends[tree.index()].returned[*outcome] {
                self.take(Some(edge), bits.through(end));
            }
        }
        if let Some(end) = self.ends[tree.index()].stated {
            match on_verdict {
                Some(edge) => self.take(Some(edge), bits.through(end)),
                None => self.stated(from, bits.through(end)),
            }
        }
    }

    fn answer(&mut self, datum: Datum, answers: &Answers, bits: Bits) {
        let (library, dependence) = (self.glancing.library, self.glancing.dependence);
        let stands = self.which(|question| question.is_standing(dependence, datum));
        match answers {
            Answers::Go(edge) => self.take(Some(edge), bits.after(stands, 0)),
            Answers::Bands(bands) => {
                for answer in bands {
                    let shown = self.which(|question| question.is_shown_in(library, datum, &answer.band));
                    self.take(Some(&answer.edge), bits.after(stands | shown, 0));
                }
            }
            Answers::Choices(choices) => {
                for answer in choices {
                    let shown = self.which(|question| question.is_shown_as(datum, answer.value));
                    self.take(Some(&answer.edge), bits.after(stands | shown, 0));
                }
            }
        }
    }

    /// The questions of which this is true.
    fn which(&self, is: impl Fn(&Question<'l>) -> bool) -> u64 {
        let set = self
            .questions
            .iter()
            .enumerate()
            .filter(|(_, question)| is(question));
        set.fold(0, |bits, (at, _)| bits | 1 << at)
    }

    /// What may be missing once these are void.
    fn voided(&self, voids: &[Datum]) -> u64 {
        self.which(|question| question.is_voided(self.glancing.dependence, voids))
    }
}
