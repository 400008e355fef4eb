//! The line that is being typed, as it is shown.

use tui_input::Input;
use unicode_width::UnicodeWidthStr;

use crate::source::{Safe, safe, wrap_ranges};

/// What is typed in lines of at most `columns`, and the column and line of the cursor.
pub fn field(input: &Input, columns: usize) -> (Vec<Safe>, (usize, usize)) {
    let value = input.value();
    let cursor = value
        .char_indices()
        .nth(input.cursor())
        .map_or(value.len(), |(at, _)| at);
    let lines = wrap_ranges(value, columns);
    let at = lines.iter().rposition(|line| line.start <= cursor).unwrap_or(0);
    let start = lines.get(at).map_or(0, |line| line.start);
    let column = value.get(start..cursor).map_or(0, UnicodeWidthStr::width);
    let shown = lines.into_iter().map(|line| safe(&value[line])).collect();
    (shown, (column.min(columns), at))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn shows(text: &str, cursor: usize, columns: usize, lines: &[&str], at: (usize, usize)) {
        let input = Input::new(text.to_owned()).with_cursor(cursor);
        let (shown, cursor) = field(&input, columns);
        let shown: Vec<&str> = shown.iter().map(Safe::as_str).collect();
        assert_eq!((shown.as_slice(), cursor), (lines, at));
    }

    #[test]
    fn the_cursor_stands_where_the_next_letter_goes() {
        shows("3.5", 3, 20, &["3.5"], (3, 0));
        shows("", 0, 20, &[""], (0, 0));
        shows("one two", 7, 5, &["one", "two"], (3, 1));
        shows("one two ", 8, 5, &["one", "two"], (4, 1));
        shows("µA", 1, 5, &["µA"], (1, 0));
    }
}
