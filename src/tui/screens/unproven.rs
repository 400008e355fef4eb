//! A verdict that is not proven.

use super::head;
use crate::face::{ANY_ONE, alternative, why_lacking};
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
        let stands = |why: &str| (safe(&format!("{}{why}", theme.dot())), Role::Quiet);
        let pieces = match lack.any_of.is_empty() {
            true => vec![
                (lack.words.clone(), Role::Plain),
                stands(why_lacking(lack.because)),
            ],
            false => vec![(safe(&format!("{ANY_ONE}:")), Role::Strong)],
        };
        page.entry(if line == 0 { "lacks" } else { "" }, Role::Label, &pieces);
        for (mark, words, why) in lack.any_of.iter().flat_map(|claims| alternative(claims)) {
            page.item("", false, &safe(mark), &[(words, Role::Plain), stands(why)]);
        }
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
