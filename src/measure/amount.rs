//! A number and its unit, as somebody wrote or typed them.

use std::fmt;

use super::dimension::Dimension;
use super::meter_text;
use super::misread::{Misread, quoted, range_in};
use super::number;
use super::quantity::Quantity;
use super::scale::Scale;
use super::spelling;
use super::unit::Unit;

/// A number and its unit, as somebody wrote or typed them.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    /// The number.
    pub number: f64,
    /// The unit; `None` where none was written and none was asked for.
    pub unit: Option<Unit>,
    /// The text itself, without surrounding space.
    pub text: String,
}

impl Amount {
    /// Reads an author's text: a number and a unit, if there is one.
    ///
    /// # Errors
    ///
    /// Where the text does not start with a plain decimal number, or goes on with what is no unit. `.inf`, `1e999`,
    /// `0o14`, `1_000`, `12:30:45` and `80,000` are refused.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        let leading = number::leading(text)?;
        let unit = match leading.rest {
            "" => None,
            rest => Some(Unit::parse(rest).ok_or_else(|| no_unit(rest, range_in(text, rest)))?),
        };
        Ok(Self {
            number: leading.value,
            unit,
            text: text.trim().to_owned(),
        })
    }

    /// The quantity it is on a scale: in any unit of the scale's dimension; a unit is required unless the scale has none.
    ///
    /// # Errors
    ///
    /// Where the unit is missing or measures something else, or where the value is beyond all numbers. The range covers
    /// the amount's text.
    pub fn quantity(&self, scale: Scale) -> Result<Quantity, Misread> {
        let range = 0..self.text.len();
        let Some(unit) = self.unit.or((scale.unit == Unit::Number).then_some(Unit::Number)) else {
            let help = format!("write `{} {}`", self.text, scale.unit.ascii());
            return Err(Misread::new(
                range,
                format!("{} has no unit", quoted(&self.text)),
                help,
            ));
        };
        let own = Scale::towards(unit, scale.dimension());
        if own.dimension() != scale.dimension() {
            let message = format!(
                "{} is {}; {}",
                quoted(&self.text),
                unit.dimension().name(),
                asked(scale)
            );
            return Err(Misread::new(range, message, write_in(scale)).mismatched());
        }
        let quantity = Quantity::new(self.number, own);
        if !quantity.base().is_finite() {
            let message = format!("{} is too large", quoted(&self.text));
            return Err(Misread::new(range, message, "write a number a meter can show"));
        }
        Ok(quantity)
    }

    /// Reads what a technician types when asked for a number on a scale: a bare number is in the asked unit, another unit
    /// of the same dimension is taken. A prefix alone, as meters show it, is that of the unit: `2.00 M` is 2 MΩ where ohms
    /// are asked for.
    ///
    /// The amount that comes back carries the unit that was meant.
    ///
    /// # Errors
    ///
    /// Where a meter is over its range, which is no number; else as [`parse`](Self::parse) and [`quantity`](Self::quantity); the help names the units that would be taken.
    pub fn typed(text: &str, scale: Scale) -> Result<(Self, Quantity), Misread> {
        if let Some(misread) = meter_text::over_range(text, scale) {
            return Err(misread);
        }
        let completed = meter_text::completed(text, scale)?;
        let start = range_in(text, text.trim()).start;
        let mut amount = Self::parse(completed.as_deref().unwrap_or(text)).map_err(|misread| Misread {
            help: typed_help(misread.help, scale),
            ..misread
        })?;
        amount.unit = amount.unit.or(Some(scale.unit));
        let quantity = amount.quantity(scale).map_err(|misread| misread.moved(start))?;
        Ok((amount, quantity))
    }
}

/// The text, with its unit behind it where a technician left that out.
impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let bare = number::leading(&self.text).is_ok_and(|leading| leading.rest.is_empty());
        match self.unit {
            Some(unit) if bare && unit != Unit::Number => write!(f, "{} {}", self.text, unit.symbol()),
            _ => f.write_str(&self.text),
        }
    }
}

/// What a scale asks for, as the second half of a message.
pub(super) fn asked(scale: Scale) -> String {
    let dimension = scale.dimension();
    if dimension == Dimension::Number {
        return "a plain number is asked for".to_owned();
    }
    format!("{} measures {}", scale.symbol(), dimension.name())
}

/// Which units a scale takes, as a help.
pub(super) fn write_in(scale: Scale) -> String {
    let units: Vec<&str> = scale.units().map(Unit::ascii).collect();
    match units.as_slice() {
        [""] => "write the number alone".to_owned(),
        [only] => format!("write it in {only}"),
        [most @ .., last] => format!("write it in {} or {last}", most.join(", ")),
        [] => String::new(),
    }
}

fn no_unit(text: &str, range: std::ops::Range<usize>) -> Misread {
    if let Some(unit) = spelling::meant(text) {
        let message = format!("{} has the wrong case: m is milli and M is mega", quoted(text));
        return Misread::new(range, message, format!("write `{}`", unit.ascii()));
    }
    if is_thousand_or_million(text) {
        let message = format!("{} is a thousand to some and a million to others", quoted(text));
        return Misread::new(
            range,
            message,
            "write it in BTU/h, or in kBTU/h, which are thousands",
        );
    }
    let known: Vec<&str> = Unit::all()
        .map(Unit::ascii)
        .filter(|unit| !unit.is_empty())
        .collect();
    let help = format!("the units are {}", known.join(", "));
    Misread::new(range, format!("{} is not a unit", quoted(text)), help)
}

/// Whether it is `MBtu/h` or one of its like.
fn is_thousand_or_million(text: &str) -> bool {
    let text = text.trim();
    let start = text.get(..4).unwrap_or_default();
    start.eq_ignore_ascii_case("mbtu")
        || text
            .get(..5)
            .is_some_and(|start| start.eq_ignore_ascii_case("mmbtu"))
}

/// What an answer looks like, in the unit that is asked for.
fn write_like(scale: Scale) -> String {
    match scale.unit.ascii() {
        "" => "write a number, for instance `24`".to_owned(),
        unit => format!("write a number and its unit, for instance `24 {unit}`"),
    }
}

/// The long list of all units is no help to someone who was asked for volts.
fn typed_help(help: String, scale: Scale) -> String {
    if help.starts_with("the units are") {
        write_in(scale)
    } else if help == number::HELP || (help == number::TIME_HELP && scale.dimension() != Dimension::Time) {
        write_like(scale)
    } else {
        help
    }
}
