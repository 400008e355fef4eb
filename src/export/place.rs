//! A folder that is written beside its place, and takes it in one step.

use std::fs::{self, File};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use super::error::ExportError;
use super::left_behind::new_name;

/// A folder on its way to its place; dropped before it is there, it is removed.
#[derive(Debug)]
pub(super) struct Place {
    out: PathBuf,
    folder: PathBuf,
    is_taken: bool,
}

impl Place {
    /// Begins a folder beside the one it will be. What it takes the place of may only be an empty folder.
    pub fn beside(out: &Path) -> Result<Self, ExportError> {
        is_free(out)?;
        let folder = out.with_file_name(new_name(out));
        fs::create_dir(&folder).map_err(ExportError::io(out))?;
        Ok(Self {
            out: out.to_owned(),
            folder,
            is_taken: false,
        })
    }

    /// Where to write for now.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Writes a file in it.
    pub fn write(&self, name: &str, text: &str) -> Result<(), ExportError> {
        let path = self.folder.join(name);
        let written = File::create_new(&path).and_then(|mut file| {
            file.write_all(text.as_bytes())?;
            file.sync_all()
        });
        written.map_err(ExportError::io(&path))
    }

    /// Puts it into its place. A folder that is no longer empty is refused by the system, so that nothing is lost between the
    /// first look and this step.
    pub fn take(mut self) -> Result<(), ExportError> {
        synced(&self.folder).map_err(ExportError::io(&self.folder))?;
        is_free(&self.out)?;
        fs::rename(&self.folder, &self.out).map_err(|error| match error.kind() {
            ErrorKind::DirectoryNotEmpty | ErrorKind::AlreadyExists | ErrorKind::NotADirectory => {
                ExportError::Taken(self.out.clone())
            }
            _ => ExportError::Io(self.out.clone(), error),
        })?;
        self.is_taken = true;
        let above = self.out.parent().filter(|above| !above.as_os_str().is_empty());
        let above = above.unwrap_or(Path::new("."));
        File::open(above)
            .and_then(|above| above.sync_all())
            .map_err(ExportError::io(&self.out))
    }
}

impl Drop for Place {
    fn drop(&mut self) {
        if !self.is_taken {
            // What is left of it has a name that says so.
            let _ = fs::remove_dir_all(&self.folder);
        }
    }
}

fn is_free(out: &Path) -> Result<(), ExportError> {
    match fs::symlink_metadata(out) {
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(()),
        Err(error) => Err(ExportError::Io(out.to_owned(), error)),
        Ok(found) if found.is_dir() => match fs::read_dir(out).map_err(ExportError::io(out))?.next() {
            None => Ok(()),
            Some(_) => Err(ExportError::Taken(out.to_owned())),
        },
        Ok(_) => Err(ExportError::Taken(out.to_owned())),
    }
}

/// Has the names in a folder, and in those below it, confirmed by the disk. Its files were, when they were written.
fn synced(folder: &Path) -> io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        if entry.file_type()?.is_dir() {
            synced(&entry.path())?;
        }
    }
    File::open(folder)?.sync_all()
}
