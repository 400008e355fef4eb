//! Readings that are worked out from others: no circles, and no long chains.

use super::super::registry::{Input, Obtained, Reading};
use super::super::table::Id;
use super::Resolver;
use crate::measure::Accuracy;

/// How many readings may stand between a worked-out one and the meter.
///
/// Each may use the one below it several times over, so that the work grows by a power of this.
const DEEPEST: usize = 8;

impl Resolver<'_> {
    /// Refuses readings that could never be taken, and those that would take for ever.
    pub(super) fn worked_out_from_each_other(&mut self) {
        let inputs: Vec<Vec<usize>> = (self.library.readings.iter())
            .map(|(_, reading)| inputs(&reading.source_of_value))
            .collect();
        for index in circles(&inputs) {
            self.refuse(
                index,
                "is worked out from itself",
                "let one of the readings on the way round be measured",
            );
        }
        for index in deeper_than(DEEPEST, &inputs) {
            self.refuse(
                index,
                &format!("is worked out through more than {DEEPEST} others, one from the other"),
                "let one of the readings on the way down be measured",
            );
        }
    }

    fn refuse(&mut self, index: usize, what: &str, help: &str) {
        let reading = &mut self.library.readings[Id::<Reading>::new(index)];
        reading.value.source_of_value = Obtained::Measured(Accuracy::exact());
        let (at, message) = (reading.at, format!("the reading `{}` {what}", reading.name));
        self.malformed(at, message, help);
    }
}

fn inputs(source: &Obtained) -> Vec<usize> {
    match source {
        Obtained::Measured(_) => Vec::new(),
        Obtained::WorkedOut { inputs, .. } => (inputs.iter())
            .filter_map(|input| match input {
                Input::Reading(reading) => Some(reading.index()),
                Input::Field(_) | Input::Fixed(_) => None,
            })
            .collect(),
    }
}

/// Those that lead back to themselves: what is left when everything that leads nowhere is taken away, from both ends.
pub(super) fn circles(inputs: &[Vec<usize>]) -> Vec<usize> {
    let uses = turned(inputs);
    let mut left = vec![true; inputs.len()];
    for (forward, backward) in [(inputs, &uses[..]), (&uses[..], inputs)] {
        let mut open: Vec<usize> = forward
            .iter()
            .map(|next| next.iter().filter(|index| left[**index]).count())
            .collect();
        let mut loose: Vec<usize> = (0..left.len())
            .filter(|index| left[*index] && open[*index] == 0)
            .collect();
        while let Some(index) = loose.pop() {
            left[index] = false;
            for user in backward[index].iter().copied().filter(|user| left[*user]) {
                open[user] -= 1;
                if open[user] == 0 {
                    loose.push(user);
                }
            }
        }
    }
    (0..left.len()).filter(|index| left[*index]).collect()
}

/// The first of every chain that are longer than this.
fn deeper_than(deepest: usize, inputs: &[Vec<usize>]) -> Vec<usize> {
    let uses = turned(inputs);
    let mut open: Vec<usize> = inputs.iter().map(Vec::len).collect();
    let mut depth = vec![0; inputs.len()];
    let mut settled: Vec<usize> = (0..inputs.len()).filter(|index| open[*index] == 0).collect();
    let mut found = Vec::new();
    while let Some(index) = settled.pop() {
        if depth[index] > deepest {
            found.push(index);
            depth[index] = 0;
        }
        for user in uses[index].iter().copied() {
            depth[user] = depth[user].max(depth[index] + 1);
            open[user] -= 1;
            if open[user] == 0 {
                settled.push(user);
            }
        }
    }
    found
}

/// The same edges, the other way round.
fn turned(edges: &[Vec<usize>]) -> Vec<Vec<usize>> {
    let mut turned = vec![Vec::new(); edges.len()];
    for (from, to) in edges
        .iter()
        .enumerate()
        .flat_map(|(from, to)| to.iter().map(move |to| (from, *to)))
    {
        turned[to].push(from);
    }
    turned
}
