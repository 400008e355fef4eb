//! Well-formed XML.
//!
//! All text comes as [`Safe`], in which no character is left that XML cannot hold.

use std::fmt::Write;

use super::super::layout::{Block, Line, Style};
use crate::source::Safe;

/// A document that is being written.
#[derive(Default)]
pub(super) struct Xml(String);

impl Xml {
    pub fn open(&mut self, name: &str, attributes: &[(&str, &str)]) {
        self.start(name, attributes);
        self.0.push_str(">\n");
    }

    pub fn close(&mut self, name: &str) {
        let _ = writeln!(self.0, "</{name}>");
    }

    /// An element with nothing but text in it.
    pub fn element(&mut self, name: &str, attributes: &[(&str, &str)], text: &Safe) {
        self.start(name, attributes);
        let _ = writeln!(self.0, ">{}</{name}>", escaped(text.as_str()));
    }

    /// The style sheet, which is ours and has nothing to escape.
    pub fn style(&mut self, rules: &str) {
        let _ = writeln!(self.0, "<style>\n{rules}</style>");
    }

    /// A path of some class.
    pub fn shape(&mut self, class: &str, path: &str) {
        self.start("path", &[("class", class), ("d", path)]);
        self.0.push_str("/>\n");
    }

    /// Lines of text below one another, from a top left corner.
    pub fn block(&mut self, lines: &[Line], x: f64, y: f64) {
        if lines.is_empty() {
            return;
        }
        self.0.push_str("<text>");
        let mut y = y;
        for line in lines {
            y += line.style.leading();
            // Descenders hang below the base line by about a quarter of the size.
            let base = y - line.style.letters().size * 0.28;
            let (class, text) = (line.style.class(), escaped(line.text.as_str()));
            let _ = write!(
                self.0,
                "<tspan class=\"{class}\" x=\"{x:.1}\" y=\"{base:.1}\">{text}</tspan>"
            );
            if let Some((style, text)) = &line.tail {
                let (class, text) = (style.class(), escaped(text.as_str()));
                let _ = write!(self.0, " <tspan class=\"{class}\" dx=\"3\">{text}</tspan>");
            }
            // What reads the text aloud must not run two lines together.
            self.0.push('\n');
        }
        self.0.push_str("</text>\n");
    }

    /// One line of text.
    pub fn line(&mut self, style: Style, text: &Safe, x: f64, y: f64) {
        let mut block = Block::default();
        block.add(style, text, f64::INFINITY);
        self.block(&block.0, x, y);
    }

    pub fn finish(self) -> String {
        self.0
    }

    fn start(&mut self, name: &str, attributes: &[(&str, &str)]) {
        let _ = write!(self.0, "<{name}");
        for (name, value) in attributes {
            let _ = write!(self.0, " {name}=\"{}\"", escaped(value));
        }
    }
}

fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            other => escaped.push(other),
        }
    }
    escaped
}
