//! What leads where: steps, circles, visits.

use crate::library::Written;

const DONE: &str = "  done: { verdict: nothing_found, because: It is over. }\n";

fn steps(steps: &str) -> Written {
    Written::small().steps(&format!("{steps}{DONE}"))
}

/// `flame-check` with other steps.
fn visited(library: Written, steps: &str) -> Written {
    let head = "tree: flame-check\ntitle: The flame alone\noutcomes: [flame_holds, flame_drops]\nstart: shape\nsteps:\n";
    library.with("flame-check.yaml", format!("{head}{steps}"))
}

#[test]
fn a_step_that_no_way_leads_to_is_named_with_all_that_only_it_leads_to() {
    let library =
        steps("  a: { do: Look., go: done }\n  b: { do: Look., go: c }\n  c: { do: Look., go: done }\n");
    library.says(&[
        (
            "unreachable-step",
            "no-heat.yaml:7",
            "no way leads to the step `b`",
        ),
        (
            "unreachable-step",
            "no-heat.yaml:8",
            "no way leads to the step `c`",
        ),
    ]);
    let help: Vec<String> = library.found().into_iter().map(|found| found.help).collect();
    assert_eq!(
        help,
        [
            "lead an answer here, or take the step out",
            "it only follows `b`: lead an answer to that one"
        ]
    );
}

#[test]
fn a_tree_that_nothing_leads_to_is_one_finding() {
    let tree = "tree: alone\ntitle: Alone\nstart: a\nsteps:\n  a: { do: Look., go: done }\n";
    let library = Written::small().with(
        "alone.yaml",
        format!("{tree}  b: {{ do: Look., go: done }}\n{DONE}"),
    );
    library.says(&[(
        "unreachable-step",
        "alone.yaml:5",
        "no way leads to the tree `alone`, which starts here",
    )]);
    let gate = library
        .clone()
        .swapped("library.yaml", "title:", "gate: alone\ntitle:");
    gate.says(&[("unreachable-step", "alone.yaml:6", "no way leads to the step `b`")]);
    let after_work = library
        .clone()
        .swapped("library.yaml", "title:", "after_work: alone\ntitle:");
    after_work.says(&[("unreachable-step", "alone.yaml:6", "no way leads to the step `b`")]);
    let danger = library.with(
        "library.yaml",
        "library: small\nedition: '1'\ntitle: A\ndangers: { Smoke: alone }\n",
    );
    assert!(danger.found().iter().any(|found| found.place == "alone.yaml:6"));
}

#[test]
fn what_follows_a_visit_is_reached_only_if_the_tree_can_end_so() {
    let visit = "  a: { visit: flame-check, returns: { flame_holds: done, flame_drops: b }, on_verdict: c }\n\
                 \x20 b: { do: Look., go: done }\n  c: { do: Look., go: done }\n";
    let returns = "  shape: { observe: flame_shape, choices: { steady: holds, lazy: drops } }\n  holds: { return: flame_holds }\n";
    let expected = (
        "unreachable-step",
        "no-heat.yaml:8",
        "no way leads to the step `c`",
    );
    steps(visit).says(&[expected]);
    assert_eq!(
        steps(visit).found()[0].help,
        "the tree that `a` visits never ends so: let it, or take the step out"
    );
    // A shut-down is never noted; any other verdict is. An outcome that the tree no longer returns is no longer used.
    let unsafe_gas = format!("{returns}  drops: {{ verdict: flue_gas_unsafe, because: It is. }}\n");
    let found = visited(steps(visit), &unsafe_gas).found();
    let places: Vec<&str> = found.iter().map(|found| found.place.as_str()).collect();
    let outcome = "flame-check.yaml:3";
    assert_eq!(
        places,
        ["every-name.yaml:20", outcome, "no-heat.yaml:7", "no-heat.yaml:8"]
    );
    let dirty = format!("{returns}  drops: {{ verdict: rod_dirty, because: It is. }}\n");
    let found = visited(steps(visit), &dirty).found();
    let places: Vec<&str> = found.iter().map(|found| found.place.as_str()).collect();
    assert_eq!(places, ["every-name.yaml:20", outcome, "no-heat.yaml:7"]);
}

#[test]
fn a_bounded_edge_leads_on_by_its_then() {
    steps("  a: { observe: flame_shape, choices: { steady: done, lazy: { go: b, at_most: 2, then: c } } }\n  b: { do: Clean., voids: [flame_shape], go: a }\n  c: { do: Look., go: done }\n").is_right();
}

#[test]
fn a_circle_without_a_bounded_edge_is_named_step_by_step() {
    let library = steps(
        "  a: { observe: flame_shape, choices: { steady: done, lazy: b } }\n  b: { do: Clean., go: c }\n  c: { do: Wait., go: a }\n",
    );
    library.says(&[(
        "endless-loop",
        "no-heat.yaml:6",
        "nothing bounds the circle `a` → `b` → `c` → `a`",
    )]);
    assert_eq!(library.found()[0].witness, ["a", "b", "c"]);
}

