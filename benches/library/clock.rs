//! A clock that others who use the machine do not disturb much.

use std::time::Duration;

use rustix::time::{ClockId, clock_gettime};

/// What a piece of work gives, and how long this thread was on a processor for it.
pub fn timed<T>(work: impl FnOnce() -> T) -> (T, Duration) {
    let begun = on_processor();
    let done = work();
    (done, on_processor().saturating_sub(begun))
}

fn on_processor() -> Duration {
    let time = clock_gettime(ClockId::ThreadCPUTime);
    // Neither is negative on a clock that began with the thread.
    Duration::new(time.tv_sec as u64, time.tv_nsec as u32)
}
