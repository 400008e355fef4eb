//! How much of a question a screen holds: what the screen is laid out by, and what the checker warns by.
//!
//! - [`Panes`]: what of a terminal is left for the question.
//! - [`asked`], [`answer`], [`lines`]: what its lines say, and how many they are.
//! - [`Parts`]: who gets the rows where they do not suffice.

mod line;
mod panes;
mod share;

pub use line::{LABEL, MARGIN, Part, TAG_GAP, WIDE, answer, asked, column, letter, lines};
pub use panes::{Panes, TWO_COLUMNS, USUAL};
pub use share::{NUMBERED, PAGE, Parts, Shares, TYPED};
