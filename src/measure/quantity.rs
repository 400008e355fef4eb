//! A value, comparable whatever unit it was written in.

use std::cmp::Ordering;

use super::dimension::Dimension;
use super::scale::Scale;
use super::shown::Shown;
use super::significant::round;
use super::unit::Unit;

/// What a temperature in ninths of a kelvin is rounded to: eight decimals.
const THERMAL_GRID: f64 = 1e8;

/// A value of one dimension, comparable whatever unit it was written in.
///
/// 95 °F and 35 °C are one temperature, and a manifold at 3.2 in.w.c. is exactly at `3.5 in.w.c. - 0.3 in.w.c.`; binary
/// fractions say otherwise in their sixteenth digit, and a reading that stands exactly at its bound would then fall on
/// the wrong side. So quantities compare by twelve significant digits, which is more than any meter shows and less than the
/// arithmetic loses.
///
/// The digits are counted in the unit in which people write short decimals (BTU/h, ft³, lb/h, pascals; the rest in base units),
/// so that those come out exact. Temperatures are counted in ninths of a kelvin, in which both °F and °C are short, and to
/// eight decimals: a rise of a few degrees, the difference of two large numbers, still equals the rise as it is written.
/// What remains is a sum or a share worked out in kW, m³/h or another unit that is no short decimal of that one, which may rarely differ in its last digit, and a difference
/// that is less than a hundredth of what it was taken from.
///
/// ```
/// use proofwalk::measure::{Quantity, Scale, Unit};
/// let water = Scale::of(Unit::InchWaterColumn);
/// let set = Quantity::new(3.5, water).minus(Quantity::new(0.3, water));
/// assert_eq!(set, Some(Quantity::new(3.2, water)));
/// ```
///
/// The number must be finite: everything that reads text refuses others, and a formula refuses to give one.
#[derive(Clone, Copy, Debug)]
pub struct Quantity {
    /// The value as computed, so that a chain of arithmetic rounds once, when it is compared.
    full: f64,
    /// The value as it compares.
    base: f64,
    dimension: Dimension,
}

impl Quantity {
    /// The quantity that `number` is on a scale.
    pub fn new(number: f64, scale: Scale) -> Self {
        Self::from_base(scale.to_base(number), scale.dimension())
    }

    /// The quantity of a value in the dimension's base unit (see [`Dimension`]; kelvin for both temperatures).
    pub fn from_base(full: f64, dimension: Dimension) -> Self {
        Self {
            full,
            base: settle(full, dimension),
            dimension,
        }
    }

    /// The value in the dimension's base unit, as it compares.
    pub fn base(self) -> f64 {
        self.base
    }

    /// What it measures.
    pub fn dimension(self) -> Dimension {
        self.dimension
    }

    /// The number it is on a scale of its dimension, to twelve significant digits.
    pub fn number_in(self, scale: Scale) -> f64 {
        let number = scale.number_of(self.full);
        if self.dimension == Dimension::Temperature {
            // Near 0 °F and 0 °C the offset leaves only noise, which twelve digits would keep.
            return round((number * THERMAL_GRID).round() / THERMAL_GRID);
        }
        round(number)
    }

    /// Which of two is the larger; `None` where they measure different things.
    pub fn compare(self, other: Self) -> Option<Ordering> {
        if self.dimension != other.dimension {
            return None;
        }
        self.base.partial_cmp(&other.base)
    }

    /// The sum, where it means something: of one dimension, or of a temperature and a difference. Two temperatures have
    /// no sum.
    pub fn plus(self, other: Self) -> Option<Self> {
        use Dimension::{Temperature, TemperatureDifference};
        let dimension = match (self.dimension, other.dimension) {
            (Temperature, Temperature) => return None,
            (Temperature, TemperatureDifference) | (TemperatureDifference, Temperature) => Temperature,
            (one, two) if one == two => one,
            _ => return None,
        };
        Some(self.combined(self.full + other.full, other, dimension))
    }

    /// The difference, where it means something: of one dimension (of two temperatures: their difference), or of a
    /// temperature and a difference.
    pub fn minus(self, other: Self) -> Option<Self> {
        use Dimension::{Temperature, TemperatureDifference};
        let dimension = match (self.dimension, other.dimension) {
            (Temperature, Temperature) => TemperatureDifference,
            (Temperature, TemperatureDifference) => Temperature,
            (one, two) if one == two => one,
            _ => return None,
        };
        Some(self.combined(self.full - other.full, other, dimension))
    }

    /// So many times the quantity. A multiple of a temperature means nothing on °F or °C: ask for one of a difference.
    pub fn times(self, factor: f64) -> Self {
        Self::from_base(self.full * factor, self.dimension)
    }

    /// The quantity as a person reads it on a scale: `3.2 in.w.c.`.
    pub fn display(self, scale: Scale) -> Shown {
        Shown::new(self.number_in(scale), scale)
    }

    fn combined(self, full: f64, other: Self, dimension: Dimension) -> Self {
        // What is left below the twelfth digit of both is rounding, not a value.
        let noise = 1e-13 * self.full.abs().max(other.full.abs());
        Self::from_base(if full.abs() <= noise { 0.0 } else { full }, dimension)
    }
}

impl PartialEq for Quantity {
    fn eq(&self, other: &Self) -> bool {
        self.compare(*other) == Some(Ordering::Equal)
    }
}

/// The value as it compares: see [`Quantity`].
fn settle(base: f64, dimension: Dimension) -> f64 {
    let grain = grain(dimension);
    let count = base / grain;
    let settled = if dimension.is_thermal() {
        (count * THERMAL_GRID).round() / THERMAL_GRID
    } else {
        round(count)
    };
    settled * grain + 0.0
}

/// The unit, in base units, in which the numbers that people write are short decimals.
fn grain(dimension: Dimension) -> f64 {
    match dimension {
        Dimension::Temperature | Dimension::TemperatureDifference => 1.0 / 9.0,
        Dimension::Power => Unit::BtuPerHour.row().factor,
        Dimension::Volume => Unit::CubicFoot.row().factor,
        Dimension::Flow => Unit::CubicFootPerHour.row().factor,
        Dimension::HeatingValue => Unit::BtuPerCubicFoot.row().factor,
        Dimension::MassFlow => Unit::PoundPerHour.row().factor,
        Dimension::Density => Unit::PoundPerCubicFoot.row().factor,
        Dimension::ResistancePerLength => Unit::OhmPerThousandFeet.row().factor,
        _ => 1.0,
    }
}
