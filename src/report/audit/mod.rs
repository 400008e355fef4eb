//! An audit as others read it: a page for a terminal, one for a browser, JSON, and a table for a spreadsheet.
//!
//! `figures` works out what both pages show; a group too small says so in each. Nothing is ranked: groups stand in the order
//! of their names.

mod change;
mod csv;
mod figures;
mod html;
mod spelled;
mod text;
mod weights;

#[cfg(test)]
mod held_against;
#[cfg(test)]
mod made;
#[cfg(test)]
mod tests;

pub use csv::csv;
pub use html::html;
pub use text::text;
pub use weights::weights;

use std::io::{self, Write};

use crate::audit::Audit;

/// An audit as JSON.
pub fn json(audit: &Audit) -> String {
    let mut text = Vec::new();
    // An audit holds texts, finite numbers and lists only, which all have a form in JSON.
    let _ = write_json(audit, &mut text);
    String::from_utf8(text).unwrap_or_default()
}

/// The same, written bit by bit: it names every session of every finding, so it grows with the archive.
///
/// # Errors
///
/// Where it cannot be written.
pub fn write_json(audit: &Audit, out: impl io::Write) -> io::Result<()> {
    let mut out = spelled::SpelledOut::new(out);
    serde_json::to_writer_pretty(&mut out, audit)?;
    out.write_all(b"\n")
}
