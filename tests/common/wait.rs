//! Waiting for something, and never for long.

use std::thread;
use std::time::{Duration, Instant};

/// Longest wait for what ought to happen at once, with much to spare for a busy machine.
pub const PATIENCE: Duration = Duration::from_secs(30);

/// Looks again and again until there is something.
pub fn until<T>(mut look: impl FnMut() -> Option<T>) -> Option<T> {
    let end = Instant::now() + PATIENCE;
    loop {
        if let Some(found) = look() {
            return Some(found);
        }
        if Instant::now() > end {
            return None;
        }
        thread::sleep(Duration::from_millis(10));
    }
}
