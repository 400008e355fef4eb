//! Practice: an apprentice at a simulated furnace with a hidden fault, on the screens of a real call.
//!
//! [`Exercise`] stands between a face and the walk: it turns the walk's questions into where the probe goes or what is taken
//! next, lets the furnace answer, and counts minutes. What it hands on are the events of an ordinary call, so that a practice
//! call is kept, read and checked like any other. [`debrief`] tells afterwards what the fault was.

mod ahead;
mod answer;
mod backing;
mod came;
mod debrief;
mod elsewhere;
mod exercise;
mod found;
mod groups;
mod here;
mod level;
mod mark;
mod menu;
mod near;
mod overlooked;
mod places;
mod retraced;
mod score;
mod shown;
mod told;
mod way;

pub use backing::Backing;
pub use came::Came;
pub use debrief::{Debrief, Proof, Reference, TreeCame, debrief};
pub use exercise::Exercise;
pub use groups::{Group, Groups};
pub use level::{Level, Setup};
pub use mark::Mark;
pub use overlooked::LeftRunning;
pub use retraced::ByPractice;
pub use score::{Misplaced, Score};

/// How an apprentice practises.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// The tree asks; the apprentice says where the probe goes.
    Guided,
    /// The apprentice chooses what is taken, and names the fault.
    Free,
}
