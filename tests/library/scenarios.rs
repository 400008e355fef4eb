//! Scenario files.

use crate::written::Written;

const FILE: &str = "scenarios/hums.yaml";
const RIGHT: &str = "\
scenario: It hums
tree: stands-still
plate: { phase: single, head_min: 20 psi }
readings: { supply: [118 V, 119 V] }
signs: { noise: hum }
expect:
  verdict: motor_dead
  asked: [supply, noise]
  findings: []
";

fn with(old: &str, new: &str) -> Written {
    Written::small().with(FILE, RIGHT).swapped(FILE, old, new)
}

#[test]
fn a_right_one_is_read() {
    let (library, problems) = Written::small().with(FILE, RIGHT).read();
    assert!(problems.is_empty(), "{problems:?}");
    assert_eq!(library.scenarios[0].name, "hums");
}

#[test]
fn what_it_names_is_looked_up() {
    let cases = [
        (
            "tree: stands-still",
            "tree: stands-stil",
            "2:7 unknown tree `stands-stil`, meant `stands-still`",
        ),
        (
            "{ phase: single",
            "{ phaze: single",
            "3:10 unknown plate field `phaze`, meant `phase`",
        ),
        (
            "phase: single",
            "phase: singel",
            "3:17 unknown value `singel`, meant `single`",
        ),
        (
            "{ supply:",
            "{ suply:",
            "4:13 unknown reading `suply`, meant `supply`",
        ),
        (
            "{ noise: hum",
            "{ noize: hum",
            "5:10 unknown sign `noize`, meant `noise`",
        ),
        (
            "noise: hum",
            "noise: hmm",
            "5:17 unknown value `hmm`, meant `hum`",
        ),
        (
            "verdict: motor_dead",
            "verdict: moto_dead",
            "7:12 unknown fault `moto_dead`, meant `motor_dead`",
        ),
        (
            "asked: [supply",
            "asked: [suply",
            "8:11 unknown reading, sign or plate field `suply`, meant `supply`",
        ),
        (
            "verdict: motor_dead",
            "outcome: good",
            "7:12 unknown outcome `good`",
        ),
    ];
    for (old, new, expected) in cases {
        with(old, new).says(&[&format!("{FILE}:{expected}")]);
    }
}

#[test]
fn it_says_in_one_way_how_the_walk_ends() {
    with("  verdict: motor_dead\n", "").says(&[
        "scenarios/hums.yaml:1:11 malformed: the scenario does not say in one way how the walk must end",
    ]);
    with(
        "  verdict: motor_dead\n",
        "  verdict: motor_dead\n  ends: unproven\n",
    )
    .says(&[
        "scenarios/hums.yaml:1:11 malformed: the scenario does not say in one way how the walk must end",
    ]);
    with("verdict: motor_dead", "ends: badly")
        .says(&["scenarios/hums.yaml:7:9 malformed: a walk does not end `badly`"]);
}

#[test]
fn a_value_is_one_that_the_walk_would_take() {
    with("119 V", "119 psi")
        .says(&["scenarios/hums.yaml:4:29 unit: `119 psi` is a pressure; V measures a voltage"]);
    let problems = with("119 V", "many").problems();
    assert!(
        problems[0].starts_with("scenarios/hums.yaml:4:29 malformed: "),
        "{problems:?}"
    );
}

#[test]
fn a_thing_is_answered_in_one_line() {
    with("{ noise: hum }", "{ noise: hum, noise: quiet }")
        .says(&["scenarios/hums.yaml:5:22 malformed: the key `noise` stands here a second time"]);
    with("[118 V, 119 V] }", "118 V, supply: 119 V }")
        .says(&["scenarios/hums.yaml:4:28 malformed: the key `supply` stands here a second time"]);
    with("phase: single,", "phase: single, phase: three,")
        .says(&["scenarios/hums.yaml:3:25 malformed: the key `phase` stands here a second time"]);
}
