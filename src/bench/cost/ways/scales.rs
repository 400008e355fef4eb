//! The scales on which steps sort what they ask for.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use crate::library::{Answers, Id, Step};

/// How each step sorts what it asks for, worked out once.
#[derive(Default)]
pub(super) struct Scales {
    of_steps: RefCell<BTreeMap<Id<Step>, Sorting>>,
}

/// The scale of a step's answers, and for each of them where it stands on it.
#[derive(Clone)]
pub(super) struct Sorting {
    pub scale: Rc<[String]>,
    pub position: Rc<[usize]>,
}

impl Scales {
    /// How a step sorts.
    pub fn of(&self, step: Id<Step>, answers: &Answers) -> Sorting {
        let mut known = self.of_steps.borrow_mut();
        known.entry(step).or_insert_with(|| Sorting::of(answers)).clone()
    }
}

impl Sorting {
    fn of(answers: &Answers) -> Self {
        let texts: Vec<String> = match answers {
            Answers::Go(_) => Vec::new(),
            Answers::Bands(bands) => bands.iter().map(|answer| answer.text.clone()).collect(),
            Answers::Choices(choices) => choices.iter().map(|answer| answer.value.to_string()).collect(),
        };
        let mut order: Vec<usize> = (0..texts.len()).collect();
        order.sort_by_key(|answer| &texts[*answer]);
        let mut position = vec![0; texts.len()];
        order
            .iter()
            .enumerate()
            .for_each(|(at, answer)| position[*answer] = at);
        Self {
            scale: order.iter().map(|answer| texts[*answer].clone()).collect(),
            position: position.into(),
        }
    }
}
