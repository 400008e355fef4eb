//! `proofwalk audit`: what the company learns from its calls.

mod gather;
mod libraries;
mod progress;
mod read;

use super::arguments::{AuditFormat, Audited};
use super::failure::{FINDINGS, Failure};
use crate::audit::{Auditor, WhatIsWrong, Window};
use crate::report::audit;
use crate::source::safe;
use crate::store::Archive;

/// Audits every session below the folders; the exit code says whether one is damaged.
pub(super) fn run(how: &Audited) -> Result<u8, Failure> {
    let archive = Archive::find(&how.folders)?;
    let folders = archive.folders();
    let shown = folders.map(|folder| safe(&folder.to_string_lossy()).to_string());
    let mut auditor = Auditor::new(Window { days: how.window }, shown.collect());
    for (folder, error) in &archive.unreadable {
        auditor.not_a_call(*folder, "", WhatIsWrong::Unreadable, &error.to_string());
    }
    for (folder, name) in &archive.strangers {
        let why = "no session can have this name, so it is not read";
        auditor.not_a_call(*folder, &safe(name).to_string(), WhatIsWrong::Foreign, why);
    }
    auditor.passed_over(archive.others);
    gather::all(&archive, &mut auditor);
    let audit = auditor.finish();
    if archive.is_empty() {
        super::tell("No sessions below these folders: a session is a file that ends in .jsonl.");
    }
    let text = match how.format {
        AuditFormat::Text => audit::text(&audit, super::look::of_findings(&std::io::stdout()).ascii),
        AuditFormat::Json => audit::json(&audit),
        AuditFormat::Csv => audit::csv(&audit),
        AuditFormat::Html => audit::html(&audit),
    };
    super::print(&text)?;
    Ok(if audit.damaged > 0 { FINDINGS } else { 0 })
}
