//! One furnace from autumn to spring: what breaks, who is sent, and whether the owner has to call again.

use super::crew::{Crew, Habit};
use super::planted::{self, Guess, Planted};
use super::visit::{Said, Truth, Visit, Walk, equipment, walk};
use super::worker::{Expected, Leaving, Worker};
use crate::bench::condition::Condition;
use crate::bench::dice::{Dice, seed_of};
use crate::bench::faults::{self, Fault};
use crate::bench::furnace::Furnace;
use crate::bench::make::Make;
use crate::bench::simulated::{Probes, Simulated};
use crate::bench::trials::{Ending, Outcome, complaint};
use crate::library::{Library, Remedy};
use crate::walk::{LibraryMark, Opened, Refusal};

/// How long a season is, days: the half year from October to March.
pub const LENGTH: f64 = 182.0;

/// Seconds of a day.
const DAY: f64 = 86_400.0;

/// Share of the furnaces that are seen for their yearly visit, and are in order.
const YEARLY: f64 = 0.2;

/// The tree of that visit, and of whatever the owner does not feel.
const YEARLY_VISIT: &str = "combustion-check";

/// How often a furnace that was put right has another fault in the same season, of its own.
const ANOTHER: f64 = 0.2;

/// How often somebody careful tests the flue gas after work on the furnace.
const TESTED: f64 = 0.8;

/// Most calls about one fault: by then the maker's service has taken over.
const PATIENCE: usize = 3;

/// A company's season.
#[derive(Debug)]
pub struct Season<'a> {
    /// What its technicians walk.
    pub library: &'a Library,
    /// The same, as its sessions name it.
    pub mark: LibraryMark,
    /// What can be asked of its furnaces.
    pub probes: &'a Probes<'a>,
    /// Who works.
    pub crew: Crew,
    /// The same seed is the same season.
    pub seed: u64,
}

/// What is wrong with a furnace at a time.
#[derive(Clone)]
struct Trouble {
    fault: Option<&'static Fault>,
    severity: f64,
    /// When the owner calls, in days of the season.
    day: f64,
    /// The call that it is because of.
    because_of: Option<usize>,
    /// How many calls it has taken.
    calls: usize,
}

/// Who is sent, and what is on that technician's mind.
struct Sent {
    technician: usize,
    expects: Option<Guess>,
    leaving: Leaving,
}

impl<'a> Season<'a> {
    /// The calls at one furnace, by number from 0, in the order in which they were opened.
    ///
    /// # Errors
    ///
    /// Where a call cannot be walked: a fault of the library, or of the simulated furnace.
    pub fn furnace(&self, number: u32) -> Result<Vec<Visit>, Refusal> {
        let names = |purpose: u64| [self.seed, 1, u64::from(number), purpose];
        let mut fate = Dice::of(&names(0));
        let planted = planted::at(number);
        let make = self.make(&mut fate, planted);
        let mut trouble = self.first_trouble(&mut fate, &make, planted);
        let mut visits: Vec<Visit> = Vec::new();
        let mut sent = self.send(&mut fate, planted, &visits, &trouble);
        while trouble.day < LENGTH {
            let mut condition = Condition::default();
            if let Some(fault) = trouble.fault {
                (fault.strike)(&mut condition, &make, trouble.severity);
            }
            let mut machine = self.machine(&make, condition);
            let dice = Dice::of(&names(1 + visits.len() as u64));
            let mut walk = self.call(number, &mut machine, &sent, &trouble, dice)?;
            let truth = Truth::of(self.library, &walk, trouble.fault, trouble.because_of);
            let proof = match self.is_tested(&mut fate, &sent, &truth) {
                true => Some(self.test(
                    number,
                    &make,
                    &mut walk,
                    &sent,
                    Dice::of(&names(1000 + visits.len() as u64)),
                )?),
                false => None,
            };
            let left = walk.said.last().map_or(trouble.day, |last| last.at / DAY);
            let next = self.then(&mut fate, &make, &trouble, &truth, (visits.len(), left));
            let visit = |walk: Walk, truth| Visit {
                furnace: number,
                technician: sent.technician,
                said: walk.said,
                truth,
            };
            visits.push(visit(walk, truth));
            if let Some(proof) = proof {
                let truth = Truth::of(self.library, &proof, None, None);
                visits.push(visit(proof, truth));
            }
            let Some(next) = next else { break };
            trouble = next;
            sent = self.send(&mut fate, None, &visits, &trouble);
        }
        Ok(visits)
    }

