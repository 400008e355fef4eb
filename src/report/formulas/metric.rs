//! What a formula says of itself in feet and °F, with the metric figures behind.

use crate::measure::{Quantity, Scale, System, Unit, as_decimal};

/// Significant digits of a converted figure: limits are round numbers.
const DIGITS: u8 = 3;

/// Words before a figure in °F, or behind it, that make it a difference of two temperatures.
const BEFORE_A_DIFFERENCE: [&str; 7] = [
    "within",
    "about",
    "at least",
    "apart",
    "rise is below",
    "rise is above",
    "net temperature is above",
];
const BEHIND_A_DIFFERENCE: [&str; 2] = ["apart", "of net"];

/// The text as it is for a reader of a system: every figure in a unit of the United States has its metric one behind it, in brackets.
pub(super) fn for_reader(text: &str, system: System) -> String {
    if system == System::Us {
        return text.to_owned();
    }
    let words: Vec<&str> = text.split(' ').collect();
    let mut said = String::with_capacity(text.len());
    for (at, word) in words.iter().enumerate() {
        if at > 0 {
            said.push(' ');
        }
        match figure(&words, at) {
            Some((unit, metric)) => {
                let (symbol, tail) = word.split_at(unit.len());
                // Within brackets, a comma: brackets in brackets are hard to read.
                match said.matches('(').count() > said.matches(')').count() {
                    true => said.push_str(&format!("{symbol}, {metric}{tail}")),
                    false => said.push_str(&format!("{symbol} ({metric}){tail}")),
                }
            }
            None => said.push_str(word),
        }
    }
    said
}

/// The metric figure of the unit that the word at a place starts with, and that unit's symbol: of one number or of two, as in
/// `32 to 122 °F`.
fn figure(words: &[&str], at: usize) -> Option<(&'static str, String)> {
    let last = number(words.get(at.checked_sub(1)?)?)?;
    let (symbol, unit) = starts_with_unit(words[at])?;
    let first = at.checked_sub(3).and_then(|before| {
        let joins = ["to", "and", "or"].contains(&words[before + 1]);
        joins.then(|| number(words[before])).flatten()
    });
    let scale = Scale {
        unit,
        difference: is_difference(words, at),
    };
    let metric = scale.in_system(System::Si);
    let there = |number: f64| {
        Quantity::new(number, scale)
            .display(metric)
            .significant(DIGITS)
            .to_string()
    };
    let first = first.map_or_else(String::new, |first| {
        let first = there(first);
        let number = first.split(' ').next().unwrap_or_default();
        format!("{number} {} ", words[at - 2])
    });
    Some((symbol, format!("{first}{}", there(last))))
}

fn is_difference(words: &[&str], at: usize) -> bool {
    let before = words[..at - 1].join(" ");
    let behind = words[at + 1..].join(" ");
    BEFORE_A_DIFFERENCE.iter().any(|cue| before.ends_with(cue))
        || BEHIND_A_DIFFERENCE.iter().any(|cue| behind.starts_with(cue))
}

fn number(word: &str) -> Option<f64> {
    let word = word.trim_start_matches('(').replace(',', "");
    as_decimal(&word).trim().parse().ok()
}

/// The longest unit of the United States that a word is, but for what closes a sentence or a bracket.
fn starts_with_unit(word: &str) -> Option<(&'static str, Unit)> {
    let units = Unit::all().filter(|unit| unit.system() == Some(System::Us));
    let fits = units.filter(|unit| {
        let rest = word.strip_prefix(unit.symbol());
        rest.is_some_and(|rest| rest.trim_start_matches(['.', ',', ';', ':', ')']).is_empty())
    });
    let longest = fits.max_by_key(|unit| unit.symbol().len())?;
    Some((longest.symbol(), longest))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn says(text: &str, metric: &str) {
        assert_eq!(for_reader(text, System::Si), metric);
        assert_eq!(for_reader(text, System::Us), text);
    }

    #[test]
    fn a_figure_has_the_metric_one_behind_it() {
        says(
            "Vents up to 200 ft, outdoor air from -60 to 130 °F; 0.5 in.w.c. in pipe.",
            "Vents up to 200 ft (61 m), outdoor air from -60 to 130 °F (-51.1 to 54.4 °C); 0.5 in.w.c. (124 Pa) in pipe.",
        );
        says(
            "from drill 80 (0.0135 in) to 4 in",
            "from drill 80 (0.0135 in, 0.343 mm) to 4 in (102 mm)",
        );
        says(
            "less than 1/4 in in each foot",
            "less than 1/4 in (6.35 mm) in each foot",
        );
        says(
            "Whole gauges from 0 to 30, CO2 in the gas, 40 Hz.",
            "Whole gauges from 0 to 30, CO2 in the gas, 40 Hz.",
        );
    }

    /// By hand: 27 °F apart are 15 K; 27 °F on a thermometer are -2.8 °C.
    #[test]
    fn a_difference_is_no_temperature() {
        says(
            "the flue gas is within 27 °F of its dew point",
            "the flue gas is within 27 °F (15 °C) of its dew point",
        );
        says(
            "the two rows are more than 36 °F apart",
            "the two rows are more than 36 °F (20 °C) apart",
        );
        says("the rise is below 20 °F", "the rise is below 20 °F (11.1 °C)");
        says(
            "above 1200 °F of net temperature",
            "above 1200 °F (667 °C) of net temperature",
        );
        says("at 68 °F, where", "at 68 °F (20 °C), where");
    }
}
