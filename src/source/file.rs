//! Source files and places in them.

use std::ops::Range;
use std::sync::Arc;

/// One file of a library: its name inside the library's folder, and its text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SourceFile {
    name: String,
    text: String,
    /// Byte offset at which each line starts.
    lines: Vec<u32>,
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
        }
    }

    /// The name inside the library's folder, with forward slashes.
    pub fn name(&self) -> &str {
        &self.name
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
    /// The file's name inside the library.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
}

/// All the files of one library, in the order of their names; shared, not copied, by whoever has the library.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Files(Arc<[SourceFile]>);

impl Files {
    /// Sorts the files by name, so that a library reads the same from every disk.
    pub fn new(mut files: Vec<SourceFile>) -> Self {
        files.sort_by(|a, b| a.name.cmp(&b.name));
        Self(files.into())
    }

    /// The files, in the order of their names.
    pub fn as_slice(&self) -> &[SourceFile] {
        &self.0
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
            file: file.name().to_owned(),
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
