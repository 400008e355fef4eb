//! Files that an editor underlines, each with the place where.

use super::complaints;

#[track_caller]
fn refused(file: &str, text: &str, place: &str) {
    let said = complaints(file, text);
    // What may also be a number or null is complained of where it stands, however deep the fault.
    let leads_there = |said: &String| {
        let at = said.split_once(": ").unwrap().0;
        let deeper = place.strip_prefix(at);
        deeper.is_some_and(|rest| rest.is_empty() || (!at.is_empty() && rest.starts_with('/')))
    };
    assert!(said.iter().any(leads_there), "{text:?}: {said:?}");
}

/// A tree with one step beside its end, and a place inside that step.
#[track_caller]
fn step_refused(step: &str, place: &str) {
    let text = format!("tree: a\ntitle: A\nstart: s\nsteps:\n  s: {step}\n  end: {{ return: done }}\n");
    refused("a.yaml", &text, &format!("/steps/s{place}"));
}

#[test]
fn a_step_is_exactly_one_kind_with_its_own_keys() {
    step_refused("{}", "");
    step_refused("{ why: Because., go: end }", "");
    step_refused("{ measure: x, observe: y, go: end }", "");
    step_refused("{ measure: x, choices: { a: end } }", "");
    step_refused("{ verdict: x, because: So., go: end }", "");
    step_refused("{ verdict: x }", "");
    step_refused("{ verdict: x, because: ' ' }", "/because");
    step_refused("{ do: Wait. }", "");
    step_refused("{ measure: x }", "");
    step_refused("{ measure: x, bands: { below 1 V: end }, go: end }", "/go");
    step_refused("{ observe: x, unsure: end }", "");
    step_refused("{ plate: x, go: end }", "");
    step_refused(
        "{ plate: x, choices: { a: end }, bands: { below 1 V: end } }",
        "/bands",
    );
    step_refused("{ measure: Valve Voltage, go: end }", "/measure");
    step_refused("{ measure: , go: end }", "/measure");
    step_refused("{ visit: airFlow }", "/visit");
    step_refused("nothing", "");
}

#[test]
fn an_edge_is_a_name_or_a_map_with_a_step_in_it() {
    step_refused("{ do: Wait., go: The end }", "/go");
    step_refused("{ do: Wait., go: 7 }", "/go");
    step_refused("{ do: Wait., go: { means: So } }", "/go");
    step_refused("{ do: Wait., go: { go: end, at_most: 1 } }", "/go");
    step_refused("{ do: Wait., go: { go: end, then: end } }", "/go");
    step_refused(
        "{ observe: x, choices: { a: { go: end, at_most: 0, then: end } } }",
        "/choices/a/at_most",
    );
    let severity = "{ observe: x, choices: { a: { go: end, finding: { severity: awful, text: T } } } }";
    step_refused(severity, "/choices/a/finding/severity");
    step_refused(
        "{ observe: x, choices: { a: { go: end, finding: { severity: note } } } }",
        "/choices/a/finding",
    );
    step_refused("{ observe: x, choices: { a: } }", "/choices/a");
    step_refused(
        "{ observe: x, choices: { a: { go: end, then: { go: 1 }, at_most: 1 } } }",
        "/choices/a/then",
    );
}

#[test]
fn a_band_is_written_in_words() {
    for band in [
        "< 24 V",
        "otherwise",
        "24 V",
        "below",
        "18 V to",
        "18 V to 20 V to 30 V",
        "below 80,000 BTU/h",
        "below 3 V,",
    ] {
        step_refused(&format!("{{ measure: x, bands: {{ '{band}': end }} }}"), "/bands");
    }
}

#[test]
fn numbers_have_units() {
    let readings = |keys: &str| format!("readings:\n  x: {{ title: X, unit: V, {keys} }}\n");
    let right = "plausible: 0 V to 9 V, accuracy: 1 V";
    assert!(complaints("registry/readings.yaml", &readings(right)).is_empty());
    for (keys, place) in [
        ("plausible: 0 V to 9 V, accuracy: about 1 V", "/accuracy"),
        ("plausible: 0 V - 9 V, accuracy: 1 V", "/plausible"),
        ("plausible: below 9 V, accuracy: 1 V", "/plausible"),
        ("plausible: 9 V, accuracy: 1 V", "/plausible"),
        ("accuracy: 1 V", ""),
        ("plausible: 0 V to 9 V", ""),
        ("plausible: 0 V to 9 V, accuracy: 1 V, minutes: four", "/minutes"),
        ("plausible: 0 V to 9 V, accuracy: 1 V, minutes: -1", "/minutes"),
        (
            "plausible: 0 V to 9 V, accuracy: 1 V, difference: maybe",
            "/difference",
        ),
        (
            "accuracy: 1 V, worked_out: { formula: pressure_difference, high: a, low: b }",
            "/accuracy",
        ),
        ("worked_out: { formula: guess, high: a }", "/worked_out/formula"),
        ("worked_out: { high: a, low: b }", "/worked_out"),
        (
            "worked_out: { formula: temperature_rise, supply: a }",
            "/worked_out",
        ),
        (
            "worked_out: { formula: temperature_rise, supply: a, return: b, other: c }",
            "/worked_out",
        ),
        (
            "worked_out: { formula: temperature_rise, supply: A b, return: b }",
            "/worked_out/supply",
        ),
    ] {
        refused(
            "registry/readings.yaml",
            &readings(keys),
            &format!("/readings/x{place}"),
        );
    }
    let unit = "readings:\n  x: { title: X, unit: furlong, plausible: 0 V to 9 V, accuracy: 1 V }\n";
    refused("registry/readings.yaml", unit, "/readings/x/unit");
}

