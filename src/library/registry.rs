//! What a library registers, once every name in it is resolved.

use super::table::Id;
use super::tree::Tree;
use crate::measure::{Accuracy, Band, PlausibleRange, Quantity, Scale};
use crate::source::Span;
use crate::trade::Formula;

/// A field of the rating plate.
#[derive(Clone, Debug)]
pub struct PlateField {
    /// What it is called on a screen.
    pub title: String,
    /// What can stand there.
    pub kind: FieldKind,
    /// Where to find it on the plate.
    pub how: Option<String>,
    /// The fields that a line of `order:` has right before this one.
    pub smaller: Vec<Id<PlateField>>,
    /// The fields that a line of `order:` has right behind this one.
    pub larger: Vec<Id<PlateField>>,
}

/// What can stand in a plate field.
#[derive(Clone, Debug)]
pub enum FieldKind {
    /// One of several values.
    Choices(Vec<Choice>),
    /// A number.
    Number {
        /// What it is in.
        scale: Scale,
        /// What can be true of a real plate; outside it is asked again.
        plausible: PlausibleRange,
    },
}

/// One of the values of a sign or of a plate field.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// Its name.
    pub name: String,
    /// Where that stands.
    pub at: Span,
    /// What it says on a screen.
    pub text: String,
}

/// A number that can be measured or worked out.
#[derive(Clone, Debug)]
pub struct Reading {
    /// What it is called on a screen.
    pub title: String,
    /// What it is in.
    pub scale: Scale,
    /// How it is got.
    pub source_of_value: Obtained,
    /// What can be true; outside it is asked again before it is taken.
    pub plausible: Option<PlausibleRange>,
    /// What it costs to take.
    pub taking: Taking,
}

/// How a reading is got.
#[derive(Clone, Debug)]
pub enum Obtained {
    /// By a meter, this exact.
    Measured(Accuracy),
    /// By a formula from other values.
    WorkedOut {
        /// The formula.
        formula: &'static Formula,
        /// Its arguments, in the formula's order.
        inputs: Vec<Input>,
    },
}

/// An argument of a formula.
#[derive(Clone, Debug, PartialEq)]
pub enum Input {
    /// A reading, taken when it is not fresh.
    Reading(Id<Reading>),
    /// A number on the plate.
    Field(Id<PlateField>),
    /// A fixed quantity.
    Fixed(Quantity),
}

/// What a reading and a sign have in common: the work of taking one.
#[derive(Clone, Debug, Default)]
pub struct Taking {
    /// Minutes it takes.
    pub minutes: Option<f64>,
    /// What can hurt.
    pub cautions: Vec<Id<Caution>>,
    /// What it opens, and must be put back.
    pub leaves: Vec<Id<Restore>>,
    /// Where its thresholds come from.
    pub source: Option<Id<Source>>,
    /// How to take it.
    pub how: Option<String>,
}

/// Something seen, heard, felt or smelled.
#[derive(Clone, Debug)]
pub struct Sign {
    /// The question.
    pub ask: String,
    /// The answers.
    pub values: Vec<Choice>,
    /// What it costs to look.
    pub taking: Taking,
}

/// A part that can be replaced.
#[derive(Clone, Debug)]
pub struct Part {
    /// What it is called on a screen.
    pub title: String,
    /// What must hold before it may be condemned.
    pub proof: Proof,
}

/// What must hold, all of it, fresh.
#[derive(Clone, Debug, Default)]
pub struct Proof {
    /// The lines; every one must hold.
    pub lines: Vec<ProofLine>,
    /// A line could not be read: then the proof never holds.
    pub broken: bool,
}

/// A line of a proof: it holds when one of its alternatives does.
#[derive(Clone, Debug)]
pub struct ProofLine {
    /// Where it stands.
    pub at: Span,
    /// Each holds when all of its claims do.
    pub alternatives: Vec<Vec<Claim>>,
}

/// One thing that a proof claims.
#[derive(Clone, Debug)]
pub struct Claim {
    /// Where it stands.
    pub at: Span,
    /// Of what, and what of it.
    pub what: ClaimKind,
}

/// Of what something is claimed, and what.
#[derive(Clone, Debug)]
pub enum ClaimKind {
    /// A reading lies in a band.
    Reading(Id<Reading>, Band<Id<PlateField>>),
    /// A sign shows one of these values.
    Sign(Id<Sign>, Vec<usize>),
    /// A plate field lies in a band.
    FieldNumber(Id<PlateField>, Band<Id<PlateField>>),
    /// A plate field has one of these values.
    FieldChoice(Id<PlateField>, Vec<usize>),
}

/// Something asked for and answered: a reading, a sign, or a plate field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Datum {
    /// A number measured or worked out.
    Reading(Id<Reading>),
    /// Something seen, heard, felt or smelled.
    Sign(Id<Sign>),
    /// A field of the rating plate.
    Field(Id<PlateField>),
}

impl Claim {
    /// What the claim is about.
    pub fn datum(&self) -> Datum {
        match self.what {
            ClaimKind::Reading(reading, _) => Datum::Reading(reading),
            ClaimKind::Sign(sign, _) => Datum::Sign(sign),
            ClaimKind::FieldNumber(field, _) | ClaimKind::FieldChoice(field, _) => Datum::Field(field),
        }
    }
}

/// What a walk can end in.
#[derive(Clone, Debug)]
pub struct Fault {
    /// What it is called on a screen.
    pub title: String,
    /// What is done about it.
    pub remedy: Remedy,
    /// What to do, in words.
    pub text: Option<String>,
    /// What must hold beside the part's own proof.
    pub proof: Proof,
    /// Parts that no field measurement tells apart: "one of these".
    pub group: Vec<Id<Part>>,
    /// How often it is met, relative to others.
    pub weight: Option<f64>,
}

/// What is done about a fault.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Remedy {
    /// A part is replaced.
    Replace(Id<Part>),
    /// Something is set right; no part is condemned.
    Correct,
    /// The machine must not run.
    ShutDown,
    /// Another trade, the supplier or the maker takes over.
    Refer,
    /// Nothing is wrong here.
    None,
    /// The part's name could not be read; the walk refuses such a verdict.
    Unresolved,
}

/// Something that must be put back before leaving.
#[derive(Clone, Debug)]
pub struct Restore {
    /// What to do.
    pub text: String,
}

/// A hazard and the usual caution for it.
#[derive(Clone, Debug)]
pub struct Caution {
    /// What to do, or not to.
    pub text: String,
    /// Where that comes from.
    pub source: Option<Id<Source>>,
}

/// Where a threshold comes from.
#[derive(Clone, Debug)]
pub struct Source {
    /// What it is called.
    pub title: String,
    /// Where in it.
    pub section: Option<String>,
    /// `published`, `practice`, `memory` …
    pub kind: String,
}

/// A danger that is offered from every step.
#[derive(Clone, Debug)]
pub struct Danger {
    /// What the technician chooses.
    pub label: String,
    /// The tree it leads to.
    pub tree: Id<Tree>,
    /// Where it stands.
    pub at: Span,
}
