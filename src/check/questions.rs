//! What the screen shows of a question before anything is typed, as far as its lines can be told from the library.

use std::collections::HashMap;

use crate::layout::{MARGIN, NUMBERED, Part, Parts, TAG_GAP, TYPED, answer, asked, column, letter, lines};
use crate::library::{
    Answers, BandAnswer, Choice, Edge, FieldKind, Id, Kind, Library, Obtained, PlateField, Step, Taking,
};
use crate::measure::{Quantity, Scale};
use crate::source::{Safe, safe};

/// What stands between two pieces that are not lined up.
const DOT: &str = " · ";

/// A question as it is shown.
pub(super) struct Shown {
    /// Rows of its parts, without those that go before an answer does.
    pub parts: Parts,
    /// How many answers it has.
    pub answers: usize,
}

/// What a step's question takes in a column so wide; none where there is nothing to choose from.
pub(super) fn shown(library: &Library, step: &Step, width: usize) -> Option<Shown> {
    let none = Taking::default();
    let (title, taking, how, answers, number) = match &step.kind {
        Kind::Measure {
            reading,
            answers,
            how,
            ..
        } => {
            let reading = &library.readings[*reading];
            if matches!(reading.source_of_value, Obtained::WorkedOut { .. }) {
                // Its readings are asked for in its place, and none of its bands is shown.
                return None;
            }
            (&reading.title, &reading.taking, how, answers, Some(reading.scale))
        }
        Kind::Observe {
            sign, answers, how, ..
        } => {
            let sign = &library.signs[*sign];
            (&sign.ask, &sign.taking, how, answers, None)
        }
        Kind::Plate { field, answers, .. } => {
            let field = &library.plate[*field];
            let scale = match field.kind {
                FieldKind::Number { scale, .. } => Some(scale),
                FieldKind::Choices(_) => None,
            };
            (&field.title, &none, &field.how, answers, scale)
        }
        _ => return None,
    };
    let rows = rows(library, step, answers, number);
    if rows.is_empty() {
        return None;
    }
    let room = width.saturating_sub(MARGIN);
    let minutes = step.minutes.or(taking.minutes);
    let question = asked(&[&safe(title)], minutes);
    let own = step.title.iter().map(|title| lines([&safe(title)], room));
    let cautions = cautions(library, step, taking);
    let cautions = cautions.iter().map(|caution| lines([caution], room));
    let head = own.chain([pieces(&question, room)]).chain(cautions).sum();
    let says_more = [&step.why, how, &taking.how]
        .into_iter()
        .flatten()
        .any(|text| !text.is_empty())
        || step.source.or(taking.source).is_some()
        || number.is_some_and(|_| has_written(answers) || has_meter(library, step));
    Some(Shown {
        parts: Parts {
            head,
            text: usize::from(says_more),
            gives_way: true,
            list: list(&rows, room),
            foot: match number {
                Some(_) => TYPED,
                // What is typed to choose from a long list.
                None => usize::from(rows.len() > NUMBERED),
            },
            ..Parts::default()
        },
        answers: rows.len(),
    })
}

/// An answer: what it says, and where it leads.
struct Row<'a> {
    words: Safe,
    edge: Option<&'a Edge>,
    is_band: bool,
}

impl Row<'_> {
    /// The letter or the number that it is called by.
    fn tag(&self, position: usize) -> String {
        if self.is_band {
            letter(position).to_string()
        } else {
            (position + 1).to_string()
        }
    }
}

fn rows<'a>(library: &Library, step: &Step, answers: &'a Answers, number: Option<Scale>) -> Vec<Row<'a>> {
    if let Some(scale) = number {
        let Answers::Bands(bands) = answers else {
            return Vec::new();
        };
        let row = |answer: &'a BandAnswer| Row {
            words: safe(&band_words(library, answer, scale)),
            edge: Some(&answer.edge),
            is_band: true,
        };
        return bands.iter().map(row).collect();
    }
    let values: &[Choice] = match &step.kind {
        Kind::Observe { sign, .. } => &library.signs[*sign].values,
        Kind::Plate { field, .. } => match &library.plate[*field].kind {
            FieldKind::Choices(values) => values,
            FieldKind::Number { .. } => &[],
        },
        _ => &[],
    };
    let edges: HashMap<usize, &Edge> = match answers {
        Answers::Choices(choices) => choices
            .iter()
            .map(|choice| (choice.value, &choice.edge))
            .collect(),
        Answers::Go(_) | Answers::Bands(_) => HashMap::new(),
    };
    let row = |(value, choice): (usize, &Choice)| Row {
        words: safe(&choice.text),
        edge: edges.get(&value).copied(),
        is_band: false,
    };
    values.iter().enumerate().map(row).collect()
}

/// A band with the largest plausible numbers of the plate in place of its fields.
fn band_words(library: &Library, answer: &BandAnswer, scale: Scale) -> String {
    let largest = |field: &Id<PlateField>| -> Option<Quantity> {
        match library.plate[*field].kind {
            FieldKind::Number { plausible, .. } => Some(plausible.high),
            FieldKind::Choices(_) => None,
        }
    };
    let interval = answer.band.interval(&largest).filter(|_| leans(answer));
    match interval {
        Some(interval) => interval.words(scale),
        None => answer
            .band
            .display(scale, |field| library.plate[*field].title.clone())
            .to_string(),
    }
}

fn leans(answer: &BandAnswer) -> bool {
    answer.band.bounds().any(|bound| bound.leans_on().is_some())
}

/// Whether a band stands in the long text once more, as its author wrote it.
fn has_written(answers: &Answers) -> bool {
    matches!(answers, Answers::Bands(bands) if bands.iter().any(leans))
}

/// Whether the long text says how exact the meter is.
fn has_meter(library: &Library, step: &Step) -> bool {
    let Kind::Measure { reading, .. } = step.kind else {
        return false;
    };
    let reading = &library.readings[reading];
    matches!(&reading.source_of_value, Obtained::Measured(accuracy) if !accuracy.words(reading.scale).is_empty())
}

/// Those of the step, then those of the reading or sign, each once.
fn cautions(library: &Library, step: &Step, taking: &Taking) -> Vec<Safe> {
    let mut texts = Vec::new();
    for caution in step.cautions.iter().chain(&taking.cautions) {
        let text = safe(&library.cautions[*caution].text);
        if !texts.contains(&text) {
            texts.push(text);
        }
    }
    texts
}

fn list(rows: &[Row<'_>], room: usize) -> usize {
    let means: Vec<Option<Safe>> = rows
        .iter()
        .map(|row| row.edge.and_then(|edge| edge.means.as_deref()).map(safe))
        .collect();
    let widths = rows
        .iter()
        .zip(&means)
        .map(|(row, means)| (row.words.width(), means.as_ref().map(Safe::width)));
    let column = column(widths, room);
    let line = |(number, (row, means)): (usize, (&Row<'_>, &Option<Safe>))| {
        let finding = row.edge.and_then(|edge| edge.finding.as_ref());
        let finding = finding.map(|finding| finding.severity.name());
        let line = answer(
            &row.words,
            row.words.width(),
            means.as_ref(),
            finding,
            (column, DOT),
        );
        pieces(&line, room.saturating_sub(row.tag(number).len() + TAG_GAP))
    };
    rows.iter().zip(&means).enumerate().map(line).sum()
}

fn pieces(line: &[(Safe, Part)], columns: usize) -> usize {
    lines(line.iter().map(|(piece, _)| piece), columns)
}
