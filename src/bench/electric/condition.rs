//! What can be wrong on the electric side.

/// The electric condition of a furnace; the default is one in order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Electric {}
