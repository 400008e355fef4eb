//! A value, and the plate that goes with it.

use super::fields;
use crate::check::words;
use crate::library::{Id, Library, PlateField};
use crate::measure::{Quantity, Scale};

/// A value, and the plate that goes with it.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::check) struct Witness {
    pub value: Quantity,
    pub plate: Vec<(Id<PlateField>, Quantity)>,
}

impl Witness {
    /// A value that needs no plate.
    pub fn of(value: Quantity) -> Self {
        Self {
            value,
            plate: Vec::new(),
        }
    }

    /// The value as the question shows it.
    pub fn value(&self, scale: Scale) -> String {
        self.value.display(scale).to_string()
    }

    /// ` where plate.rise_min is 35 °F`, or nothing.
    pub fn plate(&self, library: &Library) -> String {
        let entries = self.plate.iter().filter_map(|&(field, value)| {
            let (scale, _) = fields::number(library, field)?;
            Some(format!(
                "plate.{} is {}",
                library.plate[field].name,
                value.display(scale)
            ))
        });
        let entries: Vec<String> = entries.collect();
        if entries.is_empty() {
            return String::new();
        }
        format!(" where {}", words::list(&entries, "and"))
    }
}
