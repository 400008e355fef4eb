//! Pieces of a tree side by side, in the order of their numbers.

use super::ladder::{Ladder, held};
use super::{BETWEEN, BOX, CHANNEL, LEAD, Tile};

/// A place on the sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(in super::super) struct Spot {
    pub x: f64,
    pub y: f64,
}

/// Where every step stands.
pub(super) struct Columns {
    /// The top left corner of each box.
    pub spots: Vec<Spot>,
    pub width: f64,
    pub height: f64,
    pub pieces: usize,
}

/// Stands the pieces below one another as long as there is room, and then beside.
pub(super) fn stand(tiles: &[Tile], ladder: &Ladder, longest: f64) -> Columns {
    let mut spots = vec![Spot::default(); tiles.len()];
    let (mut x, mut y) = (0.0, 0.0);
    let (mut wide, mut height) = (0.0_f64, 0.0_f64);
    let mut pieces = 0;
    for head in (0..tiles.len()).filter(|at| ladder.heads[*at]) {
        let (width, length) = ladder.extents[head];
        if y > 0.0 && y + LEAD + length > longest + LEAD {
            x += wide + BETWEEN;
            (y, wide) = (0.0, 0.0);
        }
        spots[head] = Spot { x, y: y + LEAD };
        y += LEAD + length;
        height = height.max(y);
        y += BETWEEN;
        wide = wide.max(width);
        pieces += 1;
    }
    for at in 0..tiles.len() {
        for (branch, offset) in tiles[at].branches.iter().zip(&ladder.offsets[at]) {
            if let Some(child) = held(branch, &ladder.heads) {
                let beside = if ladder.is_below(at, child) {
                    0.0
                } else {
                    BOX + CHANNEL
                };
                spots[child] = Spot {
                    x: spots[at].x + beside,
                    y: spots[at].y + offset,
                };
            }
        }
    }
    Columns {
        spots,
        width: x + wide,
        height,
        pieces,
    }
}
