//! Names that are not there, that are there twice, and units that do not fit.

use crate::library::Written;

const DONE: &str = "  done: { verdict: nothing_found, because: It is over. }\n";

#[test]
fn an_unknown_name_is_named_with_what_was_meant() {
    let library = Written::small().steps(&format!("  a: {{ measure: flame_curent, go: done }}\n{DONE}"));
    let found = library.found();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].rule, "unknown-name");
    assert_eq!(found[0].place, "no-heat.yaml:6");
    assert_eq!(found[0].message, "no reading is called `flame_curent`");
    assert_eq!(found[0].help, "did you mean `flame_current`?");
}

#[test]
fn an_unknown_name_that_resembles_none_says_where_to_register_it() {
    let library = Written::small().steps(&format!("  a: {{ observe: colour_of_smoke, go: done }}\n{DONE}"));
    let found = library.found();
    assert_eq!(found[0].message, "no sign is called `colour_of_smoke`");
    assert_eq!(
        found[0].help,
        "register it in registry/signs.yaml, or name one that is there"
    );
}

#[test]
fn a_lost_edge_silences_what_it_may_lead_to() {
    let steps = "  a: { do: Look., go: nowhere_at_all }\n  b: { do: Look., go: done }\n";
    let library = Written::small().steps(&format!("{steps}{DONE}"));
    library.says(&[(
        "unknown-name",
        "no-heat.yaml:6",
        "no step is called `nowhere_at_all`",
    )]);
}

#[test]
fn an_unknown_reading_silences_no_more_than_it_must() {
    let steps = "  a: { measure: pulse_of_the_owner, go: done }\n  b: { do: Look., go: done }\n";
    let library = Written::small().steps(&format!("{steps}{DONE}"));
    library.says(&[
        (
            "unknown-name",
            "no-heat.yaml:6",
            "no reading is called `pulse_of_the_owner`",
        ),
        (
            "unreachable-step",
            "no-heat.yaml:7",
            "no way leads to the step `b`",
        ),
    ]);
}

#[test]
fn an_unknown_tree_may_be_any_that_nothing_leads_to() {
    let library = Written::small().swapped("every-name.yaml", "visit: flame-check", "visit: flame-chek");
    let found = library.found();
    let rules: Vec<&str> = found.iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["unknown-name"], "{found:?}");
}

#[test]
fn a_second_step_of_one_name_is_reported_where_it_stands() {
    let library = Written::small().steps(&format!(
        "  a: {{ do: Look., go: done }}\n{DONE}  a: {{ do: Look., go: b }}\n{}",
        DONE.replace("done", "b")
    ));
    let found = library.found();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].place, "no-heat.yaml:8");
    assert_eq!(found[0].message, "a second step is called `a`");
    assert_eq!(
        found[0].help,
        "the first stands at no-heat.yaml:6: keep one, or give one another name"
    );
}

#[test]
fn names_that_print_alike_are_told_apart_by_nobody() {
    let readings = "  flame_current: {";
    let twin = "  f1ame_current: { title: Twin, unit: uA, plausible: 0 uA to 50 uA, accuracy: 0.1 uA }\n  flame_current: {";
    let library = Written::small()
        .swapped("registry/readings.yaml", readings, twin)
        .steps(&format!("  a: {{ measure: f1ame_current, go: done }}\n{DONE}"));
    library.says(&[(
        "duplicate-name",
        "registry/readings.yaml:3",
        "the reading `flame_current` cannot be told from `f1ame_current` in print",
    )]);
}

#[test]
fn a_band_of_another_dimension_points_at_the_quantity() {
    let library = Written::small().bands("flame_current", &["below 1 V", "at least 1 uA"]);
    let found = library.found();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(
        (found[0].rule, found[0].place.as_str()),
        ("unit-mismatch", "no-heat.yaml:10")
    );
}
