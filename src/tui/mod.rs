//! The screen.
//!
//! Model, message, update, view: [`Model`] is what the screen remembers beside the call, [`update`] says what a [`Message`]
//! changes and what is to be done, [`view`] draws. All three are pure; `terminal` alone knows a terminal.

mod field;
mod gauge;
pub mod keys;
mod model;
mod page;
mod screens;
mod sheet;
mod terminal;
mod theme;
mod typed;
mod update;
mod view;

pub use crate::face::{Home, HomeChoice, HomeLine, Left, Look};
pub use model::{Dialog, Effect, Message, Model, Purpose, Said, Scene};
pub use terminal::{call, home};
pub use update::update;
pub use view::view;
