//! Files that cannot be read, and text that nobody should see.

use crate::library::Written;

#[test]
fn while_a_file_is_malformed_only_text_rules_have_their_say() {
    let library = Written::small()
        .steps("  a: { measure: nothing, bands: { below 1 uA: a }, wy: no }\n")
        .with(
            "registry/restores.yaml",
            "restores:\n  door_switch: Close\n  door_switch: C\u{202e}lose\n",
        );
    library.says(&[
        (
            "malformed",
            "no-heat.yaml:6",
            "`wy` is not a key of the format here",
        ),
        (
            "duplicate-name",
            "registry/restores.yaml:3",
            "a second put-back is called `door_switch`",
        ),
        (
            "unsafe-text",
            "registry/restores.yaml:3",
            "the text holds U+202E, a character that is not seen or turns the text round",
        ),
    ]);
}

#[test]
fn an_escape_in_quotes_is_seen_where_the_text_belongs() {
    let library = Written::small().steps(
        "  a: { do: \"Look\\e[2J\", go: z }\n  z: { verdict: nothing_found, because: \"So\\n it is\" }\n",
    );
    library.says(&[(
        "unsafe-text",
        "no-heat.yaml:6",
        "a text here holds U+001B, a control character",
    )]);
}

#[test]
fn a_run_of_unsafe_characters_is_one_place_and_line_ends_are_none() {
    let restores = "\u{feff}restores:\r\n\tdoor_switch: Close\r\n";
    // A byte-order mark and DOS line ends are fine; the tab is the YAML reader's to refuse.
    let found = Written::small().with("registry/restores.yaml", restores).found();
    assert!(found.iter().all(|found| found.rule != "unsafe-text"), "{found:?}");

    let restores = "restores:\n  door_switch: Clo\u{200b}\u{200b}se the \u{200b}door\n";
    let found = Written::small().with("registry/restores.yaml", restores).found();
    let places: Vec<&str> = found.iter().map(|found| found.rule).collect();
    assert_eq!(places, ["unsafe-text"; 2]);
}

#[test]
fn a_file_full_of_them_is_not_reported_place_by_place() {
    let library = Written::small().with("registry/restores.yaml", "a\u{7}".repeat(100_000));
    assert!(library.found().len() < 200);
}

#[test]
fn the_title_of_the_library_is_read_as_well() {
    let library = Written::small().swapped(
        "library.yaml",
        "title: A small library",
        "title: \"A\\u202elibrary\"",
    );
    assert_eq!(library.found()[0].place, "library.yaml:1");
}
