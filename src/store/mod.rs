//! Session files and tree files.
//!
//! A session is one file, `<id>.jsonl`, one record a line:
//!
//! ```text
//! {"seq":0,"format":1,"time":"2026-11-25T10:00:00Z","prev":"<64 zeros>","event":{…},"sum":"<sum of this line up to here>"}
//! {"seq":1,"time":"2026-11-25T10:02:10Z","prev":"<sum of the line before>","event":{…},"sum":"<sum of this line up to here>"}
//! ```
//!
//! `prev` is the SHA-256 of the exact bytes of the line before, without its newline; only the first record names the
//! format. What an event means is not known here. A record counts once the disk has confirmed it, and a file that is not
//! what was written is reported, never mended; only a last line that was cut off while it was written, and so confirmed to
//! nobody, is set aside. Sessions that are closed may be packed, many into one file; they are read as before.

mod archive;
mod cache;
mod canonical;
mod damage;
mod error;
mod fault;
mod fingerprint;
mod folder;
mod hash;
mod holder;
mod id;
mod identity;
mod journal;
mod kept;
mod listing;
mod made;
mod merged;
mod name;
mod open;
mod own;
mod packs;
mod record;
mod records;
mod repair;
mod signal;
mod strict;
mod summing;
mod tree_files;
mod verify;

pub use archive::{Archive, BadPack, Found, OwnNames};
pub use cache::{Cache, Draft};
pub use damage::{Damage, DamageKind, Warning};
pub use error::{Cause, StoreError};
pub use fault::{FileFault, FolderFault};
pub use fingerprint::Fingerprint;
pub use folder::{Reading, SessionFolder, TakenUp, default_folder};
pub use hash::{Hash, NotAHash, library_hash};
pub use id::SessionId;
pub use identity::Identity;
pub use journal::Journal;
pub use listing::{ChainState, Listed, Names};
pub use merged::Lies;
pub use name::Name;
pub use packs::{PACK_ENDING, PACK_LIMIT, Pack, Packed, Packs, Room, Streamed, Unpacked};
pub use record::Record;
pub use records::{ChainReport, Decoded, ReadError, Records};
pub use repair::Repair;
pub use signal::ignore_file_size_signal;
pub use summing::Summing;
pub use tree_files::{
    LibraryReadError, LibraryWriteError, read_alone, read_layers, read_library, rewrite_library, write_beside,
};
pub use verify::{verify, verify_file};

/// The newest format of session files that is read, and the one that is written.
pub const FORMAT: u64 = 1;

/// Longest line of a session file, without its newline, in bytes.
pub const LINE_LIMIT: usize = 1 << 20;

/// Largest session that is taken up or read as a whole, in bytes; a call of a day has less than a thousandth of it.
pub const SESSION_LIMIT: u64 = 64 << 20;

/// Largest file of a library, in bytes.
pub const TREE_FILE_LIMIT: u64 = 64 << 20;

/// Largest library, in bytes.
pub const LIBRARY_LIMIT: u64 = 1 << 30;
