//! What to add to a scenario that has no answer to a question.

use super::nearness::nearness;
use super::parting::{Goal, datum_of, keeping};
use crate::library::{
    By, Datum, Exit, FieldKind, Id, Input, Library, Obtained, PlateField, Reading, Scenario,
};
use crate::measure::{Band, PlausibleRange, Quantity, Scale};
use crate::walk::apply::inputs_of;
use crate::walk::state::Moment;

/// How many parts of what is plausible are tried for a reading that goes into another.
const TRIED: u32 = 100;

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
pub fn suggestion(library: &Library, scenario: &Scenario, now: &Moment, leaf: Datum) -> Option<Suggestion> {
    let step = &library[now.frames.last()?.step];
    let own = datum_of(step);
    let inputs = own.map(|own| inputs_of(library, own)).unwrap_or_default();
    let chosen = match own == Some(leaf) || inputs.contains(&leaf) {
        true => best(library, scenario, now, &step.exits()),
        false => None,
    };
    let band = match chosen {
        Some(By::Band(answer)) => Some(&answer.band),
        _ => None,
    };
    let choice = match chosen {
        Some(By::Choice(answer)) => Some(answer.value),
        _ => None,
    };
    if let (Some(Datum::Reading(of)), Datum::Reading(input), Some(band)) = (own, leaf, band)
        && own != Some(leaf)
    {
        let number = input_for(library, now, of, input, band);
        return number.or_else(|| answer_in(library, now, leaf, None, None));
    }
    answer_in(library, now, leaf, band, choice)
}

/// The answer that leads most plainly to the expected end; the first where none does.
fn best<'e>(library: &Library, scenario: &Scenario, now: &Moment, exits: &[Exit<'e>]) -> Option<By<'e>> {
    let nearest = Goal::of(scenario).and_then(|goal| {
        let wanted = keeping(library, now, goal);
        let keeping = exits.iter().filter(|exit| wanted.contains(&exit.edge.id));
        // What may be taken only so often is a way around, however short.
        keeping.min_by_key(|exit| (exit.edge.limit.is_some(), nearness(library, exit.edge.go, goal)))
    });
    nearest.or(exits.first()).map(|exit| exit.by)
}

/// A reading that goes into another, so that what is worked out from it lies in a band; none while more is missing.
fn input_for(
    library: &Library,
    now: &Moment,
    of: Id<Reading>,
    input: Id<Reading>,
    band: &Band<Id<PlateField>>,
) -> Option<Suggestion> {
    let Obtained::WorkedOut { formula, inputs } = &library.readings[of].source_of_value else {
        return None;
    };
    let reading = &library.readings[input];
    let (low, high) = reading
        .plausible
        .map(|range| (range.low.base(), range.high.base()))?;
    let fields = |field: &Id<PlateField>| now.values.get(&Datum::Field(*field))?.value.number();
    let works = |tried: Quantity| {
        let numbers = inputs.iter().map(|argument| match argument {
            Input::Fixed(quantity) => Some(*quantity),
            Input::Reading(id) if *id == input => Some(tried),
            Input::Reading(id) => now.values.get(&Datum::Reading(*id))?.value.number(),
            Input::Field(id) => fields(id),
        });
        let numbers: Vec<Quantity> = numbers.collect::<Option<_>>()?;
        let result = formula.compute(&numbers).ok()?;
        (band.contains(result, &fields) == Some(true)).then_some(tried)
    };
    let tried = (1..TRIED).map(|part| {
        let base = low + (high - low) * f64::from(part) / f64::from(TRIED);
        let number = Quantity::from_base(base, reading.scale.dimension()).number_in(reading.scale);
        Quantity::new(round(number, 3), reading.scale)
    });
    let working: Vec<Quantity> = tried.filter_map(works).collect();
    // The middle one is the farthest from the bounds.
    let number = working.get(working.len() / 2)?;
    Some(Suggestion {
        under: "readings",
        name: reading.name.clone(),
        value: number.display(reading.scale).to_string(),
    })
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
