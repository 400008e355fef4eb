//! The two systems of units.

use super::scale::Scale;
use super::unit::Unit;

/// A system of units.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum System {
    /// Degrees Fahrenheit, inches of water column, BTU per hour.
    Us,
    /// Degrees Celsius, pascals, kilowatts.
    Si,
}

/// Which unit of one system stands for which of the other. Where a unit has several twins, its first line counts.
const TWINS: &[(Unit, Unit)] = &[
    (Unit::DegreeFahrenheit, Unit::DegreeCelsius),
    (Unit::InchWaterColumn, Unit::Pascal),
    (Unit::InchWaterColumn, Unit::Millibar),
    (Unit::PoundPerSquareInch, Unit::Kilopascal),
    (Unit::InchMercury, Unit::Kilopascal),
    (Unit::BtuPerHour, Unit::Kilowatt),
    (Unit::KilobtuPerHour, Unit::Kilowatt),
    (Unit::Horsepower, Unit::Kilowatt),
    (Unit::CubicFoot, Unit::CubicMetre),
    (Unit::Gallon, Unit::Litre),
    (Unit::CubicFootPerHour, Unit::CubicMetrePerHour),
    (Unit::CubicFootPerMinute, Unit::LitrePerSecond),
    (Unit::GallonPerHour, Unit::LitrePerHour),
    (Unit::PoundPerHour, Unit::KilogramPerHour),
    (Unit::PoundPerCubicFoot, Unit::KilogramPerCubicMetre),
    (Unit::FootPerMinute, Unit::MetrePerSecond),
    (Unit::BtuPerCubicFoot, Unit::MegajoulePerCubicMetre),
    (Unit::BtuPerCubicFoot, Unit::KilowattHourPerCubicMetre),
    (Unit::Inch, Unit::Millimetre),
    (Unit::Inch, Unit::Centimetre),
    (Unit::Foot, Unit::Metre),
    (Unit::SquareInch, Unit::SquareCentimetre),
    (Unit::SquareInch, Unit::SquareMillimetre),
    (Unit::SquareFoot, Unit::SquareMetre),
    (Unit::OhmPerThousandFeet, Unit::OhmPerKilometre),
];

impl Unit {
    /// The system it belongs to; `None` for what both share: volts, seconds, per cent.
    pub fn system(self) -> Option<System> {
        TWINS.iter().find_map(|&(us, si)| match self {
            unit if unit == us => Some(System::Us),
            unit if unit == si => Some(System::Si),
            _ => None,
        })
    }

    /// The unit that the same thing is written in in another system; itself where both share it.
    ///
    /// ```
    /// use proofwalk::measure::{System, Unit};
    /// assert_eq!(Unit::CubicFootPerMinute.in_system(System::Si), Unit::LitrePerSecond);
    /// assert_eq!(Unit::Millibar.in_system(System::Us), Unit::InchWaterColumn);
    /// assert_eq!(Unit::Millibar.in_system(System::Si), Unit::Millibar);
    /// ```
    pub fn in_system(self, system: System) -> Self {
        if self.system() == Some(system) {
            return self;
        }
        let twin = TWINS.iter().find_map(|&(us, si)| match system {
            System::Us => (si == self).then_some(us),
            System::Si => (us == self).then_some(si),
        });
        twin.unwrap_or(self)
    }
}

impl Scale {
    /// The scale that the same thing is written on in another system.
    pub fn in_system(self, system: System) -> Self {
        Self {
            unit: self.unit.in_system(system),
            ..self
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn twins_measure_the_same() {
        for &(us, si) in TWINS {
            assert_eq!(us.dimension(), si.dimension(), "{us:?}");
            assert_eq!(us.system(), Some(System::Us), "{us:?}");
            assert_eq!(si.system(), Some(System::Si), "{si:?}");
        }
    }

    #[test]
    fn every_unit_has_its_place_in_each_system() {
        for unit in Unit::all() {
            for system in [System::Us, System::Si] {
                let there = unit.in_system(system);
                assert_eq!(there.dimension(), unit.dimension());
                assert_eq!(there.in_system(system), there);
                assert!(unit.system().is_none() == there.system().is_none(), "{unit:?}");
            }
        }
    }
}
