//! Questions that decide nothing, thresholds and voltages without the word that goes with them.

use crate::library::{Found, Written};

const DONE: &str = "  done: { verdict: nothing_found, because: It is over. }\n";

fn steps(steps: &str) -> Written {
    Written::small().steps(&format!("{steps}{DONE}"))
}

#[test]
fn a_question_is_idle_where_every_answer_leads_to_one_step() {
    let message = "every answer to `a` leads to `done`";
    let idle = |line: &str| steps(line).says(&[("idle-question", "no-heat.yaml:6", message)]);
    idle("  a: { observe: flame_shape, choices: { steady: done, lazy: done } }\n");
    idle("  a: { plate: gas, choices: { natural: done, propane: { go: done, means: The same } } }\n");
    idle(
        "  a:\n    measure: flame_current\n    source: common_practice\n    bands:\n      below 1 uA: done\n      at least 1 uA: done\n",
    );
    // However often, it comes to the same; and what follows when nothing can be seen is no answer.
    let look = "  look: { do: Look., go: done }\n";
    idle(&format!(
        "  a: {{ observe: flame_shape, choices: {{ steady: done, lazy: {{ go: done, at_most: 1, then: done }} }}, unable: look }}\n{look}"
    ));
}

#[test]
fn an_idle_question_can_be_mended_in_what_ways_there_are() {
    let help = |line: &str| steps(line).found().remove(0).help;
    assert_eq!(
        help("  a: { observe: flame_shape, choices: { steady: done, lazy: done } }\n"),
        "lead one of them elsewhere, note a finding on one, or write `go: done` to record it only"
    );
    assert_eq!(
        help("  a: { plate: gas, choices: { natural: done, propane: done } }\n"),
        "lead one of them elsewhere, note a finding on one, or take the step out"
    );
}

#[test]
fn a_question_is_not_idle_where_it_records_notes_or_bounds_something() {
    let noted = "{ go: done, finding: { severity: note, text: Lazy } }";
    let look = "  look: { do: Look., voids: [flame_shape], go: a }\n";
    for line in [
        "  a: { observe: flame_shape, go: done }\n".to_owned(),
        format!("  a: {{ observe: flame_shape, choices: {{ steady: done, lazy: {noted} }} }}\n"),
        format!(
            "  a: {{ observe: flame_shape, choices: {{ steady: done, lazy: {{ go: look, at_most: 1, then: done }} }} }}\n{look}"
        ),
        format!(
            "  a: {{ observe: flame_shape, choices: {{ steady: done, lazy: {{ go: done, at_most: 1, then: {noted} }} }} }}\n"
        ),
    ] {
        steps(&line).is_right();
    }
}

#[test]
fn what_a_question_leaves_out_may_be_the_answer_that_leads_elsewhere() {
    let rules = |library: Written| -> Vec<&str> { library.found().iter().map(|found| found.rule).collect() };
    let smoky = Written::small()
        .swapped("registry/signs.yaml", "lazy: Lazy", "lazy: Lazy, smoky: Smoky")
        .swapped("flame-check.yaml", "lazy: drops", "lazy: drops, smoky: drops");
    let line = "  a: { observe: flame_shape, choices: { steady: done, lazy: done } }\n";
    assert_eq!(rules(smoky.steps(&format!("{line}{DONE}"))), ["choice-gap"]);
    let gap = "  a:\n    measure: flame_current\n    source: common_practice\n    bands:\n      below 1 uA: done\n      above 2 uA: done\n";
    assert_eq!(rules(steps(gap)), ["band-gap"]);
    assert_eq!(
        rules(steps(
            "  a: { observe: flame_shape, choices: { steady: done } }\n"
        )),
        ["choice-gap"]
    );
    let twice = format!("{line}{DONE}");
    assert_eq!(rules(steps(&twice)), ["duplicate-name"]);
    assert_eq!(
        rules(steps(
            "  a: { observe: flame_shape, choices: { steady: done, lazy: doen } }\n"
        )),
        ["unknown-name"]
    );
}

