//! A threshold that comes from nowhere.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::{Answers, ClaimKind, Id, Kind, Library, PlateField, Proof, Reading, Step, What};
use crate::measure::{Band, Bound};

rule! {
    /// A reading is held against a number, and nothing says where that number comes from.
    ///
    /// A technician who doubts a verdict has to know whether the limit is the maker's, a code's, or what the trade is used to;
    /// and a reviewer has to know where to look it up. Name a `source` on the reading, or on the step that has the bands; a proof
    /// takes the reading's. A limit that is plainly what the rating plate says needs none: the plate is its source. A share
    /// of it (`90 % of plate.input`) or an offset from it is somebody's number.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: current
    /// steps:
    ///   current:
    ///     measure: flame_current
    ///     bands:
    ///       below 1 uA: weak
    ///       at least 1 uA: done
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The signal is weak.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: current
    /// steps:
    ///   current:
    ///     measure: flame_current
    ///     source: common_practice
    ///     bands:
    ///       below 1 uA: weak
    ///       at least 1 uA: done
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The signal is weak.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    MISSING_SOURCE, "missing-source", Warning, needs Shape, look
}

type FieldBand = Band<Id<PlateField>>;

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let library = subject.library;
    let mut thresholds: Vec<Option<Threshold>> = library.readings.iter().map(|_| None).collect();
    for (reading, threshold) in in_proofs(library).chain(in_steps(subject)) {
        if is_threshold(threshold.band) {
            thresholds[reading.index()].get_or_insert(threshold);
        }
    }
    for ((id, reading), threshold) in library.readings.iter().zip(thresholds) {
        let next = library.readings.get(Id::new(id.index() + 1)).map(|next| next.at);
        let silent = reading.taking.source.is_some()
            || subject.misses_within(What::Source, reading.at, next)
            || subject.is_doubled(What::Reading, &reading.name, reading.at.file);
        if let Some(Threshold { band, place }) = threshold.filter(|_| !silent) {
            let field = |field: &Id<PlateField>| format!("plate.{}", library.plate[*field].name);
            let band = band.display(reading.scale, field);
            let mend = match place {
                Place::Step(_) => "on the step, or on the reading for all of them",
                Place::Part(_) | Place::Fault(_) => "on the reading",
            };
            findings.add(
                reading.at,
                format!(
                    "`{}` has no source for its threshold `{band}` in {}",
                    reading.name,
                    place.words(library)
                ),
                format!("write `source: …` {mend}; what is only usual comes from common practice"),
            );
        }
    }
}

/// A band that a reading is held against, and where that is.
struct Threshold<'a> {
    band: &'a FieldBand,
    place: Place<'a>,
}

/// Where a reading is held against a band.
#[derive(Clone, Copy)]
enum Place<'a> {
    Step(Id<Step>),
    Part(&'a str),
    Fault(&'a str),
}

impl Place<'_> {
    fn words(&self, library: &Library) -> String {
        match self {
            Self::Step(step) => format!("the step `{}`", library.path_of(*step)),
            Self::Part(name) => format!("the proof of the part `{name}`"),
            Self::Fault(name) => format!("the proof of the fault `{name}`"),
        }
    }
}

/// The bands of steps that name no source of their own.
fn in_steps<'a>(subject: &'a Subject<'_>) -> impl Iterator<Item = (Id<Reading>, Threshold<'a>)> {
    let steps = &subject.library.steps;
    let sourceless = steps.iter().enumerate().filter(|(index, step)| {
        let next = steps.get(index + 1).map(|next| next.at);
        step.source.is_none() && !subject.misses_within(What::Source, step.at, next)
    });
    sourceless.flat_map(|(index, step)| {
        let found = match &step.kind {
            Kind::Measure {
                reading,
                answers: Answers::Bands(bands),
                ..
            } => Some((*reading, bands)),
            _ => None,
        };
        let place = Place::Step(Id::new(index));
        found.into_iter().flat_map(move |(reading, bands)| {
            bands.iter().map(move |answer| {
                let band = &answer.band;
                (reading, Threshold { band, place })
            })
        })
    })
}

fn in_proofs(library: &Library) -> impl Iterator<Item = (Id<Reading>, Threshold<'_>)> {
    let parts = library
        .parts
        .iter()
        .map(|(_, part)| (&part.proof, Place::Part(&part.name)));
    let faults = library
        .faults
        .iter()
        .map(|(_, fault)| (&fault.proof, Place::Fault(&fault.name)));
    parts.chain(faults).flat_map(|(proof, place)| {
        claimed(proof).map(move |(reading, band)| (reading, Threshold { band, place }))
    })
}

fn claimed(proof: &Proof) -> impl Iterator<Item = (Id<Reading>, &FieldBand)> {
    let claims = proof
        .lines
        .iter()
        .flat_map(|line| line.alternatives.iter().flatten());
    claims.filter_map(|claim| match &claim.what {
        ClaimKind::Reading(reading, band) => Some((*reading, band)),
        _ => None,
    })
}

/// Whether a band has a number of its own: more than what the plate says as it stands there.
fn is_threshold(band: &FieldBand) -> bool {
    let own = |bound: &Bound<_>| bound.offset.is_some() || bound.share.is_some_and(|(share, _)| share != 1.0);
    band.bounds().any(own)
}
