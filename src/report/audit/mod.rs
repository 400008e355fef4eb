//! An audit as a page: for a terminal, and as one HTML file with charts.
//!
//! `figures` works out what both show; a group too small says so in each. Nothing is ranked: groups stand in the order of
//! their names.

mod figures;
mod html;
mod text;

#[cfg(test)]
mod made;
#[cfg(test)]
mod tests;

pub use html::html;
pub use text::text;
