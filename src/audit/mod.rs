//! Many service calls: which came back, which verdicts were wrong, and what the numbers are too small to say.
//!
//! A session's events are told into a [`Call`] ([`Teller`]), an [`Auditor`] takes calls one at a time, and what it found is an
//! [`Audit`]: plain data, which `report` draws and JSON holds. No files and no clock are known here.
//!
//! ```text
//! events, with the words of their library ──Teller──► Call ──Auditor::add──► (small records by equipment) ──finish──► Audit
//! ```
//!
//! - `call`, `said`, `tell`, `meanings`: what one session boils down to, and what its library says of the names in it.
//! - `auditor`, `visits`, `names`, `chains`, `blocks`: the fold. It keeps a few dozen bytes a call, and nothing that grows with events.
//! - `clocks`: whose times the ends of an archive are taken from.
//! - `findings/`: one file each, with its collector and its result.
//! - `groups`: by technician, tree, part and month.
//! - `statistics/`: what a count is worth.
//! - `summary`: the result.
//!
//! An audit finds causes; it does not assign liability.

mod auditor;
mod bits;
mod blocks;
mod call;
mod chains;
mod clocks;
pub mod findings;
mod groups;
mod learned;
mod meanings;
mod names;
mod place;
mod rows;
mod said;
pub mod statistics;
mod summary;
mod tell;
mod visits;

pub use auditor::{Auditor, Window};
pub use call::{Call, Ending, NotTaken, PutBacks, Remedy, Stay, Taken, Verdict};
pub use findings::WhatIsWrong;
pub use groups::{Month, Part, Tally, Technician, Tree};
pub use learned::Learned;
pub use meanings::Meanings;
pub use rows::{Each, Rows, Sessions};
pub use said::{Opening, Said};
pub use summary::{Audit, CAUTION, Callbacks, FollowUp, Passage, Rate, SessionRef, TOO_SMALL};
pub use tell::Teller;
