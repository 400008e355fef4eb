//! Bands that cannot be read, and what is said of them.

use super::{band_of, scale};
use crate::measure::{BandText, Scale, Unit};

/// Reads a band of volts that must fail: `(what is pointed at, message, help)`.
#[track_caller]
fn refuses(text: &str, at: &str, message: &str, help: &str) {
    let misread = band_of(text, scale("V"), scale("V")).unwrap_err();
    assert_eq!(misread.message, message, "{text}");
    assert!(misread.help.contains(help), "{text}: {}", misread.help);
    assert_eq!(&text[misread.range], at, "{text}");
}

#[test]
fn there_is_no_otherwise() {
    let help = "the bands of a step must cover every value";
    refuses("otherwise", "otherwise", "bands have no `otherwise`", help);
    refuses(" else ", "else", "bands have no `else`", help);
}

#[test]
fn a_dash_between_two_numbers_is_a_to() {
    refuses(
        "0-60 A",
        "0-60 A",
        "`0-60 A` is not a band",
        "write `0 A to 60 A`",
    );
    refuses(
        "18 V – 30 V",
        "18 V – 30 V",
        "`18 V – 30 V` is not a band",
        "write `18 V to 30 V`",
    );
    refuses(
        "-5 - 5 V",
        "-5 - 5 V",
        "`-5 - 5 V` is not a band",
        "write `-5 V to 5 V`",
    );
}

#[test]
fn a_comma_in_braces_is_explained() {
    let message = "a comma joins two conditions, and one is missing";
    refuses("at least 18 V,", "", message, "inside `{…}` a comma ends the key");
    refuses(", below 3 V", "", message, "write `bands` as a block");
    refuses("at least 18 V, , below 20 V", " ", message, "inside `{…}`");
    refuses(
        "at least",
        "at least",
        "nothing follows `at least`",
        "write `at least 24 V`",
    );
    refuses("", "", "there is no band", "write `below B`");
}

#[test]
fn a_comma_in_a_number_is_explained() {
    refuses(
        "at least 80,000 V",
        "80,000",
        "`80,000` has a comma, which can be read two ways",
        "write `80000`, or put a space",
    );
    refuses(
        "below 3,5 V",
        "3,5",
        "`3,5` has a comma, which can be read two ways",
        "write a decimal point: `3.5`",
    );
}

#[test]
fn other_words_for_a_relation_are_translated() {
    for (text, help) in [
        ("< 5 V", "`below B`"),
        ("<5 V", "`below B`"),
        (">= 5 V", "`at least B`"),
        ("over 5 V", "`above B`"),
        ("less than 5 V", "`below B`"),
        ("between 5 V and 9 V", "`A to B`"),
        ("5 V", "one value is hardly ever met"),
        ("5 V to", "write both ends"),
        ("to 5 V", "write both ends"),
        ("around 5 V", "write `below B`, `at most B`"),
    ] {
        let message = format!("`{text}` is not a band");
        refuses(text, text, &message, help);
    }
}

#[test]
fn words_that_join_are_not_units() {
    refuses(
        "at least 5 V to 9 V",
        "to",
        "`to` cannot stand in a bound",
        "`A to B` stands alone",
    );
    refuses(
        "at least 5 V and below 9 V",
        "and",
        "`and` cannot stand in a bound",
        "join two conditions with one comma",
    );
    refuses(
        "below 5 V or above 9 V",
        "or",
        "`or` cannot stand in a bound",
        "a second band",
    );
    refuses(
        "1 V to 2 V to 3 V",
        "to",
        "`to` cannot stand in a bound",
        "`A to B` stands alone",
    );
}

#[test]
fn a_bound_that_cannot_be_read_is_pointed_at() {
    refuses(
        "below 5 bananas",
        "bananas",
        "`bananas` is not a unit",
        "the units are",
    );
    refuses("below 5", "5", "`5` has no unit", "write `5 V`");
    refuses("18 to 30 V", "18", "`18` has no unit", "write `18 V`");
    refuses(
        "below rise_max",
        "rise_max",
        "`rise_max` is not a bound",
        "`plate.rise_max`",
    );
    refuses(
        "below plate.",
        "plate.",
        "`plate.` names no field",
        "plate.rise_max",
    );
    refuses(
        "below plate.x * 2",
        "* 2",
        "`* 2` cannot follow a field",
        "90 % of plate.input",
    );
    refuses(
        "below plate.x - -3 V",
        "- -3 V",
        "the offset `-3 V` is not a quantity without a sign",
        "an offset",
    );
    refuses(
        "below plate.x +",
        "+",
        "the offset `` is not a quantity without a sign",
        "an offset",
    );
    refuses(
        "below 3 V + plate.x",
        "3 V + plate.x",
        "`3 V + plate.x` is not a bound",
        "a field and an offset",
    );
    refuses(
        "below 90 V of plate.x",
        "90 V",
        "`90 V` is not a share",
        "90 % of plate.input",
    );
    refuses("below 0 % of plate.x", "0 %", "`0 %` is not a share", "above 0 %");
    refuses(
        "below 90 % of 5 V",
        "90 % of 5 V",
        "`90 % of 5 V` is not a bound",
        "a share",
    );
    refuses(
        "below .inf",
        ".inf",
        "`.inf` is not a finite number",
        "a meter shows",
    );
}

#[test]
fn dimensions_are_named_on_both_sides() {
    refuses(
        "below 250 ohm",
        "250 ohm",
        "`250 ohm` is a resistance; V measures a voltage",
        "write it in V or mV",
    );
    let text = "at most plate.rise_max";
    let rise = Scale::difference(Unit::DegreeFahrenheit);
    let misread = band_of(text, scale("F"), rise).unwrap_err();
    assert_eq!(
        misread.message,
        "`plate.rise_max` is a temperature difference; °F measures a temperature"
    );
    assert_eq!(&text[misread.range], "plate.rise_max");
    let misread = band_of("below 90 % of plate.opens", scale("F"), scale("F")).unwrap_err();
    assert_eq!(
        misread.message,
        "`plate.opens` is a temperature, of which a share means nothing"
    );
    assert!(band_of("below 90 % of plate.rise_max", rise, rise).is_ok());
}

#[test]
fn long_texts_are_cut_in_messages() {
    let misread = BandText::parse(&"x".repeat(100_000)).unwrap_err();
    assert!(misread.message.len() < 100, "{}", misread.message.len());
}