    fn machine(&self, make: &Make, condition: Condition) -> Simulated<'a> {
        let make = make.clone();
        Simulated::new(self.probes, Furnace { make, condition })
    }

    /// A furnace; one that can have the planted fault, where there is one.
    fn make(&self, fate: &mut Dice, planted: Option<&Planted>) -> Make {
        let fits = |make: &Make| {
            planted
                .and_then(Planted::fault)
                .is_none_or(|fault| (fault.fits)(make))
        };
        loop {
            let make = Make::random(fate.whole());
            if fits(&make) {
                return make;
            }
        }
    }

    fn first_trouble(&self, fate: &mut Dice, make: &Make, planted: Option<&Planted>) -> Trouble {
        if let Some(planted) = planted {
            return Trouble {
                fault: planted.fault(),
                severity: 0.5,
                day: planted.day,
                because_of: None,
                calls: 0,
            };
        }
        let yearly = fate.chance(YEARLY);
        let day = on_a_working_day(fate.between(0.0, LENGTH), fate);
        Trouble {
            fault: if yearly { None } else { self.draw(fate, make) },
            severity: fate.share(),
            day,
            because_of: None,
            calls: 0,
        }
    }

    /// A fault that such a furnace can have; those more often that the library gives more weight.
    fn draw(&self, fate: &mut Dice, make: &Make) -> Option<&'static Fault> {
        let library = self.library;
        let weight = |fault: &Fault| {
            let known = library
                .faults
                .find(fault.name)
                .and_then(|id| library.faults[id].weight);
            known.unwrap_or(1.0)
        };
        let fit = || faults::all().filter(|fault| (fault.fits)(make));
        let mut left = fate.share() * fit().map(weight).sum::<f64>();
        let mut last = None;
        for fault in fit() {
            left -= weight(fault);
            last = Some(fault);
            if left < 0.0 {
                break;
            }
        }
        last
    }

    /// Who is sent: as planned, or anyone; to an owner who calls again, mostly a colleague, and in the end somebody careful.
    fn send(&self, fate: &mut Dice, planted: Option<&Planted>, visits: &[Visit], trouble: &Trouble) -> Sent {
        if let Some(planted) = planted {
            return Sent {
                technician: planted.technician,
                expects: planted.expects,
                leaving: planted.leaving,
            };
        }
        let before = visits.last().map(|visit| visit.technician);
        let mut technician = match trouble.calls + 1 >= PATIENCE {
            true => self.crew.with(Habit::Careful, fate),
            false => self.crew.any(fate),
        };
        if Some(technician) == before && fate.chance(0.7) {
            technician = self.crew.with(Habit::Careful, fate);
        }
        let habit = self.crew.habit(technician);
        let expects = (habit == Habit::ChangesParts && fate.chance(0.6)).then(|| Guess {
            fault: fate.one_of(planted::FAVOURITES),
            severity: fate.one_of([0.0, 0.0, 0.5]),
            numbers: fate.chance(0.8),
        });
        let leaving = match (habit, fate.below(10)) {
            (Habit::LeavesOpen, 0..=4) => Leaving::Refused,
            (Habit::LeavesOpen, 5..=6) => Leaving::Abandoned,
            _ => Leaving::Whole,
        };
        Sent {
            technician,
            expects,
            leaving,
        }
    }

    fn call(
        &self,
        number: u32,
        machine: &mut Simulated<'a>,
        sent: &Sent,
        trouble: &Trouble,
        mut dice: Dice,
    ) -> Result<Walk, Refusal> {
        let library = self.library;
        let tree = complaint(library, machine, &mut dice);
        let opened = Opened {
            library: self.mark.clone(),
            tree: tree.to_owned(),
            technician: Some(Crew::id(sent.technician)),
            site: Some(format!("simulated house {:04}", number + 1)),
            equipment: Some(equipment(number)),
            // No version: the walk, and not its program, is what is made again byte for byte.
            program: "simulated season".to_owned(),
            answered_from: None,
        };
        let make = machine.furnace().make.clone();
        let expected = sent.expects.and_then(|guess| {
            let fault = faults::all().find(|fault| fault.name == guess.fault && (fault.fits)(&make))?;
            let mut condition = Condition::default();
            (fault.strike)(&mut condition, &make, guess.severity);
            let machine = self.machine(&make, condition);
            let numbers = guess.numbers;
            Some(Expected { machine, numbers })
        });
        let habit = self.crew.habit(sent.technician);
        let seed = Dice::new(seed_of(&[dice.whole()]));
        let mut worker = Worker::new(
            habit,
            machine,
            (self.probes, sent.technician),
            (expected, sent.leaving),
            seed,
        );
        walk(library, opened, &mut worker, trouble.day * DAY, trouble.fault)
    }

    /// Whether the flue gas is tested after the work, as a call of its own before the other is closed.
    fn is_tested(&self, fate: &mut Dice, sent: &Sent, truth: &Truth) -> bool {
        let Ending::Fault(name) = &truth.ended else {
            return false;
        };
        let remedy = self
            .library
            .faults
            .find(name)
            .map(|fault| self.library.faults[fault].remedy);
        let is_worked_on = matches!(remedy, Some(Remedy::Replace(_) | Remedy::Correct));
        let runs = truth.outcome == Outcome::Right && truth.closed;
        let careful = self.crew.habit(sent.technician) == Habit::Careful;
        careful && is_worked_on && runs && fate.chance(TESTED)
    }

    /// Tests the flue gas of a furnace that was put right, when all is put back; the call about the fault is closed after it.
    fn test(
        &self,
        number: u32,
        make: &Make,
        call: &mut Walk,
        sent: &Sent,
        dice: Dice,
    ) -> Result<Walk, Refusal> {
        let closed = call.said.pop();
        let put_back = call.said.last().map_or(0.0, |last| last.at);
        let trouble = Trouble {
            fault: None,
            severity: 0.0,
            day: (put_back + 120.0) / DAY,
            because_of: None,
            calls: 0,
        };
        let sent = Sent {
            technician: sent.technician,
            expects: None,
            leaving: Leaving::Whole,
        };
        let mut machine = self.machine(make, Condition::default());
        let test = self.call(number, &mut machine, &sent, &trouble, dice)?;
        let tested = test.said.last().map_or(put_back, |last| last.at);
        call.said.extend(closed.map(|closed| Said {
            at: tested + 60.0,
            ..closed
        }));
        Ok(test)
    }

    /// What the owner calls about next, and when; none where the furnace runs to the end of the season.
    fn then(
        &self,
        fate: &mut Dice,
        make: &Make,
        trouble: &Trouble,
        truth: &Truth,
        (place, left): (usize, f64),
    ) -> Option<Trouble> {
        let soon = |fate: &mut Dice, most: f64| on_a_working_day(left + fate.between(0.3, most), fate);
        if let Some(fault) = truth
            .left_open
            .iter()
            .find_map(|open| planted::consequence(open, make))
        {
            return Some(Trouble {
                fault: Some(fault),
                severity: 1.0,
                day: soon(fate, 3.0),
                because_of: Some(place),
                calls: 0,
            });
        }
        let is_felt = truth.complaint != YEARLY_VISIT;
        if trouble.fault.is_some() && is_felt && !self.is_put_right(truth) && trouble.calls + 1 < PATIENCE {
            return Some(Trouble {
                day: soon(fate, 12.0),
                because_of: Some(place),
                calls: trouble.calls + 1,
                ..trouble.clone()
            });
        }
        let day = left + fate.between(2.0, 90.0);
        fate.chance(ANOTHER).then(|| Trouble {
            fault: self.draw(fate, make),
            severity: fate.share(),
            day: on_a_working_day(day, fate),
            because_of: None,
            calls: 0,
        })
    }

    /// Whether the furnace was put right: the true fault was found, or whoever it was handed to sees to it.
    fn is_put_right(&self, truth: &Truth) -> bool {
        match (truth.outcome, &truth.ended) {
            (Outcome::Right, _) => true,
            (Outcome::Referred, Ending::Fault(name)) => self.library.faults.find(name).is_some_and(|fault| {
                matches!(
                    self.library.faults[fault].remedy,
                    Remedy::Refer | Remedy::ShutDown
                )
            }),
            _ => false,
        }
    }
}

/// The same day between eight and five, or the next where it is too late; days of the season begin at midnight.
fn on_a_working_day(day: f64, fate: &mut Dice) -> f64 {
    let (hour, whole) = (day.fract() * 24.0, day.floor());
    match hour {
        8.0..17.0 => day,
        ..8.0 => whole + fate.between(8.0, 12.0) / 24.0,
        _ => whole + 1.0 + fate.between(8.0, 12.0) / 24.0,
    }
}
