//! What of a terminal is left for the question.

/// The size of a terminal as it usually comes, columns and rows: every question should fit it.
pub const USUAL: (usize, usize) = (80, 24);

/// From this width on, what stands beside the question stands beside it.
pub const TWO_COLUMNS: usize = 76;
/// The question's column is no wider: longer lines read badly.
const WIDEST: usize = 78;
/// From this height on, a stroke sets the header apart.
const TALL: usize = 14;
/// Columns of the divider with its gaps.
const DIVIDER: usize = 3;
/// The side column is no narrower, and no wider.
const SIDE: (usize, usize) = (25, 44);

/// How a terminal is divided.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Panes {
    /// Whether a stroke sets the header apart.
    pub stroke: bool,
    /// Columns for what stands beside the question, with the divider; none where it has none.
    pub side: usize,
    /// Whether what stands beside the question is told in one row below it.
    pub strip: bool,
    /// Columns for the question.
    pub width: usize,
    /// Rows for it.
    pub height: usize,
}

impl Panes {
    /// How a terminal of this size is divided, where something stands `beside` the question or not.
    pub fn of(width: usize, height: usize, beside: bool) -> Self {
        Self::divided(width, height, beside && width >= TWO_COLUMNS, beside)
    }

    /// The same, with what stands beside the question in a row below it: for a question that takes more room.
    pub fn wide(width: usize, height: usize) -> Self {
        Self::divided(width, height, false, true)
    }

    fn divided(width: usize, height: usize, column: bool, beside: bool) -> Self {
        let stroke = height >= TALL;
        let strip = beside && !column;
        let side = if column {
            let third = (width / 3).clamp(SIDE.0, SIDE.1);
            DIVIDER + third.max(width.saturating_sub(WIDEST + DIVIDER).min(SIDE.1))
        } else {
            0
        };
        // The header and the key bar take a row each.
        let rows = 2 + usize::from(stroke) + usize::from(strip);
        Self {
            stroke,
            side,
            strip,
            width: (width - side).min(WIDEST),
            height: height.saturating_sub(rows),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_question_has_what_the_rest_leaves() {
        let size = |width, height, beside| {
            let panes = Panes::of(width, height, beside);
            (panes.width, panes.side, panes.height)
        };
        assert_eq!(size(USUAL.0, USUAL.1, true), (51, 29, 21));
        assert_eq!(size(USUAL.0, USUAL.1, false), (78, 0, 21));
        let wide = Panes::wide(USUAL.0, USUAL.1);
        assert_eq!((wide.width, wide.side, wide.height), (78, 0, 20));
        assert_eq!(size(40, 20, true), (40, 0, 16));
        assert_eq!(size(120, 13, true), (77, 43, 11));
        assert_eq!(size(300, 1, true), (78, 47, 0));
    }
}
