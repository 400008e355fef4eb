//! What wires, contacts and meters have in common.

/// What counts as open, Ω.
pub const OPEN: f64 = 1e9;

/// The most that the usual ohmmeter shows, Ω; beyond it is off the scale.
const OFF_THE_SCALE: f64 = 5e7;

/// What is left of some volts behind a resistance, at a load, both in Ω.
pub fn divided(volts: f64, ohms: f64, load: f64) -> f64 {
    volts * load / (ohms + load)
}

/// Two resistances side by side, Ω.
pub fn parallel(one: f64, other: f64) -> f64 {
    one * other / (one + other)
}

/// A resistance as an ohmmeter shows it, Ω.
pub fn shown(ohms: f64) -> f64 {
    ohms.min(OFF_THE_SCALE)
}
