//! A value and the bytes it was written in.

use serde::{Deserialize, Deserializer};
use serde_yaml::Spanned;

use crate::source::{FileId, Span};

/// A value with its place in the file that is being read.
#[derive(Clone, Debug)]
pub(in crate::library) struct At<T> {
    pub value: T,
    start: u32,
    end: u32,
}

impl<T> At<T> {
    /// Where it stands, once it is known which file this is.
    pub fn span(&self, file: FileId) -> Span {
        Span {
            file,
            start: self.start,
            end: self.end,
        }
    }

    /// Another value in the same place.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> At<U> {
        At {
            value: change(self.value),
            start: self.start,
            end: self.end,
        }
    }
}

impl<T> From<Spanned<T>> for At<T> {
    fn from(spanned: Spanned<T>) -> Self {
        let span = spanned.referenced.span();
        // Byte positions are there whenever the text was read from memory, as ours always is.
        let start = span.byte_offset().unwrap_or_default() as u32;
        let length = span.byte_len().unwrap_or_default() as u32;
        Self {
            value: spanned.value,
            start,
            end: start + length,
        }
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for At<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Spanned::deserialize(deserializer).map(Self::from)
    }
}
