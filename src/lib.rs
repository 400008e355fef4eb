//! proofwalk walks a furnace service call from a fault tree to a proven verdict, and keeps the record.
//!
//! The rooms, from the core outwards:
//!
//! - [`source`]: where something was written and what is wrong with it.
//! - [`measure`]: what a number is: units, quantities, bands, accuracy.
//! - [`trade`]: what the trade computes: the register of formulas.
//! - [`library`]: what an author wrote: registries and trees.
//! - [`check`]: what is wrong with a library.
//! - [`bench`]: a library put to the test without a furnace on site.
//! - [`layout`]: how much of a question a screen holds.
//! - [`audit`]: what the company learns from its calls.
//! - [`export`]: the calls of an audit as tables for other programs.
//! - [`report`]: what a person reads.
//! - [`store`]: session files and tree files: append, sync, lock, list, take up.
//! - [`face`]: what both faces share; [`tui`]: the screen; [`plain`]: the line face.

pub mod audit;
pub mod bench;
pub mod check;
pub mod cli;
pub mod export;
pub mod face;
pub mod layout;
pub mod library;
pub mod measure;
pub mod plain;
pub mod report;
pub mod source;
pub mod store;
pub mod trade;
pub mod tui;
pub mod walk;
