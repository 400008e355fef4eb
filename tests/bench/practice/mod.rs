//! Practice, without a face: apprentices at many furnaces.

mod apprentices;
mod class;
mod debriefs;
mod free;
mod guided;
mod same;
