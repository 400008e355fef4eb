//! Fits what a screen has to say into the room there is.

use std::ops::Range;

use ratatui::text::{Line, Span};

use super::theme::{Role, Theme};
use crate::layout::{Parts, TYPED};

/// What one screen has to say, in order; [`Parts`] says what goes where it is short of room.
#[derive(Debug, Default)]
pub struct Sheet {
    /// What is asked, and what can hurt: always there.
    pub head: Vec<Line<'static>>,
    /// The long text: scrolls.
    pub text: Vec<Line<'static>>,
    /// Whether the long text goes down to a hint before a line of the list is hidden.
    pub gives_way: bool,
    /// The drawing.
    pub drawing: Vec<Line<'static>>,
    /// The list of what can be answered.
    pub list: Vec<Line<'static>>,
    /// The lines of the list that must be seen.
    pub keep: Range<usize>,
    /// Other ways out.
    pub ways: Vec<Line<'static>>,
    /// What is typed, and what is said about it: always there.
    pub foot: Vec<Line<'static>>,
    /// Column and line of the cursor within the foot.
    pub cursor: Option<(usize, usize)>,
}

/// A sheet as it fits.
#[derive(Debug, Default)]
pub struct Laid {
    /// The rows, from the top.
    pub rows: Vec<Line<'static>>,
    /// Column and row of the cursor.
    pub cursor: Option<(usize, usize)>,
    /// How far the long text can be scrolled.
    pub scroll_most: usize,
}

impl Sheet {
    /// Fits the sheet into `height` rows, its long text scrolled by `scroll`.
    pub fn lay(mut self, theme: Theme, height: usize, scroll: usize) -> Laid {
        let shares = self.parts().share(height, scroll);
        self.foot.truncate(shares.foot);
        if !shares.drawing {
            self.drawing.clear();
        }
        if !shares.ways {
            self.ways.clear();
        }
        if shares.head_scrolls {
            let text = std::mem::take(&mut self.text);
            self.text = std::mem::take(&mut self.head);
            self.text.extend(text);
        }
        let text = scrolled(theme, self.text, shares.text, shares.from);
        let list = around(theme, self.list, shares.list, &self.keep);
        let groups = [self.head, text, self.drawing, list, self.ways, self.foot];
        let (rows, foot) = spread(groups, height);
        Laid {
            cursor: self.cursor.map(|(column, line)| (column, foot + line)),
            rows,
            scroll_most: shares.scroll_most,
        }
    }

    /// Whether all that must be seen at once is, in `height` rows. What is typed does not count beyond its usual rows: the
    /// screen would jump while it grows.
    pub fn fits(&self, height: usize) -> bool {
        let parts = self.parts();
        let foot = parts.foot.min(TYPED);
        // Nor does which answer is chosen, for the same reason.
        let chosen = 0;
        !self.gives_way
            || Parts {
                foot,
                chosen,
                ..parts
            }
            .fits(height)
    }

    fn parts(&self) -> Parts {
        Parts {
            head: self.head.len(),
            text: self.text.len(),
            gives_way: self.gives_way,
            drawing: self.drawing.len(),
            list: self.list.len(),
            chosen: self.keep.len(),
            ways: self.ways.len(),
            foot: self.foot.len(),
        }
    }
}

