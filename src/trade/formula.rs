//! What every formula is, and can do.

use crate::measure::{Amount, Quantity, Scale, Unit};

use super::argument::Argument;
use super::gas_pipe;
use super::group::Group;
use super::plausible;
use super::unfit::Unfit;
use super::warning::{Warned, Warning};

/// One thing that the trade computes.
#[derive(Debug)]
pub struct Formula {
    /// The name by which a worked-out reading asks for it.
    pub name: &'static str,
    /// What part of the work it belongs to.
    pub group: Group,
    /// What it gives, in one sentence.
    pub sentence: &'static str,
    /// The equation, in its arguments' names and units.
    pub equation: &'static str,
    /// What goes in, in the order of the inputs.
    pub arguments: &'static [Argument],
    /// What comes out.
    pub result: Scale,
    /// Where it holds, in words.
    pub range: &'static str,
    /// Where its result is to be trusted less, though there is one.
    pub warnings: &'static [Warning],
    /// A worked example: one input for each argument, as a technician types it.
    pub example: &'static [&'static str],
    /// Where it comes from.
    pub references: &'static [&'static str],
    /// From numbers, each in its argument's unit, to the result's number in its own.
    pub(super) compute: fn(&[f64]) -> Result<f64, Unfit>,
}

impl Formula {
    /// The argument of a name.
    pub fn argument(&self, name: &str) -> Option<&'static Argument> {
        self.arguments.iter().find(|argument| argument.name == name)
    }

    /// Whether what comes out is one of the sizes that are made, so that nothing lies between two of them.
    pub fn is_of_sizes(&self) -> bool {
        self.name.starts_with("gas_pipe_size") || self.name.contains("drill_for")
    }

    /// Of how much length the result is, where it is not of the whole: a friction rate is that of 100 ft, a slope that of a foot.
    pub fn counted_over(&self) -> Option<Quantity> {
        let feet = match self.name {
            "available_friction_rate" | "duct_friction_rate" => 100.0,
            "drain_slope" => 1.0,
            _ => return None,
        };
        Some(Quantity::new(feet, Scale::of(Unit::Foot)))
    }

    /// What a result is called besides its number: a pipe that is made in inches has a name in millimetres, too.
    pub fn other_name(&self, result: Quantity) -> Option<String> {
        let is_pipe = self.name.starts_with("gas_pipe_size");
        is_pipe.then(|| gas_pipe::in_millimetres(result.number_in(self.result)))?
    }

    /// The result for inputs in the order of the arguments.
    ///
    /// # Errors
    ///
    /// Where the inputs are not as many as the arguments, measure something else, are beyond anything in this work, or lie
    /// outside the formula's range, and where the result is no finite number or itself beyond anything in this work.
    pub fn compute(&self, inputs: &[Quantity]) -> Result<Quantity, Unfit> {
        let numbers = self.numbers(inputs)?;
        let number = (self.compute)(&numbers)?;
        let result = Quantity::new(number, self.result);
        if !result.base().is_finite() {
            let message = format!("{} comes out as no finite number", self.name);
            return Err(Unfit::new(
                message,
                "check the inputs for a slip of the decimal point",
            ));
        }
        plausible::check_result(self, result)?;
        Ok(result)
    }

    /// Why the result for inputs in the order of the arguments is to be trusted less; nothing where it is not.
    ///
    /// # Errors
    ///
    /// As [`compute`](Self::compute).
    pub fn warnings(&self, inputs: &[Quantity]) -> Result<Vec<&'static Warning>, Unfit> {
        let result = self.compute(inputs)?.number_in(self.result);
        let numbers = self.numbers(inputs)?;
        let given = |warning: &&Warning| (warning.applies)(&numbers, result);
        Ok(self.warnings.iter().filter(given).collect())
    }

    /// The same for inputs that may each be off by a margin, all margins in base units: a warning is borderline where it holds for
    /// some of what the inputs may be and not for the rest.
    ///
    /// Inputs off as far as they may be that the formula does not take say nothing: [`margin`](Self::margin) tells of those.
    ///
    /// # Errors
    ///
    /// As [`compute`](Self::compute), for the inputs themselves.
    pub fn warned(&self, inputs: &[(Quantity, f64)]) -> Result<Vec<Warned>, Unfit> {
        let middle: Vec<Quantity> = inputs.iter().map(|(value, _)| *value).collect();
        let at_value = self.warnings(&middle)?;
        let ends = ends_of(inputs);
        let at_ends: Vec<_> = corners(&ends)
            .filter_map(|corner| self.warnings(&corner).ok())
            .collect();
        let holds =
            |among: &[&'static Warning], warning| among.iter().any(|given| std::ptr::eq(*given, warning));
        let warned = self.warnings.iter().filter_map(|warning| {
            let count = at_ends.iter().filter(|given| holds(given, warning)).count();
            let is_given = holds(&at_value, warning);
            (is_given || count > 0).then_some(Warned {
                warning,
                is_borderline: !is_given || count < at_ends.len(),
            })
        });
        Ok(warned.collect())
    }

    /// The result for inputs as a technician types them: a bare number is in its argument's unit.
    ///
    /// # Errors
    ///
    /// As [`compute`](Self::compute), and where an input cannot be read.
    pub fn compute_typed(&self, inputs: &[&str]) -> Result<Quantity, Unfit> {
        let read = inputs.iter().zip(self.arguments).map(|(text, argument)| {
            let (_, quantity) = Amount::typed(text, argument.scale)?;
            Ok(quantity)
        });
        let quantities = read.collect::<Result<Vec<_>, Unfit>>()?;
        if inputs.len() > quantities.len() {
            return Err(self.miscounted(inputs.len()));
        }
        self.compute(&quantities)
    }

    /// How far the result may be off when each input may be off by its margin, all margins in base units: the worst over
    /// every combination of inputs at the ends of their margins.
    ///
    /// Errors of two meters are not averaged but taken at their worst together, since a part is condemned on the result.
    /// With n uncertain inputs that is 2ⁿ evaluations; no formula has many.
    ///
    /// # Errors
    ///
    /// As [`compute`](Self::compute), for the inputs themselves or for one of the combinations: a result that may lie
    /// outside the formula's range has no margin that could be relied on.
    pub fn margin(&self, inputs: &[(Quantity, f64)]) -> Result<f64, Unfit> {
        self.margin_between(&ends_of(inputs))
    }

    /// The same for inputs that lie between two ends, each given as its value, its lower and its upper end: a meter that
    /// reads near zero is not off to below zero.
    ///
    /// # Errors
    ///
    /// As [`margin`](Self::margin).
    pub fn margin_between(&self, inputs: &[[Quantity; 3]]) -> Result<f64, Unfit> {
        let middle: Vec<Quantity> = inputs.iter().map(|[value, ..]| *value).collect();
        let centre = self.compute(&middle)?.base();
        let mut worst: f64 = 0.0;
        for corner in corners(inputs) {
            worst = worst.max((self.compute(&corner)?.base() - centre).abs());
        }
        Ok(worst)
    }

    /// The inputs as the equation takes them.
    fn numbers(&self, inputs: &[Quantity]) -> Result<Vec<f64>, Unfit> {
        if inputs.len() != self.arguments.len() {
            return Err(self.miscounted(inputs.len()));
        }
        let numbers = inputs.iter().zip(self.arguments).map(|(input, argument)| {
            if input.dimension() == argument.scale.dimension() {
                plausible::check(argument, *input)?;
                return Ok(input.number_in(argument.scale));
            }
            let (is, wants) = (input.dimension().name(), argument.scale.dimension().name());
            Err(Unfit::new(
                format!("{} is {wants}, not {is}", argument.name),
                format!("give {} in {}", argument.name, argument.scale.unit.ascii()),
            ))
        });
        numbers.collect()
    }

    fn miscounted(&self, given: usize) -> Unfit {
        let names: Vec<&str> = self.arguments.iter().map(|argument| argument.name).collect();
        let message = format!("{} takes {} inputs, not {given}", self.name, names.len());
        Unfit::new(message, format!("give {}", names.join(", ")))
    }
}

