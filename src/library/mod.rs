//! What an author wrote: registries and trees, from text to resolved names.
//!
//! [`load`] reads a library's files and resolves every name. It never stops at the first error: what cannot be resolved
//! is reported as a [`Problem`] and stands in the [`Library`] as unresolved.

mod as_written;
mod ends;
mod exit;
mod file_kind;
pub mod graph;
mod load;
mod name;
mod overlay;
mod problem;
mod raw;
mod registry;
mod resolve;
mod scenario;
mod schema;
mod table;
mod tree;
mod yaml;

use std::ops::Index;

pub use as_written::faults_as_written;
pub use ends::Ends;
pub use exit::{By, Exit};
pub use file_kind::FileKind;
pub use overlay::{Overlay, Replaceable, Replaced};
pub use problem::{Problem, ProblemKind, What};
pub use registry::{
    Caution, Choice, Claim, ClaimKind, Danger, Datum, Fault, FieldKind, Input, Obtained, Part, PlateField,
    Proof, ProofLine, Reading, Remedy, Restore, Sign, Source, Taking,
};
pub use scenario::{Expect, ExpectedEnd, Given, Placed, Scenario};
pub use schema::{schema, with_modeline};
pub use table::{Id, Named, Table};
pub use tree::{
    Answers, BandAnswer, ChoiceAnswer, Edge, EdgeId, Finding, Kind, Limit, Outcome, Severity, Status, Step,
    Tree, return_edge,
};

use crate::measure::Scale;
use crate::source::Files;

/// A library: everything its author registered, and the trees.
#[derive(Clone, Debug, Default)]
pub struct Library {
    /// The files it was read from.
    pub files: Files,
    /// Its name.
    pub name: String,
    /// Its edition.
    pub edition: String,
    /// What it is called on a screen.
    pub title: String,
    /// The overlays laid over it, in that order.
    pub overlays: Vec<Overlay>,
    /// What they replaced, overlay after overlay, in the order of the places that count.
    pub replaced: Vec<Replaced>,
    /// The tree walked before every complaint.
    pub gate: Option<Id<Tree>>,
    /// The tree by which work is proven, once it is done.
    pub after_work: Option<Id<Tree>>,
    /// The dangers offered from every step.
    pub dangers: Vec<Danger>,
    /// Cautions that always stand.
    pub standing_cautions: Vec<Id<Caution>>,
    /// Rating-plate fields.
    pub plate: Table<PlateField>,
    /// Chains of plate fields, each smaller than the next on every plate.
    pub order: Vec<Vec<Id<PlateField>>>,
    /// Readings.
    pub readings: Table<Reading>,
    /// Signs.
    pub signs: Table<Sign>,
    /// Parts.
    pub parts: Table<Part>,
    /// Faults.
    pub faults: Table<Fault>,
    /// What must be put back.
    pub restores: Table<Restore>,
    /// Cautions.
    pub cautions: Table<Caution>,
    /// Sources.
    pub sources: Table<Source>,
    /// Trees.
    pub trees: Table<Tree>,
    /// The steps of all trees, tree after tree.
    pub steps: Vec<Step>,
    /// Worked calls.
    pub scenarios: Vec<Scenario>,
}

impl Index<Id<Step>> for Library {
    type Output = Step;

    fn index(&self, id: Id<Step>) -> &Step {
        &self.steps[id.index()]
    }
}

impl Library {
    /// What a datum is called on a screen.
    pub fn title_of(&self, datum: Datum) -> &str {
        match datum {
            Datum::Reading(id) => &self.readings[id].title,
            Datum::Sign(id) => &self.signs[id].ask,
            Datum::Field(id) => &self.plate[id].title,
        }
    }

    /// The registered name of a datum.
    pub fn name_of(&self, datum: Datum) -> &str {
        match datum {
            Datum::Reading(id) => &self.readings[id].name,
            Datum::Sign(id) => &self.signs[id].name,
            Datum::Field(id) => &self.plate[id].name,
        }
    }

    /// The trees that a call may begin with whether they have a complaint or not, dangers left out: the gate, and the one after work.
    pub fn standing_by_themselves(&self) -> impl Iterator<Item = Id<Tree>> {
        self.gate.into_iter().chain(self.after_work)
    }

    /// The proofs that a verdict needs: its part's and its own.
    ///
    /// A group says "one of these": what proves any of its parts bad proves the verdict, so the named part's proof is the one
    /// that counts.
    pub fn proofs(&self, fault: Id<Fault>) -> impl Iterator<Item = &Proof> {
        let fault = &self.faults[fault];
        let part = match fault.remedy {
            Remedy::Replace(part) => Some(&self.parts[part].proof),
            Remedy::Correct | Remedy::ShutDown | Remedy::Refer | Remedy::None | Remedy::Unresolved => None,
        };
        part.into_iter().chain([&fault.proof])
    }

    /// Whether a verdict can be stated at all: its remedy and every line of its proofs could be read.
    pub fn can_be_proven(&self, fault: Id<Fault>) -> bool {
        self.faults[fault].remedy != Remedy::Unresolved && self.proofs(fault).all(|proof| !proof.broken)
    }

    /// The scale of a datum that is a number.
    pub fn scale_of(&self, datum: Datum) -> Option<Scale> {
        match datum {
            Datum::Reading(id) => Some(self.readings[id].scale),
            Datum::Field(id) => match self.plate[id].kind {
                FieldKind::Number { scale, .. } => Some(scale),
                FieldKind::Choices(_) => None,
            },
            Datum::Sign(_) => None,
        }
    }

    /// The reading, sign or plate field of a name.
    pub fn datum(&self, name: &str) -> Option<Datum> {
        let reading = self.readings.find(name).map(Datum::Reading);
        let sign = || self.signs.find(name).map(Datum::Sign);
        let field = || self.plate.find(name).map(Datum::Field);
        reading.or_else(sign).or_else(field)
    }

    /// What an overlay replaced.
    pub fn replaced_by(&self, overlay: &Overlay) -> impl Iterator<Item = &Replaced> {
        let number = overlay.number;
        (self.replaced.iter())
            .filter(move |replaced| self.files.get(replaced.by.file).layer().number() == number)
    }

    /// A step as messages name it: its tree and its name.
    pub fn path_of(&self, step: Id<Step>) -> String {
        let step = &self[step];
        format!("{}/{}", self.trees[step.tree].name, step.name)
    }
}

/// What a library's files say, before any name in it is looked up.
pub struct Written {
    files: Files,
    raw: load::Raw,
    problems: Vec<Problem>,
}

/// Reads a library's files, each on its own.
pub fn read(files: Files) -> Written {
    let files = load::with_place_for_about(files);
    let (raw, problems) = load::read_all(&files);
    Written { files, raw, problems }
}

impl Written {
    /// Looks every name up. Problems are in no particular order; with none, every name is resolved.
    pub fn resolve(self) -> (Library, Vec<Problem>) {
        let (mut library, problems) = resolve::resolve(&self.files, self.raw, self.problems);
        library.files = self.files;
        (library, problems)
    }
}

/// Reads and resolves a library. Problems are in no particular order; with none, every name is resolved.
///
/// Where files belong to overlays ([`SourceFile::layer`](crate::source::SourceFile::layer)), the library is what they make
/// of it together: what a later layer registers or names as an earlier one did replaces it whole.
pub fn load(files: Files) -> (Library, Vec<Problem>) {
    read(files).resolve()
}
