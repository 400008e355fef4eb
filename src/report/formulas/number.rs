//! Results as a person reads them: no finer than they are known.

use crate::measure::{Quantity, Scale, System};

/// Significant digits of a result whose accuracy nobody named.
pub(super) const DIGITS: u8 = 4;

/// A result, with how far it may be off where that is known, in base units: `56.2 °F`, `56.2 °F ± 1.4 °F`.
pub(super) fn shown(result: Quantity, scale: Scale, margin: Option<f64>) -> String {
    let Some(margin) = margin.filter(|margin| *margin > 0.0) else {
        return result.display(scale).digits(DIGITS).to_string();
    };
    let offsets = scale.of_offsets();
    let off = Quantity::from_base(margin, offsets.dimension()).number_in(offsets);
    let (number, off) = rounded(result.number_in(scale), off);
    let result = Quantity::new(number, scale).display(scale);
    format!("{result} ± {}", Quantity::new(off, offsets).display(offsets))
}

/// The scale of the other system, where there is another.
pub(super) fn other(scale: Scale) -> Option<Scale> {
    let system = match scale.unit.system()? {
        System::Us => System::Si,
        System::Si => System::Us,
    };
    Some(scale.in_system(system))
}

/// A number to the place of the second digit of how far it may be off, and that rounded up.
fn rounded(number: f64, off: f64) -> (f64, f64) {
    // A tenth of a digit at a hundred: 10 is written with as many digits as 99.
    let places = 1 - off.log10().floor() as i32;
    let grain = 10_f64.powi(places);
    // What lies just above a whole count is what the arithmetic left.
    let up = (off * grain - 1e-6).ceil();
    ((number * grain).round() / grain, up / grain)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Unit;

    #[track_caller]
    fn shows(number: f64, off: f64, unit: Unit, text: &str) {
        let scale = Scale::of(unit);
        let margin = Quantity::new(off, scale.of_offsets()).base();
        assert_eq!(shown(Quantity::new(number, scale), scale, Some(margin)), text);
    }

    #[test]
    fn no_digit_is_shown_that_nobody_knows() {
        shows(62_068.9, 2_217.3, Unit::BtuPerHour, "62100 BTU/h ± 2300 BTU/h");
        shows(0.65, 0.01, Unit::InchWaterColumn, "0.65 in.w.c. ± 0.01 in.w.c.");
        shows(70.04, 0.5, Unit::DegreeFahrenheit, "70.04 °F ± 0.5 °F");
        shows(7.534, 0.0941, Unit::Microfarad, "7.534 µF ± 0.095 µF");
        shows(9.0, 9.96, Unit::PartPerMillion, "9 ppm ± 10 ppm");
    }

    #[test]
    fn what_nobody_said_the_accuracy_of_has_four_digits() {
        let scale = Scale::of(Unit::Kilowatt);
        assert_eq!(shown(Quantity::new(18.190_32, scale), scale, None), "18.19 kW");
        assert_eq!(
            shown(Quantity::new(18.190_32, scale), scale, Some(0.0)),
            "18.19 kW"
        );
    }
}
