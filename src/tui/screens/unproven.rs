//! A verdict that is not proven.

use super::head;
use crate::face::why_lacking;
use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::{Ask, Question};

/// What would follow, what its proof lacks, and what can be taken for it.
pub fn sheet(theme: Theme, ask: &Ask, chosen: Option<usize>, width: usize) -> Sheet {
    let Question::Unproven { remedy, lacks, .. } = &ask.question else {
        return Sheet::default();
    };
    let mut sheet = head::sheet(theme, ask, width);
    let mut head = Page::new(theme, width);
    head.entry(
        "",
        Role::Label,
        &[
            (safe("NOT PROVEN"), Role::Caution),
            (safe(" It may not be acted on yet."), Role::Plain),
        ],
    );
    head.entry("remedy", Role::Label, &[(remedy.clone(), Role::Plain)]);
    sheet.head.extend(head.into_lines());

    let mut page = Page::new(theme, width);
    let mut number = 0;
    for (line, lack) in lacks.iter().enumerate() {
        let pieces = [
            (lack.words.clone(), Role::Plain),
            (
                safe(&format!("{}{}", theme.dot(), why_lacking(lack.because))),
                Role::Quiet,
            ),
        ];
        page.entry(if line == 0 { "lacks" } else { "" }, Role::Label, &pieces);
        for (_, take) in &lack.take {
            let start = page.len();
            let marked = chosen == Some(number);
            number += 1;
            let role = if marked { Role::Here } else { Role::Plain };
            page.item(
                "",
                marked,
                &safe(&number.to_string()),
                &[(safe(&format!("take {take}")), role)],
            );
            if marked {
                sheet.keep = start..page.len();
            }
        }
    }
    sheet.list = page.into_lines();
    let mut ways = Page::new(theme, width);
    ways.entry(
        "or",
        Role::Label,
        &[
            (safe("Ctrl-E"), Role::Strong),
            (safe("  end without a verdict"), Role::Plain),
        ],
    );
    ways.entry(
        "",
        Role::Label,
        &[
            (safe("Ctrl-O"), Role::Strong),
            (safe("  end on your own verdict, in writing"), Role::Plain),
        ],
    );
    sheet.ways = ways.into_lines();
    sheet
}
