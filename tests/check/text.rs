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
fn an_escape_is_reported_where_it_stands() {
    let library = Written::small().steps(
        "  a:\n    do: \"Look\\e[2J\"\n    go: z\n    why: |\n      Nothing is \"\\e\" here.\n    title: \"A\\u202eB\\e\"\n  \
         z: { verdict: nothing_found, because: \"So\\n it is\" }\n",
    );
    let control = "the text holds U+001B, a control character";
    let turned = "the text holds U+202E, a character that is not seen or turns the text round";
    library.says(&[
        ("unsafe-text", "no-heat.yaml:7", control),
        ("unsafe-text", "no-heat.yaml:11", turned),
        ("unsafe-text", "no-heat.yaml:11", control),
    ]);
    let (loaded, problems) = proofwalk::library::load(library.files());
    let found = proofwalk::check::run(&loaded, &problems);
    let marked: Vec<&str> = found
        .iter()
        .map(|found| loaded.files.excerpt(found.span))
        .collect();
    assert_eq!(marked, ["\\e", "\\u202e", "\\e"]);
}

#[test]
fn an_escape_is_reported_beside_the_character_itself() {
    let restores = "restores:\n  door_switch: Clo\u{202e}se\n  tap: \"Close\\u202e\"\n";
    let found = Written::small().with("registry/restores.yaml", restores).found();
    let found = found.iter().filter(|found| found.rule == "unsafe-text");
    let places: Vec<&str> = found.map(|found| found.place.as_str()).collect();
    assert_eq!(places, ["registry/restores.yaml:2", "registry/restores.yaml:3"]);
}

#[test]
fn names_are_ascii_so_no_letter_of_another_script_passes_for_one() {
    // The Cyrillic letters that look like `p` and `a`; a full-width one.
    for name in ["\u{440}\u{430}rt", "ｓhape", "é"] {
        let library = Written::small().steps(&format!(
            "  {name}: {{ observe: flame_shape, go: done }}\n  done: {{ verdict: nothing_found, because: So. }}\n"
        ));
        let found = library.found();
        let malformed = found.iter().find(|found| found.rule == "malformed").unwrap();
        assert_eq!(malformed.place, "no-heat.yaml:6");
        assert!(malformed.help.contains("lower-case ASCII"), "{malformed:?}");
    }
}

#[test]
fn a_character_that_nobody_sees_in_a_name_is_one_finding_a_place() {
    let library = Written::small().steps(
        "  shape\u{200b}: { observe: flame_shape, go: done }\n  done: { verdict: nothing_found, because: So. }\n",
    );
    // Once where it is defined, and once where the tree starts with it.
    let found: Vec<&str> = library.found().iter().map(|found| found.rule).collect();
    assert_eq!(found, ["unsafe-text"; 2]);
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
    let escaped: String = (0..500).map(|at| format!("  r{at}: \"\\a\"\n")).collect();
    let library = Written::small().with("registry/restores.yaml", format!("restores:\n{escaped}"));
    let found = library.found().into_iter();
    assert_eq!(found.filter(|found| found.rule == "unsafe-text").count(), 100);
}

#[test]
fn the_title_of_the_library_is_read_as_well() {
    let library = Written::small().swapped(
        "library.yaml",
        "title: A small library",
        "title: \"A\\u202elibrary\"",
    );
    assert_eq!(library.found()[0].place, "library.yaml:3");
}
