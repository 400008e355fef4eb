//! Every value that is taken along a way, and what the way says of it.

use std::collections::HashMap;

use super::dependence::Dependence;
use super::moves::{How, lines_of};
use super::numbers::Numbers;
use super::script::{Act, Script};
use super::walkable::{Counts, count};
use crate::library::{
    Answers, Claim, ClaimKind, Datum, Fault, Id, Input, Kind, Library, Obtained, PlateField, ProofLine, Step,
};
use crate::measure::{Band, Condition};

/// A value from when it is taken until it no longer counts.
#[derive(Clone, Debug)]
pub(super) struct Epoch<'l> {
    pub datum: Datum,
    /// What the bands that it was sorted into say of it.
    pub numbers: Numbers,
    /// Those bands.
    pub bands: Vec<&'l Band<Id<PlateField>>>,
    /// Those that a noted verdict leans on: the meter must leave no doubt of them.
    pub clear: Vec<&'l Band<Id<PlateField>>>,
    /// Conditions that it must not meet.
    pub denied: Vec<&'l Condition<Id<PlateField>>>,
    /// Which of several values it has; none where any will do.
    pub choice: Option<usize>,
    /// Values that it must not have.
    pub not: Vec<usize>,
    /// Where it is worked out: the value of each input that is no fixed quantity, in the formula's order.
    pub inputs: Vec<usize>,
}

/// Something that is asked for along a way.
#[derive(Clone, Copy, Debug)]
pub(super) struct Asked {
    pub step: Id<Step>,
    pub datum: Datum,
    pub answer: Answer,
}

/// How it is answered.
#[derive(Clone, Copy, Debug)]
pub(super) enum Answer {
    /// With the value of this epoch.
    Value(usize),
    Unable,
    Unsure,
}

/// A way, as far as it can be gone at all: its limits are kept, and no value is said to be two things at once.
#[derive(Clone)]
pub(super) struct Epochs<'l> {
    pub library: &'l Library,
    dependence: &'l Dependence,
    pub all: Vec<Epoch<'l>>,
    pub asked: Vec<Asked>,
    /// What the proof claims and does not hold at the end of the way.
    pub lacking: Vec<&'l Claim>,
    live: HashMap<Datum, usize>,
    /// Plate fields that no longer count: read anew, a plate says the same.
    read_before: HashMap<Id<PlateField>, usize>,
    /// The visits that were entered, each with the counts of the tree it stands in.
    around: Vec<(Id<Step>, Counts)>,
    counts: Counts,
}

/// Ways of proving what is noted, and of leaving a line open: more than anybody writes.
const MOST: usize = 64;

impl<'l> Epochs<'l> {
    /// Goes along a way, once for each way of proving the verdicts that are noted on it; nothing where it contradicts itself.
    pub fn along(library: &'l Library, dependence: &'l Dependence, script: &Script<'l>) -> Vec<Self> {
        let mut ways = vec![Self {
            library,
            dependence,
            all: Vec::new(),
            asked: Vec::new(),
            lacking: Vec::new(),
            live: HashMap::new(),
            read_before: HashMap::new(),
            around: Vec::new(),
            counts: Vec::new(),
        }];
        for (at, (step, act)) in script.iter().enumerate() {
            // A way that passes a visit by says nothing of what happens there.
            let came_back = matches!(act, Act::Take(How::Returned(_) | How::Noted, ..));
            if came_back && !(at > 0 && matches!(script[at - 1].1, Act::End)) {
                return Vec::new();
            }
            match (act, &library[*step].kind, script.get(at + 1)) {
                (Act::End, Kind::Verdict { fault, .. }, Some((visit, _))) => {
                    let noted = ways.iter().flat_map(|way| way.stating(*step, *fault));
                    ways = noted.take(MOST).collect();
                    ways.retain_mut(|way| way.leave(*visit).is_some());
                }
                _ => ways.retain_mut(|way| way.go(*step, *act).is_some()),
            }
        }
        ways
    }

    fn go(&mut self, step: Id<Step>, act: Act<'l>) -> Option<()> {
        match act {
            Act::Enter => {
                let counts = std::mem::take(&mut self.counts);
                self.around.push((step, counts));
                Some(())
            }
            Act::End => match &self.library[step].kind {
                Kind::Return { .. } => {
                    self.counts = self.around.pop()?.1;
                    Some(())
                }
                // The way ends in its verdict.
                Kind::Verdict { fault, .. } => self.read_plate(step, *fault),
                _ => None,
            },
            Act::Take(how, first, taken) => {
                self.answer(step, how)?;
                count(&mut self.counts, first, taken).then_some(())
            }
        }
    }

