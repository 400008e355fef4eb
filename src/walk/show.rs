//! From a state to what any face must show.

use super::ask::{
    Again, Ask, Claimed, End as BandEnd, Lack, LackKind, Question, ShownBand, ShownOption, Way,
};
use super::event::{Doubt, Role};
use super::overlays::overlay_words;
use super::proof::{self, Holding};
use super::route::{answers_of, own_datum};
use super::state::State;
use super::wanted::{Wanted, wanted};
use super::words::{claim_words, line_words, remedy_words, status_words};
use crate::library::{
    Answers, BandAnswer, Caution, Claim, Datum, Edge, Fault, FieldKind, Id, Kind, Library, Obtained,
    PlateField, ProofLine, Status, Step, Taking,
};
use crate::measure::{Interval, Quantity, Scale};
use crate::source::{Safe, safe, safe_lines};

/// The question that stands.
pub fn ask(library: &Library, state: &State) -> Ask {
    let wanted = wanted(library, state);
    let step = state.top().map(|frame| &library[frame.step]);
    let mut ask = Ask {
        tree: safe(""),
        status: None,
        edition: None,
        overlays: match state.answers {
            0 => overlay_words(library, state),
            _ => Vec::new(),
        },
        through: Vec::new(),
        question: Question::Closed,
        by_words: Vec::new(),
        title: None,
        why: Vec::new(),
        how: Vec::new(),
        cautions: Vec::new(),
        standing_cautions: Vec::new(),
        source: None,
        minutes: None,
        again: None,
        unable: None,
        unsure: None,
    };
    place(library, state, &mut ask);
    match wanted {
        Wanted::Nothing => {}
        Wanted::Close | Wanted::Onward => ask.question = Question::Finished,
        Wanted::PutBack(restore) => {
            ask.question = Question::PutBack {
                restore,
                text: safe(&library.restores[restore].text),
                left: state.open.len().saturating_sub(1),
            };
        }
        Wanted::Decision(fault) => {
            ask.question = unproven(library, state, fault);
            if let Some(Kind::Verdict { because, .. }) = step.map(|step| &step.kind) {
                ask.why = safe_lines(because);
            }
        }
        Wanted::Work(id) => work(library, &library[id], &mut ask),
        Wanted::Value { of, leaf } => value(library, state, of, leaf, &mut ask),
    }
    // Once a call, whichever way it was begun; but who is in danger reads what to do, and nothing else.
    let in_danger = state.top().is_some_and(|frame| frame.role == Role::Danger);
    if state.answers == 0 && state.ended.is_none() && !in_danger {
        let standing = library.standing_cautions.iter();
        ask.standing_cautions = standing.map(|id| safe(&library.cautions[*id].text)).collect();
    }
    ask
}

fn place(library: &Library, state: &State, ask: &mut Ask) {
    let mut trees = state.moment.frames.iter().map(|frame| &library.trees[frame.tree]);
    if let Some(tree) = trees.next_back() {
        ask.tree = safe(&tree.title);
        ask.status = (tree.status != Status::Approved).then(|| safe(status_words(tree.status)));
        ask.edition = tree.edition.as_deref().map(safe);
    }
    ask.through = trees.map(|tree| safe(&tree.title)).collect();
}

fn about_step(library: &Library, step: &Step, ask: &mut Ask) {
    ask.title = step.title.as_deref().map(safe);
    ask.why = step.why.as_deref().map(safe_lines).unwrap_or_default();
    ask.minutes = step.minutes;
    ask.source = step.source.map(|source| source_words(library, source));
    add_cautions(library, &step.cautions, ask);
}

fn about_taking(library: &Library, taking: &Taking, ask: &mut Ask) {
    add_cautions(library, &taking.cautions, ask);
    ask.minutes = ask.minutes.or(taking.minutes);
    if ask.how.is_empty() {
        ask.how = taking.how.as_deref().map(safe_lines).unwrap_or_default();
    }
    if ask.source.is_none() {
        ask.source = taking.source.map(|source| source_words(library, source));
    }
}

fn source_words(library: &Library, source: Id<crate::library::Source>) -> Safe {
    let source = &library.sources[source];
    match &source.section {
        Some(section) => safe(&format!("{}, {section}", source.title)),
        None => safe(&source.title),
    }
}

