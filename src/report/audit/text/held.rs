//! Which faults were met most often, by the verdicts that held.

use std::cmp::Reverse;

use super::page::Page;
use super::rows::{self, Row};
use crate::audit::{Audit, Learned, TOO_SMALL};
use crate::report::audit::figures::{counted, spoken};

/// Most faults that are shown.
const SHOWN: usize = 8;

/// Writes those that were met most often; nothing where no verdict held.
pub(super) fn write(page: &mut Page, audit: &Audit) {
    let all: u64 = audit.learned.iter().map(|row| row.held).sum();
    if all == 0 {
        return;
    }
    page.title("FAULTS MET MOST OFTEN, BY VERDICTS THAT HELD");
    if all < TOO_SMALL {
        let held = counted(all, "verdict", "verdicts");
        page.text(&format!(
            "{held} held: too few to say how often each fault is met"
        ));
        return;
    }
    let mut learned: Vec<&Learned> = audit.learned.iter().filter(|row| row.held > 0).collect();
    learned.sort_by_key(|row| Reverse(row.held));
    let rows: Vec<Row> = (learned.iter().take(SHOWN))
        .map(|row| Row::of(spoken(&row.fault), row.held, all))
        .collect();
    rows::write(page, &rows, None);
    page.text("--format weights prints how often each is met as weights that a library takes");
}
