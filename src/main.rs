//! The exit code, nothing else.

use std::process::ExitCode;

fn main() -> ExitCode {
    ExitCode::from(proofwalk::cli::run())
}
