//! What must hold of every formula of the register.

use proptest::prelude::*;

use super::*;
use crate::measure::System;

fn formulas() -> impl Strategy<Value = &'static Formula> {
    prop::sample::select(all().to_vec())
}

/// The example's inputs, each with the scale it is computed in.
fn example(formula: &Formula) -> Vec<Quantity> {
    let inputs = formula.example.iter().zip(formula.arguments);
    inputs
        .map(|(text, argument)| Amount::typed(text, argument.scale).unwrap().1)
        .collect()
}

#[test]
fn each_has_an_example_of_every_argument_with_a_result() {
    for formula in all() {
        assert_eq!(formula.example.len(), formula.arguments.len(), "{}", formula.name);
        formula.compute(&example(formula)).unwrap();
        for argument in formula.arguments {
            let Some(usual) = argument.default else { continue };
            assert!(usual.number.is_finite() && !usual.because.is_empty());
        }
    }
}

/// An example is a house's: what is usual must take it in, and be of an argument that there is.
#[test]
fn no_example_is_unusual() {
    for formula in all() {
        let values: Vec<Named<'_>> = (formula.arguments.iter().zip(formula.example))
            .map(|(argument, text)| Named {
                name: argument.name,
                text,
            })
            .collect();
        let worked = Worked::out(formula, &values, &[]).unwrap();
        assert_eq!(worked.unusual, [], "{}", formula.name);
    }
}

/// What is printed behind a label or within a sentence must read as one.
#[test]
fn each_says_what_it_says_in_one_voice() {
    for formula in all() {
        let name = formula.name;
        for sentence in [formula.sentence, formula.range].iter().chain(formula.references) {
            assert!(sentence.ends_with('.'), "{name}: {sentence}");
        }
        let within = formula.arguments.iter().map(|argument| argument.meaning);
        let within = within.chain(
            formula
                .arguments
                .iter()
                .filter_map(|argument| Some(argument.default?.because)),
        );
        let warnings =
            (formula.warnings.iter()).flat_map(|warning| [warning.when, warning.reason, warning.help]);
        for part in within.chain(warnings) {
            assert!(!part.is_empty() && !part.ends_with('.'), "{name}: {part}");
        }
    }
}

proptest! {
    #[test]
    fn a_result_is_the_same_in_either_system(formula in formulas()) {
        let inputs = example(formula);
        let there: Vec<Quantity> = (inputs.iter().zip(formula.arguments))
            .map(|(input, argument)| {
                let scale = argument.scale.in_system(System::Si);
                Quantity::new(input.number_in(scale), scale)
            })
            .collect();
        let (one, two) = (formula.compute(&inputs).unwrap(), formula.compute(&there).unwrap());
        prop_assert!((one.base() - two.base()).abs() <= 1e-8 * one.base().abs(), "{} {one:?} {two:?}", formula.name);
    }

    /// The margin is taken at the corners only: nothing between them may be worse.
    #[test]
    fn no_error_within_the_margins_is_worse_than_the_margin(
        formula in formulas(),
        shares in prop::collection::vec(-1.0..=1.0_f64, 12),
    ) {
        let inputs: Vec<(Quantity, f64)> = (example(formula).into_iter().zip(formula.arguments))
            .map(|(input, argument)| {
                // One part in a hundred of the number, so that a temperature is not off by a hundredth of its kelvins.
                let off = 0.01 * input.number_in(argument.scale).abs();
                (input, Quantity::new(off, argument.scale.of_offsets()).base())
            })
            .collect();
        prop_assume!(formula.margin(&inputs).is_ok());
        let margin = formula.margin(&inputs).unwrap();
        let moved: Vec<Quantity> = (inputs.iter().zip(&shares))
            .map(|((input, off), share)| Quantity::from_base(input.base() + share * off, input.dimension()))
            .collect();
        let middle: Vec<Quantity> = inputs.iter().map(|(input, _)| *input).collect();
        let (centre, result) = (formula.compute(&middle).unwrap().base(), formula.compute(&moved).unwrap().base());
        prop_assert!((result - centre).abs() <= margin * (1.0 + 1e-9) + 1e-9 * centre.abs(), "{}", formula.name);
    }
}
