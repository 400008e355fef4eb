//! What an audit takes, beside what a company would use instead: on a million calls, and on a hundred thousand files.
//!
//! `cargo bench --bench audit` makes its archives below the target folder (13 GB, removed at the end), and takes some minutes on two
//! idle cores; without cargo's `--bench` they are small, to see that it runs. `PROOFWALK_BENCH_DATA` names a folder to make them in and to
//! leave them in for the next run, `PROOFWALK_BENCH_CALLS` says how many calls there are, `PYTHON` which Python has DuckDB.

#![allow(
    clippy::expect_used,
    clippy::panic,
    missing_docs,
    reason = "a benchmark that cannot go on stops"
)]

mod archive;
mod calls;
mod meter;
mod plan;
mod rivals;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::thread::sleep;
use std::time::Duration;

use archive::Walked;
use meter::{Took, best, run};
use proofwalk::store::{library_hash, read_library};
use proofwalk::walk::LibraryMark;
use rivals::Rivals;

/// Of so many calls, one in ten is in the smaller archive of separate files.
const FEWER: usize = 10;

/// Seconds that files must have rested before an audit is kept.
const REST: Duration = Duration::from_secs(4);

fn main() {
    let at_length = std::env::args().any(|argument| argument == "--bench");
    let asked = std::env::var("PROOFWALK_BENCH_CALLS").ok();
    let usual = if at_length { 1_000_000 } else { 500 };
    let calls = asked.map_or(usual, |calls| calls.parse().expect("a number of calls"));
    let kept = std::env::var_os("PROOFWALK_BENCH_DATA").map(PathBuf::from);
    let data = (kept.clone()).unwrap_or_else(|| Path::new(env!("CARGO_TARGET_TMPDIR")).join("audit"));
    let bench = Bench {
        walked: walked(),
        rivals: Rivals::look(),
        times: if at_length { 2 } else { 1 },
        data,
    };
    fs::create_dir_all(&bench.data).expect("a folder can be made");
    bench.packed(calls);
    bench.loose(calls, false);
    bench.loose(calls / FEWER, true);
    if kept.is_none() {
        fs::remove_dir_all(&bench.data).expect("it was made here");
    }
}

struct Bench {
    walked: Walked,
    rivals: Rivals,
    times: usize,
    data: PathBuf,
}

impl Bench {
    /// Packs, beside DuckDB on the same lines, unpacked and with their session in each.
    fn packed(&self, calls: usize) {
        let (packs, lines) = (
            self.made(&format!("packs-{calls}")),
            self.made(&format!("lines-{calls}")),
        );
        if !packs.join("libraries").exists() {
            archive::packed(&packs, &lines, calls, &self.walked);
        }
        println!("\n{calls} calls in packs");
        let ours = self.ours(&packs);
        self.row(
            "DuckDB, on the lines unpacked",
            self.rivals.duckdb("lines", &lines),
            ours,
        );
    }

    /// Files of their own, beside DuckDB on the same files, and the shell.
    fn loose(&self, calls: usize, with_shell: bool) {
        let at = self.made(&format!("loose-{calls}"));
        if !at.join("libraries").exists() {
            archive::loose(&at, calls, &self.walked);
        }
        println!("\n{calls} calls in files of their own");
        let ours = self.ours(&at);
        self.row(
            "DuckDB, on the same files",
            self.rivals.duckdb("files", &at),
            ours,
        );
        if with_shell {
            for (tool, what) in rivals::SHELL {
                self.row(what, self.rivals.shell(tool, &at), ours);
            }
        }
    }

    fn made(&self, name: &str) -> PathBuf {
        let at = self.data.join(name);
        fs::create_dir_all(&at).expect("a folder can be made");
        at
    }

    /// Our own rows: every sum checked, and then nothing changed.
    fn ours(&self, archive: &Path) -> Took {
        println!(
            "{:36} {:>8} {:>7} {:>8} {:>7} {:>6} {:>9}",
            "", "s", "of ours", "CPU s", "of ours", "MB", "callbacks"
        );
        let cache = self.data.join("cache");
        let audit = |more: &[&str]| {
            let mut command = Command::new(env!("CARGO_BIN_EXE_proofwalk"));
            command
                .arg("audit")
                .arg(archive)
                .args(more)
                .env("XDG_CACHE_HOME", &cache);
            run(&mut command, &self.data.join("out"))
        };
        sleep(REST);
        let fresh = best(self.times, || audit(&["--fresh"]));
        self.row("proofwalk audit, every sum checked", Some(fresh), fresh);
        let said = fs::read_to_string(self.data.join("out")).expect("it was written");
        assert!(!said.contains("damaged"), "{said}");
        self.row(
            "the same, nothing changed",
            Some(best(self.times, || audit(&[]))),
            fresh,
        );
        let another = best(self.times, || {
            let more = archive::one_more(archive, &self.walked);
            let took = audit(&[]);
            fs::remove_file(more).expect("it was made here");
            took
        });
        self.row("the same, and one call more", Some(another), fresh);
        fresh
    }

    fn row(&self, what: &str, took: Option<Took>, ours: Took) {
        match took {
            Some(took) => println!(
                "{what:36} {:8.2} {:7.3} {:8.2} {:7.3} {:6.0} {:>9}",
                took.seconds,
                took.seconds / ours.seconds,
                took.processor,
                took.processor / ours.processor.max(0.01),
                took.megabytes,
                took.found.map(|found| found.to_string()).unwrap_or_default()
            ),
            None => println!("{what:36} skipped: it is not installed here"),
        }
    }
}

fn walked() -> Walked {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("trees");
    let files = read_library(&root).expect("the built-in library can be read");
    let hash = library_hash(&files);
    let mark = LibraryMark {
        name: "residential-gas-furnace".to_owned(),
        edition: "2026.1".to_owned(),
        overlays: Vec::new(),
        hash: hash.to_string(),
    };
    Walked { files, hash, mark }
}
