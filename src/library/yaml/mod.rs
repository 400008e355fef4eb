//! Reading one YAML file into plain shapes that remember where every word stood.
//!
//! The YAML library stops at the first thing it cannot read. What *we* can go on after — a key that is none of ours, a
//! key given twice, a key that is missing — is kept beside the value, so that one run reports them all.

mod at;
mod entries;
mod keyed;
mod node;
mod read;
mod tags;

pub(super) use at::At;
pub(super) use entries::{Entries, Entry};
pub(super) use keyed::{Keyed, StrayKey};
pub(super) use node::{Form, Node};
pub(super) use read::read;
