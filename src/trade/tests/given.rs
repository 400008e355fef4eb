//! Inputs as somebody gives them.

use super::*;

#[track_caller]
fn worked(name: &str, values: &[(&'static str, &'static str)]) -> Result<Worked, Vec<Unfit>> {
    let values: Vec<Named<'_>> = (values.iter())
        .map(|&(name, text)| Named { name, text })
        .collect();
    Worked::out(formula(name), &values, &[])
}

/// Each accuracy by hand: of a share, of the reading's own unit, of points of a percentage.
#[test]
fn an_accuracy_is_read_as_that_of_a_meter_is() {
    let rise = formula("temperature_rise");
    let off = |argument: &'static Argument, text: &str| {
        let given = Given::read(argument, text, None).unwrap();
        let offsets = argument.scale.of_offsets();
        Quantity::from_base(given.margin, offsets.dimension()).number_in(offsets)
    };
    let supply = &rise.arguments[0];
    assert_eq!(off(supply, "100 °F ± 1 %"), 1.0);
    assert_eq!(off(supply, "100 °F ± 1 % + 0.5 °F"), 1.5);
    assert_eq!(off(supply, "40 °C ± 1"), 1.8);
    assert_eq!(off(supply, "40 °C+/-1 °F"), 1.0);
    let o2 = &formula("co_air_free").arguments[1];
    assert_eq!(off(o2, "5 % ± 0.3 %"), 0.3);
    assert_eq!(off(o2, "5 ± 2 % of reading"), 0.1);
}

/// Half-inch pipe, the quarter inch a foot of a drain, the half-foot dial of a meter: as the trade says them.
#[test]
fn sizes_may_be_given_as_fractions() {
    for (name, argument, text, decimal) in [
        ("gas_pipe_capacity_natural", "size", "1/2 in", "0.5 in"),
        ("gas_pipe_capacity_natural", "size", "1-1/4", "1.25 in"),
        ("drain_drop", "slope", "1/4\"", "0.25 in"),
        ("input_from_meter", "dial", "1/2 ft3", "0.5 ft3"),
    ] {
        let argument = formula(name).argument(argument).unwrap();
        let given = Given::read(argument, text, None).unwrap();
        assert_eq!(given.value, quantity(decimal, argument.scale), "{text}");
    }
    let length = formula("gas_pipe_capacity_natural").argument("length").unwrap();
    let given = Given::read(length, "12 1/2 ± 1/4 in", None).unwrap();
    assert_eq!(given.value, quantity("12.5 in", length.scale));
    assert_eq!(
        Quantity::from_base(given.margin, length.scale.dimension()),
        quantity("0.25 in", length.scale)
    );
}

#[test]
fn an_accuracy_that_is_none_is_refused() {
    let supply = &formula("temperature_rise").arguments[0];
    for text in [
        "100 °F ± -1 °F",
        "100 °F ± 1 V",
        "100 °F ±",
        "± 1 °F",
        "100 °F ± 1,5 °F",
    ] {
        assert!(Given::read(supply, text, None).is_err(), "{text}");
    }
    assert!(Given::read(supply, "100 °F", Some("")).is_err());
}

#[test]
fn what_is_not_given_is_taken_as_usual_or_missed() {
    let inputs = [("current", "1.05 A"), ("voltage", "370 V")];
    let usual = worked("capacitance_under_load", &inputs).unwrap();
    assert_eq!(
        usual.inputs[2].origin,
        Origin::Usual("the supply of North America")
    );
    let inputs = [inputs[0], inputs[1], ("frequency", "60 Hz")];
    let given = worked("capacitance_under_load", &inputs).unwrap();
    assert_eq!(given.inputs[2].origin, Origin::Written);
    assert_eq!(given.result, usual.result);

    let faults = worked("capacitance_under_load", &[]).unwrap_err();
    let missing: Vec<&str> = faults.iter().map(|fault| fault.help.as_str()).collect();
    assert_eq!(
        missing,
        [
            "give it in A, for instance current='1.05 A'",
            "give it in V, for instance voltage='370 V'"
        ]
    );
}

#[test]
fn a_warning_is_given_where_it_applies() {
    let warned = |supply| {
        let worked = worked("temperature_rise", &[("supply", supply), ("return", "70 °F")]).unwrap();
        worked
            .warnings
            .iter()
            .map(|warned| (warned.warning.when, warned.is_borderline))
            .collect::<Vec<_>>()
    };
    let below = "the rise is below zero";
    assert_eq!(warned("69.9 °F"), [(below, false)]);
    assert!(warned("70 °F").is_empty());
    // Half a degree reaches across the limit from either side.
    assert_eq!(warned("69.9 °F ± 0.5 °F"), [(below, true)]);
    assert_eq!(warned("70.2 °F ± 0.5 °F"), [(below, true)]);
    assert_eq!(warned("69 °F ± 0.5 °F"), [(below, false)]);
    assert!(warned("71 °F ± 0.5 °F").is_empty());
}

/// By hand, each with a meter that reaches across the limit: 348 ppm at 3 % are 406 ppm, at 2.7 % 399.6; 0.06 in.w.c. less than
/// 0.05 in.w.c. more; 104,000 of 100,000 BTU/h are 4 % over, 106,000 are 6 %; 1.7 µA on 0.8 µA are 2.1 times.
#[test]
fn every_limit_within_the_accuracy_is_told() {
    for (name, values, when) in [
        (
            "co_air_free",
            vec![("co", "348"), ("o2", "3 ± 0.3")],
            "it is above 400 ppm",
        ),
        (
            "pressure_difference",
            vec![("high", "0.05 ± 0.02"), ("low", "0.06")],
            "the difference is below zero",
        ),
        (
            "input_deviation",
            vec![("input", "104000 ± 2 %"), ("plate_input", "100000")],
            "the input is more than 5 % over",
        ),
        (
            "flame_signal_margin",
            vec![("signal", "1.7 ± 0.2"), ("dropout", "0.8")],
            "the margin is below 2",
        ),
        (
            "theoretical_draft",
            vec![
                ("height", "20"),
                ("outdoor", "80"),
                ("vent_gas", "82 ± 3"),
                ("altitude", "0"),
            ],
            "the draft is not above zero",
        ),
    ] {
        let warnings = worked(name, &values).unwrap().warnings;
        let [only] = warnings[..] else {
            panic!("{name}: {warnings:?}");
        };
        assert_eq!((only.warning.when, only.is_borderline), (when, true), "{name}");
    }
}

/// A decimal point too far to either side, which the equation itself would take.
#[test]
fn an_input_that_no_house_has_is_told() {
    for (name, values, unusual) in [
        (
            "room_volume_standard",
            vec![("input", "8000000 BTU/h")],
            vec!["input"],
        ),
        ("connector_rise", vec![("length", "0.12 ft")], vec!["length"]),
        (
            "transformer_load",
            vec![("voltage", "24"), ("current", "1.5"), ("plate", "4000 VA")],
            vec!["plate"],
        ),
        ("trap_depth", vec![("suction", "-0.009")], vec!["suction"]),
        (
            "airflow_from_rise",
            vec![
                ("output", "640"),
                ("rise", "400"),
                ("altitude", "0"),
                ("temperature", "70"),
            ],
            vec!["output", "rise"],
        ),
        ("motor_load", vec![("current", "0"), ("plate", "6")], vec![]),
    ] {
        let worked = worked(name, &values).unwrap();
        let found: Vec<&str> = worked
            .unusual
            .iter()
            .map(|unusual| unusual.argument.name)
            .collect();
        assert_eq!(found, unusual, "{name}");
    }
}
