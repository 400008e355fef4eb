//! Numbers as a person reads them.

use super::{difference, quantity, scale};

#[track_caller]
fn shows(text: &str, unit: &str, shown: &str) {
    assert_eq!(quantity(text).display(scale(unit)).to_string(), shown);
}

#[test]
fn the_shortest_form_that_says_what_is_meant() {
    shows("3.20 in.w.c.", "in.w.c.", "3.2 in.w.c.");
    shows("0.45 uA", "uA", "0.45 µA");
    shows("80000 BTU/h", "BTU/h", "80000 BTU/h");
    shows("120.55 V", "V", "120.55 V");
    shows("-40 °F", "C", "-40 °C");
    shows("0.00001 V", "V", "0.00001 V");
    shows("0 °F", "F", "0 °F");
    shows("1 psi", "in.w.c.", "27.7076 in.w.c.");
    shows("1234567.4 BTU/h", "BTU/h", "1234567 BTU/h");
    shows("3 number", "number", "3");
    shows("9 ppm", "%", "0.0009 %");
    shows("-0.00004 in.w.c.", "in.w.c.", "-0.00004 in.w.c.");
}

#[test]
fn noise_is_never_shown() {
    let set = quantity("3.5 in.w.c.").minus(quantity("0.3 in.w.c.")).unwrap();
    assert_eq!(set.display(scale("in.w.c.")).to_string(), "3.2 in.w.c.");
    let third = quantity("1 V").times(1.0 / 3.0);
    assert_eq!(third.display(scale("V")).to_string(), "0.3333 V");
    assert_eq!(
        difference("30 °C").display(scale("F").of_offsets()).to_string(),
        "54 °F"
    );
}

#[test]
fn what_is_very_small_or_large_takes_an_exponent() {
    shows("1e-9 V", "V", "1e-9 V");
    shows("123e12 V", "V", "1.23e14 V");
}

#[test]
fn what_was_worked_out_is_shown_no_finer_than_asked() {
    let input = quantity("1 ft3/h").times(114.3581);
    assert_eq!(input.display(scale("cfh")).digits(3).to_string(), "114 ft³/h");
    assert_eq!(
        quantity("82758.62 BTU/h")
            .display(scale("BTU/h"))
            .digits(3)
            .to_string(),
        "82759 BTU/h"
    );
}

#[test]
fn a_plain_terminal_gets_plain_units() {
    assert_eq!(
        quantity("2.5 uA").display(scale("uA")).ascii().to_string(),
        "2.5 uA"
    );
    assert_eq!(
        quantity("68 °F").display(scale("F")).ascii().to_string(),
        "68 degF"
    );
    assert_eq!(
        format!("[{:>8}]", quantity("24 V").display(scale("V"))),
        "[    24 V]"
    );
}

#[test]
fn a_percentage_that_was_worked_out_has_two_digits_after_the_point() {
    for (worked, shown) in [
        ("-0.322643 %", "-0.32 %"),
        ("18.2481 %", "18.25 %"),
        ("0.00093 %", "0.00093 %"),
        ("3 %", "3 %"),
    ] {
        assert_eq!(
            quantity(worked).display(scale("%")).worked_out().to_string(),
            shown
        );
    }
    let volts = quantity("1 V").times(1.0 / 3.0);
    assert_eq!(volts.display(scale("V")).worked_out().to_string(), "0.3333 V");
}

#[test]
fn what_was_worked_out_has_no_more_significant_digits_than_asked_for() {
    for (text, shown) in [
        ("55.9996 V", "56 V"),
        ("1.06243 V", "1.062 V"),
        ("80123 V", "80120 V"),
        ("0 V", "0 V"),
    ] {
        let volts = quantity(text).display(scale("V"));
        assert_eq!(volts.significant(4).to_string(), shown);
    }
}
