//! Setting the terminal up, and giving it back.

use std::io::{self, BufWriter, IsTerminal, Stdout};
use std::mem::ManuallyDrop;
use std::sync::Once;

use crossterm::cursor::Show;
use crossterm::event::{DisableBracketedPaste, EnableBracketedPaste};
use crossterm::execute;
use crossterm::terminal::{
    Clear, ClearType, EnterAlternateScreen, LeaveAlternateScreen, disable_raw_mode, enable_raw_mode, size,
};
use ratatui::backend::CrosstermBackend;
use ratatui::layout::Rect;
use ratatui::{Frame, Terminal, TerminalOptions, Viewport};

/// No screen is larger; what a terminal says of its size is not to be believed.
const WIDEST: u16 = 500;
const TALLEST: u16 = 300;
/// Bytes of a frame that are written at once.
const WRITTEN: usize = 1 << 16;

/// The terminal while it is ours; it is given back when this is dropped, and when the program panics.
///
/// ratatui's own terminal is never dropped: it would write to a terminal that may be gone, and panic where standard error is
/// gone with it.
pub struct Screen(ManuallyDrop<Terminal<CrosstermBackend<BufWriter<Stdout>>>>);

impl Screen {
    /// Takes the terminal. Nothing is asked of it: one that never answers works as well.
    pub fn open() -> io::Result<Self> {
        if !io::stdin().is_terminal() || !io::stdout().is_terminal() {
            return Err(io::Error::other(
                "standard input and output must both be a terminal",
            ));
        }
        give_back_on_panic();
        let area = area()?;
        take()?;
        let backend = CrosstermBackend::new(BufWriter::with_capacity(WRITTEN, io::stdout()));
        // A viewport of our own size, since ratatui would take any size that the terminal claims.
        let viewport = Viewport::Fixed(area);
        let terminal = Terminal::with_options(backend, TerminalOptions { viewport });
        terminal
            .map(ManuallyDrop::new)
            .map(Self)
            .inspect_err(|_| give_back())
    }

    /// Draws what has changed.
    pub fn draw(&mut self, render: impl FnOnce(&mut Frame<'_>)) -> io::Result<()> {
        self.0.draw(render).map(|_| ())
    }

    /// Forgets what stands on the screen, and takes the terminal's present size.
    pub fn refresh(&mut self) -> io::Result<()> {
        // `Terminal::clear` would ask the terminal where its cursor is, and wait for an answer.
        self.0.resize(area()?)
    }

    /// Gives the terminal back while `meanwhile` runs.
    pub fn lend(&mut self, meanwhile: impl FnOnce() -> io::Result<()>) -> io::Result<()> {
        give_back();
        meanwhile()?;
        take()?;
        self.refresh()
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        give_back();
    }
}

fn area() -> io::Result<Rect> {
    let (width, height) = size()?;
    Ok(Rect::new(0, 0, width.min(WIDEST), height.min(TALLEST)))
}

fn take() -> io::Result<()> {
    enable_raw_mode()?;
    // A program that was killed may have left its screen behind, and only differences are drawn.
    execute!(
        io::stdout(),
        EnterAlternateScreen,
        Clear(ClearType::All),
        EnableBracketedPaste
    )
    .inspect_err(|_| give_back())
}

/// On a terminal that is gone there is nothing to give back, and nobody to tell.
fn give_back() {
    let _ = execute!(io::stdout(), DisableBracketedPaste, LeaveAlternateScreen, Show);
    let _ = disable_raw_mode();
}

fn give_back_on_panic() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        let before = std::panic::take_hook();
        std::panic::set_hook(Box::new(move |panic| {
            give_back();
            before(panic);
        }));
    });
}
