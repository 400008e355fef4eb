//! A pseudo-terminal with a program in it, and what its screen shows.

use std::io::{Read, Write};
use std::num::NonZero;
use std::sync::{Arc, Mutex};
use std::thread;

use portable_pty::{Child, CommandBuilder, MasterPty, PtySize, native_pty_system};

use crate::common::scene::{PROGRAM, Scene};
use crate::common::wait::until;
use crate::seat::Terminal;

pub struct Pty {
    pub child: Box<dyn Child + Send + Sync>,
    master: Box<dyn MasterPty + Send>,
    keys: Box<dyn Write + Send>,
    screen: Arc<Mutex<vt100::Parser>>,
}

/// The program with a scene's sessions in a terminal of this size.
pub fn proofwalk(scene: &Scene, arguments: &[&str], columns: u16, rows: u16) -> Pty {
    let mut command = CommandBuilder::new(PROGRAM);
    command.args(arguments);
    command.arg("--sessions");
    command.arg(scene.sessions());
    Pty::start(command, columns, rows)
}

impl Pty {
    pub fn start(mut command: CommandBuilder, columns: u16, rows: u16) -> Self {
        command.env_clear();
        command.env("PATH", std::env::var_os("PATH").unwrap_or_default());
        command.env("TERM", "xterm-256color");
        command.env("LANG", "C.UTF-8");
        let pair = native_pty_system().openpty(size(columns, rows)).unwrap();
        let child = pair.slave.spawn_command(command).unwrap();
        drop(pair.slave);
        let screen = Arc::new(Mutex::new(blank(columns, rows)));
        let into = Arc::clone(&screen);
        let mut output = pair.master.try_clone_reader().unwrap();
        thread::spawn(move || {
            let mut bytes = [0; 4096];
            while let Ok(count @ 1..) = output.read(&mut bytes) {
                into.lock().unwrap().process(&bytes[..count]);
            }
        });
        let keys = pair.master.take_writer().unwrap();
        Self {
            child,
            master: pair.master,
            keys,
            screen,
        }
    }

    /// Tells the program of another size; what is drawn meanwhile is still taken in at the old one.
    pub fn resize(&self, columns: u16, rows: u16) {
        self.master.resize(size(columns, rows)).unwrap();
    }

    /// Takes in what is drawn at this size from now on.
    pub fn show(&self, columns: u16, rows: u16) {
        *self.screen.lock().unwrap() = blank(columns, rows);
        self.resize(columns, rows);
    }

    /// The exit code, once the program has ended.
    #[track_caller]
    pub fn ends(&mut self) -> u32 {
        let status = until(|| self.child.try_wait().unwrap());
        status
            .unwrap_or_else(|| panic!("the program goes on\n{}", self.screen()))
            .exit_code()
    }

    /// Whether the program has left the screen as it found it: the usual one, the cursor shown, no paste marks.
    pub fn is_given_back(&self) -> bool {
        let parser = self.screen.lock().unwrap();
        let screen = parser.screen();
        !screen.alternate_screen() && !screen.hide_cursor() && !screen.bracketed_paste()
    }
}

impl Terminal for Pty {
    fn screen(&self) -> String {
        let parser = self.screen.lock().unwrap();
        let screen = parser.screen();
        screen
            .rows(0, screen.size().1.get())
            .collect::<Vec<_>>()
            .join("\n")
    }

    fn send(&mut self, keys: &str) {
        self.keys.write_all(keys.as_bytes()).unwrap();
        self.keys.flush().unwrap();
    }
}

impl Drop for Pty {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn blank(columns: u16, rows: u16) -> vt100::Parser {
    let (rows, columns) = (NonZero::new(rows).unwrap(), NonZero::new(columns).unwrap());
    vt100::Parser::new(rows, columns, 0)
}

fn size(columns: u16, rows: u16) -> PtySize {
    PtySize {
        rows,
        cols: columns,
        pixel_width: 0,
        pixel_height: 0,
    }
}
