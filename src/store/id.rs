//! The name of a session.

use std::fmt;

use jiff::Timestamp;

use super::StoreError;

/// Longest session id that is read, in characters.
const LONGEST: usize = 64;

/// The name of one session, safe to use in a file name and in a command.
///
/// 1 to 64 of `a-z`, `0-9` and `-`, the first no hyphen: so it can be no path, no option and no hidden file. Ids made
/// here are UUIDs of version 7 (RFC 9562), which sort by the time they were made.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SessionId(String);

impl SessionId {
    /// A new id from the time now and ten random bytes; a time before 1970 counts as 1970.
    ///
    /// ```
    /// use proofwalk::store::SessionId;
    /// // The example of RFC 9562, appendix A.6: 22 February 2022, 14:22:22 at five hours behind UTC.
    /// let time = "2022-02-22T14:22:22-05:00".parse()?;
    /// let random = [0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f];
    /// let id = SessionId::new(time, random);
    /// assert_eq!(id.as_str(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    /// # Ok::<(), jiff::Error>(())
    /// ```
    pub fn new(time: Timestamp, random: [u8; 10]) -> Self {
        let milliseconds = u64::try_from(time.as_millisecond()).unwrap_or(0);
        let id = uuid::Builder::from_unix_timestamp_millis(milliseconds, &random).into_uuid();
        Self(id.to_string())
    }

    /// Reads an id that somebody typed, or that a file is named by.
    ///
    /// # Errors
    ///
    /// [`StoreError::NotASessionId`] where the text is none.
    pub fn parse(text: &str) -> Result<Self, StoreError> {
        let allowed = |byte: u8| matches!(byte, b'a'..=b'z' | b'0'..=b'9' | b'-');
        let fits = text.len() <= LONGEST && text.bytes().all(allowed);
        if text.is_empty() || text.starts_with('-') || !fits {
            return Err(StoreError::NotASessionId {
                text: text.to_owned(),
            });
        }
        Ok(Self(text.to_owned()))
    }

    /// The id that is this UUID.
    pub(super) fn of(uuid: uuid::Uuid) -> Self {
        Self(uuid.to_string())
    }

    /// The id as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for SessionId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_sort_by_the_time_they_were_made() {
        let at = |second| SessionId::new(Timestamp::from_second(second).unwrap(), [0xff; 10]);
        assert!(at(1_000) < at(1_001));
        assert_eq!(at(-5), at(0));
    }

    #[test]
    fn an_id_that_could_be_a_path_or_an_option_is_refused() {
        let long = "a".repeat(65);
        for text in [
            "", ".", "..", "../x", "a/b", "-rf", "A", "a b", "a\n", "a\0", "%00", "ä", &long,
        ] {
            assert!(SessionId::parse(text).is_err(), "{text:?}");
        }
    }

    #[test]
    fn other_plain_names_are_taken() {
        for text in ["0", "job-17", &"a".repeat(64)] {
            assert_eq!(SessionId::parse(text).unwrap().as_str(), text);
        }
    }

    #[test]
    fn the_error_shows_the_text_safely_and_not_at_length() {
        let shown = |text: &str| SessionId::parse(text).unwrap_err().to_string();
        assert_eq!(
            shown("\u{1b}[2J"),
            "`^[[2J` is no session id; an id is 1 to 64 of a-z, 0-9 and hyphens, and does not begin with a hyphen"
        );
        assert!(shown(&"x".repeat(1 << 20)).len() < 200);
    }
}
