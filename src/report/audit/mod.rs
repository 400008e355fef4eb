//! An audit as others read it: a page for the terminal, JSON, and a table for a spreadsheet.

mod csv;
mod text;

pub use csv::csv;
pub use text::text;

use crate::audit::Audit;

/// An audit as JSON.
pub fn json(audit: &Audit) -> String {
    // An audit holds texts, finite numbers and lists only, which all have a form in JSON.
    let mut text = serde_json::to_string_pretty(audit).unwrap_or_default();
    text.push('\n');
    text
}
