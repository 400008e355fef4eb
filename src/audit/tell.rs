//! A session's events, told into a call.
//!
//! The log is trusted to say what happened: whether it follows from its library is for `proofwalk verify` to say. So nothing
//! is replayed here, and no library is needed but for what its names mean.

use std::sync::Arc;

use compact_str::CompactString;
use jiff::Timestamp;

use super::call::{Call, Ending, NotTaken, PutBacks, Stay, Taken, Verdict};
use super::meanings::Meanings;
use super::place::{Place, Spot};
use super::said::{Ended, Opening, Said, Text};
use crate::walk::{Opened, Role, Voiding};

/// Most readings, steps and put-backs of a call that are kept. No call of a day has a tenth of them; a log that was made to fill
/// memory may.
const MOST: usize = 2000;

/// Tells a session's events into a [`Call`], one after the other.
#[derive(Debug)]
pub struct Teller {
    meanings: Arc<Meanings>,
    call: Call,
    /// Where it stands, and since when.
    place: Place,
    since: Timestamp,
    /// When the question that stands was first put.
    asked: Timestamp,
    time: Timestamp,
    /// Minutes that its library gives for all that was taken at the step since then.
    taken: f64,
    trail: Vec<Mark>,
    /// For each reading, the position in the trail of the answer it belongs to.
    answers: Vec<usize>,
    interrupted: Option<Interrupted>,
}

/// What going back to before an answer restores.
#[derive(Debug)]
struct Mark {
    spot: Spot,
    noted: usize,
}

/// An end that a danger interrupted.
#[derive(Debug)]
struct Interrupted {
    ending: Ending,
    /// How many trees were entered since, and not left.
    depth: usize,
}

impl Teller {
    /// A call that was opened.
    pub fn new(
        session: &str,
        folder: u32,
        opened: &Opening<'_>,
        time: Timestamp,
        meanings: Arc<Meanings>,
    ) -> Self {
        let call = Call {
            session: session.into(),
            folder,
            opened: time,
            last: time,
            closed: None,
            sealed: false,
            torn: None,
            clock_went_back: false,
            from_file: opened.answered_from.is_some(),
            practice: (opened.answered_from.as_deref())
                .is_some_and(|from| from.starts_with(Opened::PRACTICE)),
            with_library: meanings.is_known(),
            tree: kept(&opened.tree),
            technician: opened.technician.as_ref().map(kept),
            site: opened.site.as_ref().map(kept),
            equipment: opened.equipment.as_ref().map(kept),
            ending: Ending::Open,
            noted: Vec::new(),
            put_backs: PutBacks::default(),
            readings: Vec::new(),
            not_taken: Vec::new(),
            stays: Vec::new(),
            could_test_combustion: meanings.tests_combustion(),
            after_work: meanings.proves_work(&opened.tree),
        };
        Self {
            meanings,
            call,
            place: Place::default(),
            since: time,
            asked: time,
            time,
            taken: 0.0,
            trail: Vec::new(),
            answers: Vec::new(),
            interrupted: None,
        }
    }

