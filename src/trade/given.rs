//! An input of a formula, as somebody gave it.

use super::argument::Argument;
use super::as_asked;
use super::drills;
use super::unfit::Unfit;
use crate::measure::{Accuracy, Amount, Misread, Quantity, Scale, Unit, as_decimal};

/// How a person writes "give or take": the last two are for keyboards that have no more.
const GIVE_OR_TAKE: [&str; 3] = ["±", "+/-", "+-"];

/// An input of a formula, as somebody gave it.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// Of which argument.
    pub argument: &'static Argument,
    /// Its value.
    pub value: Quantity,
    /// The scale it was written on.
    pub scale: Scale,
    /// Where the value comes from.
    pub origin: Origin,
    /// How far it may be off, in base units; zero where nothing was said.
    pub margin: f64,
}

/// Where the value of an input comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// It was written with its unit.
    Written,
    /// It was written without a unit, and taken in the argument's.
    Bare,
    /// It was not given, and is taken as usual; with the reason.
    Usual(&'static str),
}

impl Given {
    /// Reads `128 °F`, `128` or `128 °F ± 1 °F`; an accuracy may stand apart instead, as `1 °F`. Sizes may be fractions,
    /// as `1-1/4 in`.
    ///
    /// # Errors
    ///
    /// Where the value or its accuracy cannot be read or measures something else, and where there are two accuracies.
    pub fn read(argument: &'static Argument, text: &str, apart: Option<&str>) -> Result<Self, Unfit> {
        let named = drills::named(text, argument).or_else(|| as_asked::written(text, argument));
        let text = named.as_deref().unwrap_or(text);
        let (text, accuracy) = match (split(text), apart) {
            ((value, Some(_)), Some(_)) => {
                let message = format!("how far {} may be off is given twice", argument.name);
                return Err(Unfit::new(
                    message,
                    format!("write `{}` without it, or leave out the other", value.trim()),
                ));
            }
            // What is told apart says nothing about the value, not even its unit.
            ((value, None), apart) => (value.to_owned(), apart),
            ((value, inside), None) => (
                with_unit_of(&as_decimal(value), inside, argument.scale.unit),
                inside,
            ),
        };
        let name = argument.name;
        let text = &*as_decimal(&text);
        let (amount, value) = Amount::typed(text, argument.scale)
            .map_err(|misread| Unfit::of(name, unread(argument, misread)))?;
        let bare = argument.scale.unit != Unit::Number
            && Amount::parse(text).is_ok_and(|written| written.unit.is_none());
        let unit = amount.unit.unwrap_or(argument.scale.unit);
        let scale = Scale {
            unit,
            ..argument.scale
        };
        let given = Self {
            argument,
            value,
            scale,
            origin: if bare { Origin::Bare } else { Origin::Written },
            margin: 0.0,
        };
        match accuracy {
            Some(accuracy) => given.within(accuracy),
            None => Ok(given),
        }
    }

    /// An argument that was not given, as what it is taken as then.
    pub(super) fn usual(argument: &'static Argument, accuracy: Option<&str>) -> Option<Result<Self, Unfit>> {
        let (usual, value) = argument.default.zip(argument.usual())?;
        let given = Self {
            argument,
            value,
            scale: argument.scale,
            origin: Origin::Usual(usual.because),
            margin: 0.0,
        };
        Some(match accuracy {
            Some(accuracy) => given.within(accuracy),
            None => Ok(given),
        })
    }

