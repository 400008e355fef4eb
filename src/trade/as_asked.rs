//! What a person writes who knows what an argument asks for: `30 K` of a difference, `2 %` or `20 mm/m` of a fall in each foot,
//! `DN 20` of a pipe.

use super::argument::Argument;
use super::gas_pipe;
use crate::measure::{Amount, Dimension, Quantity, Scale, Unit, as_decimal};

/// The same in a unit that the argument takes; `None` where it is written in one already, or in none that is known here.
pub(super) fn written(text: &str, argument: &Argument) -> Option<String> {
    match argument.scale.dimension() {
        // Of a temperature, kelvins would be another number.
        Dimension::TemperatureDifference => without_kelvin(text, "degC"),
        Dimension::Number if argument.name == "beta" => without_kelvin(text, ""),
        Dimension::Length if argument.name == "slope" => fall_in_a_foot(text),
        Dimension::Length if argument.name == "size" => gas_pipe::named(text),
        _ => None,
    }
}

/// The same for how far a value may be off, which of a temperature is a difference.
pub(super) fn accuracy(text: &str, argument: &Argument) -> Option<String> {
    let is_thermal = argument.scale.unit.dimension() == Dimension::Temperature;
    is_thermal.then(|| without_kelvin(text, "degC"))?
}

fn without_kelvin(text: &str, unit: &str) -> Option<String> {
    // Within a word it is a letter.
    let is_word = |rest: &str| rest.starts_with(char::is_alphabetic);
    let has_word = text.split('K').skip(1).any(is_word);
    (text.contains('K') && !has_word).then(|| text.replace('K', unit))
}

/// `1/4 in/ft`, `20 mm/m` and `2 %` as what a drain falls in a foot.
fn fall_in_a_foot(text: &str) -> Option<String> {
    let plain = text.trim().to_lowercase().replace(" per ", "/");
    if let Some(share) = plain.strip_suffix('%') {
        let share: f64 = share.trim().parse().ok()?;
        return share.is_finite().then(|| format!("{} in", 0.12 * share));
    }
    let ends = |ends: &[&str]| ends.iter().find_map(|end| plain.strip_suffix(end));
    if let Some(fall) = ends(&["/ft", "/foot"]) {
        return Some(fall.to_owned());
    }
    let fall = ends(&["/m", "/metre", "/meter"])?;
    let fall = Amount::parse(&as_decimal(fall)).ok()?;
    let fall = fall.quantity(Scale::of(Unit::Metre)).ok()?;
    let millimetres = Scale::of(Unit::Millimetre);
    let in_a_foot = Quantity::new(0.3048 * fall.number_in(millimetres), millimetres);
    Some(format!("{} mm", in_a_foot.number_in(millimetres)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::find;

    #[track_caller]
    fn reads(formula: &str, argument: &str, text: &str, expected: Option<&str>) {
        let argument = find(formula).unwrap().argument(argument).unwrap();
        assert_eq!(written(text, argument).as_deref(), expected, "{text}");
    }

    #[test]
    fn kelvins_are_degrees_of_a_difference_alone() {
        reads("airflow_from_rise", "rise", "30 K", Some("30 degC"));
        reads(
            "airflow_from_rise",
            "rise",
            "30 K ± 1 K",
            Some("30 degC ± 1 degC"),
        );
        reads("airflow_from_rise", "rise", "30 Kelvin", None);
        reads("airflow_from_rise", "temperature", "293 K", None);
        reads("thermistor_resistance", "beta", "3950 K", Some("3950 "));
        reads("thermistor_resistance", "resistance_at_77", "10 K", None);
    }

    /// By hand: 2 % of 12 in are 0.24 in; 20 mm in a metre are 6.096 mm in a foot.
    #[test]
    fn a_fall_is_told_in_a_foot_or_a_metre_or_as_a_share() {
        reads("drain_drop", "slope", "2 %", Some("0.24 in"));
        reads("drain_drop", "slope", "20 mm/m", Some("6.096 mm"));
        reads("drain_drop", "slope", "20 mm per m", Some("6.096 mm"));
        reads("drain_drop", "slope", "1/4 in per foot", Some("1/4 in"));
        reads("drain_drop", "slope", "1/4 in", None);
        reads("drain_drop", "slope", "x/m", None);
        reads("drain_drop", "slope", "inf %", None);
        reads("drain_drop", "length", "2 %", None);
    }

    /// ISO 6708 and the pipe trade's tables: DN 20 is nominal 3/4 in.
    #[test]
    fn a_pipe_may_be_named_in_millimetres() {
        reads("gas_pipe_capacity_natural", "size", "DN 20", Some("0.75 in"));
        reads("gas_pipe_capacity_natural", "size", "dn32", Some("1.25 in"));
        reads("gas_pipe_capacity_natural", "size", "20 mm", Some("0.75 in"));
        reads("gas_pipe_capacity_natural", "size", "DN 21", None);
        reads("gas_pipe_capacity_natural", "size", "3/4", None);
    }
}
