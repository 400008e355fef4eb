//! `proofwalk audit`: what the company learns from its calls.

mod gather;
mod libraries;
mod progress;
mod read;

use super::arguments::{AuditFormat, Audited};
use super::failure::{FINDINGS, Failure};
use super::library::{self, Loaded};
use crate::audit::{Audit, Auditor, WhatIsWrong, Window};
use crate::report::audit;
use crate::source::safe;
use crate::store::Archive;

/// Audits every session below the folders; the exit code says whether one is damaged.
pub(super) fn run(how: &Audited) -> Result<u8, Failure> {
    // Before the long part: a library that cannot be used is said at once.
    let library = match how.format {
        AuditFormat::Weights => Some(library::sound(how.library.as_deref(), &how.overlays.folders)?),
        _ => None,
    };
    let archive = Archive::find(&how.folders)?;
    let folders = archive.folders();
    let shown = folders.map(|folder| safe(&folder.to_string_lossy()).to_string());
    let mut auditor = Auditor::new(Window { days: how.window }, shown.collect());
    for (folder, error) in &archive.unreadable {
        auditor.not_a_call(*folder, "", WhatIsWrong::Unreadable, &error.to_string());
    }
    for (folder, name, why) in &archive.bad_packs {
        auditor.not_a_call(*folder, &safe(name).to_string(), WhatIsWrong::Damaged, why);
    }
    for (folder, name) in &archive.strangers {
        let why = "no session can have this name, so it is not read";
        auditor.not_a_call(*folder, &safe(name).to_string(), WhatIsWrong::Foreign, why);
    }
    auditor.passed_over(archive.others);
    gather::all(&archive, &mut auditor);
    let is_empty = archive.is_empty();
    // The ids of a million sessions are not needed any more.
    drop(archive);
    let audit = auditor.finish();
    if is_empty {
        super::tell("No sessions below these folders: a session is a file that ends in .jsonl.");
    }
    let text = match how.format {
        AuditFormat::Text => audit::text(&audit, super::look::of_findings(&std::io::stdout()).ascii),
        AuditFormat::Json => audit::json(&audit),
        AuditFormat::Csv => audit::csv(&audit),
        AuditFormat::Html => audit::html(&audit),
        AuditFormat::Weights => weights(&audit, library.as_ref()),
    };
    super::print(&text)?;
    Ok(if audit.damaged > 0 { FINDINGS } else { 0 })
}

/// The weights of a library's faults, which is at hand where they are asked for.
fn weights(found: &Audit, library: Option<&Loaded>) -> String {
    library.map_or_else(String::new, |loaded| audit::weights(found, &loaded.library))
}
