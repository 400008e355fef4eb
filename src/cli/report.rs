//! The job report of a session, and its short form.

use std::path::Path;

use super::arguments::ReportFormat;
use super::failure::Failure;
use super::look;
use super::session::{Told, named};
use super::walk::existing_sessions;
use crate::report::{Job, Log};
use crate::store::SessionId;

/// Prints the job report.
pub(super) fn run(session: &str, format: ReportFormat, folder: Option<&Path>) -> Result<u8, Failure> {
    let job = job(session, folder)?;
    let text = match format {
        ReportFormat::Text => job.text(look::terminal_width()),
        ReportFormat::Html => job.html(),
        ReportFormat::Json => job.json() + "\n",
    };
    super::print(&text)?;
    Ok(0)
}

/// Prints the short form.
pub(super) fn brief(session: &str, folder: Option<&Path>) -> Result<u8, Failure> {
    super::print(&job(session, folder)?.brief())?;
    Ok(0)
}

fn job(session: &str, folder: Option<&Path>) -> Result<Job, Failure> {
    let folder = existing_sessions(folder)?;
    let id = named(&folder, session)?;
    told_as_job(&id, &Told::read(&folder, &id)?)
}

/// The report of a session that was read.
pub(super) fn told_as_job(id: &SessionId, told: &Told) -> Result<Job, Failure> {
    let state = told.retraced(id)?;
    let records = &told.reading.records;
    let time = |record: Option<&crate::store::Record>| {
        record
            .map(|record| record.time.strftime("%Y-%m-%d %H:%M:%S UTC").to_string())
            .unwrap_or_default()
    };
    let log = Log {
        session: id.as_str(),
        opened: time(records.first()),
        last: time(records.last()),
        head: told.reading.report.head.to_string(),
        records: told.reading.report.records,
    };
    Ok(Job::new(&told.loaded.library, &state, &told.events, log))
}
