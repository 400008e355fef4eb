//! Whatever is read, the readers answer: no panic, and a range that lies inside the text.

use proptest::prelude::*;

use super::{band_of, scale};
use crate::measure::{Accuracy, Amount, Misread, PlausibleRange, Unit};

fn stays_inside(text: &str, answer: Result<(), Misread>) -> Result<(), TestCaseError> {
    if let Err(misread) = answer {
        prop_assert!(text.get(misread.range.clone()).is_some(), "{text:?} {misread:?}");
        prop_assert!(
            !misread.message.is_empty() && !misread.help.is_empty(),
            "{misread:?}"
        );
    }
    Ok(())
}

fn all_readers(text: &str) -> Result<(), TestCaseError> {
    let volts = scale("V");
    stays_inside(text, Amount::parse(text).map(drop))?;
    stays_inside(text, Amount::typed(text, volts).map(drop))?;
    stays_inside(text, band_of(text, volts, volts).map(drop))?;
    stays_inside(text, PlausibleRange::parse(text, volts).map(drop))?;
    stays_inside(text, Accuracy::parse(text, volts).map(drop))?;
    let _ = Unit::parse(text);
    Ok(())
}

/// Pieces of the grammar in any order reach further into the readers than any text does.
fn pieces() -> impl Strategy<Value = String> {
    let piece = prop::sample::select(vec![
        "below",
        "at most",
        "at least",
        "above",
        "to",
        "of",
        "and",
        "otherwise",
        "5",
        "-3.5",
        "1e9",
        "1e999",
        "80,000",
        ".inf",
        "V",
        "°F",
        "Ω",
        "%",
        "plate.",
        "plate.rise_max",
        "plate.é",
        "of reading",
        "+",
        "-",
        "−",
        "±",
        ",",
        "{",
        "\u{a0}",
        "\u{3000}",
        "µ",
        "\u{1b}[2J",
        "\u{202e}",
        "…",
    ]);
    prop::collection::vec((piece, "[ \t]?"), 0..8).prop_map(|pieces| {
        pieces
            .into_iter()
            .flat_map(|(piece, space)| [piece.to_owned(), space])
            .collect()
    })
}

proptest! {
    #[test]
    fn any_text_gets_an_answer(text in any::<String>()) {
        all_readers(&text)?;
    }

    #[test]
    fn any_order_of_words_gets_an_answer(text in pieces()) {
        all_readers(&text)?;
    }
}

#[test]
fn a_huge_text_is_answered_at_once() {
    for unit in ["1", ",", "at least ", "plate.", "to ", "+", "é"] {
        let text = unit.repeat(100_000);
        assert!(Amount::parse(&text).is_err() && band_of(&text, scale("V"), scale("V")).is_err());
        assert!(Accuracy::parse(&text, scale("V")).is_err());
    }
}