const PARTS: &str = "registry/parts.yaml";
const FAULTS: &str = "registry/faults.yaml";

/// With a rod that is condemned by a proof, and a fault that replaces it.
fn rod(proof: &str) -> Written {
    steps("  a: { measure: flame_current, go: worn }\n  worn: { verdict: rod_worn, because: It is. }\n")
        .swapped("no-heat.yaml", DONE, "")
        .with(
            PARTS,
            format!("parts:\n  rod: {{ title: Rod, proof: [{proof}] }}\n"),
        )
        .swapped(
            FAULTS,
            "faults:\n",
            "faults:\n  rod_worn: { title: Rod worn, remedy: replace rod }\n",
        )
}

#[test]
fn a_threshold_is_a_number_of_its_own_in_a_step_or_in_a_proof() {
    let bands = |low: &str, high: &str| {
        steps(&format!(
            "  a:\n    measure: valve_voltage\n    bands:\n      {low}: b\n      {high}: done\n  b: {{ do: Look., go: done }}\n"
        ))
    };
    let found = |library: Written, threshold: &str| {
        let message = format!("`valve_voltage` has no source for its threshold {threshold}");
        let said = beside_proofs(&library);
        assert_eq!(said.len(), 1, "{said:?}");
        assert_eq!(
            (said[0].place.as_str(), &said[0].message),
            ("registry/readings.yaml:3", &message)
        );
    };
    found(
        bands("below 5 V", "at least 5 V"),
        "`below 5 V` in the step `no-heat/a`",
    );
    found(
        bands("below 90 % of plate.low_mark", "at least 90 % of plate.low_mark"),
        "`below 90 % of plate.low_mark` in the step `no-heat/a`",
    );
    found(
        bands("below plate.low_mark + 1 V", "at least plate.low_mark + 1 V"),
        "`below plate.low_mark + 1 V` in the step `no-heat/a`",
    );
    bands("below plate.low_mark", "at least plate.low_mark").is_right();

    let message =
        "`flame_current` has no source for its threshold `below 1 µA` in the proof of the part `rod`";
    let said = beside_proofs(&rod("{ flame_current: below 1 uA }"));
    assert_eq!(said.len(), 1, "{said:?}");
    assert_eq!(
        (said[0].rule, said[0].place.as_str(), said[0].message.as_str()),
        ("missing-source", "registry/readings.yaml:2", message)
    );
    let any = rod("{ any: [ { flame_shape: lazy }, { valve_voltage: above 30 V } ] }");
    found(any, "`above 30 V` in the proof of the part `rod`");
    let fault = Written::small().swapped(
        FAULTS,
        "remedy: shut_down",
        "remedy: shut_down, proof: [ { valve_voltage: above 30 V } ]",
    );
    found(fault, "`above 30 V` in the proof of the fault `flue_gas_unsafe`");
    assert_eq!(beside_proofs(&rod("{ valve_voltage: above plate.low_mark }")), []);
    assert_eq!(beside_proofs(&rod("{ flame_shape: lazy }")), []);
}

/// What is found beside a verdict without its proof and a value that is known already: neither is looked at here.
fn beside_proofs(library: &Written) -> Vec<Found> {
    let proofs = ["unproven-verdict", "impossible-band"];
    let found = library.found().into_iter();
    found.filter(|found| !proofs.contains(&found.rule)).collect()
}

#[test]
fn a_reading_has_one_finding_however_many_thresholds_it_has() {
    let step = |name: &str, next: &str| {
        format!(
            "  {name}:\n    measure: flame_current\n    bands:\n      below 1 uA: {next}\n      1 uA to 2 uA: done\n      above 2 uA: done\n"
        )
    };
    let twice = steps(&format!(
        "{}{}  c: {{ do: Look., go: done }}\n",
        step("a", "b"),
        step("b", "c")
    ));
    let found = beside_proofs(&twice);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(
        found[0].help,
        "write `source: …` on the step, or on the reading for all of them; what is only usual comes from common practice"
    );
}

