//! Names that nothing refers to.

use crate::library::Written;

const STEPS: &str =
    "  a: { do: Look., go: done }\n  done: { verdict: nothing_found, because: It is over. }\n";

const READINGS: &str = "registry/readings.yaml";
const SIGNS: &str = "registry/signs.yaml";
const PARTS: &str = "registry/parts.yaml";
const FAULTS: &str = "registry/faults.yaml";
const RESTORES: &str = "registry/restores.yaml";
const CAUTIONS: &str = "registry/cautions.yaml";
const SOURCES: &str = "registry/sources.yaml";
const PLATE: &str = "registry/plate.yaml";

/// The line that registers `spare` in a registry.
fn spare(registry: &str) -> &'static str {
    match registry {
        READINGS => "  spare: { title: Spare, unit: uA, plausible: 0 uA to 50 uA, accuracy: 0.1 uA }\n",
        SIGNS => "  spare: { ask: And now?, values: { good: Good, bad: Bad } }\n",
        PARTS => "parts:\n  spare: { title: Spare, proof: [ { flame_shape: lazy } ] }\n",
        FAULTS => "  spare: { title: Spare, remedy: correct }\n",
        RESTORES => "  spare: Put it back\n",
        CAUTIONS => "  spare: { text: Take care }\n",
        SOURCES => "  spare: { title: A book, kind: practice }\n",
        _ => "  spare: { title: Spare, unit: V, plausible: 2 V to 10 V }\n",
    }
}

/// The library with something called `spare` in one registry, and a tree `no-heat` with these steps.
fn with_spare(registry: &str, steps: &str) -> Written {
    let library = Written::small().steps(steps);
    match registry {
        PARTS => library.with(PARTS, spare(PARTS)),
        _ => {
            let key = match registry {
                PLATE => "fields:\n",
                other => {
                    let stem = other.strip_prefix("registry/").unwrap();
                    &format!("{}:\n", stem.strip_suffix(".yaml").unwrap())
                }
            };
            library.swapped(registry, key, &format!("{key}{}", spare(registry)))
        }
    }
}

const KINDS: [(&str, &str); 8] = [
    (PLATE, "plate field"),
    (READINGS, "reading"),
    (SIGNS, "sign"),
    (PARTS, "part"),
    (FAULTS, "fault"),
    (RESTORES, "put-back"),
    (CAUTIONS, "caution"),
    (SOURCES, "source"),
];

#[test]
fn every_kind_of_name_is_reported_where_it_is_registered() {
    for (registry, kind) in KINDS {
        with_spare(registry, STEPS).says(&[(
            "unused-name",
            &format!("{registry}:2"),
            &format!("nothing refers to the {kind} `spare`"),
        )]);
    }
}

#[test]
fn a_reference_from_anywhere_in_a_tree_or_a_registry_is_use() {
    let done = "  done: { verdict: nothing_found, because: It is over. }\n";
    let step = |line: &str| format!("  a: {line}\n{done}");
    let uses = [
        (READINGS, step("{ measure: spare, go: done }")),
        (READINGS, step("{ do: Clean., voids: [spare], go: done }")),
        (
            SIGNS,
            step("{ observe: spare, choices: { good: done, bad: b } }") + "  b: { do: Look., go: done }\n",
        ),
        (SIGNS, step("{ do: Clean., voids: [spare], go: done }")),
        (PLATE, step("{ do: Clean., voids: [spare], go: done }")),
        (
            PLATE,
            step("{ measure: valve_voltage, bands: { below plate.spare: done, at least plate.spare: b } }")
                + "  b: { do: Look., go: done }\n",
        ),
        (FAULTS, "  a: { verdict: spare, because: So. }\n".to_owned()),
        (RESTORES, step("{ do: Look., leaves: [spare], go: done }")),
        (RESTORES, step("{ do: Look., restores: [spare], go: done }")),
        (CAUTIONS, step("{ do: Look., cautions: [spare], go: done }")),
        (SOURCES, step("{ do: Look., source: spare, go: done }")),
    ];
    for (registry, steps) in uses {
        with_spare(registry, &steps).is_right();
    }
    let registered = [
        (PLATE, PLATE, "[rise_min, rise_max]", "[low_mark, spare]"),
        (CAUTIONS, SIGNS, "values:", "cautions: [spare], values:"),
        (CAUTIONS, READINGS, "unit: uA,", "unit: uA, cautions: [spare],"),
        (
            CAUTIONS,
            "library.yaml",
            "[qualified_person]",
            "[qualified_person, spare]",
        ),
        (RESTORES, READINGS, "unit: uA,", "unit: uA, leaves: [spare],"),
        (SOURCES, SIGNS, "values:", "source: spare, values:"),
        (SOURCES, CAUTIONS, "source: common_practice", "source: spare"),
        (
            PARTS,
            FAULTS,
            "Rod dirty, remedy: correct",
            "Rod dirty, remedy: replace spare",
        ),
        (
            PARTS,
            FAULTS,
            "Rod dirty, remedy: correct",
            "Rod dirty, remedy: correct, group: [spare]",
        ),
        (
            SIGNS,
            FAULTS,
            "remedy: shut_down",
            "remedy: shut_down, proof: [ { spare: bad } ]",
        ),
        (
            READINGS,
            FAULTS,
            "remedy: shut_down",
            "remedy: shut_down, proof: [ { spare: above 1 uA } ]",
        ),
        (
            PLATE,
            FAULTS,
            "remedy: shut_down",
            "remedy: shut_down, proof: [ { valve_voltage: above plate.spare } ]",
        ),
    ];
    for (registry, file, old, new) in registered {
        let found = with_spare(registry, STEPS).swapped(file, old, new).found();
        assert!(
            found.iter().all(|found| found.rule != "unused-name"),
            "{new}: {found:?}"
        );
    }
}

