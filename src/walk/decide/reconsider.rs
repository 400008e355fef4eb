//! A value taken again that leads elsewhere than it did.

use super::super::command::Refusal;
use super::super::event::{Event, Role};
use super::super::route::leads_to;
use super::super::state::{Moment, Value, What};
use super::Walk;
use crate::library::{Answers, Datum, EdgeId, Id, Kind, Library, PlateField};
use crate::measure::Quantity;

impl Walk<'_> {
    /// Gives a value. One that was taken again and now leads elsewhere is an answer corrected: the walk goes back to where it was
    /// asked, and goes on from there with the new value.
    pub(super) fn give(&mut self, datum: Datum, event: Event) -> Result<(), Refusal> {
        let again = self
            .state
            .moment
            .retaking
            .is_some_and(|retaking| retaking.datum == datum);
        if !again {
            return self.emit(event);
        }
        self.emit(event.clone())?;
        if let Some(to) = self.parted(datum) {
            self.emit(Event::WentBack { to })?;
            self.emit(event)?;
        }
        Ok(())
    }

    /// The answer from which the walk would have gone another way with the value that now stands.
    fn parted(&self, datum: Datum) -> Option<usize> {
        let now = &self.state.moment;
        if now.frames.iter().any(|frame| frame.role == Role::Danger) {
            return None;
        }
        // The newest entry of the trail is the value that was just given.
        let before = self.state.trail.len().checked_sub(1)?;
        let trail = &self.state.trail;
        let at = (0..before).rev().find(|at| {
            trail[*at].what == What::Datum(datum)
                && answers_at(self.library, &trail[*at].before, datum).is_some()
        })?;
        let answers = answers_at(self.library, &trail[at].before, datum)?;
        let after = &trail[at + 1].before;
        let old = leads(answers, after.values.get(&datum)?.value, after);
        let new = leads(answers, now.values.get(&datum)?.value, now);
        (old != new).then_some(at)
    }
}

/// The answers of the step that a moment stands at, where that step asks for a datum.
fn answers_at<'l>(library: &'l Library, moment: &Moment, datum: Datum) -> Option<&'l Answers> {
    let (own, answers) = match &library[moment.frames.last()?.step].kind {
        Kind::Measure { reading, answers, .. } => (Datum::Reading(*reading), answers),
        Kind::Observe { sign, answers, .. } => (Datum::Sign(*sign), answers),
        Kind::Plate { field, answers, .. } => (Datum::Field(*field), answers),
        _ => return None,
    };
    (own == datum).then_some(answers)
}

fn leads(answers: &Answers, value: Value, moment: &Moment) -> Option<EdgeId> {
    let field =
        |id: Id<PlateField>| -> Option<Quantity> { moment.values.get(&Datum::Field(id))?.value.number() };
    leads_to(answers, value, &field).map(|edge| edge.id)
}
