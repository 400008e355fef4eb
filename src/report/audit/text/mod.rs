//! The page for a terminal: 78 columns, or as many as a narrow terminal has, with charts made of characters.

mod bar;
mod callbacks;
mod findings;
mod held;
mod page;
mod people;
mod rows;
mod steps_up;

use super::figures::{AHEAD, NOT_AT_HAND, counted, first, not_counted, spoken};
use crate::audit::Audit;
use crate::source::safe;
use page::Page;

/// The audit for a person at a terminal of so many columns; with `ascii` nothing but ASCII characters is used.
pub fn text(audit: &Audit, columns: usize, ascii: bool) -> String {
    let mut page = Page::new(columns, ascii);
    head(&mut page, audit);
    see_to_first(&mut page, audit);
    callbacks::write(&mut page, audit);
    people::write(&mut page, audit);
    held::write(&mut page, audit);
    findings::write(&mut page, audit);
    page.title("HOW TO READ IT");
    page.text(audit.caution);
    page.text(
        "Intervals are of 95 %, as if each call stood for itself: furnaces that come back again and again make them a little too narrow. What runs through a list of bars marks the rate of all settled calls, or of those that it names below it. To walk a call again, \
         step by step: proofwalk replay SESSION --sessions DIR; for its job report: proofwalk report SESSION \
         --sessions DIR",
    );
    page.finish()
}

fn see_to_first(page: &mut Page, audit: &Audit) {
    let lines = first(audit);
    if lines.is_empty() {
        return;
    }
    page.title("WHAT TO SEE TO FIRST");
    for line in lines {
        page.item(&line);
    }
}

fn head(page: &mut Page, audit: &Audit) {
    page.title("AUDIT");
    for folder in &audit.folders {
        page.line("Folder", &safe(folder));
    }
    let day = |time: jiff::Timestamp| time.strftime("%Y-%m-%d").to_string();
    if let (Some(from), Some(until)) = (audit.from, audit.until) {
        page.line("Opened", &safe(&format!("{} to {}, UTC", day(from), day(until))));
    }
    page.line(
        "Calls",
        &safe(&format!("{}, {} of them closed", audit.calls, audit.closed)),
    );
    let aside = not_counted(audit);
    if !aside.is_empty() {
        page.line("Not counted", &safe(&aside.join(", ")));
    }
    if audit.from_index > 0 {
        let files = counted(audit.from_index, "file", "files");
        page.line(
            "Not read",
            &spoken(&format!(
                "{files}, unchanged since an earlier audit: sums not checked again"
            )),
        );
    }
    if audit.without_equipment > 0 {
        let calls = counted(audit.without_equipment, "call names", "calls name");
        page.line("Cannot follow", &spoken(&format!("{calls} no equipment")));
    }
    if audit.ahead > 0 {
        let calls = counted(audit.ahead, "call is", "calls are");
        page.line("Clocks", &safe(&format!("{calls} {AHEAD}")));
    }
    if audit.without_library > 0 {
        let calls = counted(audit.without_library, "call", "calls");
        page.line("No library", &safe(&format!("{calls}: {NOT_AT_HAND}")));
    }
}
