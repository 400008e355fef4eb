//! The loop around the terminal: draw what changed, wait, listen.

use std::collections::VecDeque;
use std::io;
use std::time::Duration;

use crossterm::event::{self, Event};
use rustix::event::{PollFd, PollFlags, Timespec, poll};
use rustix::io::Errno;
use signal_hook::consts::SIGHUP;

use super::events::message;
use super::screen::Screen;
use super::signals::Signals;
use crate::face::Look;
use crate::tui::keys::Press;
use crate::tui::model::{Message, Model, Scene};
use crate::tui::view::view;

/// A signal that comes just before the wait is noticed after it.
const WAIT: Duration = Duration::from_millis(80);
/// Keys closer together than this were not pressed by somebody who reads.
const QUIET: Duration = Duration::from_millis(60);
/// How often it is waited for quiet: a key that is held down must not hold the screen for ever.
const PATIENCE: usize = 16;

/// Events taken in before the screen is drawn again, however many more there are.
const AT_ONCE: usize = 1000;

/// What was heard.
pub enum Heard {
    /// A message.
    Message(Message),
    /// The number of a signal: the face must end.
    Signal(i32),
}

/// The screen, what it remembers, and what was heard but not yet taken in.
pub struct Face {
    /// What the screen remembers.
    pub model: Model,
    screen: Screen,
    signals: Signals,
    heard: VecDeque<Message>,
    lost: bool,
    changed: bool,
    /// Whether all of it must be drawn again.
    stale: bool,
    look: Look,
}

impl Face {
    /// Takes the terminal.
    pub fn open(look: Look) -> io::Result<Self> {
        Ok(Self {
            model: Model::default(),
            signals: Signals::watch()?,
            screen: Screen::open()?,
            heard: VecDeque::new(),
            lost: false,
            changed: true,
            stale: false,
            look,
        })
    }

    /// Draws if anything has changed, and waits for the next message.
    pub fn next(&mut self, scene: Scene<'_>) -> io::Result<Heard> {
        loop {
            if let Some(signal) = self.ending() {
                return Ok(Heard::Signal(signal));
            }
            if self.signals.stopping() {
                self.suspend()?;
            }
            if let Some(message) = self.heard.pop_front() {
                self.changed = true;
                return Ok(Heard::Message(message));
            }
            self.draw(scene)?;
            self.listen(WAIT)?;
        }
    }

    /// Draws what has come of a message, and waits until no key comes any more; whether any came, and was dropped.
    pub fn settle(&mut self, scene: Scene<'_>) -> io::Result<bool> {
        self.changed = true;
        self.draw(scene)?;
        let mut early = false;
        for _ in 0..PATIENCE {
            let more = self.listen(QUIET)?;
            let count = self.heard.len();
            self.heard.retain(is_always_meant);
            early |= self.heard.len() < count;
            if !more || self.ending().is_some() {
                break;
            }
        }
        self.changed |= early;
        Ok(early)
    }

    /// Draws the whole screen again.
    pub fn redraw(&mut self) {
        self.changed = true;
        self.stale = true;
    }

    /// Hands the terminal to the shell until it lets the program go on.
    pub fn suspend(&mut self) -> io::Result<()> {
        self.changed = true;
        self.screen.lend(Signals::stop)
    }

    fn ending(&self) -> Option<i32> {
        self.signals.ending().or(self.lost.then_some(SIGHUP))
    }

    fn draw(&mut self, scene: Scene<'_>) -> io::Result<()> {
        if !std::mem::take(&mut self.changed) {
            return Ok(());
        }
        if std::mem::take(&mut self.stale) {
            let refreshed = self.screen.refresh();
            self.unless_lost(refreshed)?;
        }
        let mut most = 0;
        let drawn = self
            .screen
            .draw(|frame| most = view(frame, &self.model, scene, self.look));
        self.model.scroll_most = most;
        self.model.scroll = self.model.scroll.min(most);
        self.unless_lost(drawn).map(|_| ())
    }

    /// Waits for the terminal and takes in all it has sent; whether that was anything.
    fn listen(&mut self, wait: Duration) -> io::Result<bool> {
        let stdin = io::stdin();
        let mut fds = [PollFd::new(&stdin, PollFlags::IN)];
        let wait = Timespec::try_from(wait).map_err(io::Error::other)?;
        match poll(&mut fds, Some(&wait)) {
            Ok(_) | Err(Errno::INTR) => {}
            Err(errno) => return Err(errno.into()),
        }
        // On a terminal that is gone crossterm would read nothing, over and over.
        if fds[0]
            .revents()
            .intersects(PollFlags::HUP | PollFlags::ERR | PollFlags::NVAL)
        {
            self.lost = true;
            return Ok(false);
        }
        let mut any = false;
        for _ in 0..AT_ONCE {
            let waiting = event::poll(Duration::ZERO);
            if self.unless_lost(waiting)? != Some(true) {
                return Ok(any);
            }
            let event = event::read();
            let Some(event) = self.unless_lost(event)? else {
                return Ok(any);
            };
            any = true;
            if let Event::Resize(..) = event {
                self.redraw();
            }
            self.heard.extend(message(event));
        }
        Ok(any)
    }

    /// A terminal that is gone is no error: the call stays open.
    fn unless_lost<T>(&mut self, result: io::Result<T>) -> io::Result<Option<T>> {
        match result {
            Ok(value) => Ok(Some(value)),
            Err(error) if is_gone(&error) => {
                self.lost = true;
                Ok(None)
            }
            Err(error) => Err(error),
        }
    }
}

/// Danger and leaving answer nothing, so they are never too early.
fn is_always_meant(message: &Message) -> bool {
    matches!(message, Message::Press(Press::Ctrl('c' | 'd' | 'q')))
}

fn is_gone(error: &io::Error) -> bool {
    let gone = [Errno::IO, Errno::PIPE, Errno::NXIO, Errno::BADF].map(Errno::raw_os_error);
    error.kind() == io::ErrorKind::UnexpectedEof
        || error.raw_os_error().is_some_and(|number| gone.contains(&number))
}
