//! What the trade computes.