/// Each value with its lower and its upper end, from how far it may be off: a meter that reads near zero is not off to below
/// zero where nothing is below zero.
fn ends_of(inputs: &[(Quantity, f64)]) -> Vec<[Quantity; 3]> {
    let inputs = inputs.iter();
    inputs
        .map(|&(value, margin)| {
            let kind = value.dimension();
            let (mut low, high) = (value.base() - margin, value.base() + margin);
            if plausible::is_never_below_zero(kind) && value.base() >= 0.0 {
                low = low.max(0.0);
            }
            [
                value,
                Quantity::from_base(low, kind),
                Quantity::from_base(high, kind),
            ]
        })
        .collect()
}

/// Every combination of the ends of inputs that lie between two; their count must be that of the arguments, which are few.
fn corners(inputs: &[[Quantity; 3]]) -> impl Iterator<Item = Vec<Quantity>> {
    let is_uncertain = |at: &usize| inputs[*at][1].base() < inputs[*at][2].base();
    let uncertain: Vec<usize> = (0..inputs.len()).filter(is_uncertain).collect();
    (0..1_u32 << uncertain.len()).map(move |corner| {
        let mut values: Vec<Quantity> = inputs.iter().map(|[value, ..]| *value).collect();
        for (bit, &at) in uncertain.iter().enumerate() {
            let [_, low, high] = inputs[at];
            values[at] = if corner >> bit & 1 == 1 { high } else { low };
        }
        values
    })
}

/// The numbers by name: `let [supply, return_air] = each(numbers);`. Their count has been checked against the arguments.
pub(super) fn each<const N: usize>(numbers: &[f64]) -> [f64; N] {
    std::array::from_fn(|at| numbers[at])
}

/// Refuses a number that must be more than nothing.
pub(super) fn positive(number: f64, what: &str) -> Result<(), Unfit> {
    if number > 0.0 {
        return Ok(());
    }
    Err(Unfit::new(
        format!("{what} is not above zero"),
        format!("take {what} again"),
    ))
}

/// Refuses a number below nothing.
pub(super) fn not_negative(number: f64, what: &str, help: &str) -> Result<(), Unfit> {
    if number >= 0.0 {
        return Ok(());
    }
    Err(Unfit::new(format!("{what} is below zero"), help))
}
