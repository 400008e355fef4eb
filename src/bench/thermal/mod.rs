//! Gas, flame, draft, air and heat: what the switched parts do, and what is sensed of it.
//!
//! Each part is a file: it is made from the furnace's make and condition once, so that a step is a few dozen
//! multiplications. Flow networks are closed formulas, since every loss in them goes with the square of its flow; what lags
//! is carried over a step by its own exponential, so that steps of any length are stable.

mod air;
pub mod condition;
mod delivered;
mod draft;
mod flame;
mod fuel;
mod gas;
mod heat;
mod orifices;
mod pilot;
mod plant;
pub mod probe;
mod pump;
mod register;
mod room;
mod shown;
mod spread;
mod switch;
mod water;
mod way;

pub use delivered::delivered;
pub use draft::draft_of;
pub use plant::Plant;
pub use shown::{Shape, Shown};

#[cfg(test)]
mod tests;
