//! Formulas, and what they come to, as JSON.

use serde::Serialize;

use crate::measure::{Quantity, Scale, System, Unit};
use crate::trade::{Argument, Formula, Given, Origin, Slip, Unfit, Unusual, Warned, Warning, Worked};

#[derive(Serialize)]
struct Page {
    name: &'static str,
    group: &'static str,
    sentence: &'static str,
    equation: &'static str,
    arguments: Vec<ArgumentEntry>,
    unit: &'static str,
    measures: &'static str,
    range: &'static str,
    warnings: Vec<WarningEntry>,
    example: Vec<Example>,
    references: &'static [&'static str],
    #[serde(skip_serializing_if = "Option::is_none")]
    caution: Option<&'static str>,
}

#[derive(Serialize)]
struct ArgumentEntry {
    name: &'static str,
    unit: &'static str,
    measures: &'static str,
    takes: Vec<&'static str>,
    meaning: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    default: Option<Taken>,
}

#[derive(Serialize)]
struct Taken {
    value: f64,
    because: &'static str,
}

#[derive(Serialize)]
struct WarningEntry {
    when: &'static str,
    reason: &'static str,
    help: &'static str,
}

#[derive(Serialize)]
struct Example {
    argument: &'static str,
    given: &'static str,
}

#[derive(Serialize)]
struct Computed {
    formula: &'static str,
    result: Value,
    /// Of how much length the result is, where it is not of the whole.
    #[serde(skip_serializing_if = "Option::is_none")]
    counted_over: Option<Value>,
    #[serde(skip_serializing_if = "Option::is_none")]
    margin_refused: Option<String>,
    inputs: Vec<Input>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    slips: Vec<SlipEntry>,
    warnings: Vec<WarnedEntry>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    unusual: Vec<UnusualEntry>,
    range: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    caution: Option<&'static str>,
}

/// An input that is larger or smaller than it is in houses.
#[derive(Serialize)]
struct UnusualEntry {
    argument: &'static str,
    least: Value,
    most: Value,
}

#[derive(Serialize)]
struct WarnedEntry {
    #[serde(flatten)]
    warning: WarningEntry,
    /// Whether the accuracies reach across its limit, so that it may hold or not.
    borderline: bool,
}

#[derive(Serialize)]
struct Value {
    value: f64,
    unit: &'static str,
    /// How far it may be off at worst, in the same unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    margin: Option<f64>,
}

/// What a slip of the hand that nobody spoke of does to the result.
#[derive(Serialize)]
struct SlipEntry {
    argument: &'static str,
    #[serde(flatten)]
    off: Value,
    because: &'static str,
    moves: Value,
}

#[derive(Serialize)]
struct Input {
    argument: &'static str,
    #[serde(flatten)]
    value: Value,
    /// `written` with its unit, `bare`, or the `default`.
    origin: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    because: Option<&'static str>,
}

/// The formulas as an array of their pages.
pub fn listed_json(formulas: &[&'static Formula]) -> String {
    let pages: Vec<Page> = formulas.iter().map(|formula| page_of(formula)).collect();
    printed(&pages)
}

/// All that is known of a formula.
pub fn page_json(formula: &'static Formula) -> String {
    printed(&page_of(formula))
}

/// What a formula comes to on its inputs, in a system of units; numbers to twelve digits.
pub fn worked_json(worked: &Worked, system: System) -> String {
    let scale = worked.formula.result.in_system(system);
    let (margin, refused) = match &worked.margin {
        Some(Ok(margin)) => (Some(*margin), None),
        Some(Err(unfit)) => (None, Some(Unfit::to_string(unfit))),
        None => (None, None),
    };
    printed(&Computed {
        formula: worked.formula.name,
        result: value(worked.result, scale, margin),
        counted_over: worked
            .formula
            .counted_over()
            .map(|length| value(length, Scale::of(Unit::Foot), None)),
        margin_refused: refused,
        inputs: worked.inputs.iter().map(input).collect(),
        slips: worked.slips.iter().map(|slip| moved(slip, scale)).collect(),
        warnings: worked.warnings.iter().map(warned).collect(),
        unusual: worked.unusual.iter().map(unusual).collect(),
        range: worked.formula.range,
        caution: worked.formula.group.caution(),
    })
}

fn page_of(formula: &'static Formula) -> Page {
    let example = formula.arguments.iter().zip(formula.example);
    Page {
        name: formula.name,
        group: formula.group.name(),
        sentence: formula.sentence,
        equation: formula.equation,
        arguments: formula.arguments.iter().map(argument).collect(),
        unit: formula.result.symbol(),
        measures: formula.result.dimension().name(),
        range: formula.range,
        warnings: formula.warnings.iter().map(warning).collect(),
        example: example
            .map(|(argument, given)| Example {
                argument: argument.name,
                given,
            })
            .collect(),
        references: formula.references,
        caution: formula.group.caution(),
    }
}

fn argument(argument: &Argument) -> ArgumentEntry {
    ArgumentEntry {
        name: argument.name,
        unit: argument.scale.symbol(),
        measures: argument.scale.dimension().name(),
        takes: argument.scale.units().map(|unit| unit.symbol()).collect(),
        meaning: argument.meaning,
        default: argument.default.map(|usual| Taken {
            value: usual.number,
            because: usual.because,
        }),
    }
}

fn warning(warning: &Warning) -> WarningEntry {
    WarningEntry {
        when: warning.when,
        reason: warning.reason,
        help: warning.help,
    }
}

fn unusual(unusual: &Unusual) -> UnusualEntry {
    let scale = unusual.argument.scale;
    let [least, most] = unusual.usual.map(|end| value(end, scale, None));
    UnusualEntry {
        argument: unusual.argument.name,
        least,
        most,
    }
}

fn warned(warned: &Warned) -> WarnedEntry {
    WarnedEntry {
        warning: warning(warned.warning),
        borderline: warned.is_borderline,
    }
}

fn input(given: &Given) -> Input {
    let (origin, because) = match given.origin {
        Origin::Written => ("written", None),
        Origin::Bare => ("bare", None),
        Origin::Usual(because) => ("default", Some(because)),
    };
    let margin = (given.margin > 0.0).then_some(given.margin);
    Input {
        argument: given.argument.name,
        value: value(given.value, given.scale, margin),
        origin,
        because,
    }
}

fn moved(slip: &Slip, scale: Scale) -> SlipEntry {
    let own = slip.argument.scale.of_offsets();
    let offsets = scale.of_offsets();
    let moves = Quantity::from_base(slip.moves, offsets.dimension());
    SlipEntry {
        argument: slip.argument.name,
        off: value(Quantity::new(slip.off.number, own), own, None),
        because: slip.off.because,
        moves: value(moves, offsets, None),
    }
}

fn value(quantity: Quantity, scale: Scale, margin: Option<f64>) -> Value {
    let offsets = scale.of_offsets();
    Value {
        value: quantity.number_in(scale),
        unit: scale.symbol(),
        margin: margin.map(|margin| Quantity::from_base(margin, offsets.dimension()).number_in(offsets)),
    }
}

fn printed(value: &impl Serialize) -> String {
    // Every key is text and every number finite, so nothing here can fail to be written.
    let mut text = serde_json::to_string_pretty(value).unwrap_or_default();
    text.push('\n');
    text
}
