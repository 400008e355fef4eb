//! What goes into a formula.

use crate::measure::{Quantity, Scale};

/// One input of a formula.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Argument {
    /// Its name.
    pub name: &'static str,
    /// The scale the equation takes it in; inputs may be in any unit of the dimension.
    pub scale: Scale,
    /// What it is.
    pub meaning: &'static str,
    /// What it is taken as where it is not given; `None` where it must be given.
    pub default: Option<Usual>,
    /// How far it may well be off where nobody says how far, since a hand or an eye takes it; its effect is told with every
    /// result. `None` where that hangs on the meter.
    pub slip: Option<Usual>,
    /// Whether it is a hole, which may be named by its drill: `#70`, `letter F`.
    pub is_drilled: bool,
}

/// What an argument is taken as, or as far off as, where nothing else is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// The number, in the argument's unit.
    pub number: f64,
    /// Why this one, as it is told with every result: "common for natural gas".
    pub because: &'static str,
}

impl Argument {
    /// An argument that must be given. Its meaning starts small and has no full stop.
    pub(super) const fn new(name: &'static str, scale: Scale, meaning: &'static str) -> Self {
        Self {
            name,
            scale,
            meaning,
            default: None,
            slip: None,
            is_drilled: false,
        }
    }

    /// The same, taken as `number` where it is not given: only where the trade has one reference value.
    pub(super) const fn or(self, number: f64, because: &'static str) -> Self {
        Self {
            default: Some(Usual { number, because }),
            ..self
        }
    }

    /// The same, off by as much as `number` where it is taken by hand; what that does is told with every result.
    pub(super) const fn slips(self, number: f64, because: &'static str) -> Self {
        Self {
            slip: Some(Usual { number, because }),
            ..self
        }
    }

    /// The same, a hole that may be named by its drill.
    pub(super) const fn drilled(self) -> Self {
        Self {
            is_drilled: true,
            ..self
        }
    }

    /// What it is taken as where it is not given.
    pub fn usual(&self) -> Option<Quantity> {
        self.default
            .map(|default| Quantity::new(default.number, self.scale))
    }
}
