//! The keys.

use crate::source::safe;
use crate::tui::keys::{Binding, Place, TABLE};
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};

/// Every key of the table: those of the place the help was opened from first.
pub fn sheet(theme: Theme, place: Place, width: usize) -> Sheet {
    let (here, elsewhere): (Vec<&Binding>, Vec<&Binding>) =
        TABLE.iter().partition(|binding| binding.places.contains(&place));
    let mut page = Page::new(theme, width);
    page.text(&[(safe("Keys here"), Role::Strong)]);
    here.iter().for_each(|binding| key(&mut page, binding));
    page.blank();
    page.text(&[(safe("Keys elsewhere"), Role::Strong)]);
    elsewhere.iter().for_each(|binding| key(&mut page, binding));
    Sheet {
        text: page.into_lines(),
        ..Sheet::default()
    }
}

fn key(page: &mut Page, binding: &Binding) {
    let keys = format!("{:<19} ", binding.keys.to_string());
    page.text(&[(safe(&keys), Role::Strong), (safe(binding.help), Role::Plain)]);
}
