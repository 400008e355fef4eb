//! One furnace from autumn to spring: what breaks, who is sent, and whether the owner has to call again.

use super::crew::{Crew, Habit};
use super::planted::{self, Guess, Planted};
use super::visit::{Truth, Visit, Walk, equipment, walk};
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

/// Seconds of a minute.
const MINUTE: f64 = 60.0;

/// Share of the furnaces that are seen for their yearly visit, and are in order.
const YEARLY: f64 = 0.2;

/// The tree of that visit, and of whatever the owner does not feel.
const YEARLY_VISIT: &str = "combustion-check";

/// How often a furnace that was put right has another fault in the same season, of its own.
const ANOTHER: f64 = 0.2;

/// How often somebody careful proves the work by the tree that the library has for it, and how often somebody else does.
const PROVEN: [f64; 2] = [0.8, 0.1];

/// Minutes from the closing of a call to the walk that proves its work: what was to be done is done in between.
const WORK: [f64; 2] = [5.0, 40.0];

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
            let walk = self.call(number, &mut machine, &sent, &trouble, dice)?;
            let truth = Truth::of(self.library, &walk, trouble.fault, trouble.because_of);
            let mut left = walk.said.last().map_or(trouble.day, |last| last.at / DAY);
            let mut proof = None;
            let mut dice = Dice::of(&names(1000 + visits.len() as u64));
            if let Some(tree) = self.proves(&mut dice, &sent, &truth) {
                let from = left + dice.between(WORK[0], WORK[1]) * MINUTE / DAY;
                let proven = self.proof((number, &make), &sent, tree, from, dice)?;
                left = proven.said.last().map_or(from, |last| last.at / DAY);
                proof = Some(proven);
            }
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
        let opened = self.opened(number, sent, tree);
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

    fn opened(&self, number: u32, sent: &Sent, tree: &str) -> Opened {
        Opened {
            library: self.mark.clone(),
            tree: tree.to_owned(),
            technician: Some(Crew::id(sent.technician)),
            site: Some(format!("simulated house {:04}", number + 1)),
            equipment: Some(equipment(number)),
            // No version: the walk, and not its program, is what is made again byte for byte.
            program: "simulated season".to_owned(),
            answered_from: None,
        }
    }

    /// The tree by which the work on a furnace is proven, where there is work to prove and its technician walks it.
    fn proves(&self, dice: &mut Dice, sent: &Sent, truth: &Truth) -> Option<&'a str> {
        let Ending::Fault(name) = &truth.ended else {
            return None;
        };
        let remedy = self
            .library
            .faults
            .find(name)
            .map(|fault| self.library.faults[fault].remedy);
        let is_worked_on = matches!(remedy, Some(Remedy::Replace(_) | Remedy::Correct));
        let runs = truth.outcome == Outcome::Right && truth.closed && truth.left_open.is_empty();
        let often = match self.crew.habit(sent.technician) {
            Habit::Careful => PROVEN[0],
            _ => PROVEN[1],
        };
        let tree = &self.library.trees[self.library.after_work?];
        (is_worked_on && runs && dice.chance(often)).then_some(&tree.name)
    }

    /// Proves the work on a furnace that was put right, from a day of the season on.
    fn proof(
        &self,
        (number, make): (u32, &Make),
        sent: &Sent,
        tree: &str,
        from: f64,
        mut dice: Dice,
    ) -> Result<Walk, Refusal> {
        let mut machine = self.machine(make, Condition::default());
        let opened = self.opened(number, sent, tree);
        let seed = Dice::new(dice.whole());
        let habit = self.crew.habit(sent.technician);
        let mut worker = Worker::new(
            habit,
            &mut machine,
            (self.probes, sent.technician),
            (None, Leaving::Whole),
            seed,
        );
        walk(self.library, opened, &mut worker, from * DAY, None)
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
