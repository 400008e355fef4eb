//! The plant against figures from outside.

mod call;
mod look;
