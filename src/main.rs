//! The exit code, nothing else.

fn main() {}
