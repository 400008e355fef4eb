//! `proofwalk schema`: what an author's editor should know of the files of a library.

use std::path::Path;

use super::failure::{Failure, NOT_SAVED, WRONG_USE};
use super::library::plural;
use crate::library::{FileKind, schema, with_modeline};
use crate::source::safe;
use crate::store::{self, LibraryWriteError};

/// The folder of the schemas in a library; nothing is read from it, since nothing in it ends in .yaml.
const FOLDER: &str = "schema";

/// The schema of a kind of file, for a file of its own.
pub(super) fn text(kind: FileKind) -> String {
    format!("{:#}\n", schema(kind))
}

/// The kinds, and how an editor comes to know their schemas.
pub(super) fn list() -> String {
    let mut list = String::new();
    for kind in FileKind::ALL {
        list.push_str(&format!("{:9}  {}\n", kind.name(), kind.files()));
    }
    list.push_str(
        "\n\
         `proofwalk schema KIND` prints the JSON Schema of one. `proofwalk schema --write DIR` writes them all into\n\
         DIR/schema/, where DIR is the folder of a library. With `--modelines` it also puts a line at the top of each file\n\
         of the library, by which an editor with a YAML language server finds the schema: it then completes keys, explains\n\
         them, and underlines what does not belong. In a tree it is\n\
         \n  # yaml-language-server: $schema=schema/tree.json\n",
    );
    list
}

/// Writes all schemas into a library, and where it is asked for the lines that name them.
pub(super) fn write(library: &Path, modelines: bool) -> Result<u8, Failure> {
    let texts: Vec<(String, String)> = FileKind::ALL
        .map(|kind| (format!("{}.json", kind.name()), text(kind)))
        .into();
    let written = store::write_beside(library, FOLDER, &texts).map_err(|error| failure(&[error]))?;
    let mut said = format!("{} schema{} written", written.len(), plural(written.len()));
    if modelines {
        let changed = store::rewrite_library(library, with_modeline).map_err(|errors| failure(&errors))?;
        said.push_str(&format!(
            ", {} file{} told of them",
            changed.len(),
            plural(changed.len())
        ));
    }
    super::print(&format!(
        "{said}; all is in place in {}\n",
        safe(&library.to_string_lossy())
    ))?;
    Ok(0)
}

fn failure(errors: &[LibraryWriteError]) -> Failure {
    let lines: Vec<String> = errors.iter().map(LibraryWriteError::to_string).collect();
    let code = if errors.iter().any(|error| error.unsaved) {
        NOT_SAVED
    } else {
        WRONG_USE
    };
    Failure::new(code, lines.join("\n"))
}
