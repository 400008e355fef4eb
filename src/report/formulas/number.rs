//! Results as a person reads them: no finer than they are known.

use crate::measure::{Quantity, Scale, System, Unit};
use crate::trade::Formula;

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

/// The result of a formula, with how far it may be off, and of how much length it is: `0.08 in.w.c. per 100 ft`, `0.65 Pa per m`.
/// A size that has a second name has that, too.
pub(super) fn of(formula: &Formula, result: Quantity, scale: Scale, margin: Option<f64>) -> String {
    let Some(length) = formula.counted_over() else {
        let is_metric = scale.unit.system() == Some(System::Si);
        let name = formula.other_name(result).filter(|_| is_metric);
        return name.unwrap_or_else(|| shown(result, scale, margin));
    };
    let (share, over) = match scale.unit.system() {
        Some(System::Si) => (1.0 / length.base(), "m".to_owned()),
        _ if length.number_in(Scale::of(Unit::Foot)) == 1.0 => (1.0, "ft".to_owned()),
        _ => (1.0, length.display(Scale::of(Unit::Foot)).to_string()),
    };
    let result = Quantity::from_base(share * result.base(), result.dimension());
    format!(
        "{} per {over}",
        shown(result, scale, margin.map(|margin| share * margin))
    )
}

/// What a result is of, behind its unit on a page; empty where it is of the whole.
pub(super) fn over(formula: &Formula, scale: Scale) -> String {
    let Some(length) = formula.counted_over() else {
        return String::new();
    };
    match scale.unit.system() {
        Some(System::Si) => ", told for each metre".to_owned(),
        _ => format!(", for each {}", length.display(Scale::of(Unit::Foot))),
    }
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
    use crate::trade::find;

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

    /// By hand: 1 in.w.c. over 100 ft are 248.84 Pa over 30.48 m; an inch in a foot is 83.3 mm in a metre. ISO 6708: 3/4 in is DN 20.
    #[test]
    fn a_result_of_a_length_says_of_which() {
        for (name, number, unit, us, si) in [
            (
                "duct_friction_rate",
                1.0,
                Unit::InchWaterColumn,
                "1 in.w.c. per 100 ft",
                "8.164 Pa per m",
            ),
            ("drain_slope", 1.0, Unit::Inch, "1 in per ft", "83.33 mm per m"),
            ("gas_pipe_size_natural", 0.75, Unit::Inch, "0.75 in", "DN 20"),
            ("drain_drop", 1.0, Unit::Inch, "1 in", "25.4 mm"),
        ] {
            let (formula, scale) = (find(name).unwrap(), Scale::of(unit));
            let result = Quantity::new(number, scale);
            assert_eq!(of(formula, result, scale, None), us);
            assert_eq!(of(formula, result, scale.in_system(System::Si), None), si);
        }
    }
}
