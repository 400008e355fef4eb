//! Keys that are unknown, missing, repeated, or another kind's.

use crate::written::{TREE, Written};

#[test]
fn everything_wrong_with_the_keys_is_said_in_one_run() {
    let library = Written::small()
        .swapped("library.yaml", "title: Pumps", "titel: Pumps")
        .swapped(
            "registry/readings.yaml",
            "accuracy: 1 V }",
            "accuracy: 1 V, colour: red }",
        )
        .swapped("registry/signs.yaml", "ask: What is heard?, ", "")
        .swapped(TREE, "complaint: It", "complaint: It\ncomplaint: It")
        .swapped(TREE, "because: Nothing is wrong. ", "");
    library.says(&[
        "library.yaml:3:1 malformed: `titel` is not a key of the format here",
        "registry/readings.yaml:2:77 malformed: `colour` is not a key of the format here",
        "registry/signs.yaml:2:3 malformed: the sign `noise` has no `ask`",
        "stands-still.yaml:4:1 malformed: the key `complaint` stands here a second time",
        "stands-still.yaml:15:3 malformed: the step `fine` has no `because`",
    ]);
    assert_eq!(library.helps()[0], "did you mean `title`?");
}

#[test]
fn a_step_is_exactly_one_kind() {
    let step = "noise: { observe: noise, choices: { hum: motor, quiet: fine } }";
    Written::small()
        .swapped(TREE, step, "noise: { why: Because. }")
        .says(&["stands-still.yaml:12:3 malformed: the step `noise` does nothing"]);
    Written::small()
        .swapped(TREE, step, "noise: { observe: noise, measure: supply, go: fine }")
        .says(&["stands-still.yaml:12:3 malformed: the step `noise` is measure and observe at once"]);
    Written::small()
        .swapped(TREE, step, "noise: { observe: , go: fine }")
        .says(&["stands-still.yaml:12:3 malformed: the step `noise` has no `observe`"]);
}

#[test]
fn a_key_of_another_kind_means_nothing() {
    let library = Written::small().swapped(
        TREE,
        "because: Nothing is wrong.",
        "because: So it is., go: motor",
    );
    library.says(&["stands-still.yaml:14:46 malformed: `go` means nothing on a `verdict` step"]);
    assert_eq!(
        library.helps(),
        ["its keys are because, advice, title, why, cautions, source, minutes"]
    );
}

#[test]
fn a_question_says_in_one_way_where_its_answers_lead() {
    let choices = "choices: { hum: motor, quiet: fine }";
    Written::small()
        .swapped(TREE, &format!(", {choices}"), "")
        .says(&["stands-still.yaml:12:3 malformed: the step `noise` has no `choices`"]);
    Written::small()
        .swapped(TREE, choices, &format!("{choices}, go: motor"))
        .says(&[
            "stands-still.yaml:12:3 malformed: the step `noise` says in two ways where its answers lead",
        ]);
}

#[test]
fn what_an_entry_requires_is_named() {
    let cases = [
        (
            "registry/readings.yaml",
            "title: Supply, ",
            "2:3 malformed: the reading `supply` has no `title`",
        ),
        (
            "registry/readings.yaml",
            "unit: V, ",
            "2:3 malformed: the reading `supply` has no `unit`",
        ),
        (
            "registry/readings.yaml",
            ", accuracy: 1 V",
            "2:3 malformed: the reading `supply` has no `accuracy`",
        ),
        (
            "registry/readings.yaml",
            "plausible: 0 V to 150 V, ",
            "2:3 malformed: the reading `supply` has no `plausible`",
        ),
        (
            "registry/plate.yaml",
            ", plausible: 1 psi to 50 psi",
            "3:3 malformed: the plate field `head_min` has no `plausible`",
        ),
        (
            "registry/signs.yaml",
            ", values: { hum: It hums, quiet: Nothing }",
            "2:3 malformed: the sign `noise` has no `values`",
        ),
        (
            "registry/faults.yaml",
            ", remedy: none",
            "3:3 malformed: the fault `fine` has no `remedy`",
        ),
        (
            "registry/cautions.yaml",
            "text: Take care, ",
            "2:3 malformed: the caution `care` has no `text`",
        ),
        (
            "registry/sources.yaml",
            ", kind: practice",
            "2:3 malformed: the source `practice` has no `kind`",
        ),
        (
            "library.yaml",
            "library: pumps\n",
            "1:1 malformed: library.yaml has no `library`",
        ),
    ];
    for (file, piece, expected) in cases {
        let problems = Written::small().swapped(file, piece, "").problems();
        // A unit that is not there may make what is written in it wrong, too.
        assert!(problems.contains(&format!("{file}:{expected}")), "{problems:?}");
    }
}

#[test]
fn what_a_tree_requires_is_named() {
    let cases = [
        (
            "title: The pump stands still\n",
            "1:7 malformed: the tree `stands-still` has no `title`",
        ),
        (
            "start: supply\n",
            "1:7 malformed: the tree `stands-still` has no `start`",
        ),
        ("tree: stands-still\n", "1:1 malformed: the tree has no `tree`"),
    ];
    for (piece, expected) in cases {
        Written::small()
            .swapped(TREE, piece, "")
            .says(&[&format!("{TREE}:{expected}")]);
    }
}

#[test]
fn a_tree_is_named_for_its_file() {
    let library = Written::small().swapped(TREE, "tree: stands-still", "tree: stands-stil");
    library.says(&["stands-still.yaml:1:7 malformed: the tree calls itself `stands-stil`, but its file is `stands-still.yaml`"]);
}

#[test]
fn a_file_that_is_no_registry_is_refused() {
    let library = Written::small().with("registry/part.yaml", "parts: {}\n");
    library.says(&["registry/part.yaml:1:1 malformed: `part.yaml` is no registry of the format"]);
    assert_eq!(library.helps(), ["did you mean `registry/parts.yaml`?"]);
}

#[test]
fn a_part_without_a_proof_is_refused() {
    let proof = "proof:\n      - supply: 100 V to 130 V\n      - noise: hum\n";
    for instead in ["", "proof: []\n"] {
        let library = Written::small().swapped("registry/parts.yaml", proof, instead);
        library.says(&["registry/parts.yaml:2:3 malformed: the part `motor` has no `proof`"]);
    }
}

#[test]
fn a_text_that_was_cut_at_a_comma_is_told_to_be_quoted() {
    let library = Written::small().swapped(
        "registry/faults.yaml",
        "remedy: none",
        "remedy: none, text: Look, and listen",
    );
    library.says(&["registry/faults.yaml:3:55 malformed: `and listen` is not a key of the format here"]);
    assert_eq!(
        library.helps(),
        ["inside braces a comma ends a text; put a text that has one in \"quotes\""]
    );
}

#[test]
fn a_remedy_is_one_of_five() {
    let library = Written::small().swapped("registry/faults.yaml", "remedy: none", "remedy: pray");
    library.says(&["registry/faults.yaml:3:37 malformed: `pray` is no remedy"]);
}
