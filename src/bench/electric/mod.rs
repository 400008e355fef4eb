//! Power, wires, chain, board and sequence: what is switched on by what is sensed.

pub mod condition;
