//! Events to text and back.
//!
//! The first line of a session says which format it is in; older formats are lifted to today's events here when they are
//! read. There is only one so far.

use super::event::Event;

/// An event as the session log holds it.
///
/// # Errors
///
/// Where a number in it is not finite, which no event of [`super::decide()`] has.
pub fn encode(event: &Event) -> Result<String, serde_json::Error> {
    serde_json::to_string(event)
}

/// An event from the session log.
///
/// # Errors
///
/// Where the text is no event of this format.
pub fn decode(text: &str) -> Result<Event, serde_json::Error> {
    serde_json::from_str(text)
}
