//! How soon calls come back, as columns of characters.

use super::page::Page;
use crate::report::audit::figures::{Curve, percent};
use crate::source::safe;

/// Columns of the chart, where the page has as many beside its scale, and its lines.
const COLUMNS: usize = 60;
const SCALE: usize = 11;
const LINES: usize = 8;

/// What fills a character from its foot, in eighths.
const EIGHTHS: [char; 9] = [' ', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];

/// Draws the share that has come back by each day; nothing where none has.
pub(super) fn write(page: &mut Page, curve: &Curve) {
    let columns = COLUMNS.min(page.columns() - SCALE);
    let days = curve.days(columns);
    let most = days.iter().map(|day| day.back).fold(0.0, f64::max);
    if most <= 0.0 {
        return;
    }
    page.title("HOW SOON THEY COME BACK");
    // Each character stands for the days up to its right edge.
    let shares: Vec<f64> = days.iter().skip(1).map(|day| day.back / most).collect();
    let rule = if page.is_ascii() { '|' } else { '│' };
    for line in (0..LINES).rev() {
        let label = match line {
            _ if line == LINES - 1 => percent(most),
            0 => "0 %".to_owned(),
            _ => String::new(),
        };
        let cells: String = shares
            .iter()
            .map(|share| cell(share * LINES as f64 - line as f64, page.is_ascii()))
            .collect();
        page.row(&safe(&format!("{label:>9} {rule}{cells}")));
    }
    let (corner, foot) = if page.is_ascii() {
        ('+', "-")
    } else {
        ('└', "─")
    };
    page.row(&safe(&format!("{:10}{corner}{}", "", foot.repeat(columns))));
    let end = format!("{:.0} days", curve.until);
    page.row(&safe(&format!("{:11}closed{end:>room$}", "", room = columns - 6)));
}

/// What of a character is filled.
fn cell(filled: f64, ascii: bool) -> char {
    match (ascii, filled) {
        (true, filled) if filled >= 0.5 => '#',
        (true, _) => ' ',
        (false, filled) => EIGHTHS[(8.0 * filled).round().clamp(0.0, 8.0) as usize],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_character_is_filled_by_eighths_or_not_at_all() {
        let shown = |ascii| {
            [-1.0, 0.0, 0.26, 0.5, 1.0, 3.0]
                .map(|filled| cell(filled, ascii))
                .iter()
                .collect::<String>()
        };
        assert_eq!(shown(false), "  ▂▄██");
        assert_eq!(shown(true), "   ###");
    }
}