/// Puts the groups one below the other, with an empty row between two as long as there are any to spare; the row at which
/// the last group starts comes back too.
fn spread(groups: [Vec<Line<'static>>; 6], height: usize) -> (Vec<Line<'static>>, usize) {
    let used: usize = groups.iter().map(Vec::len).sum();
    let mut spare = height.saturating_sub(used);
    let mut rows: Vec<Line<'static>> = Vec::with_capacity(height);
    let mut start = 0;
    for group in groups {
        if group.is_empty() {
            continue;
        }
        if !rows.is_empty() && spare > 0 {
            rows.push(Line::default());
            spare -= 1;
        }
        start = rows.len();
        rows.extend(group);
    }
    (rows, start)
}

/// So many rows of a text, the last of which says how much more there is.
fn scrolled(theme: Theme, text: Vec<Line<'static>>, rows: usize, from: usize) -> Vec<Line<'static>> {
    let total = text.len();
    let mut shown: Vec<Line<'static>> = text.into_iter().skip(from).take(rows).collect();
    let below = total - from.min(total) - shown.len();
    if below > 0
        && let Some(last) = shown.last_mut()
    {
        *last = more(theme, &format!("{} more lines: PgDn", below + 1));
    } else if from > 0
        && rows > 1
        && let Some(first) = shown.first_mut()
    {
        *first = more(theme, &format!("{} lines above: PgUp", from + 1));
    }
    shown
}

/// So many rows of a list around those that must be seen.
fn around(theme: Theme, list: Vec<Line<'static>>, rows: usize, keep: &Range<usize>) -> Vec<Line<'static>> {
    let total = list.len();
    if total <= rows {
        return list;
    }
    let centred = (keep.start + keep.end).saturating_sub(rows) / 2;
    let from = centred.min(keep.start).min(total - rows);
    let mut shown: Vec<Line<'static>> = list.into_iter().skip(from).take(rows).collect();
    let below = total - from - rows;
    let is_cut = keep.len() > rows && rows > 1;
    if below > 0
        && (from + rows > keep.end || is_cut)
        && let Some(last) = shown.last_mut()
    {
        *last = more(theme, &format!("{} more below", below + 1));
    }
    if from > 0
        && from < keep.start
        && let Some(first) = shown.first_mut()
    {
        *first = more(theme, &format!("{} more above", from + 1));
    }
    shown
}

fn more(theme: Theme, words: &str) -> Line<'static> {
    Line::from(Span::styled(format!("  {words}"), theme.style(Role::Quiet)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tui::Look;

    fn lines(prefix: &str, count: usize) -> Vec<Line<'static>> {
        (1..=count)
            .map(|number| Line::from(format!("{prefix}{number}")))
            .collect()
    }

    fn laid(sheet: Sheet, height: usize, scroll: usize) -> (String, usize) {
        let theme = Theme::new(Look {
            colour: false,
            unicode: false,
        });
        let laid = sheet.lay(theme, height, scroll);
        let rows: Vec<String> = laid.rows.iter().map(Line::to_string).collect();
        (rows.join("|"), laid.scroll_most)
    }

    fn sheet() -> Sheet {
        Sheet {
            head: lines("h", 1),
            text: lines("t", 5),
            drawing: lines("d", 1),
            list: lines("l", 4),
            ways: lines("w", 1),
            foot: lines("f", 1),
            ..Sheet::default()
        }
    }

    #[test]
    fn what_fits_is_shown_whole_with_room_between() {
        assert_eq!(
            laid(sheet(), 15, 0),
            ("h1||t1|t2|t3|t4|t5||d1|l1|l2|l3|l4|w1|f1".into(), 0)
        );
    }

    #[test]
    fn the_drawing_goes_first_then_the_ways_then_the_text_scrolls() {
        assert_eq!(
            laid(sheet(), 10, 0),
            ("h1|t1|  4 more lines: PgDn|d1|l1|l2|l3|l4|w1|f1".into(), 4)
        );
        assert_eq!(
            laid(sheet(), 9, 0).0,
            "h1|t1|  4 more lines: PgDn|l1|l2|l3|l4|w1|f1"
        );
        assert_eq!(laid(sheet(), 8, 0).0, "h1|t1|  4 more lines: PgDn|l1|l2|l3|l4|f1");
    }

    #[test]
    fn text_that_is_read_is_opened_first_and_scrolls_then() {
        let read = |scroll| laid(sheet(), 8, scroll).0;
        assert_eq!(read(4), "h1|t1|t2|  3 more lines: PgDn|l1|l2|  2 more below|f1");
        assert_eq!(read(8), "h1|  3 lines above: PgUp|t4|t5|l1|l2|  2 more below|f1");
    }

    #[test]
    fn a_list_keeps_what_is_chosen_in_sight() {
        let sheet = Sheet {
            list: lines("l", 9),
            keep: 4..5,
            ..Sheet::default()
        };
        assert_eq!(laid(sheet, 5, 0).0, "  3 more above|l4|l5|l6|  3 more below");
        let sheet = Sheet {
            list: lines("l", 9),
            keep: 8..9,
            ..Sheet::default()
        };
        assert_eq!(laid(sheet, 3, 0).0, "  7 more above|l8|l9");
    }

    #[test]
    fn what_is_chosen_and_longer_than_the_list_says_that_it_goes_on() {
        let sheet = Sheet {
            list: lines("l", 9),
            keep: 2..8,
            ..Sheet::default()
        };
        assert_eq!(laid(sheet, 4, 0).0, "l3|l4|l5|  4 more below");
    }

    #[test]
    fn no_height_is_too_small() {
        for height in 0..12 {
            assert!(
                sheet()
                    .lay(
                        Theme::new(Look {
                            colour: false,
                            unicode: true
                        }),
                        height,
                        9
                    )
                    .rows
                    .len()
                    <= height
            );
        }
    }
}
