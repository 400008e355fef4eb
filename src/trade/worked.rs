//! A formula worked out on what somebody gave.

use super::argument::{Argument, Usual};
use super::formula::Formula;
use super::given::{Given, Origin};
use super::unfit::Unfit;
use super::usual::{Unusual, unusual};
use super::warning::Warned;
use crate::measure::{Quantity, System};
use crate::source::nearest;

/// A formula worked out on what somebody gave.
#[derive(Clone, Debug)]
pub struct Worked {
    /// The formula.
    pub formula: &'static Formula,
    /// The inputs as understood, in the order of its arguments.
    pub inputs: Vec<Given>,
    /// What comes out.
    pub result: Quantity,
    /// How far the result may be off at worst, in base units; `None` where no input has an accuracy, and an error where the
    /// inputs, off by as much, reach out of the formula's range.
    pub margin: Option<Result<f64, Unfit>>,
    /// What slips of the hand would do that nobody spoke of.
    pub slips: Vec<Slip>,
    /// Why the result is to be trusted less.
    pub warnings: Vec<Warned>,
    /// What goes in and is larger or smaller than it is in houses.
    pub unusual: Vec<Unusual>,
}

/// What a slip of the hand at one input does to the result.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slip {
    /// The input.
    pub argument: &'static Argument,
    /// How far it may well be off, in the argument's unit, and why.
    pub off: Usual,
    /// How far that moves the result at worst, in base units.
    pub moves: f64,
}

/// Something given by name: a value, or an accuracy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Named<'t> {
    /// The argument's name, as it was written.
    pub name: &'t str,
    /// What it is given as.
    pub text: &'t str,
}

impl Worked {
    /// Works a formula out on values by name, some with an accuracy beside them.
    ///
    /// ```
    /// use proofwalk::measure::Quantity;
    /// use proofwalk::trade::{Named, Worked, find};
    /// let formula = find("temperature_rise").unwrap();
    /// let inputs = [
    ///     Named { name: "supply", text: "128 °F ± 1 °F" },
    ///     Named { name: "return", text: "20 °C" },
    /// ];
    /// let worked = Worked::out(formula, &inputs, &[]).unwrap();
    /// assert_eq!(worked.result.display(formula.result).to_string(), "60 °F");
    /// let margin = Quantity::from_base(worked.margin.unwrap().unwrap(), formula.result.dimension());
    /// assert_eq!(margin.display(formula.result).to_string(), "1 °F");
    ///
    /// let faults = Worked::out(formula, &inputs[..1], &[]).unwrap_err();
    /// assert_eq!(faults[0].message, "return is missing: the air just before it");
    /// ```
    ///
    /// # Errors
    ///
    /// Everything that is wrong with what was given: names that are no arguments, given twice, or missing; what cannot be
    /// read; and where nothing of that is wrong, what the formula itself refuses.
    pub fn out(
        formula: &'static Formula,
        values: &[Named<'_>],
        accuracies: &[Named<'_>],
    ) -> Result<Self, Vec<Unfit>> {
        let mut faults = misnamed(formula, values, "");
        faults.extend(misnamed(formula, accuracies, "the accuracy of "));
        // What seems to be missing was probably misnamed.
        let is_named = faults.is_empty();
        let mut inputs = Vec::new();
        for (at, argument) in formula.arguments.iter().enumerate() {
            let accuracy = text_of(accuracies, argument);
            let given = match text_of(values, argument) {
                Some(text) => Some(Given::read(argument, text, accuracy)),
                None => Given::usual(argument, accuracy),
            };
            match given {
                Some(Ok(given)) => inputs.push(given),
                Some(Err(fault)) => faults.push(fault),
                None if is_named => faults.push(missing(formula, at)),
                None => {}
            }
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        Self::of(formula, inputs).map_err(|fault| vec![fault])
    }

    fn of(formula: &'static Formula, inputs: Vec<Given>) -> Result<Self, Unfit> {
        let values: Vec<Quantity> = inputs.iter().map(|given| given.value).collect();
        let margins: Vec<(Quantity, f64)> = inputs.iter().map(|given| (given.value, given.margin)).collect();
        let is_uncertain = margins.iter().any(|(_, margin)| *margin > 0.0);
        Ok(Self {
            formula,
            result: formula.compute(&values)?,
            margin: is_uncertain.then(|| formula.margin(&margins)),
            slips: slips(formula, &inputs),
            warnings: formula.warned(&margins)?,
            unusual: unusual(formula, &inputs),
            inputs,
        })
    }

    /// The system of units that the inputs were given in: the international one where nothing was given in the other.
    pub fn system(&self) -> System {
        let mut systems = self.inputs.iter().filter_map(|given| match given.origin {
            Origin::Usual(_) => None,
            _ => given.scale.unit.system(),
        });
        match systems.next() {
            Some(System::Si) if systems.all(|system| system == System::Si) => System::Si,
            _ => System::Us,
        }
    }
}

/// What the usual slips of a hand do, each alone; one that reaches out of the formula's range does nothing that could be told.
fn slips(formula: &Formula, inputs: &[Given]) -> Vec<Slip> {
    let slip_at = |at: usize| {
        let given = &inputs[at];
        let off = given.argument.slip.filter(|_| given.margin == 0.0)?;
        let margin = Quantity::new(off.number, given.argument.scale.of_offsets()).base();
        let margins = (inputs.iter().enumerate())
            .map(|(other, given)| (given.value, if other == at { margin } else { 0.0 }))
            .collect::<Vec<_>>();
        let moves = formula.margin(&margins).ok()?;
        Some(Slip {
            argument: given.argument,
            off,
            moves,
        })
    };
    (0..inputs.len()).filter_map(slip_at).collect()
}

fn text_of<'t>(given: &[Named<'t>], argument: &Argument) -> Option<&'t str> {
    let named = given.iter().find(|named| named.name == argument.name)?;
    Some(named.text)
}

/// Names that are no arguments of the formula, and names that were given before.
fn misnamed(formula: &Formula, given: &[Named<'_>], of: &str) -> Vec<Unfit> {
    let mut faults = Vec::new();
    for (at, Named { name, text }) in given.iter().enumerate() {
        if formula.argument(name).is_none() {
            let names: Vec<&str> = formula.arguments.iter().map(|argument| argument.name).collect();
            let help = match nearest(name, names.iter().copied()) {
                Some(meant) => format!("did you mean `{meant}`?"),
                None => format!("its arguments are {}", names.join(", ")),
            };
            faults.push(Unfit::new(
                format!("`{name}` is no argument of {}", formula.name),
                help,
            ));
        } else if let Some(first) = given[..at].iter().find(|first| first.name == *name) {
            faults.push(Unfit::new(
                format!("{of}{name} is given twice: `{}` and `{text}`", first.text),
                "give it once",
            ));
        }
    }
    faults
}

fn missing(formula: &Formula, at: usize) -> Unfit {
    let argument = &formula.arguments[at];
    let unit = match argument.scale.unit.ascii() {
        "" => "as a plain number".to_owned(),
        unit => format!("in {unit}"),
    };
    // A test holds that every formula has an example of each argument.
    let example = formula.example.get(at).copied().unwrap_or_default();
    Unfit::new(
        format!("{} is missing: {}", argument.name, argument.meaning),
        format!("give it {unit}, for instance {}='{example}'", argument.name),
    )
}
