//! Going on by itself, as far as nobody has to be asked.

use super::super::command::Refusal;
use super::super::event::{Doubt, End, Event, Role, Voiding};
use super::super::proof;
use super::super::route::leads_to;
use super::super::wanted::{Wanted, workable};
use super::super::words::worked_out_shown;
use super::Walk;
use super::answer::close_bound;
use crate::library::{Answers, Datum, Edge, Fault, Id, Input, Kind, Obtained, Reading, Remedy};
use crate::measure::Quantity;

impl Walk<'_> {
    /// Goes on until something must be asked or the walk has ended.
    pub(super) fn advance(&mut self) -> Result<(), Refusal> {
        while self.state.ended.is_none() && self.wanted() == Wanted::Onward {
            self.onward()?;
        }
        if let (None, Wanted::Decision(fault)) = (&self.state.ended, self.wanted())
            && self.state.withheld.last() != Some(&fault)
        {
            let fault = self.library.faults[fault].name.clone();
            self.emit(Event::Withheld { fault })?;
        }
        Ok(())
    }

    fn onward(&mut self) -> Result<(), Refusal> {
        if let Some(retaking) = self.state.moment.retaking {
            return self.work_out(retaking.datum, false);
        }
        let Some(step) = self.step() else {
            return self.end(End::Unproven {
                why: "the walk stands nowhere".to_owned(),
            });
        };
        match &step.kind {
            Kind::Measure { reading, answers, .. } => {
                let datum = Datum::Reading(*reading);
                match self.state.value(datum) {
                    Some(_) => self.route(datum, answers),
                    None => self.work_out(datum, true),
                }
            }
            Kind::Observe { sign, answers, .. } => self.route(Datum::Sign(*sign), answers),
            Kind::Plate { field, answers, .. } => self.route(Datum::Field(*field), answers),
            Kind::Visit { tree, .. } => self.emit(Event::Entered {
                tree: self.library.trees[*tree].name.clone(),
                role: Role::Visit,
            }),
            Kind::Verdict { fault, .. } => self.verdict(*fault),
            Kind::Return { outcome } => self.go_back_up(*outcome),
            Kind::Do { .. } | Kind::Unresolved { .. } => self.end(End::Unproven {
                why: format!("the step `{}` of the library is broken", step.name),
            }),
        }
    }

    /// Takes the edge that a value leads to.
    fn route(&mut self, datum: Datum, answers: &Answers) -> Result<(), Refusal> {
        let Some(value) = self.state.value(datum).map(|standing| standing.value) else {
            return Ok(());
        };
        let edge = leads_to(answers, value, &|field| self.state.field(field));
        match edge {
            Some(edge) => self.take_edge(edge),
            None => self.end(End::Unproven {
                why: format!("the tree has no answer for this value of {}", self.name(datum)),
            }),
        }
    }

    /// Takes an edge, or what comes after its limit.
    pub(super) fn take_edge(&mut self, edge: &Edge) -> Result<(), Refusal> {
        let mut edge = edge;
        while let Some(limit) = &edge.limit {
            let taken = self
                .state
                .top()
                .and_then(|frame| frame.counts.get(&edge.id))
                .copied();
            if taken.unwrap_or_default() < limit.at_most {
                break;
            }
            edge = &limit.then;
        }
        let Some(frame) = self.state.top() else {
            return Ok(());
        };
        let (from, to) = (self.library.path_of(frame.step), self.library.path_of(edge.go));
        self.emit(Event::Took {
            edge: edge.id.0,
            from,
            to,
        })
    }

    /// Computes a reading whose inputs all stand; where `asked` by a step, it may be doubted once.
    fn work_out(&mut self, of: Datum, asked: bool) -> Result<(), Refusal> {
        let Some(id) = workable(self.library, &self.state, of) else {
            return self.end(End::Unproven {
                why: format!("{} cannot be worked out", self.name(of)),
            });
        };
        let reading = &self.library.readings[id];
        let (value, margin, warnings) = match self.compute(id) {
            Ok(computed) => computed,
            Err(why) => return self.not_computable(id, &why),
        };
        let datum = Datum::Reading(id);
        let shown = worked_out_shown(value, reading.scale).to_string();
        if let Some(range) = reading.plausible
            && !range.contains(value)
            && !self.was_doubted(datum, Doubt::Implausible)
        {
            let against = super::answer::range_words(range.low, range.high, reading.scale);
            return self.doubt(datum, shown, Doubt::Implausible, against);
        }
        let close = if asked {
            close_bound(self.library, &self.state, datum, value, margin)
        } else {
            None
        };
        if let (Some(against), false) = (&close, self.was_doubted(datum, Doubt::Borderline)) {
            return self.doubt(datum, shown, Doubt::Borderline, against.clone());
        }
        let offsets = reading.scale.of_offsets();
        let margin = Quantity::from_base(margin, offsets.dimension()).number_in(offsets);
        self.opens(&reading.taking.leaves)?;
        self.emit(Event::Measured {
            reading: reading.name.clone(),
            typed: None,
            value: value.number_in(reading.scale),
            unit: reading.scale.symbol().to_owned(),
            margin,
            borderline: close.is_some(),
            warnings,
        })
    }

    /// Asks for a computed value again: its inputs are taken anew.
    fn doubt(&mut self, datum: Datum, value: String, why: Doubt, against: String) -> Result<(), Refusal> {
        let inputs = super::super::apply::inputs_of(self.library, datum);
        let data = inputs.into_iter().map(|input| self.name(input)).collect();
        self.emit(Event::Voided {
            data,
            why: Voiding::Retake,
        })?;
        let datum = self.name(datum);
        self.emit(Event::Doubted {
            datum,
            value,
            why,
            against,
        })
    }

    fn not_computable(&mut self, id: Id<Reading>, why: &str) -> Result<(), Refusal> {
        let title = &self.library.readings[id].title;
        self.end(End::Unproven {
            why: format!("{title} cannot be worked out: {why}"),
        })
    }

    fn compute(&self, id: Id<Reading>) -> Result<(Quantity, f64, Vec<String>), String> {
        let Obtained::WorkedOut { formula, inputs } = &self.library.readings[id].source_of_value else {
            return Err("it is measured".to_owned());
        };
        let mut values = Vec::with_capacity(inputs.len());
        for input in inputs {
            let datum = match input {
                Input::Fixed(quantity) => {
                    values.push([*quantity; 3]);
                    continue;
                }
                Input::Reading(reading) => Datum::Reading(*reading),
                Input::Field(field) => Datum::Field(*field),
            };
            let standing = self.state.value(datum).ok_or("an input is missing")?;
            let number = standing.value.number().ok_or("an input is no number")?;
            values.push(self.ends(input, number, standing.margin));
        }
        let numbers: Vec<_> = values.iter().map(|[number, ..]| *number).collect();
        let value = formula.compute(&numbers).map_err(|unfit| unfit.to_string())?;
        // Where a corner of the inputs' margins lies outside the formula, the result is as uncertain as it can be.
        let margin = formula.margin_between(&values).unwrap_or(f64::MAX.sqrt());
        let warnings = formula.warnings(&numbers).map_err(|unfit| unfit.to_string())?;
        let warnings = warnings
            .iter()
            .map(|warning| format!("{}; {}", warning.reason, warning.help));
        Ok((value, margin, warnings.collect()))
    }

    /// A value, and how low and how high it may be in truth: as far as its margin goes, but not to where no reading is
    /// believed, such as below zero oxygen.
    fn ends(&self, input: &Input, value: Quantity, margin: f64) -> [Quantity; 3] {
        let plausible = match input {
            Input::Reading(reading) => self.library.readings[*reading].plausible.as_ref(),
            Input::Field(_) | Input::Fixed(_) => None,
        };
        let (low, high) = (value.base() - margin, value.base() + margin);
        let low = plausible.map_or(low, |range| low.max(range.low.base()).min(value.base()));
        let high = plausible.map_or(high, |range| high.min(range.high.base()).max(value.base()));
        let at = |base| Quantity::from_base(base, value.dimension());
        [value, at(low), at(high)]
    }

    fn verdict(&mut self, fault: Id<Fault>) -> Result<(), Refusal> {
        if !proof::is_proven(self.library, &self.state, fault) {
            return Ok(());
        }
        let entry = &self.library.faults[fault];
        let name = entry.name.clone();
        let in_danger = self
            .state
            .moment
            .frames
            .iter()
            .any(|frame| frame.role == Role::Danger);
        let catches = (entry.remedy != Remedy::ShutDown && !in_danger)
            .then(|| self.catching_frame())
            .flatten();
        let Some((depth, edge)) = catches else {
            let danger = in_danger;
            self.emit(Event::Stated {
                fault: name.clone(),
                noted: false,
            })?;
            return self.end(End::Verdict { fault: name, danger });
        };
        self.emit(Event::Stated {
            fault: name,
            noted: true,
        })?;
        self.emit(Event::Left { depth })?;
        self.take_edge(&edge)
    }

    /// The nearest visit around the walk that notes a verdict and goes on.
    fn catching_frame(&self) -> Option<(usize, Edge)> {
        let frames = &self.state.moment.frames;
        (1..frames.len()).rev().find_map(|depth| {
            let Kind::Visit { on_verdict, .. } = &self.library[frames[depth - 1].step].kind else {
                return None;
            };
            Some((depth, on_verdict.clone()?))
        })
    }

    fn go_back_up(&mut self, outcome: usize) -> Result<(), Refusal> {
        let Some(frame) = self.state.top() else {
            return Ok(());
        };
        let (role, tree) = (frame.role, frame.tree);
        let outcomes = &self.library.trees[tree].outcomes;
        let name = outcomes
            .get(outcome)
            .map(|outcome| outcome.name.clone())
            .unwrap_or_default();
        let alone = self.state.moment.frames.len() == 1;
        match role {
            Role::Gate => {
                self.emit(Event::Returned { outcome: name })?;
                let tree = self
                    .state
                    .opened
                    .as_ref()
                    .map(|opened| opened.tree.clone())
                    .unwrap_or_default();
                let role = Role::Complaint;
                self.emit(Event::Entered { tree, role })
            }
            Role::Danger if !alone => {
                // Before the return: a log cut off between the two must not take up old values.
                let data: Vec<String> = (self.state.moment.values.keys())
                    .filter(|datum| !matches!(datum, Datum::Field(_)))
                    .map(|datum| self.name(*datum))
                    .collect();
                let why = Voiding::Danger;
                self.emit(Event::Voided { data, why })?;
                self.emit(Event::Returned { outcome: name })
            }
            Role::Visit => {
                self.emit(Event::Returned {
                    outcome: name.clone(),
                })?;
                let edge = self.step().and_then(|step| match &step.kind {
                    Kind::Visit { returns, .. } => returns.iter().find(|(at, _)| *at == outcome),
                    _ => None,
                });
                match edge {
                    Some((_, edge)) => self.take_edge(edge),
                    None => self.end(End::Unproven {
                        why: format!("the tree does not say where the outcome `{name}` goes"),
                    }),
                }
            }
            Role::Complaint | Role::Danger => self.end(End::Outcome { outcome: name }),
        }
    }
}
