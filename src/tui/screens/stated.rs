//! How a walk has ended, and what is to be done.

use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::theme::{Role, Theme};
use crate::walk::{Standing, Stated};

/// Rows of a head that what is to be done may take: what is asked under it must stay in sight.
const ROWS: usize = 4;

/// Adds what must be seen at once to a head, and the rest to the long text.
pub fn add(theme: Theme, standing: &Standing, width: usize, head: &mut Page, rest: &mut Page) {
    if let Some(stated) = standing.stated.as_ref().filter(|stated| stated.shut_down) {
        let words = safe(&format!(" {}.", stated.remedy));
        head.entry(
            "",
            Role::Label,
            &[(safe("SHUT DOWN"), Role::Alarm), (words, Role::Strong)],
        );
    }
    if let Some(ended) = &standing.ended {
        head.entry("ended", Role::Label, &[(ended.clone(), Role::Plain)]);
    }
    if let Some(stated) = &standing.stated {
        to_do(theme, stated, width, head, rest);
        for caution in &stated.cautions {
            rest.entry("CAUTION", Role::Caution, &[(caution.clone(), Role::Strong)]);
        }
        for (label, lines) in [("why", &stated.because), ("tell", &stated.advice)] {
            for (number, line) in lines.iter().enumerate() {
                let label = if number == 0 { label } else { "" };
                rest.entry(label, Role::Label, &[(line.clone(), Role::Plain)]);
            }
        }
    }
}

/// The remedy with its words; where they are long, their start with a word that they go on, and all of them in the rest.
fn to_do(theme: Theme, stated: &Stated, width: usize, head: &mut Page, rest: &mut Page) {
    let mut page = Page::new(theme, width);
    let (remedy, first) = match stated.shut_down {
        true => (None, "do"),
        false => (Some(&stated.remedy), "remedy"),
    };
    for (number, line) in remedy.into_iter().chain(&stated.text).enumerate() {
        let label = if number == 0 { first } else { "" };
        page.entry(label, Role::Label, &[(line.clone(), Role::Strong)]);
    }
    let lines = page.into_lines();
    if lines.len() <= ROWS {
        lines.into_iter().for_each(|line| head.line(line));
        return;
    }
    for line in &lines[..ROWS - 1] {
        head.line(line.clone());
    }
    head.entry("", Role::Label, &[(safe("all of it: PgDn"), Role::Quiet)]);
    lines.into_iter().for_each(|line| rest.line(line));
}
