//! The first screen.

use crate::face::{Home, HomeLine};
use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};

/// The complaints on offer, and the calls that were not finished.
pub fn sheet(theme: Theme, home: &Home, chosen: Option<usize>, width: usize) -> Sheet {
    let mut head = Page::new(theme, width);
    for overlay in &home.overlays {
        head.entry("overlay", Role::Label, &[(overlay.clone(), Role::Plain)]);
    }
    for caution in &home.standing_cautions {
        head.entry("CAUTION", Role::Caution, &[(caution.clone(), Role::Plain)]);
    }
    let mut page = Page::new(theme, width);
    let mut keep = 0..0;
    let mut number = 0;
    let lists: [(&'static str, &[HomeLine]); 2] = [("new", &home.complaints), ("resume", &home.unfinished)];
    for (label, lines) in lists {
        for (first, line) in lines.iter().enumerate() {
            if first == 0 && number > 0 {
                page.blank();
            }
            if first == 0 && page.is_narrow() {
                page.text(&[(safe(label), Role::Label)]);
            }
            let start = page.len();
            let marked = chosen == Some(number);
            let role = if marked { Role::Here } else { Role::Plain };
            let mut pieces = vec![(line.label.clone(), role)];
            if let Some(note) = &line.note {
                pieces.push((safe(&format!("  {note}")), Role::Quiet));
            }
            let tag = safe(&format!("{:>2}", number + 1));
            page.item(if first == 0 { label } else { "" }, marked, &tag, &pieces);
            if marked {
                keep = start..page.len();
            }
            number += 1;
        }
    }
    if number == 0 {
        page.entry(
            "",
            Role::Label,
            &[(safe("There is no complaint on offer here."), Role::Plain)],
        );
    }
    Sheet {
        text: head.into_lines(),
        list: page.into_lines(),
        keep,
        ..Sheet::default()
    }
}
