//! Steps below and beside one another.
//!
//! The answer after which most is still to come goes on below its step, the others beside it. So a tree of n steps is never
//! wider than log₂ n columns, and its lines never cross: below a step runs one line, and beside it one, on which the
//! answers hang.

use super::blocks::{Branch, Target, Tile};
use super::{BOX, CHANNEL, TAG, TAG_TAP, TAP};

/// From the bottom of a box to what is next below it.
const GAP: f64 = 14.0;

/// Between two texts beside a line.
const TEXT_GAP: f64 = 7.0;

/// From a box to the words below it, and from these to the next box.
pub(in super::super) const STEM_GAP: f64 = 9.0;

/// What of a column is taken, from the top of the step that it is asked about.
///
/// Columns of boxes take turns with the channels between them: the first is the step's own.
#[derive(Clone, Copy, Debug)]
struct Taken {
    top: f64,
    bottom: f64,
    /// The widest thing in it.
    width: f64,
}

/// Where everything stands, each from the top of the step on which it hangs.
pub(in super::super) struct Ladder {
    /// Of each step and each of its branches: the top of what stands at its end.
    pub offsets: Vec<Vec<f64>>,
    /// The steps that begin a piece.
    pub heads: Vec<bool>,
    /// Of each step, how wide and how long it is with all that hangs on it.
    pub extents: Vec<(f64, f64)>,
    below: Vec<Option<usize>>,
}

impl Ladder {
    /// Whether a step stands below another, rather than beside it.
    pub fn is_below(&self, at: usize, child: usize) -> bool {
        self.below[at] == Some(child)
    }
}

/// Hangs up all steps; what would be longer than `longest` is cut off, and begins a piece of its own.
pub(super) fn hang(
    tiles: &[Tile],
    parents: &[Option<usize>],
    below: &[Option<usize>],
    longest: f64,
) -> Ladder {
    let mut ladder = Ladder {
        offsets: vec![Vec::new(); tiles.len()],
        heads: parents.iter().map(Option::is_none).collect(),
        extents: vec![(BOX, 0.0); tiles.len()],
        below: below.to_vec(),
    };
    let mut taken: Vec<Vec<Taken>> = vec![Vec::new(); tiles.len()];
    // A step has a lower number than those that hang on it.
    for at in (0..tiles.len()).rev() {
        loop {
            let (offsets, columns) = hang_one(tiles, at, below[at], &ladder.heads, &taken);
            let length = columns.iter().map(|taken| taken.bottom).fold(0.0, f64::max);
            let longest_branch = (tiles[at].branches.iter())
                .filter_map(|branch| held(branch, &ladder.heads))
                .filter(|child| !tiles[*child].branches.is_empty())
                .max_by(|a, b| ladder.extents[*a].1.total_cmp(&ladder.extents[*b].1));
            match longest_branch {
                Some(child) if length > longest => ladder.heads[child] = true,
                _ => {
                    ladder.offsets[at] = offsets;
                    ladder.extents[at] = (width(&columns), length);
                    taken[at] = columns;
                    break;
                }
            }
        }
        for branch in &tiles[at].branches {
            if let Some(child) = held(branch, &ladder.heads) {
                taken[child] = Vec::new();
            }
        }
    }
    ladder
}

/// The step that hangs on a branch, where it is not cut off.
pub(in super::super) fn held(branch: &Branch, heads: &[bool]) -> Option<usize> {
    match branch.target {
        Target::Card(card) if branch.holds && !heads[card] => Some(card),
        _ => None,
    }
}

fn hang_one(
    tiles: &[Tile],
    at: usize,
    below: Option<usize>,
    heads: &[bool],
    taken: &[Vec<Taken>],
) -> (Vec<f64>, Vec<Taken>) {
    let tile = &tiles[at];
    let mut columns = vec![Taken {
        top: 0.0,
        bottom: tile.height,
        width: BOX,
    }];
    let mut offsets = vec![0.0; tile.branches.len()];
    let is_below =
        |branch: &Branch| branch.holds && matches!(branch.target, Target::Card(card) if Some(card) == below);
    for (offset, branch) in offsets.iter_mut().zip(&tile.branches) {
        if is_below(branch) {
            continue;
        }
        let end = end_of(branch, heads, taken);
        let tap = tap(branch, heads);
        // The words on the line.
        let (above, under) = (tap - branch.above() - 3.0, tap + branch.under() + 3.0);
        let mut y = (-above).max(TAP - tap);
        if let Some(channel) = columns.get(1) {
            y = y.max(channel.bottom + TEXT_GAP - above);
        }
        y = clear_of(&columns[2.min(columns.len())..], &end, y);
        *offset = y;
        let words = Taken {
            top: above,
            bottom: under,
            width: CHANNEL,
        };
        take(&mut columns, 1, words, y);
        for (column, taken) in end.iter().enumerate() {
            take(&mut columns, column + 2, *taken, y);
        }
    }
    for (offset, branch) in offsets.iter_mut().zip(&tile.branches) {
        if !is_below(branch) {
            continue;
        }
        let end = end_of(branch, heads, taken);
        let words = branch.above() + branch.under();
        let y = clear_of(
            &columns[1..],
            &end[1.min(end.len())..],
            tile.height + words + 2.0 * STEM_GAP,
        );
        *offset = y;
        for (column, taken) in end.iter().enumerate() {
            take(&mut columns, column, *taken, y);
        }
    }
    (offsets, columns)
}

/// How far below the top of a branch's end its line comes in.
pub(in super::super) fn tap(branch: &Branch, heads: &[bool]) -> f64 {
    match held(branch, heads) {
        Some(_) => TAP,
        None => TAG_TAP,
    }
}

/// What the end of a branch takes.
fn end_of(branch: &Branch, heads: &[bool], taken: &[Vec<Taken>]) -> Vec<Taken> {
    match held(branch, heads) {
        Some(child) => taken[child].clone(),
        None => vec![Taken {
            top: 0.0,
            bottom: branch.tag.height() + 4.0,
            width: TAG,
        }],
    }
}

/// The first place, from `y` down, at which something keeps clear of what is taken.
fn clear_of(columns: &[Taken], end: &[Taken], y: f64) -> f64 {
    let clear = |(column, end): (&Taken, &Taken)| column.bottom + GAP - end.top;
    columns.iter().zip(end).map(clear).fold(y, f64::max)
}

/// Takes of a column what something takes that stands `y` below.
fn take(columns: &mut Vec<Taken>, column: usize, what: Taken, y: f64) {
    let (top, bottom) = (y + what.top, y + what.bottom);
    match columns.get_mut(column) {
        Some(taken) => {
            taken.top = taken.top.min(top);
            taken.bottom = taken.bottom.max(bottom);
            taken.width = taken.width.max(what.width);
        }
        // A column is first taken by a neighbour of one that is: none is left out.
        None => columns.push(Taken { top, bottom, ..what }),
    }
}

/// Every column but the last has its full width, for what stands to its right.
fn width(columns: &[Taken]) -> f64 {
    let before = columns.len() / 2;
    before as f64 * (BOX + CHANNEL) + columns.last().map_or(0.0, |last| last.width)
}
