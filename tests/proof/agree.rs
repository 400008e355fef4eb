//! No walk reaches a verdict that the checker calls proven without its proof, and every walk that the checker shows is one.

use std::cell::Cell;
use std::collections::{BTreeSet, HashMap};

use proofwalk::check;
use proofwalk::library::{Choice, Claim, ClaimKind, Datum, FieldKind, Kind, Library, Step};
use proofwalk::source::{Walked, WitnessAnswer};
use proofwalk::walk::{
    Command, Holding, LibraryMark, Opened, State, Wanted, apply, decide, open_at, proof_lines, wanted,
};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

use crate::library::library;
use crate::tape::Tape;

/// A call in a library, from one of its trees on.
pub struct Walk<'l> {
    library: &'l Library,
    pub state: State,
}

impl<'l> Walk<'l> {
    pub fn new(library: &'l Library, tree: &str) -> Self {
        let opened = Opened {
            library: LibraryMark::default(),
            tree: tree.to_owned(),
            technician: None,
            site: None,
            equipment: None,
            program: String::new(),
            answered_from: None,
        };
        let mut walk = Self {
            library,
            state: State::default(),
        };
        for event in open_at(library, opened).unwrap() {
            apply(library, &mut walk.state, &event).unwrap();
        }
        walk
    }

    /// Whether the command was taken.
    pub fn give(&mut self, command: &Command) -> bool {
        let Ok(events) = decide(self.library, &self.state, command) else {
            return false;
        };
        for event in events {
            apply(self.library, &mut self.state, &event).unwrap();
        }
        true
    }

    fn step(&self) -> Option<&'l str> {
        let frame = self.state.top()?;
        Some(&self.library[frame.step].name)
    }

    /// The verdict that the walk stands at without its proof: something was not taken, or says otherwise.
    pub fn unproven_at(&self) -> Option<&'l str> {
        let Wanted::Decision(fault) = wanted(self.library, &self.state) else {
            return None;
        };
        let open = |holding| matches!(holding, Holding::Missing | Holding::Contradicted);
        let lines = proof_lines(self.library, &self.state, fault);
        lines
            .iter()
            .any(|(_, holding)| open(*holding))
            .then(|| self.step())
            .flatten()
    }
}

/// The same libraries every time: what is found tomorrow is found because something changed.
fn runner(cases: u32) -> TestRunner {
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    TestRunner::new_with_rng(Config::with_cases(cases), rng)
}

/// Numbers on, beside and between the ends of all the bands.
const NUMBERS: [&str; 20] = [
    "0", "3", "4", "5", "6", "7.9", "8", "9", "10", "11", "12", "13", "15", "16", "20", "25", "60", "80",
    "100", "120",
];

fn answer(
    library: &Library,
    state: &State,
    tape: &mut Tape<'_>,
    before: &mut HashMap<Datum, String>,
) -> Option<Command> {
    if let Wanted::Value { of, leaf } = wanted(library, state)
        && state
            .moment
            .doubted
            .as_ref()
            .is_some_and(|doubted| doubted.datum == of)
        && let Some(text) = before.get(&leaf)
    {
        // What is taken a second time is what it was.
        return Some(Command::Type(text.clone()));
    }
    let command = fresh_answer(library, state, tape)?;
    if let (Wanted::Value { leaf, .. }, Command::Type(text)) = (wanted(library, state), &command) {
        before.insert(leaf, text.clone());
    }
    Some(command)
}

fn fresh_answer(library: &Library, state: &State, tape: &mut Tape<'_>) -> Option<Command> {
    Some(match wanted(library, state) {
        Wanted::Value { .. } if tape.once_in(12) => Command::Unable("no".to_owned()),
        Wanted::Value {
            leaf: Datum::Sign(_), ..
        } if tape.once_in(8) => Command::Unsure,
        Wanted::Value { leaf, .. } => match leaf {
            Datum::Reading(_) => Command::Type(tape.one_of(&NUMBERS).to_owned()),
            Datum::Sign(id) => Command::Choose(tape.below(library.signs[id].values.len())),
            Datum::Field(id) => match &library.plate[id].kind {
                FieldKind::Choices(choices) => Command::Choose(tape.below(choices.len())),
                FieldKind::Number { .. } => Command::Type(tape.one_of(&NUMBERS).to_owned()),
            },
        },
        Wanted::Work(_) => Command::Done,
        Wanted::Decision(fault) => {
            let lines = proof_lines(library, state, fault);
            let data: Vec<Datum> = lines
                .iter()
                .flat_map(|(line, _)| line.alternatives.iter().flatten())
                .map(|claim| claim.datum())
                .filter(|datum| state.value(*datum).is_none())
                .collect();
            if data.is_empty() || tape.once_in(2) {
                return None;
            }
            Command::Take(tape.one_of(&data))
        }
        Wanted::PutBack(_) | Wanted::Close | Wanted::Nothing | Wanted::Onward => return None,
    })
}

