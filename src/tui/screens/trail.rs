//! The answers so far.

use crate::face::{came_out, few};
use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::{NO_LONGER, Standing};

/// The answers, oldest first, with what was no longer reached after each.
pub fn sheet(theme: Theme, standing: &Standing, chosen: Option<usize>, width: usize) -> Sheet {
    let trail = &standing.trail;
    let mut head = Page::new(theme, width);
    let words = if trail.is_empty() {
        "Nothing is answered yet."
    } else {
        "The answers so far"
    };
    head.text(&[(safe(words), Role::Strong)]);
    let mut page = Page::new(theme, width);
    let mut keep = 0..0;
    for (number, entry) in trail.iter().enumerate() {
        let start = page.len();
        let marked = chosen == Some(number);
        let role = if marked { Role::Here } else { Role::Plain };
        let mut pieces = vec![
            (entry.title.clone(), role),
            (safe("  "), role),
            (entry.answer.clone(), Role::Strong),
        ];
        if entry.borderline {
            pieces.push((safe("  borderline"), Role::Quiet));
        }
        page.item("", marked, &safe(&format!("{:>2}", number + 1)), &pieces);
        let worked_out = entry.worked_out.iter().map(|value| ("worked out", value));
        let stood = entry.stood.iter().map(|value| ("stands", value));
        for (how, value) in worked_out.chain(stood) {
            let words = safe(&format!("{how}: {}", came_out(value)));
            page.item("", false, &safe("  "), &[(words, Role::Plain)]);
        }
        if standing.ended.is_none() && !entry.ruled_out.is_empty() {
            let out = safe(&format!(
                "{} {NO_LONGER}: {}",
                theme.cross(),
                few(&entry.ruled_out)
            ));
            page.item("", false, &safe("  "), &[(out, Role::Quiet)]);
        }
        if marked {
            keep = start..page.len();
        }
    }
    Sheet {
        head: head.into_lines(),
        list: page.into_lines(),
        keep,
        ..Sheet::default()
    }
}