    /// Leaves the trees that were entered, up to a visit.
    fn leave(&mut self, visit: Id<Step>) -> Option<()> {
        loop {
            let (left, counts) = self.around.pop()?;
            if left == visit {
                self.counts = counts;
                return Some(());
            }
        }
    }

    fn answer(&mut self, at: Id<Step>, how: How) -> Option<()> {
        let library = self.library;
        let (datum, answers) = match &library[at].kind {
            Kind::Measure { reading, answers, .. } => (Datum::Reading(*reading), answers),
            Kind::Observe { sign, answers, .. } => (Datum::Sign(*sign), answers),
            Kind::Plate { field, answers, .. } => (Datum::Field(*field), answers),
            Kind::Do { voids, .. } => {
                self.void(voids);
                return Some(());
            }
            Kind::Visit { .. } | Kind::Verdict { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => {
                return Some(());
            }
        };
        match how {
            How::Unable if self.live.contains_key(&datum) && self.unread(answers).is_none() => return None,
            How::Unable => self.ask(at, datum, Answer::Unable),
            How::Unsure if self.live.contains_key(&datum) => return None,
            How::Unsure => self.ask(at, datum, Answer::Unsure),
            _ => {}
        }
        if matches!(how, How::Unable | How::Unsure) {
            return Some(());
        }
        // What the bands lean on is read first.
        if let Answers::Bands(bands) = answers {
            for field in bands.iter().flat_map(|answer| fields(&answer.band)) {
                self.take(at, Datum::Field(field))?;
            }
        }
        let epoch = self.take(at, datum)?;
        match (how, answers) {
            (How::Answer(position), Answers::Bands(bands)) => self.sort(epoch, &bands[position].band),
            (How::Answer(position), Answers::Choices(choices)) => self.choose(epoch, choices[position].value),
            _ => Some(()),
        }
    }

    /// The first plate field that bands lean on and that was not read.
    fn unread(&self, answers: &Answers) -> Option<Datum> {
        let Answers::Bands(bands) = answers else {
            return None;
        };
        let fields = bands.iter().flat_map(|answer| fields(&answer.band));
        fields
            .map(Datum::Field)
            .find(|field| !self.live.contains_key(field))
    }

    fn ask(&mut self, step: Id<Step>, datum: Datum, answer: Answer) {
        self.asked.push(Asked { step, datum, answer });
    }

    /// The value that stands, or one that is taken now.
    fn take(&mut self, at: Id<Step>, datum: Datum) -> Option<usize> {
        // Inputs lie at most a few levels down: the library's reader sees to that.
        if let Some(&live) = self.live.get(&datum) {
            return Some(live);
        }
        if let Datum::Field(field) = datum
            && let Some(epoch) = self.read_before.remove(&field)
        {
            self.live.insert(datum, epoch);
            self.ask(at, datum, Answer::Value(epoch));
            return Some(epoch);
        }
        let mut inputs = Vec::new();
        let library = self.library;
        let formula = match datum {
            Datum::Reading(id) => match &library.readings[id].source_of_value {
                Obtained::WorkedOut { inputs, .. } => Some(inputs),
                Obtained::Measured(_) => None,
            },
            Datum::Sign(_) | Datum::Field(_) => None,
        };
        for input in formula.into_iter().flatten() {
            match input {
                Input::Reading(reading) => inputs.push(self.take(at, Datum::Reading(*reading))?),
                Input::Field(field) => inputs.push(self.take(at, Datum::Field(*field))?),
                Input::Fixed(_) => {}
            }
        }
        let epoch = self.all.len();
        self.all.push(Epoch {
            datum,
            numbers: Numbers::default(),
            bands: Vec::new(),
            clear: Vec::new(),
            denied: Vec::new(),
            choice: None,
            not: Vec::new(),
            inputs,
        });
        self.live.insert(datum, epoch);
        if formula.is_none() {
            self.ask(at, datum, Answer::Value(epoch));
        }
        Some(epoch)
    }

    fn sort(&mut self, epoch: usize, band: &'l Band<Id<PlateField>>) -> Option<()> {
        let epoch = &mut self.all[epoch];
        epoch.numbers = epoch.numbers.and(band);
        epoch.bands.push(band);
        (!epoch.numbers.is_plainly_empty()).then_some(())
    }

    fn choose(&mut self, epoch: usize, value: usize) -> Option<()> {
        let epoch = &mut self.all[epoch];
        (*epoch.choice.get_or_insert(value) == value).then_some(())
    }

    fn void(&mut self, voids: &[Datum]) {
        for datum in voids {
            for gone in self.dependence.gone_with(*datum) {
                let was = self.live.remove(&gone);
                if let (Some(was), Datum::Field(field)) = (was, gone) {
                    self.read_before.insert(field, was);
                }
            }
        }
    }

    /// A verdict that is not proven asks for the plate fields of its proof first.
    fn read_plate(&mut self, at: Id<Step>, fault: Id<Fault>) -> Option<()> {
        let lines = lines_of(self.library, fault)?;
        for claim in lines
            .into_iter()
            .flat_map(|line| line.alternatives.iter().flatten())
        {
            if let Datum::Field(_) = claim.datum() {
                self.take(at, claim.datum())?;
            }
            if let ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) = &claim.what {
                for field in fields(band) {
                    self.take(at, Datum::Field(field))?;
                }
            }
        }
        Some(())
    }

