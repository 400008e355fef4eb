//! The program on a terminal of its own.

use std::io::{Read, Write};
use std::num::NonZero;
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};

use portable_pty::{Child, CommandBuilder, MasterPty, PtySize, native_pty_system};
use tempfile::TempDir;

/// What a slow machine may take for anything that a person would call at once.
const PATIENCE: Duration = Duration::from_secs(20);

struct Terminal {
    master: Box<dyn MasterPty + Send>,
    writer: Box<dyn Write + Send>,
    child: Box<dyn Child + Send + Sync>,
    output: Receiver<Vec<u8>>,
    screen: vt100::Parser,
    raw: Vec<u8>,
    _sessions: TempDir,
}

impl Terminal {
    fn open(arguments: &[&str]) -> Self {
        let sessions = tempfile::tempdir().unwrap();
        let size = PtySize {
            rows: 24,
            cols: 80,
            pixel_width: 0,
            pixel_height: 0,
        };
        let pair = native_pty_system().openpty(size).unwrap();
        let mut command = CommandBuilder::new(env!("CARGO_BIN_EXE_proofwalk"));
        command.args(arguments);
        command.args(["--sessions", sessions.path().to_str().unwrap()]);
        command.cwd(sessions.path());
        command.env("TERM", "xterm");
        command.env("LC_ALL", "C.UTF-8");
        let child = pair.slave.spawn_command(command).unwrap();
        let mut reader = pair.master.try_clone_reader().unwrap();
        let (sender, output) = channel();
        std::thread::spawn(move || {
            let mut bytes = [0; 4096];
            while let Ok(read @ 1..) = reader.read(&mut bytes) {
                if sender.send(bytes[..read].to_vec()).is_err() {
                    return;
                }
            }
        });
        Self {
            writer: pair.master.take_writer().unwrap(),
            master: pair.master,
            child,
            output,
            screen: vt100::Parser::new(NonZero::new(24).unwrap(), NonZero::new(80).unwrap(), 0),
            raw: Vec::new(),
            _sessions: sessions,
        }
    }

    fn send(&mut self, keys: &str) {
        self.writer.write_all(keys.as_bytes()).unwrap();
    }

    /// Waits until the screen shows a text.
    #[track_caller]
    fn wait_for(&mut self, text: &str) {
        let start = Instant::now();
        while !self.screen.screen().contents().contains(text) {
            assert!(
                start.elapsed() < PATIENCE,
                "no `{text}` in\n{}",
                self.screen.screen().contents()
            );
            if let Ok(bytes) = self.output.recv_timeout(Duration::from_millis(50)) {
                self.screen.process(&bytes);
                self.raw.extend(bytes);
            }
        }
    }

    fn code(mut self) -> u32 {
        self.child.wait().unwrap().exit_code()
    }
}

#[test]
fn keys_in_one_burst_are_one_answer() {
    let mut terminal = Terminal::open(&["walk", "no-heat"]);
    terminal.wait_for("done Enter");
    terminal.send("\r\r\r");
    terminal.wait_for("Keys that came together");
    terminal.send("\u{14}");
    terminal.wait_for("The answers so far");
    let shown = terminal.screen.screen().contents();
    assert!(shown.contains(" 1  ") && !shown.contains(" 2  "), "{shown}");
}

#[test]
fn leaving_gives_the_terminal_back_and_asks_nothing_of_it() {
    let mut terminal = Terminal::open(&["walk", "no-heat"]);
    terminal.wait_for("done Enter");
    terminal.send("\u{3}");
    terminal.wait_for("proofwalk resume");
    terminal.send("\u{3}");
    terminal.wait_for("Left open.");
    assert!(!terminal.screen.screen().alternate_screen());
    assert!(!terminal.screen.screen().bracketed_paste());
    assert!(!terminal.screen.screen().hide_cursor());
    let asks_for_cursor = terminal.raw.windows(4).any(|bytes| bytes == b"\x1b[6n");
    assert!(!asks_for_cursor);
    assert_eq!(terminal.code(), 0);
}

#[test]
fn a_lost_terminal_leaves_the_call_open() {
    let mut terminal = Terminal::open(&["walk", "no-heat"]);
    terminal.wait_for("done Enter");
    let Terminal {
        master,
        mut writer,
        output,
        mut child,
        ..
    } = terminal;
    // The reading thread holds a handle too, and lets go of it when it has nobody to hand the next output to.
    drop(output);
    writer.write_all(b"\x12").unwrap();
    drop((master, writer));
    let start = Instant::now();
    let status = loop {
        if let Some(status) = child.try_wait().unwrap() {
            break status;
        }
        assert!(start.elapsed() < PATIENCE, "the program outlived its terminal");
        std::thread::sleep(Duration::from_millis(5));
    };
    assert_eq!(status.exit_code(), 0);
}

#[test]
fn lines_typed_ahead_are_not_taken() {
    let mut terminal = Terminal::open(&["walk", "no-heat", "--plain"]);
    terminal.wait_for("Answer (done):");
    terminal.send("done\n1\n1\n");
    terminal.wait_for("came before the question below was shown");
}