    /// The same, off by at most this; a bare number is in the unit of the value.
    fn within(self, accuracy: &str) -> Result<Self, Unfit> {
        let name = format!("the accuracy of {}", self.argument.name);
        let mut text = accuracy.trim();
        if let (before, Some(after)) = split(text)
            && before.trim().is_empty()
        {
            text = after.trim();
        }
        if let (_, Some(_)) = split(text) {
            let message = format!("how far {} may be off is given twice", self.argument.name);
            return Err(Unfit::new(message, "write one accuracy behind the value"));
        }
        let in_degrees = as_asked::accuracy(text, self.argument);
        let text = &*as_decimal(in_degrees.as_deref().unwrap_or(text));
        let with_unit = match Amount::parse(text).map(|amount| amount.unit) {
            Ok(None) => format!("{text} {}", self.scale.unit.ascii()),
            // Of what is not counted in percent, a share.
            Ok(Some(Unit::Percent)) if self.scale.unit != Unit::Percent => format!("{text} of reading"),
            _ => text.to_owned(),
        };
        let accuracy = Accuracy::parse(&with_unit, self.scale).map_err(|misread| {
            let unit = match self.scale.unit.ascii() {
                "" => String::new(),
                unit => format!(" {unit}"),
            };
            let help = format!("write how far it may be off, for instance `1{unit}` or `2 % of reading`");
            Unfit::of(&name, Unfit::new(misread.message, help))
        })?;
        let margin = accuracy.margin(self.value, self.scale);
        Ok(Self { margin, ..self })
    }
}

/// What cannot be read; of a drill, how one without a number is given.
fn unread(argument: &Argument, misread: Misread) -> Unfit {
    let unfit = Unfit::from(misread);
    if !argument.is_drilled || argument.scale.unit != Unit::Number {
        return unfit;
    }
    let help = "give its number, 1 to 80; a letter or a fraction of an inch goes into `orifice_flow`, as its diameter";
    Unfit::new(unfit.message, help)
}

/// A value whose unit stands behind its accuracy alone, as in `128 ± 1 °F`, has that unit; a share of it, as in `24 ± 1 %`,
/// is none.
fn with_unit_of(text: &str, accuracy: Option<&str>, own: Unit) -> String {
    let unit = |text: &str| Amount::parse(&as_decimal(text)).ok().map(|amount| amount.unit);
    match (unit(text), accuracy.and_then(unit)) {
        (Some(None), Some(Some(Unit::Percent))) if own != Unit::Percent => text.to_owned(),
        (Some(None), Some(Some(unit))) if Scale::of(unit).dimension() == Scale::of(own).dimension() => {
            format!("{} {}", text.trim(), unit.ascii())
        }
        _ => text.to_owned(),
    }
}

/// A value, and what follows its "give or take".
fn split(text: &str) -> (&str, Option<&str>) {
    let at = GIVE_OR_TAKE
        .iter()
        .filter_map(|mark| Some((text.find(mark)?, mark.len())))
        .min();
    match at {
        Some((at, length)) => (&text[..at], Some(&text[at + length..])),
        None => (text, None),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_behind_the_accuracy_is_that_of_both_and_a_share_is_of_neither() {
        let fahrenheit = Unit::DegreeFahrenheit;
        for (text, accuracy, own, expected) in [
            ("128", "1 °F", fahrenheit, "128 degF"),
            ("128 °C", "1 °F", fahrenheit, "128 °C"),
            ("24", "1 %", Unit::Volt, "24"),
            ("5", "0.5 %", Unit::Percent, "5 %"),
            ("24", "1", Unit::Volt, "24"),
            ("380", "5 %", Unit::PartPerMillion, "380"),
        ] {
            let given = with_unit_of(text, Some(accuracy), own);
            assert_eq!(given, expected, "{text} ± {accuracy}");
        }
    }

    #[test]
    fn an_accuracy_told_apart_changes_nothing_of_the_value() {
        let rise = crate::trade::find("temperature_rise").unwrap();
        let given = Given::read(&rise.arguments[0], "128", Some("2 °C")).unwrap();
        let fahrenheit = Scale::of(Unit::DegreeFahrenheit);
        assert!((given.value.number_in(fahrenheit) - 128.0).abs() < 1e-9);
        assert!(matches!(given.origin, Origin::Bare));
    }
}