fn add_cautions(library: &Library, cautions: &[Id<Caution>], ask: &mut Ask) {
    for caution in cautions {
        let text = safe(&library.cautions[*caution].text);
        if !ask.cautions.contains(&text) {
            ask.cautions.push(text);
        }
    }
}

fn work(library: &Library, step: &Step, ask: &mut Ask) {
    about_step(library, step, ask);
    if let Kind::Do { text, .. } = &step.kind {
        ask.question = Question::Act {
            text: safe_lines(text),
        };
    }
}

fn value(library: &Library, state: &State, of: Datum, leaf: Datum, ask: &mut Ask) {
    let step = state.top().map(|frame| &library[frame.step]);
    let out_of_turn = state.moment.retaking;
    let asks_own = step.is_some_and(|step| own_datum(step) == Some(of)) && out_of_turn.is_none();
    if let (Some(step), true) = (step, asks_own) {
        about_step(library, step, ask);
        if of == leaf {
            ask.how = how_of(step).map(safe_lines).unwrap_or_default();
        }
    }
    ask.again = again(state, of, leaf);
    let (unable, unsure) = ways(step, asks_own);
    ask.unable = Some(unable);
    let bands = match (step, asks_own && of == leaf) {
        (Some(step), true) => answers_of(step),
        _ => None,
    };
    match leaf {
        Datum::Reading(id) => {
            about_taking(library, &library.readings[id].taking, ask);
            let reading = &library.readings[id];
            let accuracy = match &reading.source_of_value {
                Obtained::Measured(accuracy) => {
                    Some(safe(&accuracy.words(reading.scale))).filter(|words| words.width() > 0)
                }
                Obtained::WorkedOut { .. } => None,
            };
            ask.question = Question::Number {
                datum: leaf,
                title: safe(&reading.title),
                scale: reading.scale,
                works_out: (of != leaf).then(|| safe(library.title_of(of))),
                bands: shown_bands(library, state, bands, reading.scale),
                plausible: reading.plausible.map(|range| (range.low, range.high)),
                accuracy,
            };
        }
        Datum::Sign(id) => {
            let sign = &library.signs[id];
            about_taking(library, &sign.taking, ask);
            ask.unsure = Some(unsure);
            ask.question = Question::Choice {
                datum: Some(leaf),
                prompt: safe(&sign.ask),
                options: options(&sign.values, bands),
            };
        }
        Datum::Field(id) => {
            let field = &library.plate[id];
            if let Some(how) = &field.how {
                ask.how = safe_lines(how);
            }
            ask.question = match &field.kind {
                FieldKind::Choices(choices) => Question::Choice {
                    datum: Some(leaf),
                    prompt: safe(&field.title),
                    options: options(choices, bands),
                },
                FieldKind::Number { scale, plausible } => Question::Number {
                    datum: leaf,
                    title: safe(&field.title),
                    scale: *scale,
                    works_out: None,
                    bands: shown_bands(library, state, bands, *scale),
                    plausible: Some((plausible.low, plausible.high)),
                    accuracy: None,
                },
            };
        }
    }
}

fn how_of(step: &Step) -> Option<&str> {
    match &step.kind {
        Kind::Measure { how, .. } | Kind::Observe { how, .. } => how.as_deref(),
        _ => None,
    }
}

fn ways(step: Option<&Step>, asks_own: bool) -> (Way, Way) {
    let way = |edge: &Option<Edge>| match edge {
        Some(_) => Way::GoesOn,
        None => Way::EndsUnproven,
    };
    match step.map(|step| &step.kind) {
        Some(Kind::Observe { unable, unsure, .. }) if asks_own => (way(unable), way(unsure)),
        Some(Kind::Measure { unable, .. } | Kind::Plate { unable, .. }) if asks_own => {
            (way(unable), Way::EndsUnproven)
        }
        // What is taken out of turn can be left out: the walk stands where it stood.
        _ => (Way::GoesOn, Way::GoesOn),
    }
}

fn again(state: &State, of: Datum, leaf: Datum) -> Option<Again> {
    if let Some(doubted) = state
        .moment
        .doubted
        .as_ref()
        .filter(|doubted| [of, leaf].contains(&doubted.datum))
    {
        let (typed, against) = (safe(&doubted.typed), safe(&doubted.against));
        return Some(match doubted.why {
            Doubt::Borderline => Again::Borderline {
                typed,
                bound: against,
            },
            Doubt::Implausible => Again::Implausible {
                typed,
                range: against,
            },
        });
    }
    let retaking = state.moment.retaking?;
    Some(match retaking.for_proof {
        true => Again::ForProof,
        false => Again::Retake,
    })
}

