//! Playing one call: a furnace is drawn, broken, and a technician sent to it.

use super::call::{Door, Walked, walk};
use super::complaint::complaint;
use super::judge::{Outcome, judge};
use super::occasion::{Occasion, occasion_of};
use crate::bench::condition::Condition;
use crate::bench::dice::{Dice, seed_of};
use crate::bench::faults::{self, Fault};
use crate::bench::machine::Machine;
use crate::bench::make::Make;
use crate::library::Library;
use crate::walk::Refusal;

/// What is wrong with the furnaces of some calls.
#[derive(Clone, Copy, Debug)]
pub enum Subject {
    /// Nothing.
    Sound,
    /// A fault.
    One(&'static Fault),
    /// A fault, and a second that each call draws anew.
    Two(&'static Fault),
}

impl Subject {
    /// Its name: the fault's, or `none`.
    pub fn name(&self) -> &'static str {
        self.fault().map_or("none", |fault| fault.name)
    }

    /// The fault it is about.
    pub fn fault(&self) -> Option<&'static Fault> {
        match self {
            Self::Sound => None,
            Self::One(fault) | Self::Two(fault) => Some(fault),
        }
    }
}

/// A call that was played.
#[derive(Debug)]
pub struct Played {
    /// The furnace.
    pub make: Make,
    /// What is wrong with it, and how badly, from 0 to 1.
    pub truth: Vec<(&'static Fault, f64)>,
    /// The tree of the complaint.
    pub tree: &'static str,
    /// Why it was called for, where nothing is wrong.
    pub occasion: Option<&'static Occasion>,
    /// The walk.
    pub walked: Walked,
    /// The verdict against the truth.
    pub outcome: Outcome,
}

/// Furnaces that are drawn for a fault before it is taken to fit none.
const DRAWS: u64 = 400;

/// How often a fault is just beyond what still works, or as bad as it gets, and not in between.
const AT_AN_END: f64 = 0.1;

/// A furnace that was drawn and broken, and the complaint about it.
#[derive(Clone, Debug)]
pub struct Drawn<M> {
    /// The furnace.
    pub make: Make,
    /// What is wrong with it, and how badly, from 0 to 1.
    pub truth: Vec<(&'static Fault, f64)>,
    /// The broken furnace itself.
    pub machine: M,
    /// The tree of the complaint.
    pub tree: &'static str,
    /// Why it was called for, where nothing is wrong.
    pub occasion: Option<&'static Occasion>,
}

/// What the dice of a call are for.
fn dice_for(subject: Subject, seed: u64, purpose: u64) -> [u64; 3] {
    [seed, seed_of_name(subject.name()), purpose]
}

/// Draws the furnace of a call: the same subject and seed are the same furnace. None where the fault fits no furnace that is
/// drawn.
pub fn draw<M: Machine>(
    library: &Library,
    subject: Subject,
    seed: u64,
    build: impl Fn(Make, Condition) -> M,
) -> Option<Drawn<M>> {
    let names = |purpose: u64| dice_for(subject, seed, purpose);
    let fits = |make: &Make| subject.fault().is_none_or(|fault| (fault.fits)(make));
    let mut furnaces = (0..DRAWS).map(|draw| Make::random(seed_of(&[seed_of(&names(0)), draw])));
    let make = furnaces.find(fits)?;
    let mut fate = Dice::of(&names(1));
    let mut truth: Vec<_> = subject
        .fault()
        .map(|fault| (fault, severity(&mut fate)))
        .into_iter()
        .collect();
    if let Subject::Two(first) = subject {
        let others: Vec<_> = faults::all()
            .filter(|other| other.name != first.name && (other.fits)(&make))
            .collect();
        if !others.is_empty() {
            truth.push((others[fate.below(others.len())], severity(&mut fate)));
        }
    }
    let mut condition = Condition::default();
    for (fault, severity) in &truth {
        (fault.strike)(&mut condition, &make, *severity);
    }
    let mut machine = build(make.clone(), condition);
    let mut words = Dice::of(&names(2));
    let occasion = match subject {
        Subject::Sound => occasion_of(library, &make, &mut words),
        Subject::One(_) | Subject::Two(_) => None,
    };
    let tree = match occasion {
        Some(occasion) => occasion.tree,
        None => complaint(library, &mut machine, &mut words),
    };
    Some(Drawn {
        make,
        truth,
        machine,
        tree,
        occasion,
    })
}

/// Plays a call: the same subject and seed are the same call. None where the fault fits no furnace that is drawn.
///
/// # Errors
///
/// Where the walk cannot be walked: see [`walk`].
pub fn play<M: Machine>(
    library: &Library,
    subject: Subject,
    seed: u64,
    build: impl Fn(Make, Condition) -> M,
) -> Result<Option<Played>, Refusal> {
    let Some(drawn) = draw(library, subject, seed, build) else {
        return Ok(None);
    };
    let Drawn {
        make,
        truth,
        mut machine,
        tree,
        occasion,
    } = drawn;
    let dice = Dice::of(&dice_for(subject, seed, 3));
    let walked = walk(library, tree, Door::Gate, &mut machine, dice)?;
    let faults: Vec<&Fault> = truth.iter().map(|(fault, _)| *fault).collect();
    let outcome = judge(library, &walked, &faults);
    Ok(Some(Played {
        make,
        truth,
        tree,
        occasion,
        walked,
        outcome,
    }))
}

fn severity(dice: &mut Dice) -> f64 {
    match dice.chance(AT_AN_END) {
        true => dice.one_of([0.0, 1.0]),
        false => dice.share(),
    }
}

/// A seed of a name: of its own letters, so that a fault more in the list changes no other fault's calls.
fn seed_of_name(name: &str) -> u64 {
    let letters: Vec<u64> = name.bytes().map(u64::from).collect();
    seed_of(&letters)
}
