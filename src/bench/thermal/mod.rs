//! Gas, flame, draft, air and heat: what the switched parts do, and what is sensed of it.

pub mod condition;
mod plant;
mod shown;
mod spread;

pub use plant::Plant;
pub use shown::{Shape, Shown};
