//! Names that are not there, that are there twice, and that are none.

use crate::written::{TREE, Written};

#[test]
fn every_kind_of_name_is_looked_up_where_it_stands() {
    let cases = [
        (
            TREE,
            "measure: supply",
            "measure: suply",
            "7:14 unknown reading `suply`, meant `supply`",
        ),
        (
            TREE,
            "observe: noise",
            "observe: noize",
            "12:21 unknown sign `noize`, meant `noise`",
        ),
        (
            TREE,
            "below 100 V: fine",
            "below 100 V: fin",
            "10:20 unknown step `fin`, meant `fine`",
        ),
        (
            TREE,
            "hum: motor",
            "hmm: motor",
            "12:39 unknown value `hmm`, meant `hum`",
        ),
        (
            TREE,
            "verdict: fine",
            "verdict: fines",
            "14:20 unknown fault `fines`, meant `fine`",
        ),
        (
            TREE,
            "start: supply",
            "start: suply",
            "4:8 unknown step `suply`, meant `supply`",
        ),
        (
            TREE,
            "source: practice",
            "source: practise",
            "8:13 unknown source `practise`, meant `practice`",
        ),
        (
            "registry/faults.yaml",
            "replace motor",
            "replace moto",
            "2:44 unknown part `moto`, meant `motor`",
        ),
        (
            "registry/cautions.yaml",
            "source: practice",
            "source: practise",
            "2:36 unknown source `practise`, meant `practice`",
        ),
        (
            "registry/parts.yaml",
            "- noise: hum",
            "- noize: hum",
            "6:9 unknown reading, sign or plate field `noize`, meant `noise`",
        ),
        (
            "registry/parts.yaml",
            "- noise: hum",
            "- noise: hmm",
            "6:16 unknown value `hmm`, meant `hum`",
        ),
        (
            "registry/readings.yaml",
            "supply: warm",
            "supply: worm",
            "9:54 unknown reading `worm`, meant `warm`",
        ),
        (
            "registry/readings.yaml",
            "temperature_rise",
            "temperature_raise",
            "9:28 unknown formula `temperature_raise`, meant `temperature_rise`",
        ),
        (
            "registry/plate.yaml",
            "[head_min",
            "[hed_min",
            "6:6 unknown plate field `hed_min`, meant `head_min`",
        ),
        (
            "library.yaml",
            "[care]",
            "[cares]",
            "4:21 unknown caution `cares`, meant `care`",
        ),
        (
            "library.yaml",
            "edition: 2026.1",
            "gate: stands-stil",
            "2:7 unknown tree `stands-stil`, meant `stands-still`",
        ),
    ];
    for (file, old, new, expected) in cases {
        Written::small()
            .swapped(file, old, new)
            .says(&[&format!("{file}:{expected}")]);
    }
}

#[test]
fn put_backs_and_what_is_voided_are_looked_up() {
    let act = "fine: { do: Look., leaves: [cove], voids: [suply], restores: [covr], go: end }\n  end: { verdict: fine";
    Written::small()
        .swapped(TREE, "fine: { verdict: fine", act)
        .says(&[
            "stands-still.yaml:14:31 unknown put-back `cove`, meant `cover`",
            "stands-still.yaml:14:46 unknown reading, sign or plate field `suply`, meant `supply`",
            "stands-still.yaml:14:65 unknown put-back `covr`, meant `cover`",
        ]);
}

#[test]
fn outcomes_are_looked_up_in_the_tree_that_is_visited() {
    let inner =
        "tree: inner\ntitle: Inner\noutcomes: [good]\nstart: back\nsteps:\n  back: { return: goode }\n";
    let visit = "noise: { visit: inner, returns: { god: fine } }";
    let step = "noise: { observe: noise, choices: { hum: motor, quiet: fine } }";
    Written::small()
        .with("inner.yaml", inner)
        .swapped(TREE, step, visit)
        .says(&[
            "inner.yaml:6:19 unknown outcome `goode`, meant `good`",
            "stands-still.yaml:12:37 unknown outcome `god`, meant `good`",
        ]);
}

#[test]
fn a_plate_field_in_a_band_is_looked_up_inside_the_band() {
    let library = Written::small().swapped(TREE, "below 100 V", "below plate.volts");
    library.says(&["stands-still.yaml:10:13 unknown plate field `volts`"]);
}

#[test]
fn a_second_of_the_same_name_is_shown_with_the_first() {
    let step = "fine: { verdict: fine, because: Nothing is wrong. }";
    Written::small()
        .swapped(TREE, step, &format!("{step}\n  {step}"))
        .says(&["stands-still.yaml:15:3 duplicate step `fine`, first stands-still.yaml:14:3"]);
    Written::small()
        .swapped(
            "registry/restores.yaml",
            "cover: Screw the cover on",
            "cover: One\n  cover: Two",
        )
        .says(&["registry/restores.yaml:3:3 duplicate put-back `cover`, first registry/restores.yaml:2:3"]);
}

#[test]
fn a_reading_and_a_sign_do_not_share_a_name() {
    let sign = "signs:\n  supply: { ask: Is there any?, values: { none_seen: None } }";
    Written::small()
        .swapped("registry/signs.yaml", "signs:", sign)
        .says(&[
            "registry/signs.yaml:2:3 duplicate reading or sign `supply`, first registry/readings.yaml:2:3",
        ]);
}

#[test]
fn names_that_look_alike_are_told_apart_for_the_author() {
    Written::small()
        .swapped("registry/restores.yaml", "cover: Screw the cover on", "cap_l: One\n  cap_1: Two\n  cover: Three")
        .says(&["registry/restores.yaml:3:3 duplicate put-back `cap_1` looks like `cap_l`, registry/restores.yaml:2:3"]);
}

#[test]
fn a_name_is_lower_case_ascii_and_no_truth_value() {
    // The second has a Cyrillic а, which nobody can tell from that of a name.
    let foreign = ": its letter `\u{430}` is U+0430, which is none of a to z";
    for (name, why) in [
        ("Cover", ""),
        ("c\u{430}p", foreign),
        ("no", ""),
        ("cap-off", ""),
        ("24", ""),
    ] {
        let library = Written::small().swapped(
            "registry/restores.yaml",
            "cover: Screw",
            &format!("{name}: One\n  cover: Screw"),
        );
        library.says(&[&format!(
            "registry/restores.yaml:2:3 malformed: `{name}` is no put-back name{why}"
        )]);
    }
}

#[test]
fn what_answers_twice_is_answered_once() {
    Written::small()
        .swapped(
            TREE,
            "{ hum: motor, quiet: fine }",
            "{ hum: motor, quiet: fine, hum: fine }",
        )
        .says(&["stands-still.yaml:12:64 duplicate value `hum`, first stands-still.yaml:12:39"]);
}

#[test]
fn a_danger_is_offered_once() {
    let dangers = "dangers:\n  Fire: stands-still\n  Fire: stands-still\nlibrary: pumps";
    Written::small()
        .swapped("library.yaml", "library: pumps", dangers)
        .says(&["library.yaml:3:3 malformed: the key `Fire` stands here a second time"]);
}

#[test]
fn a_claim_is_made_once_in_a_line_of_a_proof() {
    Written::small()
        .swapped(
            "registry/parts.yaml",
            "- noise: hum",
            "- { noise: hum, noise: quiet }",
        )
        .says(&["registry/parts.yaml:6:23 malformed: the key `noise` stands here a second time"]);
}
