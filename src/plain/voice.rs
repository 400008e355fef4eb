//! Lines out.

use std::io::{self, Write};

use crate::source::{Safe, ascii, safe, wrap};

/// Columns that a continued line is indented by.
const INDENT: usize = 4;

/// How the line face speaks and listens.
#[derive(Clone, Copy)]
pub struct Options<'a> {
    /// Columns of a line.
    pub width: usize,
    /// Whether more than ASCII can be shown.
    pub unicode: bool,
    /// Whether what is read is to be written out, as the terminal does while it is typed; for pipes.
    pub echo: bool,
    /// Whether a line is waiting that came before the question was shown; none where that is as it should be, as from a
    /// pipe. See [`typed_ahead`](super::typed_ahead).
    pub early: Option<&'a dyn Fn() -> bool>,
}

impl Default for Options<'_> {
    fn default() -> Self {
        Self {
            width: 78,
            unicode: true,
            echo: false,
            early: None,
        }
    }
}

/// Writes lines that fit.
pub struct Voice<'a, W> {
    output: W,
    options: Options<'a>,
}

impl<'a, W: Write> Voice<'a, W> {
    /// Speaks to `output`.
    pub fn new(output: W, options: Options<'a>) -> Self {
        Self { output, options }
    }

    /// How it speaks.
    pub fn options(&self) -> Options<'a> {
        self.options
    }

    /// An empty line.
    pub fn blank(&mut self) -> io::Result<()> {
        self.output.write_all(b"\n")
    }

    /// A text, broken where it must be.
    pub fn say(&mut self, text: &str) -> io::Result<()> {
        self.write("", &safe(text))
    }

    /// A text after a word that says what it is: `Caution: the burner box is hot.`
    pub fn label(&mut self, label: &str, text: &Safe) -> io::Result<()> {
        self.write(&format!("{label}: "), text)
    }

    /// The next line of a labelled text, indented as a broken one.
    pub fn goes_on(&mut self, text: &Safe) -> io::Result<()> {
        let width = self.options.width.max(2 * INDENT);
        for line in wrap(&self.shown(text), width - INDENT) {
            writeln!(self.output, "    {line}")?;
        }
        Ok(())
    }

    /// One of a list, by its number.
    pub fn item(&mut self, number: usize, text: &Safe) -> io::Result<()> {
        self.write(&format!("{number:>3}  "), text)
    }

    /// Asks for a line; what is typed follows on the same line.
    pub fn prompt(&mut self, words: &str) -> io::Result<()> {
        write!(self.output, "{} ", self.shown(&safe(words)))?;
        self.output.flush()
    }

    /// Writes out what was read.
    pub fn echo(&mut self, text: &str) -> io::Result<()> {
        if !self.options.echo {
            return Ok(());
        }
        writeln!(self.output, "{}", self.shown(&safe(text)))
    }

    /// Sees that all of it is out.
    pub fn flush(&mut self) -> io::Result<()> {
        self.output.flush()
    }

    fn write(&mut self, first: &str, text: &Safe) -> io::Result<()> {
        let all = self.shown(&safe(&format!("{first}{text}")));
        let width = self.options.width.max(2 * INDENT);
        // All lines are made as narrow as the continued ones, so that one look at the text breaks them all.
        for (number, line) in wrap(&all, width - INDENT).iter().enumerate() {
            let indent = if number == 0 { "" } else { "    " };
            writeln!(self.output, "{indent}{line}")?;
        }
        Ok(())
    }

    fn shown(&self, text: &Safe) -> Safe {
        if self.options.unicode {
            text.clone()
        } else {
            ascii(text)
        }
    }
}
