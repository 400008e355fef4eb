//! Packs: the closed sessions of a month in one compressed file, which everything reads as it reads their own files.
//!
//! A pack is a ZIP file, one entry a session, named as its file was: any tool opens it. Its libraries stay beside it in their
//! folder. A session that has a file of its own is read from that.
//!
//! - `pack`: one pack's table of contents, kept small.
//! - `doubled`: entries of one name, which no reader of ZIP files tells apart.
//! - `entry`: a session read out of it, bounded and checked.
//! - `found`: the packs of a folder, and a session's text wherever it lies.
//! - `hidden`: what is being written, and what a killed run left of it.
//! - `room`: many short sessions, read one after the other.
//! - `target`: the file being written, as the writer of ZIP files sees it.
//! - `write`, `unpack`: there and back. Nothing is removed before what takes its place was read back from the disk.

mod doubled;
mod entry;
mod found;
mod hidden;
mod pack;
mod room;
mod target;
mod unpack;
mod write;

pub use found::Packs;
pub(super) use found::{Known, Source};
pub use pack::Pack;
pub(super) use pack::{Cover, Extent};
pub use room::{Room, Streamed};
pub use unpack::Unpacked;
pub use write::Packed;

/// How the name of a pack ends.
pub const PACK_ENDING: &str = ".sessions.zip";

/// Most sessions that a pack may have.
pub const PACK_LIMIT: usize = 1 << 20;
