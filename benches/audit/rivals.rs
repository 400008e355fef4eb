//! What a company would use instead: DuckDB, or the shell.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::meter::{Took, run};

/// The ways of the shell, and what they are called.
pub const SHELL: [(&str, &str); 3] = [
    ("grep", "find, grep, awk, sort"),
    ("ripgrep", "find, cat, ripgrep, DuckDB"),
    ("jq", "find, cat, jq, sort, awk"),
];

/// What is installed of it.
pub struct Rivals {
    python: Option<PathBuf>,
    has_jq: bool,
    has_ripgrep: bool,
}

impl Rivals {
    /// Looks for it.
    pub fn look() -> Self {
        let runs = |command: &mut Command| command.output().is_ok_and(|output| output.status.success());
        let python = std::env::var_os("PYTHON").map_or_else(|| PathBuf::from("python3"), PathBuf::from);
        Self {
            has_jq: runs(Command::new("jq").arg("--version")),
            has_ripgrep: runs(Command::new("rg").arg("--version")),
            python: Some(python).filter(|python| runs(Command::new(python).args(["-c", "import duckdb"]))),
        }
    }

    /// The callback query in DuckDB.
    pub fn duckdb(&self, form: &str, archive: &Path) -> Option<Took> {
        let mut command = Command::new(self.python.as_ref()?);
        command.arg(script("callbacks.py")).arg(form).arg(archive);
        Some(run(&mut command, &archive.with_extension("out")))
    }

    /// The callback query in the shell.
    pub fn shell(&self, tool: &str, archive: &Path) -> Option<Took> {
        let is_there = match tool {
            "jq" => self.has_jq,
            "ripgrep" => self.has_ripgrep && self.python.is_some(),
            _ => true,
        };
        let mut command = Command::new("bash");
        command.arg(script("callbacks.sh")).arg(tool).arg(archive);
        if let Some(python) = &self.python {
            command.env("PYTHON", python);
        }
        is_there.then(|| run(&mut command, &archive.with_extension("out")))
    }
}

fn script(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("benches/audit")
        .join(name)
}
