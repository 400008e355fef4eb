//! What reading a library says: each problem with its exact place and its whole message.

// Helpers of tests stop a test as an assertion would.
#![allow(clippy::unwrap_used)]

mod edges;
mod hostile;
mod keys;
mod names;
mod numbers;
mod overlays;
mod scenarios;
mod schema;
#[path = "../common/schemas.rs"]
mod schemas;
mod written;
