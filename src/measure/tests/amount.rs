//! Numbers as they are written and typed.

use super::{difference, quantity, scale};
use crate::measure::{Amount, Misread, PlausibleRange, Scale, Unit};

#[track_caller]
fn reads(text: &str, number: f64, unit: Option<Unit>) {
    let amount = Amount::parse(text).unwrap();
    assert_eq!((amount.number, amount.unit), (number, unit), "{text}");
    assert_eq!(amount.text, text.trim());
}

#[track_caller]
fn refuses(text: &str, message: &str, help: &str) {
    let misread = Amount::parse(text).unwrap_err();
    assert_eq!(
        (misread.message.as_str(), misread.help.as_str()),
        (message, help),
        "{text}"
    );
}

#[test]
fn a_number_and_a_unit() {
    reads("18 V", 18.0, Some(Unit::Volt));
    reads("3.5in.w.c.", 3.5, Some(Unit::InchWaterColumn));
    reads("-40 °F", -40.0, Some(Unit::DegreeFahrenheit));
    reads("−40 °F", -40.0, Some(Unit::DegreeFahrenheit));
    reads("+2.5e-6 A", 2.5e-6, Some(Unit::Ampere));
    reads("  .5 \" wc ", 0.5, Some(Unit::InchWaterColumn));
    reads("7", 7.0, None);
    reads("7 number", 7.0, Some(Unit::Number));
    reads("90 percent", 90.0, Some(Unit::Percent));
    reads("0e9 V", 0.0, Some(Unit::Volt));
}

#[test]
fn numbers_that_are_read_two_ways_are_refused_with_help() {
    refuses(
        "80,000 BTU/h",
        "`80,000 BTU/h` has a comma, which can be read two ways",
        "write `80000`",
    );
    refuses(
        "1,250,000.5 V",
        "`1,250,000.5 V` has a comma, which can be read two ways",
        "write `1250000.5`",
    );
    refuses(
        "3,5 V",
        "`3,5 V` has a comma, which can be read two ways",
        "write a decimal point: `3.5`",
    );
    refuses(
        "1_000 V",
        "`1_000 V` has an underscore in its number",
        "write the digits together, for instance `1000`",
    );
    refuses(
        "12:30:45",
        "`12:30:45` is written like a time of day",
        "write one number in one unit, for instance `90 s`",
    );
    refuses(
        "0o14",
        "`0o14` is not a decimal number",
        "write it in decimal digits",
    );
    refuses(
        "0x1F V",
        "`0x1F V` is not a decimal number",
        "write it in decimal digits",
    );
    refuses(
        "80 000 BTU/h",
        "`80 000 BTU/h` has a space in its number",
        "write the digits together, for instance `80000`",
    );
    refuses(
        "1/2 ft3",
        "`1/2 ft3` is a fraction",
        "write it with a point: `0.5`",
    );
    refuses(
        "1.2.3 V",
        "`1.2.3 V` has two points",
        "write one number, for instance `3.5`",
    );
    refuses(
        "18-30 V",
        "`18-30 V` is two numbers",
        "write one number and its unit",
    );
}

#[test]
fn what_is_no_finite_number_is_refused() {
    for text in [".inf", "-.inf", "inf", ".nan V", "Infinity", "NaN"] {
        let misread = Amount::parse(text).unwrap_err();
        assert!(
            misread.message.ends_with("is not a finite number"),
            "{text}: {misread}"
        );
    }
    refuses(
        "1e999 V",
        "`1e999` is too large",
        "write a number a meter can show",
    );
    refuses(
        "1e-999 V",
        "`1e-999` is too small",
        "write a number a meter can show",
    );
    let huge = Amount::parse("1e308 psi").unwrap().quantity(scale("psi"));
    assert_eq!(huge.unwrap_err().message, "`1e308 psi` is too large");
}

#[test]
fn what_is_no_number_is_refused() {
    let help = "write a number and its unit, for instance `24 V`";
    refuses("", "there is no number", help);
    refuses("volts", "`volts` does not start with a number", help);
    refuses("- 5 V", "`- 5 V` does not start with a number", help);
    refuses("--5 V", "`--5 V` does not start with a number", help);
    refuses(".", "`.` does not start with a number", help);
}

#[test]
fn an_unknown_unit_is_pointed_at() {
    let misread = Amount::parse(" 24 bananas").unwrap_err();
    assert_eq!(misread.range, 4..11);
    assert_eq!(misread.message, "`bananas` is not a unit");
    assert!(
        misread.help.starts_with("the units are V, mV, A, "),
        "{}",
        misread.help
    );
    refuses(
        "3 MV",
        "`MV` has the wrong case: m is milli and M is mega",
        "write `mV`",
    );
}

#[test]
fn an_amount_must_measure_what_is_asked() {
    let says = |text: &str, on: Scale| Amount::parse(text).unwrap().quantity(on).unwrap_err().to_string();
    assert_eq!(
        says("250 ohm", scale("V")),
        "`250 ohm` is a resistance; V measures a voltage; write it in V or mV"
    );
    assert_eq!(says("18", scale("uA")), "`18` has no unit; write `18 uA`");
    assert_eq!(
        says("3 V", scale("number")),
        "`3 V` is a voltage; a plain number is asked for; write the number alone"
    );
    assert_eq!(
        says("3 number", scale("V")),
        "`3 number` is a plain number; V measures a voltage; write it in V or mV"
    );
    assert_eq!(
        Amount::parse("3").unwrap().quantity(scale("number")).unwrap(),
        quantity("3 number")
    );
    assert_eq!(
        says("3 V", Scale::difference(Unit::DegreeFahrenheit)),
        "`3 V` is a voltage; °F measures a temperature difference; write it in degF or degC"
    );
}