fn options(choices: &[crate::library::Choice], answers: Option<&Answers>) -> Vec<ShownOption> {
    let edge_of = |value: usize| match answers {
        Some(Answers::Choices(answers)) => answers
            .iter()
            .find(|answer| answer.value == value)
            .map(|a| &a.edge),
        _ => None,
    };
    (choices.iter().enumerate())
        .map(|(value, choice)| {
            let edge = edge_of(value);
            ShownOption {
                value,
                text: safe(&choice.text),
                known_by: Safe::default(),
                means: edge.and_then(|edge| edge.means.as_deref()).map(safe),
                finding: edge
                    .and_then(|edge| edge.finding.as_ref())
                    .map(|finding| finding.severity),
            }
        })
        .collect()
}

fn shown_bands(library: &Library, state: &State, answers: Option<&Answers>, scale: Scale) -> Vec<ShownBand> {
    let Some(Answers::Bands(bands)) = answers else {
        return Vec::new();
    };
    let mut shown: Vec<(f64, ShownBand)> = bands
        .iter()
        .map(|answer| shown_band(library, state, answer, scale))
        .collect();
    shown.sort_by(|(a, _), (b, _)| a.total_cmp(b));
    shown.into_iter().map(|(_, band)| band).collect()
}

fn shown_band(library: &Library, state: &State, answer: &BandAnswer, scale: Scale) -> (f64, ShownBand) {
    let fields = |field: &Id<PlateField>| state.field(*field);
    let name = |field: &Id<PlateField>| library.plate[*field].title.clone();
    let written = answer.band.display(scale, name).to_string();
    let interval = answer.band.interval(&fields).unwrap_or_else(Interval::everything);
    let (low, high) = (end(interval.low, scale), end(interval.high, scale));
    let symbolic = answer.band.bounds().any(|bound| bound.leans_on().is_some());
    let words = if symbolic {
        interval.words(scale)
    } else {
        written.clone()
    };
    let lowest = low.map_or(f64::NEG_INFINITY, |end| end.at.base());
    let band = ShownBand {
        words: safe(&words),
        written: symbolic.then(|| safe(&written)),
        low,
        high,
        means: answer.edge.means.as_deref().map(safe),
        finding: answer.edge.finding.as_ref().map(|finding| finding.severity),
    };
    (lowest, band)
}

fn end(end: crate::measure::End, scale: Scale) -> Option<BandEnd> {
    let (base, included) = match end {
        crate::measure::End::Closed(base) => (base, true),
        crate::measure::End::Open(base) => (base, false),
    };
    base.is_finite().then(|| BandEnd {
        at: Quantity::from_base(base, scale.dimension()),
        included,
    })
}

fn unproven(library: &Library, state: &State, fault: Id<Fault>) -> Question {
    let lacks = (proof::lines(library, state, fault).into_iter())
        .filter_map(|(line, holding)| {
            Some(Lack {
                words: safe(&line_words(library, line)),
                any_of: any_of(library, state, line),
                take: (proof::takeable(state, line).into_iter())
                    .map(|datum| (datum, safe(library.title_of(datum))))
                    .collect(),
                because: lack_kind(holding)?,
            })
        })
        .collect();
    Question::Unproven {
        fault: safe(&library.faults[fault].title),
        remedy: safe(&remedy_words(library, fault)),
        lacks,
    }
}

fn any_of(library: &Library, state: &State, line: &ProofLine) -> Vec<Vec<Claimed>> {
    if line.alternatives.len() < 2 {
        return Vec::new();
    }
    let claimed = |claim: &Claim| Claimed {
        words: safe(&claim_words(library, claim)),
        because: lack_kind(proof::claim_holds(state, claim)),
    };
    let alternatives = line.alternatives.iter();
    alternatives
        .map(|claims| claims.iter().map(claimed).collect())
        .collect()
}

fn lack_kind(holding: Holding) -> Option<LackKind> {
    match holding {
        Holding::Holds => None,
        Holding::Missing => Some(LackKind::NotTaken),
        Holding::Borderline => Some(LackKind::Borderline),
        Holding::Contradicted => Some(LackKind::Contradicted),
    }
}
