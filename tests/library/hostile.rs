//! YAML that was written to hurt, or that other readers take and this format does not.

use std::time::Duration;

use rustix::time::{ClockId, clock_gettime};

use crate::written::{TREE, Written};

/// Generous for a slow machine in a debug build, and far below what quadratic time would need.
const SOON: Duration = Duration::from_millis(1500);

/// How long this thread has worked: what else the machine does is not counted.
fn worked() -> Duration {
    let time = clock_gettime(ClockId::ThreadCPUTime);
    Duration::from_secs(time.tv_sec.unsigned_abs()) + Duration::from_nanos(time.tv_nsec.unsigned_abs())
}

/// The one problem of the minimal library with this text in place of its restores.
#[track_caller]
fn restores(text: &str) -> String {
    let begun = worked();
    let mut problems = Written::small().with("registry/restores.yaml", text).problems();
    let took = worked() - begun;
    assert!(took < SOON, "it took {took:?}");
    assert_eq!(problems.len(), 1, "{problems:?}");
    problems.remove(0)
}

#[track_caller]
fn refused(text: &str, place: &str, message: &str) {
    assert_eq!(
        restores(text),
        format!("registry/restores.yaml:{place} malformed: {message}")
    );
}

#[test]
fn nesting_has_a_limit() {
    for opening in ["[", "{", "{a: ", "- ", "? ", "- ? "] {
        let said = restores(&format!("restores: {{}}\nextra:\n  {}\n", opening.repeat(20_000)));
        let expected = "registry/restores.yaml:3:";
        assert!(said.starts_with(expected), "{opening:?}: {said}");
        assert!(
            said.ends_with("maps and lists nest deeper than 32 levels"),
            "{opening:?}: {said}"
        );
    }
}

#[test]
fn anchors_and_aliases_are_refused() {
    let message = "anchors (`&name`) and aliases (`*name`) are not taken";
    refused("restores:\n  cover: &a Screw it on\n", "2:13", message);
    refused("restores:\n  cover: &a [*a]\n", "2:13", message);
    let said = restores("restores:\n  cover: *a\n");
    assert!(
        said.starts_with("registry/restores.yaml:2:10 malformed: "),
        "{said}"
    );
}

#[test]
fn billion_laughs_are_refused_at_the_first() {
    let mut text = "a0: &a0 [lol, lol]\n".to_owned();
    for level in 1..40 {
        let below = level - 1;
        text.push_str(&format!("a{level}: &a{level} [*a{below}, *a{below}]\n"));
    }
    refused(
        &text,
        "1:9",
        "anchors (`&name`) and aliases (`*name`) are not taken",
    );
}

#[test]
fn merge_keys_are_refused() {
    refused(
        "restores:\n  <<: { cover: Screw it on }\n",
        "2:3",
        "a merge key `<<` is not taken",
    );
}

#[test]
fn every_tag_is_refused() {
    for tag in [
        "!!str",
        "!!int",
        "!thing",
        "!",
        "!!python/object:os.system",
        "!<tag:yaml.org,2002:str>",
    ] {
        refused(
            &format!("restores:\n  cover: {tag} Screw it on\n"),
            "2:10",
            "a YAML tag is not taken",
        );
    }
    refused(
        "restores: !!map\n  cover: Screw it on\n",
        "1:11",
        "a YAML tag is not taken",
    );
    refused(
        "restores:\n  !!str cover: Screw it on\n",
        "2:3",
        "a YAML tag is not taken",
    );
}

#[test]
fn an_exclamation_mark_in_a_text_is_no_tag() {
    Written::small()
        .with(
            "registry/restores.yaml",
            "restores:\n  cover: Stop! Screw it on # !!now\n  lid: \"!loud\"\n",
        )
        .says(&[]);
}

#[test]
fn a_file_is_one_document() {
    let message = "the file holds more than one document";
    refused(
        "restores:\n  cover: Screw it on\n---\nrestores: {}\n",
        "3:1",
        message,
    );
}

#[test]
fn a_nul_byte_is_refused_where_it_stands() {
    let said = restores("restores:\n  cover: Screw\0it on\n");
    assert!(
        said.starts_with("registry/restores.yaml:2:15 malformed: "),
        "{said}"
    );
}

#[test]
fn a_byte_order_mark_is_passed_over() {
    Written::small()
        .with(
            "registry/restores.yaml",
            "\u{feff}restores:\n  cover: Screw it on\n",
        )
        .says(&[]);
    refused(
        "\u{feff}restores:\n  cover: One\ncolour: red\n",
        "3:1",
        "`colour` is not a key of the format here",
    );
}

