//! Ways that must and must not count as a proof, one by one.
