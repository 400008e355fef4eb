//! What keeps a library from being released, and from nothing else.

use crate::library::Written;

fn marked(lines: &str) -> Written {
    let library = Written::small();
    ["every-name.yaml", "flame-check.yaml"]
        .iter()
        .fold(library, |library, file| {
            library.swapped(file, "title:", &format!("{lines}title:"))
        })
}

#[track_caller]
fn says(library: &Written, expected: &[(&str, &str, &str)]) {
    library.is_right();
    let found = library.found_for_release();
    let found: Vec<(&str, &str, &str)> = (found.iter())
        .map(|f| (f.rule, f.place.as_str(), f.message.as_str()))
        .collect();
    assert_eq!(found, expected);
}

#[test]
fn a_tree_without_a_status_is_a_draft_and_told_where_the_tree_is_named() {
    says(
        &Written::small(),
        &[
            (
                "draft-tree",
                "every-name.yaml:1",
                "the tree `every-name` is a draft",
            ),
            (
                "draft-tree",
                "flame-check.yaml:1",
                "the tree `flame-check` is a draft",
            ),
        ],
    );
}

#[test]
fn a_draft_is_told_where_it_says_so() {
    let library = marked("status: field-trial\n").swapped("flame-check.yaml", "field-trial", "draft");
    says(
        &library,
        &[(
            "draft-tree",
            "flame-check.yaml:2",
            "the tree `flame-check` is a draft",
        )],
    );
}

#[test]
fn what_is_approved_says_what_was_approved() {
    let one = |lines: &str| {
        marked("status: field-trial\n").swapped("flame-check.yaml", "status: field-trial\n", lines)
    };
    let lacks = |missing: &str| format!("the tree `flame-check` is approved without {missing}");
    for (lines, missing) in [
        ("status: approved\n", "an edition and a note of what changed"),
        ("status: approved\nedition: 2\n", "a note of what changed"),
        (
            "status: approved\nedition: ' '\nchanged: Asks for the shape first.\n",
            "an edition",
        ),
    ] {
        says(
            &one(lines),
            &[("missing-edition", "flame-check.yaml:2", &lacks(missing))],
        );
    }
    says(
        &one("status: approved\nedition: 2\nchanged: Asks for the shape first.\n"),
        &[],
    );
}

#[test]
fn a_field_trial_may_be_released_as_it_is() {
    says(&marked("status: field-trial\n"), &[]);
}

#[test]
fn while_a_file_is_malformed_nothing_is_said_of_its_release() {
    let library = Written::small().with("flame-check.yaml", "tree: [");
    let found = library.found_for_release();
    assert!(found.iter().all(|found| found.rule == "malformed"), "{found:?}");
    assert!(!found.is_empty());
}
