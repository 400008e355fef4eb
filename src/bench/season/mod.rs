//! A season of a company's calls at simulated furnaces: technicians of different habits, furnaces with faults of their own, and
//! the calls that come back because something was got wrong. What was true is known.
//!
//! ```text
//! Crew: who works, and with which habit
//! Season::furnace(n): one furnace from autumn to spring ─► Visit, Visit, … each walked by the trees, with times and truth
//! Worker: a technician at a furnace, by habit: reads, writes down, guesses, insists, leaves open
//! planted: what the first furnaces of every season meet, whatever the seed
//! ```
//!
//! A furnace knows nothing of the others, so seasons of any size take the memory of one furnace, and can be walked on any
//! number of threads. The same seed is the same season.

mod crew;
mod furnace;
mod planted;
mod visit;
mod worker;

pub use crew::{Crew, Habit};
pub use furnace::{LENGTH, Season};
pub use visit::{Said, Truth, Visit};
