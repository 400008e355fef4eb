//! Doing something again whenever a library's files are saved.
//!
//! What the system says of the folder only wakes this up. What has changed is found by reading the library again: an editor
//! that writes beside the file and renames, or a save that changes nothing, cannot mislead it.

mod seen;
mod watched;

use std::io::{self, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::AtomicBool;
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::thread;
use std::time::{Duration, Instant};

use anstyle::Style;
use jiff::ZonedDateTime;
use rustix::event::{PollFd, PollFlags, Timespec, poll};
use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
use signal_hook::flag;
use signal_hook::iterator::Signals;

use super::failure::{Failure, WRONG_USE};
use super::look;
use crate::source::safe;
use seen::{Seen, words};
use watched::Watched;

/// How long nothing must happen after a save: an editor does several things at once.
const QUIET: Duration = Duration::from_millis(100);
/// The longest wait for that, where something happens all the time.
const LONGEST: Duration = Duration::from_secs(1);
/// How often it is looked whether anybody still reads, and whether the folder itself was replaced.
const TICK: Duration = Duration::from_secs(1);

/// Where the line that says what changed goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Header {
    /// Before each result.
    Beside,
    /// To standard error: the results are for another program.
    Apart,
}

/// What ends a wait.
enum Heard {
    Saved,
    Signal,
}

/// Prints what `round` says of a library and its overlays, and again whenever a file in one of their folders has changed, until a signal or until nobody reads.
///
/// A library that cannot be read is told like any other result: its author is about to mend it.
pub(super) fn run(
    base: Option<&Path>,
    overlays: &[PathBuf],
    header: Header,
    mut round: impl FnMut() -> Result<(String, u8), Failure>,
) -> Result<u8, Failure> {
    let folders: Vec<&Path> = base
        .into_iter()
        .chain(overlays.iter().map(PathBuf::as_path))
        .collect();
    if folders.is_empty() {
        return Err(Failure::new(
            WRONG_USE,
            "there is nothing to watch: the built-in library is part of the program",
        )
        .help("name the folder of a library, or of an overlay"));
    }
    let (news, heard) = channel();
    listen_for_signals(news.clone())?;
    // Watched before it is read for the first time, so that no save between the two is missed.
    let watched = folders.iter().map(|folder| Watched::new(folder, news.clone()));
    let mut watched: Vec<Watched> = watched.collect::<Result<_, _>>()?;
    let mut seen = Seen::default();
    seen.look(base, overlays);
    let names: Vec<String> = folders
        .iter()
        .map(|folder| safe(&folder.to_string_lossy()).to_string())
        .collect();
    let mut what = format!("watching {}", names.join(", "));
    let mut first = true;
    loop {
        let result = round();
        if let (true, Err(_), false) = (first, &result, folders.iter().all(|folder| folder.is_dir())) {
            return result.map(|(_, code)| code);
        }
        if !tell(&what, result, header, first)? {
            return Ok(0);
        }
        first = false;
        what = loop {
            match wait(&heard) {
                Some(Heard::Signal) => return Ok(0),
                None if nobody_reads() => return Ok(0),
                Some(Heard::Saved) => {
                    keep(&mut watched);
                }
                None if keep(&mut watched) => {}
                None => continue,
            }
            let changes = seen.look(base, overlays);
            if !changes.is_empty() {
                break words(&changes);
            }
        };
    }
}

/// Takes up the folders that stand there now; whether one of them is another.
fn keep(watched: &mut [Watched]) -> bool {
    let mut other = false;
    for folder in watched {
        other |= folder.keep();
    }
    other
}

/// Writes a header and a result; whether anybody still reads.
fn tell(
    what: &str,
    result: Result<(String, u8), Failure>,
    header: Header,
    first: bool,
) -> Result<bool, Failure> {
    let blank = if first { "" } else { "\n" };
    let time = ZonedDateTime::now().strftime("%H:%M:%S").to_string();
    let style = match look::of_findings(&io::stdout()).color && header == Header::Beside {
        true => Style::new().bold(),
        false => Style::new(),
    };
    let line = format!("{blank}{style}{time}  {what}{style:#}\n");
    let (text, failed) = match result {
        Ok((text, _)) => (text, false),
        Err(failure) => (format!("{failure}\n"), true),
    };
    let (out, err) = match (header, failed) {
        (Header::Beside, _) => (format!("{line}{text}"), String::new()),
        (Header::Apart, false) => (text, line),
        (Header::Apart, true) => (String::new(), format!("{line}{text}")),
    };
    // A reader of messages that has gone leaves the results to be read.
    let _ = io::stderr().write_all(err.as_bytes());
    let mut stdout = io::stdout().lock();
    match stdout.write_all(out.as_bytes()).and_then(|()| stdout.flush()) {
        Ok(()) => Ok(true),
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(false),
        Err(_) if stdout.is_terminal() && nobody_reads() => Ok(false),
        Err(error) => Err(error.into()),
    }
}

/// Waits until something was saved and the folder is quiet again, or a signal came; nothing where a tick has passed.
fn wait(heard: &Receiver<Heard>) -> Option<Heard> {
    match heard.recv_timeout(TICK) {
        Ok(Heard::Saved) => {}
        Ok(Heard::Signal) | Err(RecvTimeoutError::Disconnected) => return Some(Heard::Signal),
        Err(RecvTimeoutError::Timeout) => return None,
    }
    let since = Instant::now();
    while since.elapsed() < LONGEST {
        match heard.recv_timeout(QUIET) {
            Ok(Heard::Saved) => {}
            Ok(Heard::Signal) => return Some(Heard::Signal),
            Err(_) => break,
        }
    }
    Some(Heard::Saved)
}

/// Whether the other end of standard output is gone: a pipe's reader, or the terminal.
fn nobody_reads() -> bool {
    let stdout = io::stdout();
    let mut ends = [PollFd::new(&stdout, PollFlags::empty())];
    let at_once = Timespec {
        tv_sec: 0,
        tv_nsec: 0,
    };
    let gone = PollFlags::ERR | PollFlags::HUP | PollFlags::NVAL;
    poll(&mut ends, Some(&at_once)).is_ok() && ends[0].revents().intersects(gone)
}

/// Sends the first signal that asks to end as news; the second ends the program wherever it is.
fn listen_for_signals(news: Sender<Heard>) -> Result<(), Failure> {
    let ending = Arc::new(AtomicBool::new(false));
    for signal in [SIGHUP, SIGINT, SIGTERM] {
        flag::register_conditional_default(signal, Arc::clone(&ending))?;
        flag::register(signal, Arc::clone(&ending))?;
    }
    let mut signals = Signals::new([SIGHUP, SIGINT, SIGTERM])?;
    thread::spawn(move || {
        for _ in signals.forever() {
            if news.send(Heard::Signal).is_err() {
                return;
            }
        }
    });
    Ok(())
}
