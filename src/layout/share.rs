//! Who gets the rows where they do not suffice.
//!
//! The question and what can hurt come first, then every answer. What is short of room goes in this order: the drawing; the
//! other ways out, which the key bar and the help know as well; the long text, down to a hint that it is there. Whoever
//! scrolls the text wants to read it: it then takes rows from the answers, as long as some are left. The answer that is chosen
//! is seen whole, if the question has to scroll for it.

/// Options that there is a key for: in a longer list something is typed, in a row of its own.
pub const NUMBERED: usize = 9;
/// Lines that a key scrolls.
pub const PAGE: usize = 4;
/// Rows of the line that is typed and of what it reads, as long as neither breaks.
pub const TYPED: usize = 2;
/// Rows of the long text that are worth keeping a drawing or a way out for.
const WORTHWHILE: usize = 2;
/// Rows of the long text while it is being read: no line is passed over from one page to the next.
const READING: usize = PAGE + 2;
/// Rows that a list keeps however short the room is.
const LEAST_LIST: usize = 3;

/// How many rows each part of a screen would take.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Parts {
    /// The question, and what can hurt.
    pub head: usize,
    /// The long text.
    pub text: usize,
    /// Whether the text goes down to a hint before an answer is hidden.
    pub gives_way: bool,
    /// The drawing.
    pub drawing: usize,
    /// What can be answered.
    pub list: usize,
    /// Rows of the answer that is chosen.
    pub chosen: usize,
    /// Other ways out.
    pub ways: usize,
    /// What is typed, and what is said about it.
    pub foot: usize,
}

/// How many rows each part gets.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Shares {
    /// Whether the head stands at the start of the long text, and scrolls with it.
    pub head_scrolls: bool,
    /// Rows of the long text.
    pub text: usize,
    /// From which of its lines on.
    pub from: usize,
    /// How far it can be scrolled.
    pub scroll_most: usize,
    /// Whether there is room for the drawing.
    pub drawing: bool,
    /// Rows of the list.
    pub list: usize,
    /// Whether there is room for the other ways out.
    pub ways: bool,
    /// Rows of the foot.
    pub foot: usize,
}

impl Parts {
    /// Shares out `height` rows, the long text scrolled by `scroll`.
    pub fn share(self, height: usize, scroll: usize) -> Shares {
        let (still, read) = (self.shares(height, false), self.shares(height, true));
        let total = self.text + if still.head_scrolls { self.head } else { 0 };
        if still.text >= total || read.text == 0 {
            return still;
        }
        // Where reading gives the text more room, the first page down does no more than that.
        let opening = if read.text > still.text { PAGE } else { 0 };
        let scroll_most = total - read.text + opening;
        let scroll = scroll.min(scroll_most);
        let shares = if scroll == 0 { still } else { read };
        Shares {
            from: scroll - scroll.min(opening),
            scroll_most,
            ..shares
        }
    }

    /// Whether the whole question, all that can hurt and every answer are seen at once.
    pub fn fits(self, height: usize) -> bool {
        let shares = self.share(height, 0);
        !shares.head_scrolls && shares.list == self.list && shares.foot == self.foot
    }

    /// The rows that take the whole question and every answer: all that cannot go, and a hint of the long text.
    pub fn least(self) -> usize {
        self.head + self.hint() + self.list + self.foot
    }

    fn hint(self) -> usize {
        self.text.min(if self.gives_way { 1 } else { WORTHWHILE })
    }

