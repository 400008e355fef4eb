//! Which bands are in order, told once for every rule that looks at bands.

use std::collections::HashMap;

use super::bands::{Question, follow_one_another, gaps, overlaps};
use super::known::holds_nothing;
use crate::library::{Id, Library, Step};

/// The steps with bands that some rule may have something to say about: values are in none of them or in two, one of them
/// holds none, or that cannot be decided.
///
/// The bands of nearly every step are in order, and to see it a rule goes through the whole library: so they share it.
pub(super) fn doubtful(library: &Library) -> Vec<Id<Step>> {
    let mut shapes = Shapes::default();
    let steps = library.steps.iter().enumerate();
    let asking = steps.filter_map(|(index, step)| Some((index, Question::of(library, step)?)));
    let doubtful = asking.filter(|(_, question)| !shapes.are_in_order(*question));
    doubtful.map(|(index, _)| Id::new(index)).collect()
}

/// Whether bands that lean on the plate are in order, by what they say: it takes a while to decide, and many steps say the
/// same.
#[derive(Default)]
struct Shapes {
    in_order: HashMap<Box<[u64]>, bool>,
    /// The shape that is looked up.
    shape: Vec<u64>,
}

impl Shapes {
    fn are_in_order(&mut self, question: Question<'_>) -> bool {
        if !question.leans_on_the_plate() {
            return follow_one_another(question.bands);
        }
        self.spell(question);
        if let Some(&known) = self.in_order.get(self.shape.as_slice()) {
            return known;
        }
        let in_order = decide(question);
        self.in_order.insert(self.shape.as_slice().into(), in_order);
        in_order
    }

    /// Spells out all that decides, to the bit.
    fn spell(&mut self, question: Question<'_>) {
        let shape = &mut self.shape;
        let field = |field: Id<_>| field.index() as u64 + 1;
        shape.clear();
        shape.extend([
            question.scale.unit as u64,
            question.scale.difference.into(),
            question.asked.map_or(0, field),
        ]);
        for answer in question.bands {
            shape.push(answer.band.conditions.len() as u64);
            for condition in &answer.band.conditions {
                let (share, leans_on) = condition.bound.share.unwrap_or((0.0, Id::new(0)));
                let offset = condition.bound.offset.map_or(f64::NAN, |offset| offset.base());
                shape.extend([
                    condition.relation as u64,
                    share.to_bits(),
                    field(leans_on),
                    offset.to_bits(),
                ]);
            }
        }
    }
}

fn decide(question: Question<'_>) -> bool {
    let mut bands = question.bands.iter();
    let has_empty = bands.any(|answer| holds_nothing(question.library, question.datum, &answer.band));
    !has_empty
        && gaps(question).is_ok_and(|gaps| gaps.is_empty())
        && overlaps(question).is_ok_and(|overlaps| overlaps.is_empty())
}
