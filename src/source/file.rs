//! Source files and places in them.

use std::ops::Range;
use std::sync::Arc;

use super::layer::{self, Layer};

/// One file of a library: its name inside the library's folder, and its text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SourceFile {
    name: String,
    text: String,
    /// Byte offset at which each line starts.
    lines: Vec<u32>,
    layer: Layer,
    unread: Option<Unread>,
}

/// Why a file could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// What is wrong, without a full stop.
    pub message: String,
    /// How to mend it.
    pub help: String,
}

impl SourceFile {
    /// A file by its name inside the library (forward slashes) and its text.
    pub fn new(name: impl Into<String>, text: impl Into<String>) -> Self {
        let text = text.into();
        let starts = text.bytes().enumerate().filter(|&(_, byte)| byte == b'\n');
        let lines = std::iter::once(0)
            .chain(starts.map(|(at, _)| at as u32 + 1))
            .collect();
        Self {
            name: name.into(),
            text,
            lines,
            layer: Layer::default(),
            unread: None,
        }
    }

    /// A file that could not be read, with as much of its text as could: what is wrong stands at the end of that.
    pub fn unread(name: impl Into<String>, text: impl Into<String>, why: Unread) -> Self {
        Self {
            unread: Some(why),
            ..Self::new(name, text)
        }
    }

    /// The same file in another layer of the library.
    #[must_use]
    pub fn in_layer(self, layer: Layer) -> Self {
        Self { layer, ..self }
    }

    /// A file by what [`SourceFile::key`] gave. The folder that an overlay was in is not told by it.
    pub fn from_key(key: &str, text: impl Into<String>) -> Self {
        match layer::of_key(key) {
            Some((layer, name)) => Self::new(name, text).in_layer(layer),
            None => Self::new(key, text),
        }
    }

    /// The name inside the folder of its layer, with forward slashes.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The layer of the library that it belongs to.
    pub fn layer(&self) -> &Layer {
        &self.layer
    }

    /// What tells it from every other file of the library, wherever an overlay was read from.
    pub fn key(&self) -> String {
        self.layer.key(&self.name)
    }

    /// The name as messages show it: with the overlay's folder in front, where it is an overlay's.
    pub fn shown(&self) -> String {
        self.layer.shown(&self.name)
    }

    /// Why it could not be read; nothing where it was.
    pub fn why_unread(&self) -> Option<&Unread> {
        self.unread.as_ref()
    }

    /// The whole text.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Line and column (both from 1, columns in characters) of a byte offset.
    pub fn line_column(&self, offset: u32) -> (usize, usize) {
        let line = self.lines.partition_point(|&start| start <= offset) - 1;
        let start = self.lines[line] as usize;
        let end = (offset as usize).min(self.text.len());
        let column = self.text.get(start..end).map_or(0, |t| t.chars().count());
        (line + 1, column + 1)
    }

    /// Byte offset of a line and column (both from 1); the nearest one where there is no such place.
    pub fn offset(&self, line: usize, column: usize) -> u32 {
        let last = self.text.len() as u32;
        let Some(&start) = self.lines.get(line.saturating_sub(1)) else {
            return last;
        };
        let rest = &self.text[start as usize..];
        let within = rest.char_indices().nth(column.saturating_sub(1));
        within.map_or(last, |(at, _)| start + at as u32)
    }
}

/// Which file of a library.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub u32);

/// A stretch of bytes in one file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Span {
    /// The file.
    pub file: FileId,
    /// First byte.
    pub start: u32,
    /// One past the last byte.
    pub end: u32,
}

impl Span {
    /// The part of this span that `range`, counted from its start, covers.
    ///
    /// Used to point inside a scalar, for instance at one bound of a band.
    pub fn within(self, range: Range<usize>) -> Self {
        let at = |offset: usize| (self.start + offset as u32).min(self.end);
        Self {
            start: at(range.start),
            end: at(range.end),
            ..self
        }
    }
}

/// A span as a person reads it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// The file's name inside the library; for an overlay's, with its folder in front.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
}

/// All the files of one library: layer after layer, and in each in the order of their names. Shared, not copied, by whoever
/// has the library.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Files(Arc<[SourceFile]>);

impl Files {
    /// Sorts the files by layer and name, so that a library reads the same from every disk.
    pub fn new(mut files: Vec<SourceFile>) -> Self {
        files.sort_by(|a, b| (a.layer.number(), &a.name).cmp(&(b.layer.number(), &b.name)));
        Self(files.into())
    }

    /// The files, in their order.
    pub fn as_slice(&self) -> &[SourceFile] {
        &self.0
    }

    /// The same files and one more.
    #[must_use]
    pub fn with(self, file: SourceFile) -> Self {
        let mut files = self.0.to_vec();
        files.push(file);
        Self::new(files)
    }

    /// The files with their ids.
    pub fn iter(&self) -> impl Iterator<Item = (FileId, &SourceFile)> {
        (0..).map(FileId).zip(self.0.iter())
    }

    /// The file of an id that came from this list.
    pub fn get(&self, id: FileId) -> &SourceFile {
        &self.0[id.0 as usize]
    }

    /// The text that a span covers; empty where the span does not fit.
    pub fn excerpt(&self, span: Span) -> &str {
        let text = self.get(span.file).text();
        text.get(span.start as usize..span.end as usize)
            .unwrap_or_default()
    }

    /// Where a span begins.
    pub fn place(&self, span: Span) -> Place {
        let file = self.get(span.file);
        let (line, column) = file.line_column(span.start);
        Place {
            file: file.shown(),
            line,
            column,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_counts_lines_and_characters_from_one() {
        let files = Files::new(vec![SourceFile::new("a.yaml", "one\n°F two\n")]);
        let span = Span {
            file: FileId(0),
            start: 8,
            end: 11,
        };
        assert_eq!(files.excerpt(span), "two");
        assert_eq!(
            files.place(span),
            Place {
                file: "a.yaml".into(),
                line: 2,
                column: 4
            }
        );
    }

    #[test]
    fn a_place_past_the_end_is_still_a_place() {
        assert_eq!(SourceFile::new("a", "x").line_column(9), (1, 2));
    }
}
