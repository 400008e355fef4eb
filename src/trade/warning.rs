//! Results that are to be trusted less.

/// Why a result, though it could be computed, is to be trusted less.
#[derive(Clone, Copy, Debug)]
pub struct Warning {
    /// When it is given, as the end of "where …": "oxygen is above 11 %".
    pub when: &'static str,
    /// What is doubtful about the result then, without a full stop.
    pub reason: &'static str,
    /// What to do about it, without a full stop.
    pub help: &'static str,
    /// Whether it holds, of the numbers as the formula computes with them and of its result's number.
    pub(super) applies: fn(&[f64], f64) -> bool,
}

/// A warning that is given with a result.
#[derive(Clone, Copy, Debug)]
pub struct Warned {
    /// What it says.
    pub warning: &'static Warning,
    /// Whether the inputs, off as far as they may be, reach to both sides of its limit, so that nobody can tell whether it holds.
    pub is_borderline: bool,
}
