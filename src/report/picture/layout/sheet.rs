//! The cut that suits the smallest paper.

use super::Tile;
use super::columns::{Columns, Spot, stand};
use super::ladder::{Ladder, hang};

/// Margins of a drawing, in its units.
pub(in super::super) const MARGIN: f64 = 24.0;

/// Narrowest sheet: the head and the legend need as much.
const NARROWEST: f64 = 720.0;

/// Millimetres a unit: below the first, text is too small to read on paper; above the second, it is larger than it need be.
const READABLE: f64 = 0.21;
const LARGEST: f64 = 0.3;

/// How often the longest piece is shortened in search of a sheet that fits.
const TRIES: usize = 40;

/// By how much, each time.
const SHORTER: f64 = 0.95;

/// What is left of a sheet's worth with each piece that it is cut into.
const PIECE: f64 = 0.85;

/// A drawing that is not longer is not cut any more.
const SHORTEST: f64 = 300.0;

/// A size of paper on both sides of the ocean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in super::super) struct Paper {
    /// What it is called.
    pub name: &'static str,
    /// What both of a pair print on, short and long side, in millimetres.
    short: f64,
    long: f64,
}

/// From the smallest. ISO 216 and ANSI/ASME Y14.1 give the sizes, from memory; the smaller side of each pair counts, less
/// 6 mm on every side, where an office printer does not print.
const PAPERS: [Paper; 5] = [
    paper("Letter or A4", 210.0, 279.0),
    paper("Tabloid or A3", 279.0, 420.0),
    paper("ANSI C or A2", 420.0, 559.0),
    paper("ANSI D or A1", 559.0, 841.0),
    paper("ANSI E or A0", 841.0, 1118.0),
];

const fn paper(name: &'static str, short: f64, long: f64) -> Paper {
    Paper {
        name,
        short: short - 12.0,
        long: long - 12.0,
    }
}

/// Everything in its place.
pub(in super::super) struct Sheet {
    /// The top left corner of each step's box, from the drawing's own.
    pub spots: Vec<Spot>,
    pub ladder: Ladder,
    /// Of the whole sheet, in units.
    pub width: f64,
    pub height: f64,
    /// Of the drawing alone.
    pub drawing_height: f64,
    /// The smallest paper on which it can be read; none where it is larger than all.
    pub paper: Option<Paper>,
    /// Millimetres a unit.
    pub scale: f64,
}

/// Sets tiles out so that they fit the smallest paper on which they can be read, in as few pieces as that allows.
///
/// `frame` is the height of all else on a sheet of a given width: head, legend and foot.
pub(in super::super) fn fit(
    tiles: &[Tile],
    parents: &[Option<usize>],
    below: &[Option<usize>],
    frame: &dyn Fn(f64) -> f64,
) -> Sheet {
    let mut longest = f64::INFINITY;
    let mut next = || {
        let ladder = hang(tiles, parents, below, longest);
        let columns = stand(tiles, &ladder, longest);
        longest = SHORTER * columns.height.min(longest);
        Candidate::new(ladder, columns, frame)
    };
    let mut best = next();
    for _ in 1..TRIES {
        let candidate = next();
        let is_last = candidate.columns.height < SHORTEST;
        if candidate.is_better(&best) {
            best = candidate;
        }
        if is_last {
            break;
        }
    }
    best.sheet()
}

struct Candidate {
    ladder: Ladder,
    columns: Columns,
    width: f64,
    height: f64,
    /// The position of the smallest paper on which it can be read, or past the last.
    paper: usize,
    /// Millimetres a unit on that paper, or on the largest.
    scale: f64,
}

impl Candidate {
    fn new(ladder: Ladder, columns: Columns, frame: &dyn Fn(f64) -> f64) -> Self {
        let width = columns.width.max(NARROWEST) + 2.0 * MARGIN;
        let height = columns.height + frame(width - 2.0 * MARGIN) + 2.0 * MARGIN;
        let scale = |paper: &Paper| {
            let upright = (paper.short / width).min(paper.long / height);
            let across = (paper.long / width).min(paper.short / height);
            upright.max(across)
        };
        let fits = PAPERS.iter().position(|paper| scale(paper) >= READABLE);
        let paper = fits.unwrap_or(PAPERS.len());
        let largest = &PAPERS[PAPERS.len() - 1];
        Self {
            ladder,
            columns,
            width,
            height,
            paper,
            scale: scale(PAPERS.get(paper).unwrap_or(largest)).min(LARGEST),
        }
    }

    /// Smaller paper is better, then larger letters, if they are not dearly bought with pieces.
    fn is_better(&self, other: &Self) -> bool {
        let worth = |candidate: &Self| candidate.scale * PIECE.powi(candidate.columns.pieces as i32);
        match self.paper == other.paper {
            true => worth(self) > worth(other),
            false => self.paper < other.paper,
        }
    }

    fn sheet(self) -> Sheet {
        Sheet {
            spots: self.columns.spots,
            ladder: self.ladder,
            width: self.width,
            height: self.height,
            drawing_height: self.columns.height,
            paper: PAPERS.get(self.paper).copied(),
            // What no paper holds is printed from a roll: its letters are not made smaller for that.
            scale: self.scale.max(READABLE),
        }
    }
}