    /// A verdict that is noted: what it needs holds, or is taken now. One way for each way of proving it.
    fn stating(&self, at: Id<Step>, fault: Id<Fault>) -> Vec<Self> {
        let mut read = self.clone();
        let Some(lines) = lines_of(self.library, fault).filter(|_| read.read_plate(at, fault).is_some())
        else {
            return Vec::new();
        };
        lines.into_iter().fold(vec![read], |ways, line| {
            let proven = ways.iter().flat_map(|way| {
                line.alternatives.iter().filter_map(|claims| {
                    let mut way = way.clone();
                    let holds = claims.iter().all(|claim| way.claim(at, claim).is_some());
                    holds.then_some(way)
                })
            });
            proven.take(MOST).collect()
        })
    }

    fn claim(&mut self, at: Id<Step>, claim: &'l Claim) -> Option<()> {
        let epoch = self.take(at, claim.datum())?;
        match &claim.what {
            ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => {
                self.all[epoch].clear.push(band);
                self.sort(epoch, band)
            }
            ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values) => match self.all[epoch].choice {
                Some(value) => values.contains(&value).then_some(()),
                None => self.choose(epoch, *values.first()?),
            },
        }
    }

    /// The ways in which a line of the proof may not hold at the end: of every alternative, one claim that fails.
    pub fn failing(&self, at: Id<Step>, line: &'l ProofLine) -> Vec<Self> {
        let mut ways = vec![self.clone()];
        for claims in &line.alternatives {
            let mut next = Vec::new();
            for way in &ways {
                let failing = claims.iter().flat_map(|claim| way.denying(at, claim));
                next.extend(failing.take(MOST - next.len().min(MOST)));
            }
            ways = next;
        }
        ways
    }

    /// The ways in which a claim may fail: its value was not taken, or lies elsewhere.
    fn denying(&self, at: Id<Step>, claim: &'l Claim) -> Vec<Self> {
        let datum = claim.datum();
        let is_plate = matches!(datum, Datum::Field(_));
        let mut here = self.clone();
        here.lacking.push(claim);
        if !is_plate && !self.live.contains_key(&datum) {
            return vec![here];
        }
        let Some(epoch) = here.take(at, datum) else {
            return Vec::new();
        };
        match &claim.what {
            ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => {
                let ways = band.conditions.iter().map(|condition| {
                    let mut way = here.clone();
                    way.all[epoch].denied.push(condition);
                    way
                });
                ways.collect()
            }
            ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values) => {
                match here.all[epoch].choice {
                    Some(value) if values.contains(&value) => return Vec::new(),
                    Some(_) => {}
                    None => here.all[epoch].not.extend(values),
                }
                vec![here]
            }
        }
    }
}

/// The plate fields that a band leans on.
fn fields(band: &Band<Id<PlateField>>) -> impl Iterator<Item = Id<PlateField>> + '_ {
    band.bounds().filter_map(|bound| bound.leans_on().copied())
}
