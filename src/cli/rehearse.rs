//! Running a library's scenarios.

use std::path::{Path, PathBuf};

use super::failure::{FINDINGS, Failure};
use super::library::{plural, sound};
use crate::source::safe;
use crate::walk;

/// Walks every scenario; the exit code says whether one departs from what it expects.
pub(super) fn run(folder: Option<&Path>, overlays: &[PathBuf]) -> Result<u8, Failure> {
    let loaded = sound(folder, overlays)?;
    let library = &loaded.library;
    let mut text = String::new();
    let mut departed = 0;
    for scenario in &library.scenarios {
        let run = walk::rehearse(library, scenario);
        if run.departures.is_empty() {
            continue;
        }
        departed += 1;
        let place = library.files.place(scenario.at);
        text.push_str(&format!(
            "{}:{}: {}\n",
            safe(&place.file),
            place.line,
            safe(&scenario.title)
        ));
        for departure in &run.departures {
            let (expected, happened) = (safe(&departure.expected), safe(&departure.happened));
            text.push_str(&format!("  expected: {expected}\n  happened: {happened}\n"));
        }
    }
    let count = library.scenarios.len();
    text.push_str(&format!(
        "{count} scenario{}, {} as expected, {departed} not\n",
        plural(count),
        count - departed
    ));
    super::print(&text)?;
    Ok(if departed == 0 { 0 } else { FINDINGS })
}
