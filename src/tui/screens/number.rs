//! A number is asked for.

use std::cmp::Ordering;

use tui_input::Input;

use super::{answer, head};
use crate::layout::letter;
use crate::source::{Safe, safe};
use crate::tui::gauge::gauge;
use crate::tui::page::{Page, Piece};
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::tui::typed::{Typed, typed};
use crate::walk::{Ask, Question, ShownBand};

/// The question, its bands with the reading among them, and the reading.
pub fn sheet(theme: Theme, ask: &Ask, input: &Input, width: usize) -> Sheet {
    let Question::Number { scale, bands, .. } = &ask.question else {
        return Sheet::default();
    };
    let typed = typed(input.value(), &ask.question);
    let here = match typed {
        Typed::Reads { band, .. } => band,
        _ => None,
    };
    let mut sheet = head::sheet(theme, ask, width);
    sheet.ways = head::ways(theme, ask, width);
    (sheet.list, sheet.keep) = list(theme, bands, here, width);

    let mut page = Page::new(theme, width);
    let margin = page.margin();
    if let Some(lines) = gauge(theme, &ask.question, &typed, page.room()) {
        for mut line in lines {
            line.spans.insert(0, " ".repeat(margin).into());
            page.line(line);
        }
    }
    sheet.drawing = page.into_lines();

    let mut foot = Page::new(theme, width);
    let bare = input
        .value()
        .chars()
        .all(|character| !character.is_alphabetic() && character != '%');
    let unit = if bare {
        safe(scale.symbol())
    } else {
        Safe::default()
    };
    sheet.cursor = Some(answer::field(&mut foot, "answer", input, &unit));
    let (label, pieces) = reading(&typed, bands);
    foot.entry(label, Role::Label, &pieces);
    sheet.foot = foot.into_lines();
    sheet
}

fn list(
    theme: Theme,
    bands: &[ShownBand],
    here: Option<usize>,
    width: usize,
) -> (Vec<ratatui::text::Line<'static>>, std::ops::Range<usize>) {
    let mut page = Page::new(theme, width);
    let mut keep = 0..0;
    let rows: Vec<answer::Row> = bands
        .iter()
        .map(|band| answer::Row {
            words: &band.words,
            means: band.means.as_ref(),
            finding: band.finding,
        })
        .collect();
    let column = answer::column(theme, &rows, page.room());
    for (number, row) in rows.iter().enumerate() {
        let start = page.len();
        let marked = here == Some(number);
        let tag = safe(&letter(number).to_string());
        let label = if number == 0 { "bands" } else { "" };
        page.item(label, marked, &tag, &row.pieces(theme, marked, column));
        if marked {
            keep = start..page.len();
        }
    }
    (page.into_lines(), keep)
}

/// What the number means so far. There is always a line, so that nothing jumps while it is typed.
fn reading(typed: &Typed, bands: &[ShownBand]) -> (&'static str, Vec<Piece>) {
    match typed {
        Typed::Nothing => ("", vec![(safe("A bare number is in this unit."), Role::Quiet)]),
        Typed::Misread { message } => ("", vec![(message.clone(), Role::Quiet)]),
        Typed::Reads {
            shown, band, beyond, ..
        } => {
            let mut pieces = vec![(shown.clone(), Role::Here)];
            if *beyond != Ordering::Equal {
                let side = if *beyond == Ordering::Less {
                    "below"
                } else {
                    "above"
                };
                pieces.push((safe(" "), Role::Plain));
                pieces.push((safe("NOT PLAUSIBLE"), Role::Caution));
                pieces.push((
                    safe(&format!(" {side} what is believed here: look again")),
                    Role::Plain,
                ));
            } else if let Some(band) = band {
                let tail = bands.get(*band).and_then(|band| band.means.as_ref());
                let tail = tail.map(|means| format!(": {means}")).unwrap_or_default();
                pieces.push((safe(&format!(" lies in {}{tail}", letter(*band))), Role::Plain));
            } else if bands.is_empty() {
                pieces.push((safe(" goes into the record"), Role::Plain));
            } else {
                pieces.push((safe(" lies in none of the bands"), Role::Plain));
            }
            ("reads", pieces)
        }
    }
}
