//! What was condemned, against what a callback found later.

use maud::{Markup, html};

use super::chart::{WIDTH, fine};
use super::table::{Cell, cells, table};
use super::{beside, section};
use crate::audit::Audit;
use crate::report::audit::figures::{FoundLater, FoundLaterRow as Row, counted, found_later};

/// Most parts that are drawn.
const DRAWN: usize = 16;

/// Where the squares begin, and their size.
const LEFT: f64 = 140.0;
const TOP: f64 = 118.0;
const CELL: f64 = 30.0;

/// The section; nothing where no part was condemned.
pub(super) fn section_of(audit: &Audit) -> Option<Markup> {
    let found = found_later(audit);
    if found.rows.is_empty() {
        return None;
    }
    let mut heads = cells(["Condemned", "Calls", "Held", "Back, nothing else found"]);
    heads.push(Cell::Words("Back, and then found".to_owned()));
    let rows: Vec<Vec<Cell>> = found.rows.iter().map(|row| line(&found, row)).collect();
    let body = html! {
        p {
            "A row is a part that was condemned in a closed call, a column a fault that the callback after it ended in, with another remedy. "
            "The part may have been bad all the same: two faults do come together. “Held” only says that nobody called back in time, so "
            "far; a check on the same visit stands under “nothing else found”."
        }
        (beside(&chart(&found), &table("Condemned parts, and what was found later", &heads, &rows), rows.len()))
    };
    Some(section("found-later", "Condemned, and found later", &body))
}

fn line(found: &FoundLater, row: &Row) -> Vec<Cell> {
    let later: Vec<String> = (found.columns.iter().zip(&row.found))
        .filter(|(_, times)| **times > 0)
        .map(|(fault, times)| format!("{fault} {times}"))
        .collect();
    vec![
        row.part.to_string().into(),
        row.of.to_string().into(),
        row.held.to_string().into(),
        row.same.to_string().into(),
        Cell::Words(match later.is_empty() {
            true => "—".to_owned(),
            false => later.join(", "),
        }),
    ]
}

fn chart(found: &FoundLater) -> Markup {
    let with_some: Vec<_> = found
        .rows
        .iter()
        .filter(|row| row.found.iter().sum::<u64>() > 0)
        .take(DRAWN)
        .collect();
    if with_some.is_empty() {
        return html! { p { "No callback ended in another fault than the one a part was condemned for." } };
    }
    let most = with_some
        .iter()
        .flat_map(|row| &row.found)
        .copied()
        .max()
        .unwrap_or(1)
        .max(1);
    let height = TOP + CELL * with_some.len() as f64 + 8.0;
    let cells = with_some.len() * found.columns.len();
    let right = LEFT + CELL * found.columns.len() as f64;
    let x = |column: usize| LEFT + CELL * (column as f64 + 0.5);
    let y = |row: usize| TOP + CELL * (row as f64 + 0.5);
    html! {
        svg viewBox=(format!("0 0 {WIDTH} {height}")) role="img" aria-labelledby="found-title found-told" {
            title id="found-title" { "Condemned parts against what was found later" }
            desc id="found-told" {
                (counted(with_some.len() as u64, "part", "parts")) " by " (found.columns.len()) " faults, " (cells)
                " squares; the larger a square, the more callbacks. The table has the figures."
            }
            @for (number, column) in found.columns.iter().enumerate() {
                @let at = fine(x(number) + 3.0);
                text x=(at) y=(TOP - 6.0) transform=(format!("rotate(-50 {at} {})", TOP - 6.0)) { (column.cut(20)) }
                path.grid d=(format!("M{} {TOP}V{}", fine(x(number)), fine(height - 8.0))) {}
            }
            @for (number, row) in with_some.iter().enumerate() {
                text x=(LEFT - 6.0) y=(fine(y(number) + 4.0)) text-anchor="end" { (row.part.cut(20)) }
                path.grid d=(format!("M{LEFT} {}H{right}", fine(y(number)))) {}
                @for (column, times) in row.found.iter().enumerate().filter(|(_, times)| **times > 0) {
                    @let side = 6.0 + (CELL - 10.0) * (*times as f64 / most as f64).sqrt();
                    rect.point x=(fine(x(column) - side / 2.0)) y=(fine(y(number) - side / 2.0)) width=(fine(side)) height=(fine(side)) {
                        title { (row.part) ", then " (found.columns[column]) ": " (times) }
                    }
                }
            }
        }
    }
}