#[test]
fn a_technician_may_leave_the_unit_out_or_take_another() {
    let (amount, value) = Amount::typed(" 24 ", scale("V")).unwrap();
    assert_eq!((amount.unit, amount.text.as_str()), (Some(Unit::Volt), "24"));
    assert_eq!(value, quantity("24 V"));
    assert_eq!(amount.to_string(), "24 V");
    let (amount, value) = Amount::typed("24000mv", scale("V")).unwrap();
    assert_eq!(
        (amount.unit, amount.to_string().as_str()),
        (Some(Unit::Millivolt), "24000mv")
    );
    assert_eq!(value, quantity("24 V"));
    let rise = Scale::difference(Unit::DegreeFahrenheit);
    assert_eq!(Amount::typed("30 C", rise).unwrap().1, difference("54 °F"));
    assert_eq!(Amount::typed("30", rise).unwrap().1, difference("30 °F"));
    let (count, _) = Amount::typed("3", scale("number")).unwrap();
    assert_eq!(count.to_string(), "3");
}

#[test]
fn a_technician_is_told_what_would_be_taken() {
    let says = |text: &str| Amount::typed(text, scale("V")).unwrap_err();
    assert_eq!(
        says("  250 ohm"),
        Misread {
            range: 2..9,
            message: "`250 ohm` is a resistance; V measures a voltage".into(),
            help: "write it in V or mV".into(),
            mismatch: true,
        }
    );
    assert_eq!(says("24 bananas").help, "write it in V or mV");
    assert_eq!(says("24,5").help, "write a decimal point: `24.5`");
}

#[test]
fn a_prefix_alone_is_that_of_the_unit_asked_for() {
    for (typed, unit, means) in [
        ("2.00 M", "ohm", "2 Mohm"),
        ("15k", "ohm", "15 kohm"),
        ("15 K", "Mohm", "15 kohm"),
        ("3.1 u", "A", "3.1 uA"),
        ("3.1 µ", "uA", "3.1 uA"),
        ("12 m", "V", "12 mV"),
        ("12 m", "A", "12 mA"),
        ("45 µ", "uF", "45 uF"),
    ] {
        let (amount, value) = Amount::typed(typed, scale(unit)).unwrap();
        assert_eq!(value, quantity(means), "{typed}");
        // What is kept reads the same wherever it is read again.
        assert_eq!(
            Amount::parse(&amount.to_string()).unwrap().unit,
            amount.unit,
            "{typed}"
        );
    }
    assert_eq!(
        Amount::typed("2.00 M", scale("ohm")).unwrap().0.to_string(),
        "2.00 MΩ"
    );
    // Of a length, m is a unit and no prefix.
    assert_eq!(Amount::typed("2 m", scale("ft")).unwrap().1, quantity("2 m"));
}

#[test]
fn a_prefix_that_no_unit_has_leads_to_one_that_is_taken() {
    let says = |text: &str, unit: &str| Amount::typed(text, scale(unit)).unwrap_err().to_string();
    assert_eq!(
        says("2m", "ohm"),
        "`2m` would be mohm, which is no unit here; m is milli and M is mega: write `2 Mohm` if the meter shows that, or it \
         in ohm, kohm or Mohm"
    );
    assert!(says("2 M", "V").contains("write `2 mV`"));
    assert_eq!(
        says("5 n", "uF"),
        "`5 n` would be nF, which is no unit here; write it in uF"
    );
}

#[test]
fn over_range_is_no_number_and_what_to_type_is_said() {
    let says = |text: &str, unit: &str| Amount::typed(text, scale(unit)).unwrap_err().to_string();
    for shown in ["OL", "O.L", "0L", "open", " ol "] {
        let said = says(shown, "ohm");
        assert!(
            said.contains("more than the meter can show") && said.contains("`20 Mohm`"),
            "{said}"
        );
    }
    assert_eq!(
        says("OL", "V"),
        "`OL` is no number: it is more than the meter can show; take it in a higher range and type the number; write it in \
         V or mV"
    );
    assert!(says("12:30", "ohm").ends_with("`24 ohm`"));
    assert_eq!(Unit::parse("megaohms"), Some(Unit::Megohm));
}

#[test]
fn a_plausible_range_has_two_fixed_ends() {
    let range = PlausibleRange::parse("0 V to 150 V", scale("V")).unwrap();
    assert!(range.contains(quantity("0 V")) && range.contains(quantity("150 V")));
    assert!(!range.contains(quantity("151 V")) && !range.contains(quantity("-1 mV")));
    assert!(!range.contains(quantity("5 ohm")));
    for (text, message) in [
        ("at least 0 V", "`at least 0 V` is not a range"),
        ("above 0 V, below 5 V", "`above 0 V, below 5 V` is not a range"),
        ("5 V to 5 V", "`5 V to 5 V` holds no range of values"),
        ("9 V to 5 V", "`9 V to 5 V` holds no range of values"),
        ("0 V to plate.x", "a plausible range may not lean on `plate.x`"),
        ("0 V to 5 ohm", "`5 ohm` is a resistance; V measures a voltage"),
        ("0 to 5 V", "`0` has no unit"),
    ] {
        assert_eq!(
            PlausibleRange::parse(text, scale("V")).unwrap_err().message,
            message
        );
    }
}
