//! The plant against figures from outside.

mod air;
mod burning;
mod call;
mod draft;
mod gas;
mod heat;
