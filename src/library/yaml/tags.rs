//! Tags: YAML's way to say what a value is. Every value has one meaning here, so none is taken.

use serde_yaml::granit_parser::{Event, Parser};

/// Where the first tag of a text stands, in bytes.
///
/// The reader takes the standard tags, so they are looked for before it reads. A text that cannot be scanned to its end
/// is left to the reader, which says why.
pub(super) fn first(text: &str) -> Option<usize> {
    if !may_hold_one(text) {
        return None;
    }
    for event in Parser::new_from_str(text) {
        let (event, span) = event.ok()?;
        let tagged = match event {
            Event::Scalar(_, _, _, tag)
            | Event::SequenceStart(_, _, tag)
            | Event::MappingStart(_, _, tag) => tag.is_some(),
            _ => false,
        };
        if tagged {
            let content = span.byte_range()?.start;
            return Some(before(text, content));
        }
    }
    None
}

/// Whether a `!` stands where a tag could begin: scanning takes a third of the time that reading does, and nearly every
/// `!` only ends a sentence.
fn may_hold_one(text: &str) -> bool {
    let mut marks = text.match_indices('!');
    marks.any(|(at, _)| {
        let before = text[..at].bytes().next_back();
        before
            .is_none_or(|byte| !byte.is_ascii() || byte.is_ascii_whitespace() || b"[]{},:?-!".contains(&byte))
    })
}

/// A node's place is its content's; its tag stands in front of that.
fn before(text: &str, content: usize) -> usize {
    let front = text.get(..content).unwrap_or_default();
    let up_to_tag = front.rfind('!').map_or(front, |at| &front[..=at]);
    up_to_tag.trim_end_matches('!').len()
}