#[test]
fn the_registries_know_what_they_need() {
    for (registry, text, place) in [
        ("plate", "fields: { x: { title: X } }", "/fields/x"),
        ("plate", "fields: { x: { title: X, unit: V } }", "/fields/x"),
        (
            "plate",
            "fields: { x: { title: X, unit: V, choices: { a: A } } }",
            "/fields/x/unit",
        ),
        ("plate", "order: [a, b]", "/order/0"),
        ("signs", "signs: { x: { ask: What? } }", "/signs/x"),
        (
            "signs",
            "signs: { x: { ask: What?, values: {} } }",
            "/signs/x/values",
        ),
        (
            "signs",
            "signs: { x: { ask: What?, values: { A b: C } } }",
            "/signs/x/values",
        ),
        ("parts", "parts: { x: { title: X, proof: [] } }", "/parts/x/proof"),
        (
            "parts",
            "parts: { x: { title: X, proof: { a: above 1 V } } }",
            "/parts/x/proof",
        ),
        (
            "parts",
            "parts: { x: { title: X, proof: [{}] } }",
            "/parts/x/proof/0",
        ),
        (
            "parts",
            "parts: { x: { title: X, proof: [{ any: [] }] } }",
            "/parts/x/proof/0/any",
        ),
        (
            "parts",
            "parts: { x: { title: X, proof: [{ a: over 1 V }] } }",
            "/parts/x/proof/0/a",
        ),
        ("faults", "faults: { x: { title: X } }", "/faults/x"),
        (
            "faults",
            "faults: { x: { title: X, remedy: replace } }",
            "/faults/x/remedy",
        ),
        (
            "faults",
            "faults: { x: { title: X, remedy: repair it } }",
            "/faults/x/remedy",
        ),
        (
            "faults",
            "faults: { x: { title: X, remedy: none, weight: 0 } }",
            "/faults/x/weight",
        ),
        ("restores", "restores: { x: [a] }", "/restores/x"),
        ("restores", "restores: { no-hyphen: Close it }", "/restores"),
        ("cautions", "cautions: { x: { source: y } }", "/cautions/x"),
        ("sources", "sources: { x: { title: X } }", "/sources/x"),
        ("sources", "sauces: {}", ""),
    ] {
        refused(&format!("registry/{registry}.yaml"), text, place);
    }
}

#[test]
fn a_library_a_tree_and_a_worked_call_know_what_they_need() {
    refused("library.yaml", "library: pumps\ngate: safe_to_start", "/gate");
    refused(
        "library.yaml",
        "library: pumps\ndangers: [electric-shock]",
        "/dangers",
    );
    refused("a.yaml", "tree: a\ntitle: A\nsteps: { s: { return: x } }", "");
    refused("a.yaml", "tree: a\ntitle: A\nstart: s\nsteps: {}", "/steps");
    refused("a.yaml", "tree: a\nstatus: done", "/status");
    let call = |rest: &str| format!("scenario: S\ntree: a\n{rest}\n");
    for (rest, place) in [
        ("", ""),
        ("expect: {}", "/expect"),
        ("expect: { ends: well }", "/expect/ends"),
        ("expect: { verdict: x, outcome: y }", "/expect/outcome"),
        ("expect: { verdict: x, findings: [awful] }", "/expect/findings/0"),
        ("expect: { verdict: x }\nreadings: { y: lots }", "/readings/y"),
        ("expect: { verdict: x }\nreadings: { y: [] }", "/readings/y"),
        (
            "expect: { verdict: x }\nreadings: { y: '80,000 BTU/h' }",
            "/readings/y",
        ),
        ("expect: { verdict: x }\nsigns: { y: It hums }", "/signs/y"),
    ] {
        refused("scenarios/s.yaml", &call(rest), place);
    }
}
