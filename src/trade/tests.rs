//! Checks of the register against published and computed values.
