//! Signals that end the face, or hand the terminal to the shell.

use std::io;
use std::sync::Arc;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM, SIGTSTP};
use signal_hook::flag;
use signal_hook::low_level::emulate_default_handler;

/// Handlers stand for the rest of the process, so they are set once.
static CAUGHT: OnceLock<Caught> = OnceLock::new();

struct Caught {
    /// The number of the signal that asks to end; 0 where none does.
    ending: Arc<AtomicUsize>,
    stopping: Arc<AtomicBool>,
    /// While nobody watches, signals do what they do by default.
    idle: Arc<AtomicBool>,
}

/// Signals are caught while this lives.
pub struct Signals(&'static Caught);

impl Signals {
    /// Starts to catch them.
    pub fn watch() -> io::Result<Self> {
        let caught = match CAUGHT.get() {
            Some(caught) => caught,
            None => {
                let caught = Caught::register()?;
                CAUGHT.get_or_init(|| caught)
            }
        };
        caught.idle.store(false, Ordering::SeqCst);
        Ok(Self(caught))
    }

    /// The number of the signal that asks to end, once there is one.
    pub fn ending(&self) -> Option<i32> {
        let signal = self.0.ending.load(Ordering::SeqCst);
        i32::try_from(signal).ok().filter(|signal| *signal != 0)
    }

    /// Whether the process was asked to stop since the last time.
    pub fn stopping(&self) -> bool {
        self.0.stopping.swap(false, Ordering::SeqCst)
    }

    /// Stops the process until the shell lets it go on.
    pub fn stop() -> io::Result<()> {
        emulate_default_handler(SIGTSTP)
    }
}

impl Drop for Signals {
    fn drop(&mut self) {
        self.0.idle.store(true, Ordering::SeqCst);
    }
}

impl Caught {
    fn register() -> io::Result<Self> {
        let caught = Self {
            ending: Arc::default(),
            stopping: Arc::default(),
            idle: Arc::default(),
        };
        for signal in [SIGHUP, SIGINT, SIGTERM, SIGTSTP] {
            flag::register_conditional_default(signal, Arc::clone(&caught.idle))?;
        }
        for signal in [SIGHUP, SIGINT, SIGTERM] {
            flag::register_usize(signal, Arc::clone(&caught.ending), signal.unsigned_abs() as usize)?;
        }
        flag::register(SIGTSTP, Arc::clone(&caught.stopping))?;
        Ok(caught)
    }
}
