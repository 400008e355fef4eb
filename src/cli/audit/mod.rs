//! `proofwalk audit`: what the company learns from its calls.

mod gather;
mod index;
mod libraries;
mod once;
mod progress;
mod read;

use std::io::{self, Write};
use std::path::Path;

use index::{Index, Memory};
use jiff::Timestamp;

use super::arguments::{AuditFormat, Audited};
use super::failure::{FINDINGS, Failure};
use super::library::{self, Loaded};
use crate::audit::{Audit, Auditor, WhatIsWrong, Window};
use crate::bench::cost;
use crate::export::{self, Believed, Export};
use crate::library::faults_as_written;
use crate::report::audit;
use crate::source::{Files, SourceFile, safe};
use crate::store::{Archive, Fingerprint};

/// Columns of a page of text that is not written to a terminal.
const WIDE: usize = 80;

/// What a page of text is written for.
#[derive(Debug)]
struct Paper {
    ascii: bool,
    columns: usize,
}

/// Audits every session below the folders; the exit code says whether one is damaged.
pub(super) fn run(how: &Audited) -> Result<u8, Failure> {
    let how = &Audited {
        folders: once::each_once(&how.folders),
        ..how.clone()
    };
    // Before the long part: a library that cannot be used is said at once.
    let library = match how.format {
        AuditFormat::Weights => Some(library::sound(how.library.as_deref(), &how.overlays.folders)?),
        _ => None,
    };
    if let Some(loaded) = &library {
        tell_counted_twice(loaded);
    }
    let window = Window { days: how.window };
    // A place that cannot be taken is said at once, too.
    let export = match &how.export {
        Some(out) => {
            tell_left_behind(out);
            Some(Export::begin(out, window)?)
        }
        None => None,
    };
    let paper = Paper {
        ascii: super::look::of_findings(&io::stdout()).ascii,
        columns: super::look::terminal_width().map_or(WIDE, |columns| columns.min(WIDE)),
    };
    // What is exported is read, whether it has changed or not.
    let index = match &export {
        Some(_) => None,
        None => Index::look(how, &paper, library.as_ref().map(|loaded| &loaded.hash))?,
    };
    if let Some(answer) = index.as_ref().and_then(Index::answer) {
        let mut page = answer.page;
        super::print_with(|out| io::copy(&mut page, out).map(drop))?;
        tell_unread(answer.files, answer.since);
        return Ok(answer.code);
    }
    let (mut audit, since, looked) = read(how, window, export, index.as_ref())?;
    let code = if audit.damaged > 0 { FINDINGS } else { 0 };
    super::print_with(|out| write(out, how, &audit, &paper, library.as_ref()))?;
    // What is said of a clock holds only for as long as that is ahead.
    let doubts_one = (audit.unsound.iter()).any(|unsound| unsound.what == WhatIsWrong::ClockAhead);
    let speaks_of_a_clock = audit.ahead > 0 || doubts_one;
    if let (Some(index), Some(looked), false) = (index, looked, speaks_of_a_clock) {
        // What the next run prints, if nothing changes until then.
        audit.from_index = looked.files;
        index.keep(code, since, &looked, |out| {
            write(out, how, &audit, &paper, library.as_ref())
        });
    }
    Ok(code)
}

/// Says how much is taken from an audit before.
fn tell_unread(files: u64, since: Timestamp) {
    let since = since.strftime("%Y-%m-%d %H:%M UTC");
    super::tell(&match files {
        1 => format!(
            "1 file is unchanged since {since} and was not read again; `--fresh` reads it and checks its sums."
        ),
        files => format!(
            "{files} files are unchanged since {since} and were not read again; `--fresh` reads them and checks their sums."
        ),
    });
}

/// Says that weights which were learned before come on top of what is learned now, where an overlay gives any.
fn tell_counted_twice(loaded: &Loaded) {
    let files = loaded.library.files.iter();
    let overlays: Vec<SourceFile> = files
        .filter(|(_, file)| file.layer().number() > 0)
        .map(|(_, file)| file.clone())
        .collect();
    let faults = faults_as_written(&Files::new(overlays));
    if faults.values().any(|fault| fault.contains_key("weight")) {
        super::tell(
            "An overlay gives weights to faults: where those were learned from these calls, the calls count twice. Leave it out for this.",
        );
    }
}

