//! Entries of a registry as their author wrote them, for what writes them out again.

use std::collections::BTreeMap;

use serde_json::{Map, Value};

use super::FileKind;
use super::yaml::read;
use crate::source::Files;

/// Every fault of a library's files as its author wrote it, by name; a later layer's in place of an earlier one's.
///
/// What cannot be read is left out: the check reports it.
pub fn faults_as_written(files: &Files) -> BTreeMap<String, Map<String, Value>> {
    let mut layers: Vec<_> = (files.iter())
        .filter(|(_, file)| FileKind::of(file.name()) == Some(FileKind::Faults))
        .collect();
    layers.sort_by_key(|(_, file)| file.layer().number());
    let mut faults = BTreeMap::new();
    for (id, file) in layers {
        let Ok(Value::Object(mut registry)) = read::<Value>(id, file) else {
            continue;
        };
        let Some(Value::Object(entries)) = registry.remove(FileKind::Faults.name()) else {
            continue;
        };
        for (name, entry) in entries {
            if let Value::Object(entry) = entry {
                faults.insert(name, entry);
            }
        }
    }
    faults
}
