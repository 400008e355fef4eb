//! Answers to the question that stands.

use super::super::command::Refusal;
use super::super::event::{Doubt, End, Event};
use super::super::state::{State, Value};
use super::super::wanted::Wanted;
use super::Walk;
use crate::library::{
    Answers, Datum, Edge, FieldKind, Id, Kind, Library, Obtained, PlateField, Reading, Restore,
};
use crate::measure::{Amount, Quantity, Scale, borderline};

impl Walk<'_> {
    pub(super) fn typed(&mut self, text: &str) -> Result<(), Refusal> {
        match self.wanted() {
            Wanted::Value {
                of,
                leaf: Datum::Reading(id),
            } => self.measured(of, id, text),
            Wanted::Value {
                leaf: Datum::Field(id),
                ..
            } => self.read_plate(id, text),
            Wanted::Value { .. } => Err(Refusal::new(
                "a number is no answer here",
                "choose one of the options",
            )),
            _ => Err(Refusal::new(
                "no number is asked for here",
                "answer the question that stands",
            )),
        }
    }

    fn measured(&mut self, of: Datum, id: Id<Reading>, text: &str) -> Result<(), Refusal> {
        let reading = &self.library.readings[id];
        let datum = Datum::Reading(id);
        let (amount, value) = read(text, reading.scale)?;
        let typed = amount.to_string();
        let Obtained::Measured(accuracy) = &reading.source_of_value else {
            return Err(Refusal::new(
                "this reading is worked out",
                "answer for what goes into it",
            ));
        };
        let margin = accuracy.margin(value, reading.scale);
        if let Some(range) = reading.plausible
            && !range.contains(value)
            && !self.was_doubted(datum, Doubt::Implausible)
        {
            return self.emit(Event::Doubted {
                datum: reading.name.clone(),
                value: typed,
                why: Doubt::Implausible,
                against: range_words(range.low, range.high, reading.scale),
            });
        }
        // Only the step's own reading is judged by the step's bounds, and not one that is taken out of turn.
        let judged = of == datum && self.state.moment.retaking.is_none();
        let close = if judged {
            close_bound(self.library, &self.state, datum, value, margin)
        } else {
            None
        };
        if let (Some(against), false) = (&close, self.was_doubted(datum, Doubt::Borderline)) {
            return self.emit(Event::Doubted {
                datum: reading.name.clone(),
                value: typed,
                why: Doubt::Borderline,
                against: against.clone(),
            });
        }
        let offsets = reading.scale.of_offsets();
        self.opens(&reading.taking.leaves)?;
        self.give(
            datum,
            Event::Measured {
                reading: reading.name.clone(),
                typed: Some(typed),
                value: value.number_in(reading.scale),
                unit: reading.scale.symbol().to_owned(),
                margin: Quantity::from_base(margin, offsets.dimension()).number_in(offsets),
                borderline: close.is_some(),
                warnings: Vec::new(),
            },
        )?;
        self.advance()
    }

    fn read_plate(&mut self, id: Id<PlateField>, text: &str) -> Result<(), Refusal> {
        let field = &self.library.plate[id];
        let FieldKind::Number { scale, plausible } = &field.kind else {
            return Err(Refusal::new(
                "a number is no answer here",
                "choose one of the options",
            ));
        };
        let (amount, value) = read(text, *scale)?;
        self.in_order(id, value)?;
        let datum = Datum::Field(id);
        if !plausible.contains(value) && !self.was_doubted(datum, Doubt::Implausible) {
            return self.emit(Event::Doubted {
                datum: field.name.clone(),
                value: amount.to_string(),
                why: Doubt::Implausible,
                against: range_words(plausible.low, plausible.high, *scale),
            });
        }
        self.give(
            datum,
            Event::ReadPlate {
                field: field.name.clone(),
                value: amount.to_string(),
            },
        )?;
        self.advance()
    }

    /// A plate whose numbers stand in the wrong order was misread.
    fn in_order(&self, id: Id<PlateField>, value: Quantity) -> Result<(), Refusal> {
        for chain in &self.library.order {
            let Some(place) = chain.iter().position(|field| *field == id) else {
                continue;
            };
            for (at, other) in chain.iter().enumerate() {
                let Some(known) = self.state.field(*other) else {
                    continue;
                };
                let order = value.compare(known);
                let right = match at.cmp(&place) {
                    std::cmp::Ordering::Less => order.is_none_or(|order| order.is_gt()),
                    std::cmp::Ordering::Equal => true,
                    std::cmp::Ordering::Greater => order.is_none_or(|order| order.is_lt()),
                };
                if !right {
                    let title = &self.library.plate[*other].title;
                    let side = if at < place { "above" } else { "below" };
                    return Err(Refusal::new(
                        format!("this must lie {side} what the plate says for: {title}"),
                        "read both again; go back to mend the earlier one",
                    ));
                }
            }
        }
        Ok(())
    }

    pub(super) fn chosen(&mut self, value: usize) -> Result<(), Refusal> {
        let out_of_range = || Refusal::new("there is no such option", "choose one of the options shown");
        let Wanted::Value { leaf, .. } = self.wanted() else {
            return Err(Refusal::new(
                "nothing is to be chosen here",
                "answer the question that stands",
            ));
        };
        match leaf {
            Datum::Sign(id) => {
                let sign = &self.library.signs[id];
                let choice = sign.values.get(value).ok_or_else(out_of_range)?;
                self.opens(&sign.taking.leaves)?;
                self.give(
                    leaf,
                    Event::Observed {
                        sign: sign.name.clone(),
                        value: choice.name.clone(),
                    },
                )?;
            }
            Datum::Field(id) => {
                let field = &self.library.plate[id];
                let FieldKind::Choices(choices) = &field.kind else {
                    return Err(Refusal::new("a number is asked for", "type it, with its unit"));
                };
                let choice = choices.get(value).ok_or_else(out_of_range)?;
                self.give(
                    leaf,
                    Event::ReadPlate {
                        field: field.name.clone(),
                        value: choice.name.clone(),
                    },
                )?;
            }
            Datum::Reading(_) => return Err(Refusal::new("a number is asked for", "type it, with its unit")),
        }
        self.advance()
    }

    pub(super) fn unable(&mut self, why: &str) -> Result<(), Refusal> {
        let Wanted::Value { of, leaf } = self.wanted() else {
            return Err(Refusal::new(
                "nothing is to be taken here",
                "answer the question that stands, or stop without a verdict",
            ));
        };
        let why = why.trim();
        let why = if why.is_empty() { "no reason given" } else { why };
        let out_of_turn = self.state.moment.retaking.is_some();
        self.emit(Event::CouldNot {
            datum: self.name(leaf),
            why: why.to_owned(),
        })?;
        if out_of_turn {
            if of != leaf {
                let datum = self.name(of);
                self.emit(Event::CouldNot {
                    datum,
                    why: why.to_owned(),
                })?;
            }
            return self.advance();
        }
        let edge = self.step().and_then(|step| match &step.kind {
            Kind::Measure { unable, .. } | Kind::Observe { unable, .. } | Kind::Plate { unable, .. } => {
                unable.as_ref()
            }
            _ => None,
        });
        let at_verdict = self
            .step()
            .is_some_and(|step| matches!(step.kind, Kind::Verdict { .. }));
        match edge {
            Some(edge) => self.take_edge(edge)?,
            // The verdict is withheld, and says what it lacks.
            None if at_verdict => {}
            None => {
                let title = self.library.title_of(leaf);
                let why = format!("this could not be taken: {title} ({why})");
                self.end(End::Unproven { why })?;
            }
        }
        self.advance()
    }

    pub(super) fn unsure(&mut self) -> Result<(), Refusal> {
        let Wanted::Value {
            leaf: Datum::Sign(sign),
            ..
        } = self.wanted()
        else {
            return Err(Refusal::new(
                "only what is seen, heard, felt or smelled can be unsure",
                "take the reading, or say that it cannot be taken",
            ));
        };
        if self.state.moment.retaking.is_some() {
            return self.unable("not sure");
        }
        self.emit(Event::WasUnsure {
            sign: self.library.signs[sign].name.clone(),
        })?;
        let edge: Option<&Edge> = self.step().and_then(|step| match &step.kind {
            Kind::Observe { unsure, .. } => unsure.as_ref(),
            _ => None,
        });
        match edge {
            Some(edge) => self.take_edge(edge)?,
            None => {
                let ask = &self.library.signs[sign].ask;
                let why = format!("the technician could not tell: {ask}");
                self.end(End::Unproven { why })?;
            }
        }
        self.advance()
    }

    pub(super) fn done(&mut self) -> Result<(), Refusal> {
        let Wanted::Work(id) = self.wanted() else {
            return Err(Refusal::new(
                "nothing is to be done here",
                "answer the question that stands",
            ));
        };
        let step = &self.library[id];
        let Kind::Do {
            go,
            voids,
            leaves,
            restores,
            ..
        } = &step.kind
        else {
            return Ok(());
        };
        self.opens(leaves)?;
        self.emit(Event::Did {
            step: self.library.path_of(id),
        })?;
        if !voids.is_empty() {
            let data = voids.iter().map(|datum| self.name(*datum)).collect();
            let why = super::super::event::Voiding::Work;
            self.emit(Event::Voided { data, why })?;
        }
        if !restores.is_empty() {
            let restores = self.restore_names(restores);
            self.emit(Event::Restored { restores })?;
        }
        self.take_edge(go)?;
        self.advance()
    }

    /// Whether a value was asked for again already, for this reason.
    pub(super) fn was_doubted(&self, datum: Datum, why: Doubt) -> bool {
        self.state.moment.raised.contains(&(datum, why))
    }

    /// Lists what an answer opens: before the answer, so that a log cut off between the two loses no put-back.
    pub(super) fn opens(&mut self, leaves: &[Id<Restore>]) -> Result<(), Refusal> {
        if leaves.is_empty() {
            return Ok(());
        }
        let restores = self.restore_names(leaves);
        self.emit(Event::LeftOpen { restores })
    }

    fn restore_names(&self, restores: &[Id<Restore>]) -> Vec<String> {
        restores
            .iter()
            .map(|id| self.library.restores[*id].name.clone())
            .collect()
    }
}

