//! A simulated furnace: physics and controls that can be broken in every way the trees know.
//!
//! ```text
//! Make (what was built) + Condition (what is broken) → Furnace
//! thermal: Drive → Process      gas, flame, draft, air, heat: what the switched parts do to the house and the exchanger
//! electric: Process → Drive     power, chain, board, sequence: what is switched on by what is sensed
//! Run = one call from cold, stepped to its end, with what every probe would have shown at each moment that matters
//! Machine = a furnace as a technician meets it: asked for readings and signs, worked upon by steps
//! Technician + Machine → a walked call; trials: many calls at many furnaces, each verdict held against the truth
//! season: technicians of different habits at many furnaces through a winter, with the calls that come back; what was true is known
//! cost: what a tree takes to come to a verdict, against the least that any order of its questions takes
//! practice: an apprentice in the technician's place
//! ```
//!
//! Pure and seeded: no file, no clock, no terminal. A reading is what the physics give, never a table of answers by fault.

pub mod condition;
pub mod cost;
pub mod dice;
pub mod electric;
pub mod faults;
pub mod furnace;
mod human;
pub mod machine;
pub mod make;
pub mod meter;
pub mod practice;
pub mod probe;
pub mod process;
pub mod season;
pub mod simulated;
pub mod technician;
pub mod thermal;
pub mod told;
pub mod trials;
