//! What can be wrong with gas, burners, vent, water, air and exchanger.

/// The thermal condition of a furnace; the default is one in order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Thermal {}
