//! SHA-256 sums, as session files chain them.

use std::fmt;
use std::str::FromStr;

use sha2::{Digest, Sha256};

use crate::source::SourceFile;

/// A SHA-256 sum (FIPS 180-4), written as 64 lowercase hexadecimal digits.
#[derive(Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Hash([u8; 32]);

impl Hash {
    /// What the first record of a session names as the one before it.
    pub const ZERO: Self = Self([0; 32]);

    /// A sum that was worked out piece by piece.
    pub(super) fn from_digest(digest: [u8; 32]) -> Self {
        Self(digest)
    }

    /// Whether a text is this sum, as it is written: sooner told than by reading the text.
    pub fn is_written_as(&self, text: &str) -> bool {
        const_hex::Buffer::<32>::new().format(&self.0) == text
    }

    /// The sum of exactly these bytes.
    ///
    /// ```
    /// use proofwalk::store::Hash;
    /// // FIPS 180-2, appendix B.1: the one-block message "abc".
    /// let sum = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    /// assert_eq!(Hash::of(b"abc").to_string(), sum);
    /// ```
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }
}

impl fmt::Display for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(const_hex::Buffer::<32>::new().format(&self.0))
    }
}

impl fmt::Debug for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Hash({self})")
    }
}

/// The text is not 64 lowercase hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotAHash;

impl fmt::Display for NotAHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a SHA-256 sum is 64 digits from 0-9 and a-f, in lower case")
    }
}

impl std::error::Error for NotAHash {}

impl FromStr for Hash {
    type Err = NotAHash;

    /// Reads what `Display` writes. Upper case is refused, so that one sum has one spelling.
    fn from_str(text: &str) -> Result<Self, NotAHash> {
        let (pairs, rest) = text.as_bytes().as_chunks::<2>();
        if pairs.len() != 32 || !rest.is_empty() {
            return Err(NotAHash);
        }
        let mut sum = [0; 32];
        for (byte, &[high, low]) in sum.iter_mut().zip(pairs) {
            *byte = digit(high)? << 4 | digit(low)?;
        }
        Ok(Self(sum))
    }
}

fn digit(character: u8) -> Result<u8, NotAHash> {
    match character {
        b'0'..=b'9' => Ok(character - b'0'),
        b'a'..=b'f' => Ok(character - b'a' + 10),
        _ => Err(NotAHash),
    }
}

/// The sum that stands for a whole library, whatever order its files came in.
///
/// It is the SHA-256 of, for each file in the byte order of the names: the length of the name in bytes as eight bytes,
/// most significant first; the name; the length of the text in the same form; the text. With the lengths in front, no
/// text can be moved into a name, or into the next file, without changing the sum. The name is the file's
/// [key](SourceFile::key), so an overlay has the same sum from whatever folder it was read.
pub fn library_hash(files: &[SourceFile]) -> Hash {
    let mut sorted: Vec<(String, &str)> = files.iter().map(|file| (file.key(), file.text())).collect();
    sorted.sort();
    let mut sum = Sha256::new();
    for part in sorted.iter().flat_map(|(name, text)| [name.as_str(), *text]) {
        sum.update((part.len() as u64).to_be_bytes());
        sum.update(part);
    }
    Hash(sum.finalize().into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sum_is_read_as_it_is_written() {
        let sum = Hash::of(b"");
        assert_eq!(sum.to_string().parse(), Ok(sum));
        assert!(sum.is_written_as(&sum.to_string()));
    }

    #[test]
    fn what_is_no_sum_is_refused() {
        let upper = Hash::of(b"").to_string().to_uppercase();
        for text in [
            "",
            "e3b0",
            &"0".repeat(63),
            &"0".repeat(65),
            &"g".repeat(64),
            &upper,
        ] {
            assert_eq!(text.parse::<Hash>(), Err(NotAHash), "{text}");
            assert!(!Hash::of(b"").is_written_as(text), "{text}");
        }
    }

    #[test]
    fn a_library_hash_is_the_sum_of_lengths_names_and_texts_in_name_order() {
        let bytes = b"\0\0\0\0\0\0\0\x01a\0\0\0\0\0\0\0\x02xy\0\0\0\0\0\0\0\x01b\0\0\0\0\0\0\0\0";
        let (a, b) = (SourceFile::new("a", "xy"), SourceFile::new("b", ""));
        assert_eq!(library_hash(&[a.clone(), b.clone()]), Hash::of(bytes));
        assert_eq!(library_hash(&[b, a]), Hash::of(bytes));
    }

    #[test]
    fn text_cannot_move_between_name_text_and_next_file() {
        let sums = [
            library_hash(&[SourceFile::new("ab", "c")]),
            library_hash(&[SourceFile::new("a", "bc")]),
            library_hash(&[SourceFile::new("a", "b"), SourceFile::new("c", "")]),
        ];
        assert!(sums[0] != sums[1] && sums[1] != sums[2] && sums[0] != sums[2]);
    }
}