/// Reads what was typed.
fn read(text: &str, scale: Scale) -> Result<(Amount, Quantity), Refusal> {
    if text.trim().is_empty() {
        return Err(Refusal::new(
            "nothing was typed",
            format!("type the number; without a unit it is in {}", scale.symbol()),
        ));
    }
    Amount::typed(text, scale).map_err(|wrong| Refusal::new(wrong.message, wrong.help))
}

/// A range in words.
pub(super) fn range_words(low: Quantity, high: Quantity, scale: Scale) -> String {
    format!("{} to {}", low.display(scale), high.display(scale))
}

/// The bound of the step's bands that a value lies within the meter's accuracy of, in words.
pub(super) fn close_bound(
    library: &Library,
    state: &State,
    datum: Datum,
    value: Quantity,
    margin: f64,
) -> Option<String> {
    let step = &library[state.top()?.step];
    let (Kind::Measure { reading, answers, .. }, Datum::Reading(id)) = (&step.kind, datum) else {
        return None;
    };
    let Answers::Bands(bands) = answers else {
        return None;
    };
    if *reading != id {
        return None;
    }
    let scale = library.readings[id].scale;
    let fields = |field: &Id<PlateField>| {
        state
            .value(Datum::Field(*field))
            .and_then(|s| Value::number(s.value))
    };
    let bounds = bands.iter().flat_map(|answer| answer.band.bounds());
    let mut close = bounds
        .filter_map(|bound| bound.value(&fields))
        .filter(|bound| borderline(value, margin, *bound));
    close.next().map(|bound| bound.display(scale).to_string())
}