    fn shares(self, height: usize, reading: bool) -> Shares {
        let foot = self.foot.min(height);
        let room = height - foot;
        let hint = self.hint();
        let wanted = self.text.min(if reading { READING } else { WORTHWHILE });
        let needed = self.head + wanted + self.list;
        let drawing = needed + self.drawing + self.ways <= room;
        let kept = if drawing { self.drawing } else { 0 };
        let ways = needed + kept + self.ways <= room;
        let kept = kept + if ways { self.ways } else { 0 };
        // Better a head that scrolls than one that leaves no answer in sight, or cuts the one that is chosen.
        let whole = LEAST_LIST.max(self.chosen);
        let head_scrolls = self.head + hint + self.list.min(whole) > room;
        let (head, text) = if head_scrolls {
            (0, self.head + self.text)
        } else {
            (self.head, self.text)
        };
        let left = room.saturating_sub(head + kept);
        let least = match (head_scrolls, reading) {
            (true, _) => wanted.max(left / 2),
            (false, true) => wanted,
            (false, false) => hint,
        };
        let least_list = match (head_scrolls, reading) {
            (true, false) => whole.min(left.saturating_sub(hint)).max(LEAST_LIST),
            _ => LEAST_LIST,
        };
        let list = self
            .list
            .min(left.saturating_sub(least).max(least_list.min(left)));
        Shares {
            head_scrolls,
            text: text.min(left - list),
            drawing,
            list,
            ways,
            foot,
            ..Shares::default()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const QUESTION: Parts = Parts {
        head: 3,
        text: 9,
        gives_way: true,
        drawing: 3,
        list: 8,
        chosen: 0,
        ways: 2,
        foot: 2,
    };

    fn shared(height: usize, scroll: usize) -> (usize, usize, bool, bool) {
        let shares = QUESTION.share(height, scroll);
        (shares.text, shares.list, shares.drawing, shares.ways)
    }

    #[test]
    fn answers_outlast_the_drawing_the_ways_out_and_the_long_text() {
        assert_eq!(shared(27, 0), (9, 8, true, true));
        assert_eq!(shared(20, 0), (2, 8, true, true));
        assert_eq!(shared(19, 0), (4, 8, false, true));
        assert_eq!(shared(17, 0), (2, 8, false, true));
        assert_eq!(shared(16, 0), (3, 8, false, false));
        assert_eq!(shared(14, 0), (1, 8, false, false));
        assert!(QUESTION.fits(14) && QUESTION.least() == 14);
        assert_eq!(shared(13, 0), (1, 7, false, false));
        assert!(!QUESTION.fits(13));
    }

    #[test]
    fn text_that_is_read_takes_rows_from_the_answers() {
        let shares = |scroll| QUESTION.share(14, scroll);
        assert_eq!((shares(0).text, shares(0).list, shares(0).scroll_most), (1, 8, 7));
        // The first page down opens it; each line is then seen on some page.
        assert_eq!((shares(4).text, shares(4).list, shares(4).from), (6, 3, 0));
        assert_eq!((shares(8).text, shares(8).from), (6, 3));
    }

    #[test]
    fn text_that_does_not_give_way_keeps_two_rows() {
        let cautions = Parts {
            gives_way: false,
            ..QUESTION
        };
        assert_eq!(cautions.share(14, 0).text, 2);
    }

    #[test]
    fn a_head_that_leaves_no_answer_in_sight_scrolls() {
        let long = Parts { head: 15, ..QUESTION };
        let shares = long.share(20, 0);
        assert!(shares.head_scrolls && !long.fits(20));
        assert_eq!((shares.text, shares.list), (10, 8));
        assert_eq!(long.share(16, 0).list, 7);
    }

    #[test]
    fn a_long_answer_that_is_chosen_is_seen_whole() {
        let chosen = Parts {
            head: 8,
            list: 30,
            chosen: 7,
            ..QUESTION
        };
        let shares = chosen.share(16, 0);
        assert!(shares.head_scrolls);
        assert_eq!((shares.text, shares.list), (7, 7));
        // Who scrolls the text reads the question again.
        assert!(chosen.share(16, 4).head_scrolls);
        let chosen = Parts { chosen: 5, ..chosen };
        assert_eq!(
            (chosen.share(16, 0).head_scrolls, chosen.share(16, 0).list),
            (false, 5)
        );
    }

    #[test]
    fn no_height_is_too_small() {
        for height in 0..40 {
            for scroll in 0..20 {
                for chosen in 0..9 {
                    let parts = Parts { chosen, ..QUESTION };
                    let shares = parts.share(height, scroll);
                    let head = if shares.head_scrolls { 0 } else { parts.head };
                    assert!(head + shares.text + shares.list + shares.foot <= height);
                }
            }
        }
    }
}
