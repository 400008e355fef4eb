//! Setting a picture out on paper.
//!
//! A sheet is read like a page. [`blocks`] breaks every text into lines; [`ladder`] hangs the steps below and beside one
//! another; [`columns`] cuts what grew too long into pieces and stands them side by side; [`sheet`] finds the cut that suits
//! the smallest paper. All of it is linear in the steps, and the same for the same tree.

mod blocks;
mod columns;
mod ladder;
mod sheet;
mod style;

pub(super) use blocks::{Block, Branch, Line, Target, Tile, height, tiles};
pub(super) use columns::Spot;
pub(super) use ladder::{STEM_GAP, held, tap};
pub(super) use sheet::{MARGIN, Paper, Sheet, fit};
pub(super) use style::Style;

/// Width of a box, in units of the drawing.
pub(super) const BOX: f64 = 212.0;

/// Width of what lies between two boxes, where the answers stand.
pub(super) const CHANNEL: f64 = 138.0;

/// Width of a number at which a way goes on, and of the words with it.
pub(super) const TAG: f64 = 136.0;

/// How far below the top of a box the lines come in and go out at its sides.
pub(super) const TAP: f64 = 22.0;

/// The same of a number at which a way goes on.
pub(super) const TAG_TAP: f64 = 12.0;

/// From the left of a box to its text, and to the line that comes in above it and leaves it below.
pub(super) const PAD: f64 = 24.0;
pub(super) const STEM: f64 = 16.0;

/// From that line, and from the one beside a box, to the words on it.
pub(super) const STEM_WORDS: f64 = 12.0;
pub(super) const BUS_WORDS: f64 = 8.0;

/// From the top of a box to its first line of text, and from the last to its bottom.
pub(super) const INSET: f64 = 7.0;

/// From the text of a box to its right.
pub(super) const PAD_RIGHT: f64 = 12.0;

/// From the side of a box to the line that its answers hang on.
pub(super) const BUS: f64 = 9.0;

/// How far the sheets behind a box stand out from it.
pub(super) const BEHIND: f64 = 6.0;

/// Room above the first box of a piece, for the word that says where it comes from.
pub(super) const LEAD: f64 = 24.0;

/// From one piece to the next, beside and below.
pub(super) const BETWEEN: f64 = 36.0;
