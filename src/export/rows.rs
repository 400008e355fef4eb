//! Rows that wait to be written, column by column.

use std::io;
use std::sync::Arc;

use jiff::Timestamp;
use parquet::basic::{Repetition, Type as Physical};
use parquet::column::writer::ColumnWriter;
use parquet::data_type::ByteArray;
use parquet::errors::ParquetError;
use parquet::file::properties::WriterPropertiesPtr;
use parquet::file::writer::SerializedFileWriter;
use parquet::schema::parser::parse_message_type;
use parquet::schema::types::{Type, TypePtr};

use super::tables::month;

/// A table, by its name and the schema of its files.
#[derive(Clone, Copy, Debug)]
pub(super) struct Table {
    pub name: &'static str,
    pub schema: &'static str,
}

/// What stands in a row at a column.
#[derive(Clone, Copy, Debug)]
pub(super) enum Cell<'a> {
    Text(Option<&'a str>),
    /// The month of a time, as text.
    Month(Option<Timestamp>),
    Whole(Option<i64>),
    Real(Option<f64>),
    Flag(bool),
}

/// Rows of one table.
#[derive(Debug)]
pub(super) struct Rows {
    schema: TypePtr,
    columns: Vec<Column>,
    bytes: usize,
}

/// The values of a column that are there, and for each row whether there is one.
#[derive(Debug)]
struct Column {
    is_there: Vec<i16>,
    is_optional: bool,
    values: Values,
}

#[derive(Debug)]
enum Values {
    /// All texts in a row, and where each ends.
    Text(Vec<u8>, Vec<usize>),
    Whole(Vec<i64>),
    Real(Vec<f64>),
    Flag(Vec<bool>),
}

impl Rows {
    /// No rows yet.
    pub fn of(table: &Table) -> Result<Self, ParquetError> {
        let schema = parse_message_type(table.schema)?;
        let columns = schema
            .get_fields()
            .iter()
            .map(|field| Column::of(field))
            .collect();
        Ok(Self {
            schema: Arc::new(schema),
            columns,
            bytes: 0,
        })
    }

    /// Takes a row.
    pub fn push(&mut self, row: &[Cell<'_>]) {
        debug_assert_eq!(row.len(), self.columns.len());
        self.bytes += self
            .columns
            .iter_mut()
            .zip(row)
            .map(|(column, cell)| column.push(*cell))
            .sum::<usize>();
    }

    /// What the rows take in memory, in bytes.
    pub fn bytes(&self) -> usize {
        self.bytes
    }

    /// Writes the rows as one file.
    pub fn write(self, file: impl io::Write + Send, how: &WriterPropertiesPtr) -> Result<(), ParquetError> {
        let mut writer = SerializedFileWriter::new(file, self.schema, Arc::clone(how))?;
        let mut group = writer.next_row_group()?;
        for column in self.columns {
            if let Some(mut writer) = group.next_column()? {
                column.write(writer.untyped())?;
                writer.close()?;
            }
        }
        group.close()?;
        writer.close().map(drop)
    }
}

impl Column {
    fn of(field: &Type) -> Self {
        Self {
            is_there: Vec::new(),
            is_optional: field.get_basic_info().repetition() == Repetition::OPTIONAL,
            values: match field.get_physical_type() {
                Physical::INT64 => Values::Whole(Vec::new()),
                Physical::DOUBLE => Values::Real(Vec::new()),
                Physical::BOOLEAN => Values::Flag(Vec::new()),
                _ => Values::Text(Vec::new(), Vec::new()),
            },
        }
    }

    /// Takes a value: how many bytes it takes.
    fn push(&mut self, cell: Cell<'_>) -> usize {
        let (is_there, bytes) = match (&mut self.values, cell) {
            (Values::Text(bytes, ends), Cell::Text(text)) => text_into(bytes, ends, text),
            (Values::Text(bytes, ends), Cell::Month(time)) => {
                text_into(bytes, ends, time.map(month).as_deref())
            }
            (Values::Whole(values), Cell::Whole(value)) => into(values, value),
            (Values::Real(values), Cell::Real(value)) => into(values, value),
            (Values::Flag(values), Cell::Flag(value)) => into(values, Some(value)),
            // A row has its table's columns in order: the tests write one of each.
            (_, cell) => {
                debug_assert!(false, "{cell:?} does not belong here");
                (false, 0)
            }
        };
        self.is_there.push(i16::from(is_there));
        bytes + size_of::<i16>()
    }

    fn write(self, writer: &mut ColumnWriter<'_>) -> Result<(), ParquetError> {
        let levels = self.is_optional.then_some(self.is_there.as_slice());
        let written = match (self.values, writer) {
            (Values::Text(bytes, ends), ColumnWriter::ByteArrayColumnWriter(writer)) => {
                let all = ByteArray::from(bytes);
                let starts = [0].into_iter().chain(ends.iter().copied());
                let texts = starts
                    .zip(&ends)
                    .map(|(start, end)| all.slice(start, end - start));
                writer.write_batch(&texts.collect::<Vec<_>>(), levels, None)
            }
            (Values::Whole(values), ColumnWriter::Int64ColumnWriter(writer)) => {
                writer.write_batch(&values, levels, None)
            }
            (Values::Real(values), ColumnWriter::DoubleColumnWriter(writer)) => {
                writer.write_batch(&values, levels, None)
            }
            (Values::Flag(values), ColumnWriter::BoolColumnWriter(writer)) => {
                writer.write_batch(&values, levels, None)
            }
            _ => Err(ParquetError::General(
                "a column has another type than its schema".to_owned(),
            )),
        };
        written.map(drop)
    }
}

fn text_into(bytes: &mut Vec<u8>, ends: &mut Vec<usize>, text: Option<&str>) -> (bool, usize) {
    let Some(text) = text else { return (false, 0) };
    bytes.extend_from_slice(text.as_bytes());
    ends.push(bytes.len());
    (true, text.len() + size_of::<usize>())
}

fn into<T>(values: &mut Vec<T>, value: Option<T>) -> (bool, usize) {
    let Some(value) = value else { return (false, 0) };
    values.push(value);
    (true, size_of::<T>())
}

impl<'a> From<&'a str> for Cell<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(Some(text))
    }
}

impl<'a> From<Option<&'a str>> for Cell<'a> {
    fn from(text: Option<&'a str>) -> Self {
        Self::Text(text)
    }
}

impl From<i64> for Cell<'_> {
    fn from(value: i64) -> Self {
        Self::Whole(Some(value))
    }
}

impl From<Option<i64>> for Cell<'_> {
    fn from(value: Option<i64>) -> Self {
        Self::Whole(value)
    }
}

impl From<f64> for Cell<'_> {
    fn from(value: f64) -> Self {
        Self::Real(Some(value))
    }
}

impl From<Option<f64>> for Cell<'_> {
    fn from(value: Option<f64>) -> Self {
        Self::Real(value)
    }
}

impl From<bool> for Cell<'_> {
    fn from(value: bool) -> Self {
        Self::Flag(value)
    }
}
