//! Pages that the program itself knows better: they are compared with what it says, and written anew where that is asked for.

use std::fs;
use std::path::{Path, PathBuf};

/// Set to anything, it has the pages written instead of compared.
const WRITE: &str = "PROOFWALK_WRITE_DOCS";

/// A page of the project.
pub fn page(name: &str) -> String {
    fs::read_to_string(path(name)).unwrap_or_default()
}

fn path(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

/// Stops the test where a page is not what it should be, unless it is to be written.
#[track_caller]
pub fn keep(name: &str, right: &str) {
    let stands = page(name);
    if stands == right {
        return;
    }
    if std::env::var_os(WRITE).is_some() {
        fs::write(path(name), right).unwrap();
        return;
    }
    let same = stands.lines().zip(right.lines()).take_while(|(a, b)| a == b);
    let at = same.count();
    let line = |text: &str| text.lines().nth(at).unwrap_or("(its end)").to_owned();
    panic!(
        "{name}:{} is not what the program says\n  stands: {}\n  right:  {}\n\
         look whether the change is meant, then run: {WRITE}=1 cargo test --test docs",
        at + 1,
        line(&stands),
        line(right)
    );
}
