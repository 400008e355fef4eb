//! Gathers the tree files of the built-in library, and nothing else of what stands beside them, for embedding.

use std::path::{Path, PathBuf};
use std::{env, fs, io};

fn main() -> io::Result<()> {
    let out = env::var_os("OUT_DIR").ok_or(io::ErrorKind::NotFound)?;
    let into = PathBuf::from(out).join("trees");
    // Those of an earlier build may be gone since.
    if into.exists() {
        fs::remove_dir_all(&into)?;
    }
    println!("cargo::rerun-if-changed=trees");
    copy(Path::new("trees"), &into)
}

/// Copies the tree files of a folder and of those in it.
fn copy(from: &Path, into: &Path) -> io::Result<()> {
    fs::create_dir_all(into)?;
    for entry in fs::read_dir(from)? {
        let path = entry?.path();
        let Some(name) = path.file_name() else {
            continue;
        };
        if path.is_dir() {
            copy(&path, &into.join(name))?;
        } else if path.extension().is_some_and(|ending| ending == "yaml") {
            fs::copy(&path, into.join(name))?;
        }
    }
    Ok(())
}