/// A verdict that is not proven, the steps that lead there, and the answers where a walk is shown.
type Shown = (String, Vec<String>, Option<Vec<WitnessAnswer>>);

/// What the checker says: the verdicts it does not call proven, and the walks that it shows.
fn called_unproven(library: &Library) -> (BTreeSet<String>, Vec<Shown>) {
    let found = check::run(library, &[]);
    let found = found
        .into_iter()
        .filter(|finding| finding.rule == "unproven-verdict");
    let shown = found.map(|finding| {
        let verdict = finding.witness.last().unwrap().clone();
        let answers = match finding.walk.unwrap() {
            Walked::With(answers) => Some(answers),
            Walked::NotShown => None,
        };
        (verdict, finding.witness, answers)
    });
    let shown: Vec<_> = shown.collect();
    (shown.iter().map(|(verdict, ..)| verdict.clone()).collect(), shown)
}

fn voids_plate(step: &Step) -> bool {
    matches!(&step.kind, Kind::Do { voids, .. } if voids.iter().any(|datum| matches!(datum, Datum::Field(_))))
}

fn tree_of<'l>(library: &'l Library, step: &str) -> &'l str {
    let step = library.steps.iter().find(|known| known.name == step).unwrap();
    &library.trees[step.tree].name
}

#[test]
fn no_walk_reaches_a_verdict_that_is_called_proven_without_its_proof() {
    let (guarded, proven) = (Cell::new(0), Cell::new(0));
    let mut runner = runner(200);
    let bytes = |count| prop::collection::vec(any::<u8>(), count);
    runner
        .run(
            &(bytes(400), prop::collection::vec(bytes(60), 40)),
            |(written, walks)| {
                let library = library(&written);
                let (unproven, shown) = called_unproven(&library);
                let reads_twice = library.steps.iter().any(voids_plate);
                let not_shown = |step: &str| {
                    !reads_twice
                        && shown
                            .iter()
                            .any(|(verdict, _, answers)| verdict == step && answers.is_none())
                };
                for answers in walks {
                    let tape = &mut Tape::new(&answers);
                    let tree = tape.one_of(&["t0", "t2"]);
                    let mut walk = Walk::new(&library, tree);
                    let mut before = HashMap::new();
                    for _ in 0..60 {
                        if let Some(verdict) = walk.unproven_at() {
                            guarded.set(guarded.get() + 1);
                            prop_assert!(
                                unproven.contains(verdict),
                                "`{verdict}` was called proven; {:?}",
                                walk.state
                                    .trail
                                    .iter()
                                    .map(|answered| &answered.answer)
                                    .collect::<Vec<_>>()
                            );
                            // In a library this small every way is tried; but a plate that is read twice says the same.
                            prop_assert!(!not_shown(verdict), "`{verdict}` was called not shown walkable");
                        } else if let Some(step) = walk.step()
                            && walk.state.ended.is_some()
                            && !unproven.contains(step)
                        {
                            proven.set(proven.get() + 1);
                        }
                        match answer(&library, &walk.state, tape, &mut before) {
                            Some(command) => walk.give(&command),
                            None => break,
                        };
                    }
                }
                Ok(())
            },
        )
        .unwrap();
    let (guarded, proven) = (guarded.get(), proven.get());
    assert!(
        guarded > 1000 && proven > 1000,
        "{guarded} held back, {proven} ended proven"
    );
}

