//! Gas, flame, draft, air and heat: what the switched parts do, and what is sensed of it.

pub mod condition;
