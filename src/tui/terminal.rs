//! The terminal: the only part of the screen that knows one.

mod events;
mod face;
mod screen;
mod signals;

use std::io;

use face::{Face, Heard};

use super::model::{Dialog, Effect, Message, Scene};
use super::update::update;
use crate::face::Left;
use crate::face::Look;
use crate::face::{Home, HomeChoice};
use crate::walk::{Call, Question};

/// Shows the first screen until something is chosen. A hang-up chooses nothing.
///
/// # Errors
///
/// Where standard input or output is no terminal, or cannot be read or written.
pub fn home(home: &Home, look: Look) -> io::Result<HomeChoice> {
    let mut face = Face::open(look)?;
    let scene = Scene::Home(home);
    loop {
        let message = match face.next(scene)? {
            Heard::Message(message) => message,
            Heard::Signal(_) => return Ok(HomeChoice::Quit),
        };
        match update(&mut face.model, scene, message) {
            Some(Effect::Choose(choice)) => return Ok(choice),
            Some(Effect::Redraw) => face.redraw(),
            Some(Effect::Suspend) => face.suspend()?,
            _ => {}
        }
    }
}

/// Walks a call on the screen until it is closed or left.
///
/// # Errors
///
/// Where standard input or output is no terminal, or cannot be read or written. Every answer that was shown as taken is
/// saved all the same.
pub fn call(call: &mut dyn Call, look: Look) -> io::Result<Left> {
    let mut face = Face::open(look)?;
    if !call.known().is_empty() {
        face.model.dialog = Some(Dialog::Known);
    }
    loop {
        let message = match face.next(scene(call))? {
            Heard::Message(message) => message,
            Heard::Signal(signal) => return Ok(Left::HungUp(signal)),
        };
        let pasted = matches!(message, Message::Paste(_));
        match update(&mut face.model, scene(call), message) {
            Some(Effect::CarryOut(command)) => {
                let done = call
                    .carry_out(command)
                    .map_or_else(Message::NotDone, |()| Message::CarriedOut);
                update(&mut face.model, scene(call), done);
                if !matches!(call.ask().question, Question::Closed) {
                    settle(&mut face, call)?;
                } else if !call.known_after().is_empty() {
                    face.model.dialog = Some(Dialog::Known);
                }
            }
            Some(Effect::Leave(left)) => return Ok(left),
            Some(Effect::Redraw) => face.redraw(),
            Some(Effect::Suspend) => face.suspend()?,
            // A paste whose text ends the paste early goes on as keys.
            _ if pasted => settle(&mut face, call)?,
            _ => {}
        }
    }
}

/// Shows what has come of a message, and drops keys that came before anybody could read it.
fn settle(face: &mut Face, call: &dyn Call) -> io::Result<()> {
    if face.settle(scene(call))? {
        update(&mut face.model, scene(call), Message::TooEarly);
    }
    Ok(())
}

fn scene(call: &dyn Call) -> Scene<'_> {
    Scene::Call {
        ask: call.ask(),
        standing: call.standing(),
        known: match call.known_after() {
            [] => call.known(),
            after => after,
        },
    }
}
