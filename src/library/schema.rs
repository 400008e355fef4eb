//! What an author's editor is told of each kind of file: JSON Schema, draft 7.
//!
//! It is made from the structs that the loader reads, so the two know the same keys. What the loader looks at later, for
//! instance whether a name is registered, no schema can say: `check` does.

pub(super) mod form;
pub(super) mod formula;
mod modeline;
mod pattern;
pub(super) mod proof;
mod quiet;
pub(super) mod shape;
pub(super) mod when;

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde_json::Value;

use super::file_kind::FileKind;
use super::raw;
use super::yaml::Keyed;

pub use modeline::with_modeline;

/// The schema of a kind of file, as JSON.
pub fn schema(kind: FileKind) -> Value {
    let mut schema = match kind {
        FileKind::Library => of::<raw::LibraryFile>(),
        FileKind::Plate => of::<raw::PlateFile>(),
        FileKind::Readings => of::<raw::ReadingsFile>(),
        FileKind::Signs => of::<raw::SignsFile>(),
        FileKind::Parts => of::<raw::PartsFile>(),
        FileKind::Faults => of::<raw::FaultsFile>(),
        FileKind::Restores => of::<raw::RestoresFile>(),
        FileKind::Cautions => of::<raw::CautionsFile>(),
        FileKind::Sources => of::<raw::SourcesFile>(),
        FileKind::Tree => of::<raw::TreeFile>(),
        FileKind::Scenario => of::<raw::ScenarioFile>(),
    };
    // Editors name the source of what they say by this.
    schema["title"] = format!("proofwalk: {}", kind.name()).into();
    schema
}

fn of<T: JsonSchema>() -> Value {
    let settings = SchemaSettings::draft07().with_transform(quiet::quiet);
    let schema = settings.into_generator().into_root_schema_for::<Keyed<T>>();
    schema.to_value()
}
