//! What to add to a scenario that has no answer to a question.

use super::parting::{Goal, keeping};
use super::passed::Passed;
use crate::library::{By, Datum, Exit, FieldKind, Id, Kind, Library, PlateField, Scenario};
use crate::measure::{Band, PlausibleRange, Quantity, Scale};
use crate::walk::state::Moment;

/// An answer that a scenario could give.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Suggestion {
    /// The key of the scenario it belongs under.
    pub under: &'static str,
    /// For what.
    pub name: String,
    /// As the scenario would write it.
    pub value: String,
}

/// An answer to a question that has none: one that keeps the expected end within reach, where there is one.
pub fn suggestion(library: &Library, scenario: &Scenario, at: &Passed, leaf: Datum) -> Option<Suggestion> {
    let step = &library[at.step];
    let own = match step.kind {
        Kind::Measure { reading, .. } => Datum::Reading(reading) == leaf,
        Kind::Observe { sign, .. } => Datum::Sign(sign) == leaf,
        Kind::Plate { field, .. } => Datum::Field(field) == leaf,
        _ => false,
    };
    let exits: Vec<Exit<'_>> = match own {
        true => step.exits(),
        false => Vec::new(),
    };
    let wanted = Goal::of(scenario)
        .map(|goal| keeping(library, at, goal))
        .unwrap_or_default();
    let keeps = |exit: &&Exit<'_>| wanted.contains(&exit.edge.id);
    // What may be taken only so often is a way around; the straight one comes first.
    let straight = |exit: &&Exit<'_>| keeps(exit) && exit.edge.limit.is_none();
    let chosen = (exits.iter().find(straight))
        .or_else(|| exits.iter().find(keeps))
        .or(exits.first())
        .map(|exit| exit.by);
    let band = match chosen {
        Some(By::Band(answer)) => Some(&answer.band),
        _ => None,
    };
    let choice = match chosen {
        Some(By::Choice(answer)) => Some(answer.value),
        _ => None,
    };
    answer_in(library, &at.before, leaf, band, choice)
}

/// An answer in a band or of a choice, for instance one that a proof asks for; without one, any that is plausible.
pub fn answer_in(
    library: &Library,
    moment: &Moment,
    datum: Datum,
    band: Option<&Band<Id<PlateField>>>,
    choice: Option<usize>,
) -> Option<Suggestion> {
    let choice = choice.unwrap_or_default();
    let (under, value) = match datum {
        Datum::Reading(id) => {
            let reading = &library.readings[id];
            let number = number(moment, band, reading.plausible?, reading.scale)?;
            ("readings", number.display(reading.scale).to_string())
        }
        Datum::Sign(id) => ("signs", library.signs[id].values.get(choice)?.name.clone()),
        Datum::Field(id) => match &library.plate[id].kind {
            FieldKind::Choices(choices) => ("plate", choices.get(choice)?.name.clone()),
            FieldKind::Number { scale, plausible } => {
                let number = number(moment, band, *plausible, *scale)?;
                ("plate", number.display(*scale).to_string())
            }
        },
    };
    Some(Suggestion {
        under,
        name: library.name_of(datum).to_owned(),
        value,
    })
}

/// A number near the middle of what is plausible of a band, far from its bounds, in as few digits as that allows.
fn number(
    moment: &Moment,
    band: Option<&Band<Id<PlateField>>>,
    plausible: PlausibleRange,
    scale: Scale,
) -> Option<Quantity> {
    let fields = |field: &Id<PlateField>| moment.values.get(&Datum::Field(*field))?.value.number();
    let (mut low, mut high) = (plausible.low.base(), plausible.high.base());
    if let Some(interval) = band.and_then(|band| band.interval(&fields)) {
        low = low.max(interval.low.value());
        high = high.min(interval.high.value());
        if interval.high.value().is_infinite() && low > 0.0 {
            // What is plausible of a meter reaches far: stay near the bound.
            high = high.min(2.0 * low);
        }
    }
    let (middle, quarter) = (low / 2.0 + high / 2.0, (high - low) / 4.0);
    let number = Quantity::from_base(middle, scale.dimension()).number_in(scale);
    (1..=6)
        .map(|digits| Quantity::new(round(number, digits), scale))
        .find(|rounded| (rounded.base() - middle).abs() <= quarter)
}

/// Rounds to so many significant digits.
fn round(number: f64, digits: i32) -> f64 {
    if number == 0.0 {
        return number;
    }
    let power = digits - 1 - number.abs().log10().floor() as i32;
    let factor = 10_f64.powi(power.abs());
    match power >= 0 {
        true => (number * factor).round() / factor,
        false => (number / factor).round() * factor,
    }
}

#[cfg(test)]
mod tests {
    use super::round;

    #[test]
    fn rounding_counts_digits_from_the_first() {
        assert_eq!(round(23.04, 1), 20.0);
        assert_eq!(round(23.04, 3), 23.0);
        assert_eq!(round(-0.0347, 2), -0.035);
        assert_eq!(round(8_432_100.0, 2), 8_400_000.0);
        assert_eq!(round(0.0, 2), 0.0);
    }
}