#[test]
fn what_goes_into_a_reading_that_is_worked_out_is_used() {
    let steps =
        "  a: { measure: rise, go: done }\n  done: { verdict: nothing_found, because: It is over. }\n";
    let air = |name: &str| {
        format!("  {name}: {{ title: Air, unit: °F, plausible: 0 °F to 200 °F, accuracy: 1 °F }}\n")
    };
    let rise = "  rise: { title: Rise, unit: °F, difference: true, worked_out: { formula: temperature_rise, supply: warm, return: cold } }\n";
    let readings = |rise: &str| {
        let lines = format!("readings:\n{}{}{rise}", air("warm"), air("cold"));
        Written::small()
            .steps(steps)
            .swapped(READINGS, "readings:\n", &lines)
    };
    readings(rise).is_right();
    // Where its inputs do not resolve, what they may have been is not held against them.
    let rules = |rise: &str| -> Vec<&str> { readings(rise).found().iter().map(|found| found.rule).collect() };
    assert_eq!(
        rules(&rise.replace("supply: warm", "supply: wram")),
        ["unknown-name"]
    );
    assert_eq!(
        rules(&rise.replace("temperature_rise", "temperatur_rise")),
        ["unknown-name"]
    );
    assert_eq!(
        rules(&rise.replace("supply: warm", "supply: flame_current")),
        ["unused-name", "unit-mismatch"]
    );
}

#[test]
fn an_unreachable_step_uses_what_it_names_and_a_worked_call_does_not() {
    let steps = format!("{STEPS}  b: {{ measure: spare, go: done }}\n");
    let rules: Vec<&str> = with_spare(READINGS, &steps)
        .found()
        .iter()
        .map(|found| found.rule)
        .collect();
    assert_eq!(rules, ["unreachable-step"]);
    let scenario =
        "scenario: A call\ntree: no-heat\nreadings: { spare: 3 uA }\nexpect: { verdict: nothing_found }\n";
    let called = with_spare(READINGS, STEPS).with("scenarios/a-call.yaml", scenario);
    called.says(&[(
        "unused-name",
        "registry/readings.yaml:2",
        "nothing refers to the reading `spare`",
    )]);
    let typo = with_spare(READINGS, STEPS).with("scenarios/a-call.yaml", scenario.replace("spare", "spate"));
    assert!(typo.found().iter().any(|found| found.rule == "unused-name"));
}

