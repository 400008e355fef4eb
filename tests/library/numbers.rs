//! Units, ranges, bands, and readings worked out from others.

use proofwalk::library::ProblemKind;

use crate::written::{TREE, Written};

const READINGS: &str = "registry/readings.yaml";

#[test]
fn what_measures_something_else_is_pointed_at_inside_its_text() {
    let cases = [
        (TREE, "below 100 V", "below 100 ohm", 10, 13),
        (TREE, "below 100 V", "below plate.head_min", 10, 13),
        ("registry/parts.yaml", "100 V to 130 V", "100 V to 130 psi", 5, 26),
        (READINGS, "accuracy: 1 V", "accuracy: 1 psi", 2, 72),
        (READINGS, "0 V to 150 V", "0 V to 150 psi", 2, 55),
        (READINGS, "return: cold", "return: supply", 9, 68),
        (
            READINGS,
            "    unit: °F\n    difference: true\n",
            "    unit: V\n",
            8,
            28,
        ),
        (READINGS, "    difference: true\n", "", 8, 28),
    ];
    for (file, old, new, line, column) in cases {
        let problems = Written::small().swapped(file, old, new).problems();
        let [problem] = problems.as_slice() else {
            unreachable!("one problem was put in, and {problems:?} found");
        };
        let place = format!("{file}:{line}:{column} unit: ");
        assert!(problem.starts_with(&place), "{problem} is not at {place}");
    }
}

#[test]
fn a_bare_number_is_no_quantity() {
    let problems = Written::small()
        .swapped(TREE, "below 100 V", "below 100")
        .problems();
    assert_eq!(problems.len(), 1, "{problems:?}");
    assert!(
        problems[0].starts_with("stands-still.yaml:10:13 malformed: "),
        "{problems:?}"
    );
}

#[test]
fn a_reading_worked_out_from_itself_is_refused() {
    let own = "  own: { title: T, unit: in.w.c., worked_out: { formula: total_external_static, supply: own, return: own } }\n";
    Written::small()
        .swapped(READINGS, "readings:\n", &format!("readings:\n{own}"))
        .says(&["registry/readings.yaml:2:3 malformed: the reading `own` is worked out from itself"]);
}

#[test]
fn two_readings_worked_out_from_each_other_are_refused() {
    let line = |name: &str, from: &str| {
        format!(
            "  {name}: {{ title: T, unit: in.w.c., worked_out: {{ formula: pressure_difference, high: {from}, low: 1 in.w.c. }} }}\n"
        )
    };
    let pair = format!("readings:\n{}{}", line("one", "two"), line("two", "one"));
    Written::small().swapped(READINGS, "readings:\n", &pair).says(&[
        "registry/readings.yaml:2:3 malformed: the reading `one` is worked out from itself",
        "registry/readings.yaml:3:3 malformed: the reading `two` is worked out from itself",
    ]);
}

#[test]
fn a_long_chain_of_readings_that_use_each_other_twice_is_read_at_once() {
    let line = |at: usize| {
        let from = at - 1;
        format!(
            "  r{at}: {{ title: T, unit: in.w.c., worked_out: {{ formula: total_external_static, supply: r{from}, return: r{from} }} }}\n"
        )
    };
    let base = "readings:\n  r0: { title: T, unit: in.w.c., plausible: -1 in.w.c. to 1 in.w.c., accuracy: 0.01 in.w.c. }\n";
    let chain: String = (1..=60).map(line).collect();
    let problems = Written::small()
        .swapped(READINGS, "readings:\n", &format!("{base}{chain}"))
        .problems();
    assert_eq!(
        problems.first().map(String::as_str),
        Some(
            "registry/readings.yaml:11:3 malformed: the reading `r9` is worked out through more than 8 others, one from the other"
        )
    );
}

#[test]
fn a_worked_out_reading_takes_its_formula_and_no_accuracy() {
    let line = "worked_out: { formula: temperature_rise, supply: warm, return: cold }";
    Written::small()
        .swapped(READINGS, line, &format!("{line}\n    accuracy: 1 °F"))
        .says(&["registry/readings.yaml:10:15 malformed: the reading `rise` is worked out and has an accuracy of its own"]);
    Written::small()
        .swapped(READINGS, ", return: cold", ", retrun: cold")
        .says(&[
            "registry/readings.yaml:5:3 malformed: the `worked_out` of the reading `rise` has no `return`",
            "registry/readings.yaml:9:60 unknown argument `retrun`, meant `return`",
        ]);
}

#[test]
fn an_argument_that_is_usually_the_same_may_be_left_out() {
    let reading = |rest: &str| {
        format!(
            "readings:\n  held: {{ title: T, unit: uF, worked_out: {{ formula: capacitance_under_load, current: 1 A{rest} }} }}\n"
        )
    };
    let with = |rest: &str| Written::small().swapped(READINGS, "readings:\n", &reading(rest));
    for rest in [", voltage: 370 V", ", voltage: 370 V, frequency: 50 Hz"] {
        assert_eq!(with(rest).problems(), Vec::<String>::new());
    }
    with(", frequency: 60 Hz").says(&[
        "registry/readings.yaml:2:3 malformed: the `worked_out` of the reading `held` has no `voltage`",
    ]);
}

#[test]
fn a_field_with_choices_is_no_bound() {
    Written::small()
        .swapped(TREE, "below 100 V", "below plate.phase")
        .says(&["stands-still.yaml:10:13 malformed: the plate field `phase` has choices, and no number to compare with"]);
}

#[test]
fn an_order_is_of_numbers_of_one_kind() {
    Written::small()
        .swapped("registry/plate.yaml", "[head_min, head_max]", "[head_min, phase]")
        .says(&["registry/plate.yaml:6:16 malformed: `phase` cannot stand in this order"]);
    // Where a field is not understood itself, its place in the order is no second mistake.
    let problems = Written::small()
        .swapped("registry/plate.yaml", "unit: psi, plausible: 10", "plausible: 10")
        .problems();
    assert!(
        problems[0].ends_with("the plate field `head_max` has no `unit`"),
        "{problems:?}"
    );
    assert!(
        !problems.iter().any(|problem| problem.contains("order")),
        "{problems:?}"
    );
}

#[test]
fn numbers_without_a_unit_are_finite_and_not_negative() {
    for number in [".inf", "-1", ".nan"] {
        let library = Written::small().swapped(TREE, "source: practice", &format!("minutes: {number}"));
        let problems = library.problems();
        assert_eq!(problems.len(), 1, "{number}: {problems:?}");
        assert!(
            problems[0].starts_with("stands-still.yaml:8:14 malformed: "),
            "{problems:?}"
        );
    }
}

#[test]
fn a_limit_is_written_in_decimal_digits() {
    let limited = |number: &str| {
        let edge = format!("below 100 V: {{ go: fine, at_most: {number}, then: noise }}");
        Written::small().swapped(TREE, "below 100 V: fine", &edge)
    };
    for number in ["0o14", "0x1F", "1_000"] {
        let problem = format!("{TREE}:10:41 malformed: `{number}` is not written as a plain whole number");
        limited(number).says(&[&problem]);
    }
    limited("12").says(&[]);
}

#[test]
fn a_forgotten_difference_is_what_the_help_asks_for() {
    let (_, problems) = Written::small()
        .swapped(READINGS, "    difference: true\n", "")
        .read();
    let ProblemKind::UnitMismatch(wrong) = &problems[0].kind else {
        unreachable!("{problems:?}");
    };
    assert_eq!(wrong.help, "add `difference: true` to the reading");
}
