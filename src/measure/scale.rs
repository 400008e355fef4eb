//! What a number is in.

use super::dimension::Dimension;
use super::unit::Unit;

/// What a number is in: a unit, and whether it is the difference of two temperatures.
///
/// 30 °F on a thermometer is −1.1 °C; a rise of 30 °F is a rise of 16.7 °C. The flag means nothing for other units.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Scale {
    /// The unit.
    pub unit: Unit,
    /// Whether a temperature in it converts without its offset.
    pub difference: bool,
}

impl Scale {
    /// The plain scale of a unit; for °F and °C that of a thermometer.
    pub const fn of(unit: Unit) -> Self {
        Self {
            unit,
            difference: false,
        }
    }

    /// The scale of differences in a unit.
    pub const fn difference(unit: Unit) -> Self {
        Self {
            unit,
            difference: true,
        }
    }

    /// What it measures.
    pub fn dimension(self) -> Dimension {
        match self.unit.dimension() {
            Dimension::Temperature if self.difference => Dimension::TemperatureDifference,
            dimension => dimension,
        }
    }

    /// Every unit that a value on this scale may be written in, its own first.
    pub fn units(self) -> impl Iterator<Item = Unit> {
        let dimension = self.unit.dimension();
        let others = Unit::all().filter(move |&unit| unit.dimension() == dimension && unit != self.unit);
        std::iter::once(self.unit).chain(others)
    }

    /// The unit's symbol.
    pub fn symbol(self) -> &'static str {
        self.unit.symbol()
    }

    /// The scale that an offset or a margin on this one is in: a temperature moves by a difference.
    pub const fn of_offsets(self) -> Self {
        Self::difference(self.unit)
    }

    /// The same unit read as `dimension` asks, as far as the unit can be.
    pub(super) fn towards(unit: Unit, dimension: Dimension) -> Self {
        Self {
            unit,
            difference: dimension == Dimension::TemperatureDifference,
        }
    }

    pub(super) fn to_base(self, number: f64) -> f64 {
        let row = self.unit.row();
        let offset = if self.difference { 0.0 } else { row.offset };
        (number + offset) * row.factor
    }

    pub(super) fn number_of(self, base: f64) -> f64 {
        let row = self.unit.row();
        let offset = if self.difference { 0.0 } else { row.offset };
        base / row.factor - offset
    }
}
