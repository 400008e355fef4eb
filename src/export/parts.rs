//! Rows by month, written part by part, so that what waits is bounded.

use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io;
use std::path::Path;
use std::sync::Arc;

use parquet::basic::Compression;
use parquet::errors::ParquetError;
use parquet::file::properties::{WriterProperties, WriterPropertiesPtr};

use super::error::ExportError;
use super::rows::Rows;
use super::tables::{TABLES, month, tell};
use crate::audit::Call;

/// What may wait to be written, in bytes, of all months together.
const WAITING: usize = 16 << 20;

/// The months that wait, and what was written.
#[derive(Debug)]
pub(super) struct Parts {
    months: BTreeMap<String, Waiting>,
    bytes: usize,
    most: usize,
    calls: u64,
    files: u64,
    /// Tables of which something was written.
    written: [bool; TABLES.len()],
    first: Option<String>,
    how: WriterPropertiesPtr,
}

/// The rows of a month, by table.
#[derive(Debug, Default)]
struct Waiting {
    tables: [Option<Rows>; TABLES.len()],
    bytes: usize,
}

impl Default for Parts {
    fn default() -> Self {
        let how = WriterProperties::builder()
            .set_compression(Compression::SNAPPY)
            .build();
        Self {
            months: BTreeMap::new(),
            bytes: 0,
            most: WAITING,
            calls: 0,
            files: 0,
            written: [false; TABLES.len()],
            first: None,
            how: Arc::new(how),
        }
    }
}

impl Parts {
    /// How many calls were taken.
    pub fn calls(&self) -> u64 {
        self.calls
    }

    /// Takes a call, and writes the month of which most waits where too much does.
    pub fn add(&mut self, out: &Path, call: &Call, folder: &str) -> Result<(), ExportError> {
        let month = month(call.opened);
        self.calls += 1;
        self.first.get_or_insert_with(|| month.clone());
        let waiting = self.months.entry(month).or_default();
        let before = waiting.bytes;
        waiting.add(call, folder).map_err(failed(out))?;
        self.bytes += waiting.bytes - before;
        while self.bytes > self.most {
            let largest = self.months.iter().max_by_key(|(_, waiting)| waiting.bytes);
            let Some(month) = largest.map(|(month, _)| month.clone()) else {
                break;
            };
            self.write(out, &month)?;
        }
        Ok(())
    }

    /// Writes all that waits. A table without a row gets a file without one, so that every table can be read.
    pub fn finish(&mut self, out: &Path) -> Result<(), ExportError> {
        while let Some(month) = self.months.keys().next().cloned() {
            self.write(out, &month)?;
        }
        let Some(first) = self.first.clone() else {
            return Ok(());
        };
        for (table, columns) in TABLES.iter().enumerate() {
            if !self.written[table] {
                let rows = Rows::of(columns).map_err(failed(out))?;
                self.part(out, &first, table, rows)?;
            }
        }
        Ok(())
    }

    fn write(&mut self, out: &Path, month: &str) -> Result<(), ExportError> {
        let Some(waiting) = self.months.remove(month) else {
            return Ok(());
        };
        self.bytes -= waiting.bytes;
        for (table, rows) in waiting.tables.into_iter().enumerate() {
            if let Some(rows) = rows {
                self.part(out, month, table, rows)?;
            }
        }
        Ok(())
    }

    /// Writes rows of a table as a file of its own.
    fn part(&mut self, out: &Path, month: &str, table: usize, rows: Rows) -> Result<(), ExportError> {
        let folder = out.join(TABLES[table].name).join(format!("month={month}"));
        fs::create_dir_all(&folder).map_err(ExportError::io(&folder))?;
        let path = folder.join(format!("part-{:05}.parquet", self.files));
        self.files += 1;
        self.written[table] = true;
        let file = File::create_new(&path).map_err(ExportError::io(&path))?;
        rows.write(&file, &self.how).map_err(failed(&path))?;
        file.sync_all().map_err(ExportError::io(&path))
    }
}

impl Waiting {
    fn add(&mut self, call: &Call, folder: &str) -> Result<(), ParquetError> {
        let mut wrong = None;
        let (tables, bytes) = (&mut self.tables, &mut self.bytes);
        tell(call, folder, |table, row| {
            let rows = &mut tables[table];
            if rows.is_none() {
                match Rows::of(&TABLES[table]) {
                    Ok(none) => *rows = Some(none),
                    Err(error) => wrong = Some(error),
                }
            }
            if let Some(rows) = rows {
                let before = rows.bytes();
                rows.push(row);
                *bytes += rows.bytes() - before;
            }
        });
        wrong.map_or(Ok(()), Err)
    }
}

/// The system's error, where it is one.
fn failed(path: &Path) -> impl Fn(ParquetError) -> ExportError + '_ {
    |error| {
        let error = match error {
            ParquetError::External(inner) => match inner.downcast::<io::Error>() {
                Ok(error) => *error,
                Err(other) => io::Error::other(other),
            },
            other => io::Error::other(other),
        };
        ExportError::Io(path.to_owned(), error)
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use jiff::{SignedDuration, Timestamp};

    use super::Parts;
    use crate::audit::{Call, Teller};
    use crate::walk::{LibraryMark, Opened};

    fn call(number: i64) -> Call {
        let opened = Opened {
            library: LibraryMark::default(),
            tree: "no-heat".to_owned(),
            technician: None,
            site: None,
            equipment: None,
            program: "test".to_owned(),
            answered_from: None,
        };
        let time = Timestamp::UNIX_EPOCH + SignedDuration::from_hours(number * 24 * 7);
        Teller::new("a", 0, &opened.into(), time, Arc::default()).end(None)
    }

    #[test]
    fn what_waits_is_bounded_over_any_number_of_months() {
        let out = tempfile::tempdir().unwrap();
        let mut parts = Parts {
            most: 4000,
            ..Parts::default()
        };
        for number in 0..400 {
            parts.add(out.path(), &call(number), "calls").unwrap();
            assert!(parts.bytes <= parts.most);
            let waiting: usize = parts.months.values().map(|waiting| waiting.bytes).sum();
            assert_eq!(waiting, parts.bytes);
        }
        assert!(parts.files > 5, "{} files", parts.files);
        parts.finish(out.path()).unwrap();
        assert_eq!((parts.bytes, parts.calls()), (0, 400));
    }
}