#[test]
fn the_source_of_a_step_is_for_its_bands_and_that_of_a_reading_for_all() {
    let sourced = |library: Written| {
        library.swapped(
            "registry/readings.yaml",
            "unit: uA,",
            "unit: uA, source: common_practice,",
        )
    };
    assert_eq!(beside_proofs(&sourced(rod("{ flame_current: below 1 uA }"))), []);
    // The bands of `every-name` name a source, which says nothing about those of a proof.
    let both = rod("{ valve_voltage: above 30 V }");
    assert_eq!(beside_proofs(&both).len(), 1);
}

#[test]
fn a_source_that_does_not_resolve_is_a_source_all_the_same() {
    let unknown = rod("{ flame_current: below 1 uA }").swapped(
        "registry/readings.yaml",
        "unit: uA,",
        "unit: uA, source: common_practise,",
    );
    let rules: Vec<&str> = beside_proofs(&unknown).iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["unknown-name"]);
    let step = "  a:\n    measure: flame_current\n    source: handbook\n    bands: { below 1 uA: done, at least 1 uA: b }\n  b: { do: Look., go: done }\n";
    let rules: Vec<&str> = steps(step).found().iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["unknown-name"]);
    let twice = "  flame_current: { title: Again, unit: uA, plausible: 0 uA to 9 uA, accuracy: 0.1 uA, source: common_practice }\n";
    let twice = rod("{ flame_current: below 1 uA }").swapped(
        "registry/readings.yaml",
        "  temperature_rise",
        &format!("{twice}  temperature_rise"),
    );
    let rules: Vec<&str> = beside_proofs(&twice).iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["duplicate-name"]);
}

fn volts(unit: &str, plausible: &str, more: &str) -> Written {
    let old = "unit: V, plausible: 0 V to 40 V,";
    Written::small().swapped(
        "registry/readings.yaml",
        old,
        &format!("unit: {unit}, plausible: {plausible},{more}"),
    )
}

#[test]
fn a_voltage_above_fifty_volts_needs_a_caution() {
    let says = |library: Written, message: &str| {
        library.says(&[("missing-caution", "registry/readings.yaml:3", message)]);
    };
    says(
        volts("V", "0 V to 51 V", ""),
        "`valve_voltage` may read 51 V, and has no caution",
    );
    says(
        volts("mV", "0 mV to 120000 mV", ""),
        "`valve_voltage` may read 120000 mV, and has no caution",
    );
    says(
        volts("V", "0 mV to 50001 mV", ""),
        "`valve_voltage` may read 50.001 V, and has no caution",
    );
    volts("V", "0 V to 50 V", "").is_right();
    volts("mV", "0 mV to 750 mV", "").is_right();
    volts("V", "0 V to 150 V", " cautions: [qualified_person],").is_right();
}

#[test]
fn a_caution_that_does_not_resolve_is_a_caution_all_the_same() {
    for more in [
        " cautions: [qualified_persn],",
        " cautions: [nobody_knows_what_this_is],",
    ] {
        let rules: Vec<&str> = volts("V", "0 V to 150 V", more)
            .found()
            .iter()
            .map(|found| found.rule)
            .collect();
        assert_eq!(rules, ["unknown-name"]);
    }
    // Another reading's is another's.
    let other = volts("V", "0 V to 150 V", "").swapped(
        "registry/readings.yaml",
        "unit: uA,",
        "unit: uA, cautions: [nobody_knows_what_this_is],",
    );
    let rules: Vec<&str> = other.found().iter().map(|found| found.rule).collect();
    assert_eq!(rules, ["unknown-name", "missing-caution"]);
}
