//! The lines of a question: what they say, and how many they are.

use crate::source::{Safe, safe, wrap_ranges};

/// From this width on the margin has a column of its own.
pub const WIDE: usize = 46;
/// Columns of the margin: a word, the mark, and the gaps.
pub const MARGIN: usize = 10;
/// Columns of the word in the margin.
pub const LABEL: usize = 7;
/// Columns between the letter or number of an answer and its text.
pub const TAG_GAP: usize = 2;
/// The widest first column in which what answers mean is lined up.
const WIDEST: usize = 30;

/// What a piece of a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The question, or the answer itself.
    Words,
    /// Between two pieces.
    Gap,
    /// What the answer means.
    Means,
    /// What it puts on the job report.
    Finding,
    /// How long it takes.
    Minutes,
}

/// The question, and how long it takes.
pub fn asked(lines: &[&Safe], minutes: Option<f64>) -> Vec<(Safe, Part)> {
    let mut pieces = Vec::new();
    for line in lines {
        let gap = if pieces.is_empty() { "" } else { " " };
        pieces.push((safe(&format!("{gap}{line}")), Part::Words));
    }
    if let Some(minutes) = minutes {
        pieces.push((safe(&format!("  about {minutes} min")), Part::Minutes));
    }
    pieces
}

/// An answer of so many columns: what it says, what it means from `column` on, and the word for what it puts on the report.
///
/// Where nothing is lined up, `column` is 0, and `dot` stands between.
pub fn answer(
    words: &Safe,
    columns: usize,
    means: Option<&Safe>,
    finding: Option<&str>,
    (column, dot): (usize, &str),
) -> Vec<(Safe, Part)> {
    let mut pieces = vec![(words.clone(), Part::Words)];
    // Not lined up, a gap alone would be lost where the line breaks.
    let lined_up = column.saturating_sub(columns);
    let mut gap = if lined_up > 0 {
        " ".repeat(lined_up)
    } else {
        dot.to_owned()
    };
    let means = means.map(|means| (means.clone(), Part::Means));
    let finding = finding.map(|finding| (safe(finding), Part::Finding));
    for piece in means.into_iter().chain(finding) {
        pieces.push((safe(&gap), Part::Gap));
        pieces.push(piece);
        dot.clone_into(&mut gap);
    }
    pieces
}

/// From which column on what the answers mean is lined up; 0 where that would push it out of the room there is.
///
/// Each answer comes as the columns of what it says and of what it means.
pub fn column(answers: impl Iterator<Item = (usize, Option<usize>)> + Clone, room: usize) -> usize {
    let words = answers.clone().map(|(words, _)| words).max().unwrap_or(0);
    let means = answers.filter_map(|(_, means)| means).max().unwrap_or(0);
    let fits = words + TAG_GAP + means + TAG_GAP < room;
    if words <= WIDEST && fits {
        words + TAG_GAP
    } else {
        0
    }
}

/// The letter that a band is called by.
pub fn letter(band: usize) -> char {
    u8::try_from(band)
        .ok()
        .filter(|band| *band < 26)
        .map_or('*', |band| char::from(b'a' + band))
}

/// How many lines of at most `columns` the pieces take, one after the other.
pub fn lines<'a>(pieces: impl IntoIterator<Item = &'a Safe>, columns: usize) -> usize {
    let text: String = pieces.into_iter().map(Safe::as_str).collect();
    // No character takes more columns than bytes.
    if text.len() <= columns {
        return 1;
    }
    wrap_ranges(&text, columns).len()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(pieces: Vec<(Safe, Part)>) -> String {
        pieces.into_iter().map(|(piece, _)| String::from(piece)).collect()
    }

    #[test]
    fn an_answer_says_what_it_means_and_what_it_notes() {
        let (words, means) = (safe("below 1 V"), safe("no supply"));
        let line = |column, means| text(answer(&words, 9, means, Some("repair"), (column, " · ")));
        assert_eq!(line(0, Some(&means)), "below 1 V · no supply · repair");
        assert_eq!(line(12, Some(&means)), "below 1 V   no supply · repair");
        assert_eq!(line(12, None), "below 1 V   repair");
        assert_eq!(text(answer(&words, 9, None, None, (12, " · "))), "below 1 V");
    }

    #[test]
    fn what_answers_mean_is_lined_up_where_there_is_room() {
        let answers = [(9, Some(20)), (12, None)];
        assert_eq!(column(answers.into_iter(), 41), 14);
        assert_eq!(column(answers.into_iter(), 36), 0);
        assert_eq!(column([(31, None)].into_iter(), 41), 0);
    }
}