    /// The next event, and when it was recorded.
    pub fn tell<'l>(&mut self, said: impl Into<Said<'l>>, time: Timestamp) {
        let said = said.into();
        let is_sealing = matches!(said, Said::Closed);
        self.call.clock_went_back |= time < self.time;
        self.call.last = self.call.last.max(time);
        self.time = time;
        self.take(said);
        let is_closed = self.call.ending != Ending::Open && self.call.put_backs.open.is_empty();
        if !is_closed {
            self.call.closed = None;
        } else if self.call.closed.is_none() || is_sealing {
            self.call.closed = Some(time);
        }
    }

    /// The call, once all events are told. `torn` says how many bytes of a half-written line follow.
    pub fn end(mut self, torn: Option<u64>) -> Call {
        if self.call.ending == Ending::Open && !self.call.sealed {
            self.stay(None, false);
        }
        self.call.torn = torn;
        self.call
    }

    fn take(&mut self, said: Said<'_>) {
        match said {
            Said::Entered { tree, role } => self.entered(&tree, role),
            Said::Took { from, to, .. } => {
                let to: Arc<str> = Arc::from(&*to);
                self.place.stay_at(&from);
                self.stay(Some(Arc::clone(&to)), true);
                self.place.stand(to);
                self.asked_anew();
            }
            Said::Returned { .. } => self.returned(),
            Said::Measured { ref typed, .. } => {
                let is_typed = typed.is_some();
                self.measured(said);
                if is_typed {
                    self.answered();
                    self.asked_anew();
                }
            }
            Said::Observed { sign, .. } => {
                self.taken += self.meanings.taken(&sign).minutes.unwrap_or(0.0);
                self.answered();
                self.asked_anew();
            }
            Said::ReadPlate { .. } | Said::WasUnsure { .. } | Said::Did { .. } => {
                self.answered();
                self.asked_anew();
            }
            Said::CouldNot { datum, why } => {
                self.answered();
                self.asked_anew();
                if self.call.not_taken.len() < MOST {
                    self.call.not_taken.push(NotTaken {
                        combustion: self.meanings.taken(&datum).combustion,
                        datum: kept(&datum),
                        why: kept(&why),
                    });
                }
            }
            Said::Voided { data, why } => {
                if why == Voiding::Retake {
                    self.superseded(&data);
                }
            }
            Said::Retaking { .. } => self.asked_anew(),
            Said::LeftOpen { restores } => {
                for restore in restores.iter().map(kept) {
                    // What was refused before and is opened once more is still to be put back.
                    self.call.put_backs.refused.retain(|refused| *refused != restore);
                    let open = &mut self.call.put_backs.open;
                    if open.len() < MOST && !open.contains(&restore) {
                        open.push(restore);
                    }
                }
            }
            Said::Restored { restores } => {
                for restore in &restores {
                    self.put_back(restore);
                }
            }
            Said::PutBack { restore } => self.put_back(&restore),
            Said::KeptOpen { restore, .. } => {
                let restore = kept(&restore);
                self.call.put_backs.open.retain(|open| *open != restore);
                if self.call.put_backs.refused.len() < MOST {
                    self.call.put_backs.refused.push(restore);
                }
            }
            Said::Stated { fault, noted: true } => {
                let verdict = self.verdict(&fault);
                if self.call.noted.len() < MOST {
                    self.call.noted.push(verdict);
                }
            }
            Said::Ended(end) => self.ended(end),
            Said::WentBack { to } => self.went_back(to),
            Said::Closed => self.call.sealed = true,
            Said::Left { depth } => self.place.leave_all_but(depth),
            Said::Opened(_)
            | Said::Doubted { .. }
            | Said::Withheld { .. }
            | Said::Stated { .. }
            | Said::Noted { .. }
            | Said::TailCut { .. } => {}
        }
    }

    fn entered(&mut self, tree: &str, role: Role) {
        if let Some(interrupted) = &mut self.interrupted {
            interrupted.depth += 1;
        } else if role == Role::Danger && self.call.ending != Ending::Open {
            let ending = std::mem::replace(&mut self.call.ending, Ending::Open);
            self.interrupted = Some(Interrupted { ending, depth: 1 });
        }
        self.place.enter(self.meanings.start(tree).into());
        self.stands_anew();
        self.asked_anew();
    }

    fn stands_anew(&mut self) {
        self.since = self.time;
        self.taken = 0.0;
    }

    fn returned(&mut self) {
        if let Some(interrupted) = &mut self.interrupted {
            interrupted.depth = interrupted.depth.saturating_sub(1);
            if interrupted.depth == 0
                && let Some(interrupted) = self.interrupted.take()
            {
                self.call.ending = interrupted.ending;
            }
        }
        self.place.step_out();
        self.stands_anew();
        self.asked_anew();
    }

    fn ended(&mut self, end: Ended<'_>) {
        let is_first = self.call.ending == Ending::Open;
        self.interrupted = None;
        self.call.ending = match end {
            Ended::Verdict { fault, .. } => Ending::Verdict(self.verdict(&fault)),
            Ended::Outcome { outcome } => Ending::Outcome(kept(&outcome)),
            Ended::Unproven { why } => Ending::Unproven { why: kept(&why) },
            Ended::Insisted { fault, .. } => Ending::Insisted(self.verdict(&fault)),
        };
        if is_first {
            self.stay(None, true);
        }
    }

    fn went_back(&mut self, to: usize) {
        for (reading, answer) in self.call.readings.iter_mut().zip(&self.answers) {
            reading.superseded |= *answer >= to;
        }
        // Positions from here on are given anew; what was taken back must not be found at them.
        for answer in self.answers.iter_mut().filter(|answer| **answer >= to) {
            *answer = 0;
        }
        if let Some(mark) = self.trail.drain(to.min(self.trail.len())..).next() {
            self.place.go_back(mark.spot);
            self.call.noted.truncate(mark.noted);
        }
        self.stands_anew();
        self.asked_anew();
    }

    fn answered(&mut self) {
        self.trail.push(Mark {
            spot: self.place.spot(),
            noted: self.call.noted.len(),
        });
    }

    fn asked_anew(&mut self) {
        self.asked = self.time;
    }

    fn measured(&mut self, said: Said<'_>) {
        let Said::Measured {
            reading,
            typed,
            value,
            unit,
            margin,
            borderline,
            ..
        } = said
        else {
            return;
        };
        if self.call.readings.len() >= MOST {
            return;
        }
        // What was worked out belongs to the answer before it.
        let answers = self.trail.len() + usize::from(typed.is_some());
        self.answers.push(answers.saturating_sub(1));
        let meaning = self.meanings.taken(&reading);
        if typed.is_some() {
            self.taken += meaning.minutes.unwrap_or(0.0);
        }
        self.call.readings.push(Taken {
            seconds: seconds(self.asked, self.time).filter(|_| typed.is_some()),
            reading: kept(&reading),
            typed: typed.as_ref().map(kept),
            value,
            unit: kept(&unit),
            margin,
            borderline,
            time: self.time,
            minutes: meaning.minutes,
            combustion: meaning.combustion,
            superseded: false,
        });
    }

    fn superseded(&mut self, data: &[Text<'_>]) {
        for name in data {
            let last = self
                .call
                .readings
                .iter_mut()
                .rev()
                .find(|taken| *taken.reading == **name);
            if let Some(taken) = last {
                taken.superseded = true;
            }
        }
    }

    fn put_back(&mut self, restore: &str) {
        let open = &mut self.call.put_backs.open;
        if let Some(place) = open.iter().position(|open| open == restore) {
            open.remove(place);
            self.call.put_backs.done += 1;
        }
    }

    fn stay(&mut self, to: Option<Arc<str>>, went_on: bool) {
        let Some(step) = self.place.go_on() else { return };
        if self.call.stays.len() < MOST {
            // Whoever is sent here for what a proof lacks takes more than the step asks for.
            let minutes = (self.meanings.minutes(&step).into_iter())
                .chain((self.taken > 0.0).then_some(self.taken))
                .reduce(f64::max);
            self.call.stays.push(Stay {
                minutes,
                step,
                to,
                seconds: seconds(self.since, self.time).filter(|_| went_on),
            });
        }
        self.stands_anew();
    }

    fn verdict(&self, fault: &str) -> Verdict {
        Verdict {
            fault: fault.into(),
            remedy: self.meanings.remedy(fault),
        }
    }
}

/// A text to keep: short ones take no memory of their own.
fn kept(text: &Text<'_>) -> CompactString {
    CompactString::from(&**text)
}

/// Seconds between two times; none where the clock went back.
fn seconds(from: Timestamp, to: Timestamp) -> Option<f64> {
    let seconds = to.duration_since(from).as_secs_f64();
    (seconds >= 0.0).then_some(seconds)
}
