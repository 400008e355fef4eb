//! What a program takes: seconds on the clock, seconds on processors, and the most memory it held.

use std::collections::HashMap;
use std::fs::{self, File};
use std::path::Path;
use std::process::{Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

/// Between two looks at its memory.
const BETWEEN: Duration = Duration::from_millis(5);

/// Ticks of a second, in which Linux counts processor time for programs.
const TICKS: f64 = 100.0;

/// What a run took.
#[derive(Clone, Copy, Debug)]
pub struct Took {
    pub seconds: f64,
    /// User and system time, of all its processes.
    pub processor: f64,
    /// The most memory of all its processes together, in MB: what they held at their peaks, as far as they ran at once.
    pub megabytes: f64,
    /// The callbacks that it found.
    pub found: Option<u64>,
}

/// Runs a program to its end, with its output in a file.
pub fn run(command: &mut Command, out: &Path) -> Took {
    let file = File::create(out).expect("a file can be made");
    let (began, before) = (Instant::now(), of_children());
    let mut child = (command.stdout(file).stderr(Stdio::inherit()).spawn()).expect("it can be run");
    let mut peak = 0;
    let status = loop {
        peak = peak.max(below(child.id()));
        if let Some(status) = child.try_wait().expect("it can be waited for") {
            break status;
        }
        sleep(BETWEEN);
    };
    let seconds = began.elapsed().as_secs_f64();
    // An audit that finds a damaged file ends with 1.
    assert!(matches!(status.code(), Some(0 | 1)), "{command:?}: {status}");
    Took {
        seconds,
        processor: of_children() - before,
        megabytes: peak as f64 / 1024.0,
        found: found(out),
    }
}

/// The callbacks that an output tells: those of an audit, or its first number.
fn found(out: &Path) -> Option<u64> {
    let text = fs::read_to_string(out).ok()?;
    let after = text
        .split_once("Came back")
        .map_or(text.as_str(), |(_, after)| after);
    after.split_whitespace().next()?.parse().ok()
}

/// The best of several runs: what else the machine does only ever adds.
pub fn best(times: usize, mut one: impl FnMut() -> Took) -> Took {
    (0..times)
        .map(|_| one())
        .reduce(|best, took| Took {
            seconds: best.seconds.min(took.seconds),
            processor: best.processor.min(took.processor),
            megabytes: best.megabytes.max(took.megabytes),
            found: took.found,
        })
        .expect("it runs once")
}

/// Processor time of every child that has ended.
fn of_children() -> f64 {
    let text = fs::read_to_string("/proc/self/stat").expect("Linux tells");
    // The name, in brackets, may hold spaces.
    let after = text.rsplit_once(") ").map_or("", |(_, after)| after);
    let field = |number: usize| {
        after
            .split(' ')
            .nth(number)
            .and_then(|ticks| ticks.parse::<f64>().ok())
    };
    (field(13).unwrap_or(0.0) + field(14).unwrap_or(0.0)) / TICKS
}

/// Memory of a process and those below it at their peaks, in KB.
fn below(root: u32) -> u64 {
    let mut found = HashMap::new();
    let mut waiting = vec![root];
    while let Some(process) = waiting.pop() {
        let read = |name: &str| fs::read_to_string(format!("/proc/{process}/{name}")).unwrap_or_default();
        let status = read("status");
        let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
        let peak = line.and_then(|line| line.split_whitespace().next()?.parse::<u64>().ok());
        if found.insert(process, peak.unwrap_or(0)).is_none() {
            let children = read(&format!("task/{process}/children"));
            waiting.extend(
                children
                    .split_whitespace()
                    .filter_map(|child| child.parse::<u32>().ok()),
            );
        }
    }
    found.values().sum()
}
