//! The line face: for pipes, screen readers and tiny terminals.
//!
//! It asks in plain lines and takes one line for each answer. Nothing is drawn, and no escape sequence is written.

mod closing;
mod dialogue;
mod first;
mod line;
mod question;
mod standing;
mod voice;
mod words;

pub use dialogue::call;
pub use first::home;
pub use line::typed_ahead;
pub use voice::Options;