#[test]
fn what_comes_after_the_limit_is_not_bounded_itself() {
    let library = steps(
        "  a: { observe: flame_shape, choices: { steady: done, lazy: { go: done, at_most: 1, then: a } } }\n",
    );
    library.says(&[(
        "endless-loop",
        "no-heat.yaml:6",
        "nothing bounds the circle `a` → `a`",
    )]);
}

#[test]
fn a_circle_through_a_visit_counts() {
    let library = steps(
        "  a: { visit: flame-check, returns: { flame_holds: done, flame_drops: b } }\n  b: { do: Clean., go: a }\n",
    );
    library.says(&[(
        "endless-loop",
        "no-heat.yaml:6",
        "nothing bounds the circle `a` → `b` → `a`",
    )]);
}

#[test]
fn circles_that_share_no_step_are_two_findings() {
    let library = steps(
        "  a: { observe: flame_shape, choices: { steady: a, lazy: b } }\n  b: { observe: flame_shape, choices: { steady: b, lazy: done } }\n",
    );
    library.says(&[
        (
            "endless-loop",
            "no-heat.yaml:6",
            "nothing bounds the circle `a` → `a`",
        ),
        (
            "endless-loop",
            "no-heat.yaml:7",
            "nothing bounds the circle `b` → `b`",
        ),
    ]);
}

#[test]
fn a_bounded_circle_with_no_way_out_is_a_dead_end() {
    let library = steps(
        "  a: { observe: flame_shape, choices: { steady: done, lazy: b } }\n  b: { do: Wait., go: { go: c, at_most: 3, then: c } }\n  c: { do: Wait., go: b }\n",
    );
    let found = library.found();
    let dead: Vec<(&str, &str)> = (found.iter().filter(|found| found.rule == "dead-end"))
        .map(|found| (found.place.as_str(), found.message.as_str()))
        .collect();
    assert_eq!(
        dead,
        [
            (
                "no-heat.yaml:7",
                "no verdict and no return can be reached from `b`"
            ),
            (
                "no-heat.yaml:8",
                "no verdict and no return can be reached from `c`"
            )
        ]
    );
}

#[test]
fn a_visit_that_ends_the_walk_is_no_dead_end() {
    let library = visited(
        steps(
            "  a: { observe: flame_shape, choices: { steady: done, lazy: b } }\n  b: { visit: flame-check, returns: { flame_holds: a, flame_drops: a } }\n",
        ),
        "  shape: { verdict: rod_dirty, because: It is. }\n",
    );
    assert!(library.found().iter().all(|found| found.rule != "dead-end"));
}

#[test]
fn trees_that_visit_one_another_are_named_once() {
    let library = visited(
        steps("  a: { visit: flame-check, returns: { flame_holds: done, flame_drops: done } }\n"),
        "  shape: { observe: flame_shape, choices: { steady: holds, lazy: again } }\n  again: { visit: no-heat }\n  holds: { return: flame_holds }\n",
    );
    let found = library.found();
    let visits: Vec<_> = found
        .iter()
        .filter(|found| found.rule == "endless-visit")
        .collect();
    assert_eq!(visits.len(), 1, "{found:?}");
    assert_eq!(visits[0].place, "flame-check.yaml:7");
    assert_eq!(
        visits[0].message,
        "trees visit one another in a circle: `flame-check` → `no-heat` → `flame-check`"
    );
    assert_eq!(visits[0].witness, ["again", "a"]);
}

#[test]
fn every_value_that_no_choice_takes_is_named() {
    let library = steps(
        "  a:\n    plate: gas\n    choices: {}\n  b: { observe: flame_shape, choices: { lazy: done } }\n",
    );
    let found = library.found();
    let gaps: Vec<(&str, &str)> = (found.iter().filter(|found| found.rule == "choice-gap"))
        .map(|found| (found.place.as_str(), found.message.as_str()))
        .collect();
    assert_eq!(
        gaps,
        [
            ("no-heat.yaml:8", "no choice takes `natural` or `propane`"),
            ("no-heat.yaml:9", "no choice takes `steady`")
        ]
    );
}

#[test]
fn an_outcome_that_a_visit_does_not_map_is_named() {
    steps("  a:\n    visit: flame-check\n    returns:\n      flame_holds: done\n").says(&[(
        "unmapped-outcome",
        "no-heat.yaml:8",
        "the visit does not say where `flame_drops` of `flame-check` leads",
    )]);
    steps("  a:\n    visit: flame-check\n    on_verdict: done\n").says(&[
        (
            "unmapped-outcome",
            "no-heat.yaml:6",
            "the visit does not say where `flame_holds` or `flame_drops` of `flame-check` leads",
        ),
        (
            "unreachable-step",
            "no-heat.yaml:9",
            "no way leads to the step `done`",
        ),
    ]);
}

#[test]
fn a_visit_with_a_wrong_name_in_it_still_leads_to_its_tree() {
    let steps = "  a: { visit: flame-check, returns: { flame_holds: done, flame_drops: nowhere } }\n  done: { verdict: nothing_found, because: So. }\n";
    Written::small()
        .steps(steps)
        .says(&[("unknown-name", "no-heat.yaml:6", "no step is called `nowhere`")]);
}