#[test]
fn a_name_that_is_not_there_may_have_meant_any_of_its_kind() {
    let done = "  done: { verdict: nothing_found, because: It is over. }\n";
    let lines = [
        (READINGS, "{ measure: something_else, go: done }"),
        (READINGS, "{ do: Clean., voids: [something_else], go: done }"),
        (SIGNS, "{ observe: something_else, go: done }"),
        (SIGNS, "{ do: Clean., voids: [something_else], go: done }"),
        (PLATE, "{ plate: something_else, choices: { good: done } }"),
        (FAULTS, "{ verdict: something_else, because: So. }"),
        (RESTORES, "{ do: Look., leaves: [something_else], go: done }"),
        (CAUTIONS, "{ do: Look., cautions: [something_else], go: done }"),
        (SOURCES, "{ do: Look., source: something_else, go: done }"),
        // A whole tree that is not there would have used what nobody knows.
        (RESTORES, "{ visit: something-else }"),
    ];
    for (registry, line) in lines {
        let steps = format!("  a: {line}\n{done}");
        let found = with_spare(registry, &steps).found();
        assert!(
            found.iter().all(|found| found.rule != "unused-name"),
            "{line}: {found:?}"
        );
    }
    // One of another kind is another matter.
    let other = with_spare(
        SIGNS,
        &format!("  a: {{ do: Look., source: something_else, go: done }}\n{done}"),
    );
    assert!(other.found().iter().any(|found| found.rule == "unused-name"));
}

#[test]
fn what_is_passed_by_with_something_else_is_not_held_against_a_name() {
    let done = "  done: { verdict: nothing_found, because: It is over. }\n";
    let lines = [
        // A second step of one name is left out, with all that it names.
        (
            READINGS,
            "{ do: Look., go: done }\n  a: { measure: spare, go: done }",
            "duplicate-name",
        ),
        (
            FAULTS,
            "{ do: Look., go: done }\n  a: { verdict: spare, because: So. }",
            "duplicate-name",
        ),
        // A step that leads nowhere is passed by, with what it asks for.
        (READINGS, "{ measure: spare, go: nowhere_at_all }", "unknown-name"),
        (
            PLATE,
            "{ measure: valve_voltage, bands: { below 1 uA: done, at least plate.spare: done } }",
            "unit-mismatch",
        ),
    ];
    for (registry, line, rule) in lines {
        let found = with_spare(registry, &format!("  a: {line}\n{done}")).found();
        let rules: Vec<&str> = found.iter().map(|found| found.rule).collect();
        assert_eq!(rules, [rule], "{line}");
    }
    let proof = with_spare(READINGS, STEPS).swapped(
        FAULTS,
        "remedy: shut_down",
        "remedy: shut_down, proof: [ { flame_current: above 1 V, spare: above 1 uA } ]",
    );
    let rules: Vec<&str> = proof.found().iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["unit-mismatch"]);
}

#[test]
fn of_two_names_that_are_taken_for_each_other_either_may_have_been_meant() {
    let twins = "  core: { text: Take care }\n  c0re: { text: Beware }\n  qualified_person:";
    let twins = Written::small()
        .steps(STEPS)
        .swapped(CAUTIONS, "  qualified_person:", twins);
    let rules: Vec<&str> = twins.found().iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["duplicate-name"]);
    let sign = Written::small().swapped(
        SIGNS,
        "signs:\n",
        "signs:\n  flame_current: { ask: Well?, values: { good: Good } }\n",
    );
    let rules: Vec<&str> = sign.found().iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["duplicate-name"]);
}

#[test]
fn an_outcome_is_used_where_a_step_returns_it() {
    let outcomes = "outcomes: [flame_holds, flame_drops]";
    let more = |library: Written| {
        library
            .swapped(
                "flame-check.yaml",
                outcomes,
                "outcomes: [flame_holds, flame_drops, flame_lifts]",
            )
            .swapped(
                "every-name.yaml",
                "flame_drops: dirty",
                "flame_drops: dirty, flame_lifts: dirty",
            )
    };
    more(Written::small()).says(&[(
        "unused-name",
        "flame-check.yaml:3",
        "no step of this tree returns the outcome `flame_lifts`",
    )]);
    // A step that returns what is not there may have meant it.
    let typo =
        more(Written::small()).swapped("flame-check.yaml", "return: flame_drops", "return: flame_lift");
    let rules: Vec<&str> = typo.found().iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["unknown-name"]);
    // So may one that was left out.
    let twice = more(Written::small()).swapped(
        "flame-check.yaml",
        "  drops:",
        "  holds: { return: flame_lifts }\n  drops:",
    );
    let rules: Vec<&str> = twice.found().iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["duplicate-name"]);
}