#[test]
fn an_empty_registry_registers_nothing_and_an_empty_tree_is_none() {
    Written::small()
        .with("registry/restores.yaml", "# none yet\n")
        .says(&[]);
    let problems = Written::small().with("empty.yaml", "").problems();
    assert_eq!(problems[0], "empty.yaml:1:1 malformed: the tree has no `tree`");
}

#[test]
fn the_wrong_shape_is_named_where_it_stands() {
    refused(
        "restores: [cover]\n",
        "1:11",
        "lines of `key: value` are wanted here",
    );
    refused(
        "restores:\n  cover: [one]\n",
        "2:10",
        "one text is wanted here, not a list or a map",
    );
}

#[test]
fn a_slip_in_the_yaml_is_told_in_plain_words_at_its_own_line() {
    let colon = "there is a colon here that YAML does not take";
    refused(
        "restores:\n\tcover: Screw it on\n",
        "2:1",
        "line 2 begins with a tab",
    );
    refused("restores:\n  cover: Screws: four\n", "2:16", colon);
    refused(
        "restores:\n  door: Close it\n  cover \"Screw it on\"\n",
        "3:3",
        "a key without its colon",
    );
    // A tab that is no fault is not blamed for another.
    refused(
        "restores:\n  cover: |\n    Screw it on\n    \twith care\n\n\n\n  door: [one]\n",
        "8:9",
        "one text is wanted here, not a list or a map",
    );
}

#[test]
fn a_number_too_large_is_no_number() {
    for (limit, place) in [
        ("1e999", "10:54"),
        (".inf", "10:54"),
        ("-1", "10:54"),
        ("1.5", "10:54"),
    ] {
        let library = Written::small().swapped(
            TREE,
            "100 V: fine",
            &format!("100 V: {{ go: fine, then: noise, at_most: {limit} }}"),
        );
        let problems = library.problems();
        assert_eq!(problems.len(), 1, "{limit}: {problems:?}");
        let place = format!("stands-still.yaml:{place} malformed: ");
        assert!(problems[0].starts_with(&place), "{limit}: {problems:?}");
    }
    for number in ["1e999 V", ".inf V", ".nan V"] {
        let problems = Written::small()
            .swapped(TREE, "below 100 V", &format!("below {number}"))
            .problems();
        assert_eq!(problems.len(), 1, "{number}: {problems:?}");
        assert!(
            problems[0].starts_with("stands-still.yaml:10:13 malformed: "),
            "{problems:?}"
        );
    }
}

#[test]
fn many_names_are_looked_up_in_no_quadratic_time() {
    let mut readings = String::new();
    let mut signs =
        "signs:\n  noise: { ask: What is heard?, values: { hum: It hums, quiet: Nothing } }\n".to_owned();
    for at in 0..10_000 {
        readings.push_str(&format!(
            "  r{at}x: {{ title: T, unit: V, plausible: 0 V to 1 V, accuracy: 1 V }}\n"
        ));
        signs.push_str(&format!("  s{at}x: {{ ask: Q, values: {{ a: A }} }}\n"));
    }
    let library = Written::small()
        .swapped(
            "registry/readings.yaml",
            "readings:\n",
            &format!("readings:\n{readings}"),
        )
        .with("registry/signs.yaml", signs);
    let begun = worked();
    library.says(&[]);
    let took = worked() - begun;
    assert!(took < Duration::from_secs(8), "it took {took:?}");
}

#[test]
fn thousands_of_unknown_steps_are_all_reported_and_the_first_with_what_was_meant() {
    let mut tree = "tree: stands-still\ntitle: T\ncomplaint: C\nstart: s1\nsteps:\n".to_owned();
    for at in 1..=2000 {
        tree.push_str(&format!("  s{at}: {{ do: Wait., go: no_step_{at} }}\n"));
    }
    tree.push_str("  no_stop_1: { do: Wait., go: s1 }\n");
    let problems = Written::small().with(TREE, tree).problems();
    let unknown: Vec<&String> = problems
        .iter()
        .filter(|line| line.contains("unknown step"))
        .collect();
    assert_eq!(unknown.len(), 2000, "{:?}", problems.first());
    assert!(unknown[0].ends_with("meant `no_stop_1`"), "{}", unknown[0]);
    assert!(unknown[1999].ends_with("`no_step_2000`"), "{}", unknown[1999]);
}
