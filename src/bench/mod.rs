//! A library put to the test without a furnace on site.

pub mod cost;