/// Walks a witness with its answers; the verdict it is held back at.
fn walked(library: &Library, witness: &[String], answers: &[WitnessAnswer]) -> Option<String> {
    let mut given: Vec<&WitnessAnswer> = answers.iter().collect();
    let mut before: HashMap<Datum, String> = HashMap::new();
    let last = witness.last().unwrap();
    let mut walk = Walk::new(library, tree_of(library, &witness[0]));
    for _ in 0..200 {
        let step = walk.step()?;
        let command = match wanted(library, &walk.state) {
            Wanted::Decision(_) if step == last => return Some(last.clone()),
            Wanted::Value { of, leaf } => {
                let (own, whole) = (library.name_of(leaf), library.name_of(of));
                let doubted = walk.state.moment.doubted.as_ref().map(|doubted| doubted.datum);
                // A value that is doubted is given once more, and so are those that it is worked out from.
                let answer = if doubted.is_some_and(|doubted| doubted == leaf || doubted == of) {
                    before.get(&leaf)?.clone()
                } else {
                    let unable = |answer: &WitnessAnswer| answer.asks == whole && answer.answer == UNABLE;
                    let here = |answer: &&&WitnessAnswer| {
                        answer.step == step && (answer.asks == own || unable(answer))
                    };
                    let at = given.iter().position(|answer| here(&answer))?;
                    given.remove(at).answer.clone()
                };
                before.insert(leaf, answer.clone());
                answered(library, leaf, &answer)?
            }
            Wanted::Work(_) => Command::Done,
            // A verdict on the way takes what it lacks; plate fields that could not be read before among them.
            Wanted::Decision(fault) => {
                let lines = proof_lines(library, &walk.state, fault);
                let claims = lines
                    .iter()
                    .flat_map(|(line, _)| line.alternatives.iter().flatten());
                let left = |name: &str| {
                    given
                        .iter()
                        .any(|answer| answer.step == step && answer.asks == name)
                };
                let mut lacking = claims.flat_map(needed).filter(|datum| {
                    let name = library.name_of(*datum);
                    let inputs = name == "rise" && (left("warm") || left("cold"));
                    walk.state.value(*datum).is_none() && (left(name) || inputs)
                });
                Command::Take(lacking.next()?)
            }
            Wanted::PutBack(_) | Wanted::Close | Wanted::Nothing | Wanted::Onward => return None,
        };
        if !walk.give(&command) {
            return None;
        }
    }
    None
}

/// What a claim is about, and the plate fields that it leans on.
fn needed(claim: &Claim) -> Vec<Datum> {
    let band = match &claim.what {
        ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => Some(band),
        ClaimKind::Sign(..) | ClaimKind::FieldChoice(..) => None,
    };
    let bounds = band.into_iter().flat_map(|band| band.bounds());
    let fields = bounds.filter_map(|bound| bound.leans_on().copied().map(Datum::Field));
    fields.chain([claim.datum()]).collect()
}

const UNABLE: &str = "could not be taken";

fn answered(library: &Library, leaf: Datum, answer: &str) -> Option<Command> {
    let among = |values: &[Choice]| values.iter().position(|value| value.name == answer);
    Some(match (answer, leaf) {
        (UNABLE, _) => Command::Unable("so".to_owned()),
        ("not sure", _) => Command::Unsure,
        (_, Datum::Sign(id)) => Command::Choose(among(&library.signs[id].values)?),
        (_, Datum::Field(id)) => match &library.plate[id].kind {
            FieldKind::Choices(choices) => Command::Choose(among(choices)?),
            FieldKind::Number { .. } => Command::Type(answer.to_owned()),
        },
        (_, Datum::Reading(_)) => Command::Type(answer.to_owned()),
    })
}

#[test]
fn every_walk_that_is_shown_is_one() {
    let (shown, not_shown) = (Cell::new(0), Cell::new(0));
    let mut runner = runner(300);
    runner
        .run(&prop::collection::vec(any::<u8>(), 400), |written| {
            let library = library(&written);
            let (_, walks) = called_unproven(&library);
            for (verdict, witness, answers) in walks {
                let Some(answers) = answers else {
                    not_shown.set(not_shown.get() + 1);
                    continue;
                };
                shown.set(shown.get() + 1);
                prop_assert_eq!(
                    walked(&library, &witness, &answers),
                    Some(verdict),
                    "{:?} with {:?}",
                    witness,
                    answers
                );
            }
            Ok(())
        })
        .unwrap();
    let (shown, not_shown) = (shown.get(), not_shown.get());
    assert!(
        shown > 300 && not_shown * 10 < shown,
        "{shown} shown, {not_shown} not shown walkable"
    );
}

#[test]
fn random_libraries_have_verdicts_of_every_kind() {
    let mut kinds = [0; 2];
    let mut runner = TestRunner::deterministic();
    for _ in 0..50 {
        let bytes = prop::collection::vec(any::<u8>(), 400)
            .new_tree(&mut runner)
            .unwrap()
            .current();
        let library = library(&bytes);
        let (unproven, _) = called_unproven(&library);
        let verdicts = library
            .steps
            .iter()
            .filter(|step| matches!(step.kind, Kind::Verdict { .. }));
        kinds[0] += unproven.len();
        kinds[1] += verdicts.count() - unproven.len();
    }
    assert!(
        kinds.iter().all(|&count| count > 20),
        "unproven, proven or not reached: {kinds:?}"
    );
}