/// Names what exports to the same place left there that were interrupted. One may still be running, so nothing is removed.
fn tell_left_behind(out: &Path) {
    for folder in export::left_behind(out) {
        super::tell(&format!(
            "{} was left by an export that was interrupted: it holds names of people, and may be removed unless another export is running.",
            safe(&folder.to_string_lossy())
        ));
    }
}

/// Takes every session below the folders; since when what it says has been so, and what the system said of the files, where that is kept.
fn read(
    how: &Audited,
    window: Window,
    mut export: Option<Export>,
    index: Option<&Index>,
) -> Result<(Audit, Timestamp, Option<Fingerprint>), Failure> {
    let (mut archive, mut looked) = match index.map(Index::looked) {
        Some(None) => {
            let (archive, looked) = Archive::find_looking(&how.folders)?;
            (archive, Some(looked))
        }
        before => (Archive::find(&how.folders)?, before.flatten()),
    };
    let is_looking = index.is_some_and(|index| index.looked().is_none());
    let folders = archive.folders();
    let shown = folders.map(|folder| safe(&folder.to_string_lossy()).to_string());
    let now = how.clock.unwrap_or_else(Timestamp::now);
    let mut auditor = Auditor::new(window, shown.collect()).made_at(now);
    for (folder, name, why) in &archive.unreadable {
        auditor.not_a_call(*folder, &safe(name).to_string(), WhatIsWrong::Unreadable, why);
    }
    for (folder, name) in &archive.strangers {
        let why = "no session can have this name, so it is not read";
        auditor.not_a_call(*folder, &safe(name).to_string(), WhatIsWrong::Foreign, why);
    }
    auditor.passed_over(archive.others);
    let (mut memory, known) = index
        .map(|index| Memory::begin(index, how, archive.at_most()))
        .unzip();
    let is_empty = archive.is_empty();
    gather::all(
        &mut archive,
        &mut auditor,
        export.as_mut(),
        memory.as_mut().zip(known),
        looked.as_mut().filter(|_| is_looking),
    )?;
    let not_read = memory.and_then(Memory::finish);
    // What is known of a million files is not needed any more.
    drop(archive);
    if let (Some(export), Some(out)) = (export, &how.export) {
        let calls = export.finish(Believed {
            earliest: auditor.earliest(),
            latest: auditor.latest(),
        })?;
        let out = out.to_string_lossy();
        super::tell(&match calls {
            0 => "No call to export.".to_owned(),
            1 => format!("1 call exported to {}.", safe(&out)),
            calls => format!("{calls} calls exported to {}.", safe(&out)),
        });
    }
    let mut audit = auditor.finish();
    if let Some((files, since)) = not_read {
        audit.from_index = files;
        tell_unread(files, since);
    }
    let since = not_read.map_or_else(|| index.map_or(now, Index::since), |(_, since)| since);
    if is_empty {
        super::tell("No sessions below these folders: a session is a file that ends in .jsonl.");
    }
    Ok((audit, since, looked))
}

/// Writes what is printed of an audit.
fn write(
    out: &mut dyn Write,
    how: &Audited,
    audit: &Audit,
    paper: &Paper,
    library: Option<&Loaded>,
) -> io::Result<()> {
    let page = match how.format {
        AuditFormat::Json => return audit::write_json(audit, out),
        AuditFormat::Text => audit::text(audit, paper.columns, paper.ascii),
        AuditFormat::Csv => audit::csv(audit),
        AuditFormat::Html => audit::html(audit),
        AuditFormat::Weights => weights(audit, library),
    };
    out.write_all(page.as_bytes())
}

/// The weights of a library's faults, which is at hand where they are asked for.
fn weights(found: &Audit, library: Option<&Loaded>) -> String {
    library.map_or_else(String::new, |loaded| {
        let library = &loaded.library;
        audit::weights(found, library, &cost::as_asked(library))
    })
}
