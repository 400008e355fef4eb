//! An audit as others read it: a page for a terminal, one for a browser, JSON, and a table for a spreadsheet.
//!
//! `figures` works out what both pages show; a group too small says so in each. Nothing is ranked: groups stand in the order
//! of their names.

mod change;
mod csv;
mod figures;
mod html;
mod text;
mod weights;

#[cfg(test)]
mod made;
#[cfg(test)]
mod tests;

pub use csv::csv;
pub use html::html;
pub use text::text;
pub use weights::weights;

use crate::audit::Audit;
use crate::source::is_unsafe;

/// An audit as JSON.
pub fn json(audit: &Audit) -> String {
    // An audit holds texts, finite numbers and lists only, which all have a form in JSON.
    let text = serde_json::to_string_pretty(audit).unwrap_or_default();
    let mut page = String::with_capacity(text.len() + 1);
    for character in text.chars() {
        match is_unsafe(character) && character != '\n' {
            // What turns or hides text stands in strings only, where it may be spelled out.
            true => {
                let mut units = [0; 2];
                for unit in character.encode_utf16(&mut units) {
                    page.push_str(&format!("\\u{unit:04x}"));
                }
            }
            false => page.push(character),
        }
    }
    page.push('\n');
    page
}
