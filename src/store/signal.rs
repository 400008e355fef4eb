//! The signal that ends a program whose file grows too large.

use std::io;
use std::sync::Arc;
use std::sync::atomic::AtomicBool;

use signal_hook::consts::SIGXFSZ;
use signal_hook::flag;

/// Turns the signal for a file beyond the size limit (`ulimit -f`) into an error of the write that met it.
///
/// By default SIGXFSZ ends the program, with the answer on the screen and not on disk. The binary calls this before it
/// opens a journal; after that, [`Journal::append`](super::Journal::append) reports the limit like a full disk.
///
/// # Errors
///
/// Where the system does not let the handler be set.
pub fn ignore_file_size_signal() -> io::Result<()> {
    // That the signal came is told by the write itself; the flag is only what the handler needs to have.
    flag::register(SIGXFSZ, Arc::new(AtomicBool::new(false))).map(drop)
}
