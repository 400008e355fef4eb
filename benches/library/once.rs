//! One library, checked in a process of its own: so that its peak of memory is its own too.

use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use proofwalk::{check, library};

use crate::clock::timed;
use crate::made::{self, Shape};

/// What one library took.
pub struct Took {
    pub bytes: usize,
    pub steps: usize,
    pub read: Duration,
    pub resolve: Duration,
    pub check: Duration,
    /// Above what its files take, in bytes.
    pub memory: usize,
}

impl Took {
    /// Reading, resolving and checking together.
    pub fn whole(&self) -> Duration {
        self.read + self.resolve + self.check
    }
}

/// What the child is told on its command line.
pub const CHILD: &str = "--one-library";

/// Runs this program again for one library.
pub fn in_a_process_of_its_own(shape: Shape, size: usize) -> Took {
    let child = Command::new(std::env::current_exe().expect("this program has a path"))
        .args([CHILD, &format!("{shape:?}"), &size.to_string()])
        .stderr(Stdio::inherit())
        .output()
        .expect("this program can be run");
    assert!(child.status.success(), "{shape:?} {size}: {}", child.status);
    let text = String::from_utf8(child.stdout).expect("it prints numbers");
    let numbers: Vec<u64> = text
        .split_whitespace()
        .map(|number| number.parse().expect("a number"))
        .collect();
    let [bytes, steps, read, resolve, check, memory] = numbers[..] else {
        panic!("six numbers: {text}");
    };
    Took {
        bytes: bytes as usize,
        steps: steps as usize,
        read: Duration::from_nanos(read),
        resolve: Duration::from_nanos(resolve),
        check: Duration::from_nanos(check),
        memory: memory as usize,
    }
}

/// What the child does: checks a library in a thread with the default stack, and prints what it took.
pub fn in_this_process(shape: &str, size: usize) {
    let shape = Shape::ALL.into_iter().find(|known| format!("{known:?}") == shape);
    let shape = shape.expect("a shape that is there");
    let thread = std::thread::spawn(move || took(shape, size));
    let took = thread.join().expect("the default stack is enough");
    let times = [took.read, took.resolve, took.check].map(|time| time.as_nanos());
    println!(
        "{} {} {} {} {} {}",
        took.bytes, took.steps, times[0], times[1], times[2], took.memory
    );
}

fn took(shape: Shape, size: usize) -> Took {
    let files = made::library(shape, size);
    let before = memory("VmRSS:");
    let mut best: Option<Took> = None;
    let started = Instant::now();
    // The memory is the first run's. Small libraries are over before a clock has a say, so they run again.
    let mut peak = None;
    while best.is_none() || started.elapsed() < Duration::from_secs(1) {
        let (written, read) = timed(|| library::read(files.clone()));
        let ((library, problems), resolve) = timed(|| written.resolve());
        let (found, check) = timed(|| check::run(&library, &problems));
        assert_eq!(made::faults(shape, found), [], "{shape:?} of {size} is sound");
        let peak = *peak.get_or_insert_with(|| memory("VmHWM:"));
        let took = Took {
            bytes: made::bytes(&files),
            steps: library.steps.len(),
            read,
            resolve,
            check,
            memory: peak.saturating_sub(before),
        };
        if best.as_ref().is_none_or(|best| took.whole() < best.whole()) {
            best = Some(took);
        }
    }
    best.expect("it ran once")
}

/// A figure of this process's memory, in bytes; nothing where the system does not tell.
fn memory(name: &str) -> usize {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix(name));
    let kilobytes = line.and_then(|line| line.split_whitespace().next()?.parse().ok());
    kilobytes.unwrap_or(0) * 1024
}
