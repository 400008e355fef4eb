//! Bytes that should be UTF-8.

use super::fault::{Fault, unread};

/// Why they are not, and the text in front of the first that is wrong.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct NotText {
    message: String,
    before: String,
}

impl NotText {
    pub(super) fn of(self, file: &str) -> Fault {
        Fault::new(file, unread(self.message, "save the file as UTF-8")).after(self.before)
    }
}

/// The text, without the byte order mark that some editors put before UTF-8.
pub(super) fn decode(mut bytes: Vec<u8>) -> Result<String, NotText> {
    let mark = [0xef, 0xbb, 0xbf];
    let dropped = if bytes.starts_with(&mark) {
        bytes.drain(..mark.len());
        mark.len()
    } else {
        0
    };
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        let message = "this is UTF-16, by the byte order mark at its start".to_owned();
        let before = String::new();
        return Err(NotText { message, before });
    }
    String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        let message = format!("not UTF-8 from byte {} on", at + dropped);
        let before = String::from_utf8_lossy(&error.as_bytes()[..at]).into_owned();
        NotText { message, before }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn refused(bytes: &[u8], message: &str, before: &str) {
        let (message, before) = (message.to_owned(), before.to_owned());
        assert_eq!(decode(bytes.to_vec()), Err(NotText { message, before }));
    }

    #[test]
    fn a_mark_before_utf8_is_dropped() {
        assert_eq!(decode(b"\xef\xbb\xbfa: 1\n".to_vec()), Ok("a: 1\n".to_owned()));
    }

    #[test]
    fn utf16_is_named() {
        let message = "this is UTF-16, by the byte order mark at its start";
        refused(b"\xff\xfea\0", message, "");
        refused(b"\xfe\xff\0a", message, "");
    }

    #[test]
    fn the_first_wrong_byte_is_told_as_the_file_counts_it() {
        refused(b"a\n\xc2\xb0 \x9b", "not UTF-8 from byte 5 on", "a\n° ");
        refused(b"\xef\xbb\xbf\xff", "not UTF-8 from byte 3 on", "");
    }
}
