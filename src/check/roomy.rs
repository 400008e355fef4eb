//! How many lines a question takes at most, told from the lengths of its texts alone.
//!
//! Nearly every question fits a screen with room to spare. To lay each out takes longer than all that is to be known of it.

use crate::layout::{MARGIN, Panes, TAG_GAP, TYPED};
use crate::library::{
    Answers, BandAnswer, Caution, Choice, Edge, FieldKind, Id, Kind, Library, Step, Taking,
};

/// Bytes of what stands between an answer and what it means, where nothing is lined up.
const GAP: usize = " · ".len();
/// Bytes of one bound of a band in words, with its relation and unit, and of how long a question takes: no number is shown
/// with more than sixteen characters, and none of these minutes with more than twenty-four.
const BOUND: usize = 44;
const MINUTES: usize = 40;
/// So many answers have tags of one character.
const SHORT_TAGS: usize = 9;

/// Whether a step's question fits a screen so divided, whatever its lines come to; where it may not, it must be laid out.
pub(super) fn surely_fits(library: &Library, step: &Step, panes: Panes) -> bool {
    let room = panes.width.saturating_sub(MARGIN);
    most_rows(library, step, room).is_some_and(|rows| rows <= panes.height)
}

/// The rows of a question with all its answers, or more; none where its texts are not plain.
fn most_rows(library: &Library, step: &Step, room: usize) -> Option<usize> {
    let (title, taking, answers, values): (&str, Option<&Taking>, &Answers, Option<&[Choice]>) =
        match &step.kind {
            Kind::Measure { reading, answers, .. } => {
                let reading = &library.readings[*reading];
                (&reading.title, Some(&reading.taking), answers, None)
            }
            Kind::Observe { sign, answers, .. } => {
                let sign = &library.signs[*sign];
                (&sign.ask, Some(&sign.taking), answers, Some(&sign.values))
            }
            Kind::Plate { field, answers, .. } => {
                let field = &library.plate[*field];
                let values = match &field.kind {
                    FieldKind::Choices(values) => Some(values.as_slice()),
                    FieldKind::Number { .. } => None,
                };
                (&field.title, None, answers, values)
            }
            _ => return Some(0),
        };
    let minutes = match step.minutes.or(taking.and_then(|taking| taking.minutes)) {
        None => 0,
        Some(minutes) if (1e-3..1e6).contains(&minutes) => MINUTES,
        Some(_) => return None,
    };
    let mut head = most_lines(columns(title)? + minutes, room);
    if let Some(title) = &step.title {
        head += most_lines(columns(title)?, room);
    }
    let of_taking: &[Id<Caution>] = taking.map_or(&[], |taking| &taking.cautions);
    for caution in step.cautions.iter().chain(of_taking) {
        head += most_lines(columns(&library.cautions[*caution].text)?, room);
    }
    let (count, widest) = match (values, answers) {
        (Some(values), _) => (values.len(), widest(values, |value| columns(&value.text))?),
        (None, Answers::Bands(bands)) => (bands.len(), widest(bands, |band| band_columns(library, band))?),
        (None, _) => return Some(0),
    };
    if count > SHORT_TAGS {
        return None;
    }
    let line = widest + meaning(answers)?;
    let list = count * most_lines(line, room.saturating_sub(1 + TAG_GAP));
    // A hint of the long text takes a row.
    Some(head + 1 + list + if values.is_none() { TYPED } else { 0 })
}

/// The most that any answer has behind its words.
fn meaning(answers: &Answers) -> Option<usize> {
    let mut most = 0;
    for edge in answers.edges() {
        let Edge { means, finding, .. } = edge;
        let means = means
            .as_ref()
            .map_or(Some(0), |means| Some(GAP + columns(means)?))?;
        let finding = finding
            .as_ref()
            .map_or(0, |finding| GAP + finding.severity.name().len());
        most = most.max(means + finding);
    }
    Some(most)
}

/// Bytes of a band in words, or more; none where it leans on what is no number.
fn band_columns(library: &Library, answer: &BandAnswer) -> Option<usize> {
    let fields = answer.band.bounds().filter_map(|bound| bound.leans_on());
    let are_numbers = fields
        .map(|field| &library.plate[*field].kind)
        .all(|kind| matches!(kind, FieldKind::Number { .. }));
    are_numbers.then(|| answer.band.conditions.len() * BOUND)
}

fn widest<T>(all: &[T], columns: impl Fn(&T) -> Option<usize>) -> Option<usize> {
    all.iter()
        .try_fold(0, |widest, one| Some(columns(one)?.max(widest)))
}

/// The columns of a text in which each byte takes one; none of another.
fn columns(text: &str) -> Option<usize> {
    let plain = |byte| matches!(byte, b' '..=b'~');
    // Without a way out in the middle, this takes many bytes at a time.
    text.bytes()
        .fold(true, |all, byte| all & plain(byte))
        .then_some(text.len())
}

/// The most lines of so many columns that a text takes: two lines, one after the other, are always more than one holds.
fn most_lines(length: usize, columns: usize) -> usize {
    if length <= columns {
        return 1;
    }
    2 * (length / (columns + 1)) + 1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::check::questions::shown;
    use crate::library::load;
    use crate::source::{Files, SourceFile, wrap_ranges};

    #[test]
    fn no_question_of_the_built_in_library_takes_more_rows_than_are_counted() {
        let trees = concat!(env!("CARGO_MANIFEST_DIR"), "/trees");
        let files = walkdir::WalkDir::new(trees).into_iter().map(Result::unwrap);
        let files = files.filter(|file| file.path().extension().is_some_and(|ending| ending == "yaml"));
        let files = files.map(|file| {
            let name = file.path().strip_prefix(trees).unwrap().to_str().unwrap();
            SourceFile::new(name, std::fs::read_to_string(file.path()).unwrap())
        });
        let (library, problems) = load(Files::new(files.collect::<Vec<_>>()));
        assert_eq!(problems, []);
        let mut counted = 0;
        for step in &library.steps {
            for columns in [30, 51, 68, 78] {
                let Some(shown) = shown(&library, step, columns) else {
                    continue;
                };
                if let Some(rows) = most_rows(&library, step, columns - MARGIN) {
                    counted += 1;
                    assert!(shown.parts.least() <= rows, "{} in {columns}", step.name);
                    assert!(shown.parts.fits(rows));
                }
            }
        }
        assert!(counted > 100);
    }

    #[test]
    fn no_text_takes_more_lines_than_its_length_lets_it() {
        for word in 1..14 {
            for length in 0..60 {
                let text: String = (0..length)
                    .map(|at| if at % (word + 1) == word { ' ' } else { 'x' })
                    .collect();
                for columns in 1..14 {
                    let lines = wrap_ranges(&text, columns).len();
                    assert!(lines <= most_lines(length, columns), "{text:?} in {columns}");
                }
            }
        }
    }

    #[test]
    fn a_bound_in_words_is_no_longer_than_is_counted_for_it() {
        use crate::measure::{Quantity, Relation, Scale, Unit};
        for unit in Unit::all() {
            let scale = Scale::of(unit);
            for number in [
                -123_456.789_012,
                -999_999_999_999.4,
                -1.234_567e-6,
                -1.234_567e-300,
                -1.234_567e300,
            ] {
                let shown = Quantity::new(number, scale).display(scale).to_string();
                let words = format!(", {} {shown}", Relation::AtLeast.words());
                assert!(words.len() <= BOUND, "{words}");
            }
        }
    }
}
