//! What is printed of a check.

use proofwalk::check;
use proofwalk::library::{Library, Problem, load};
use proofwalk::report::findings::{self, Look};
use proofwalk::source::{Files, Layer, SourceFile};

use crate::library::Written;

fn text(library: &Written, look: Look) -> String {
    let (library, problems) = load(library.files());
    findings::text(&library, &check::run(&library, &problems), None, look)
}

fn json(library: &Written) -> String {
    let (library, problems) = load(library.files());
    findings::json(&library, &check::run(&library, &problems))
}

fn broken() -> Written {
    Written::small().bands("valve_voltage", &["at most 2 V", "at least 2 V"])
}

#[test]
fn what_was_found_is_counted() {
    let right = text(&Written::small(), Look::default());
    assert_eq!(right, "no errors, no warnings in 2 trees, 13 steps\n");
    let alone =
        "tree: alone\ntitle: Alone\nstart: a\nsteps:\n  a: { verdict: nothing_found, because: So. }\n";
    let warned = text(&Written::small().with("alone.yaml", alone), Look::default());
    assert!(warned.ends_with("\n1 warning in 3 trees, 14 steps\n"), "{warned}");
}

#[test]
fn a_finding_shows_its_line_and_its_mend() {
    let look = Look {
        ascii: true,
        ..Look::default()
    };
    let expected = "\
no-heat.yaml:11:7
error[band-overlap]: `at most 2 V` and `at least 2 V` both take 2 V
   |
11 |       at least 2 V: done
   |       ^^^^^^^^^^^^
   |
   = help: they meet there: write `below` or `above` in one of the two

1 error in 3 trees, 15 steps
";
    assert_eq!(text(&broken(), look), expected);
}

#[test]
fn an_ascii_report_has_no_other_characters_of_ours() {
    let steps = "  a: { do: Wait., go: b }\n  b: { do: Wait., go: a }\n";
    let library = Written::small().steps(steps);
    let gap = Written::small().bands("flame_current", &["below 1 uA"]);
    let look = Look {
        ascii: true,
        ..Look::default()
    };
    for (library, words) in [
        (library, "circle `a` -> `b` -> `a`"),
        (gap, "no band takes 30 uA"),
    ] {
        let text = text(&library, look);
        assert!(text.is_ascii() && text.contains(words), "{text}");
    }
}

#[test]
fn a_walk_is_written_out_where_the_message_does_not_name_its_steps() {
    let circle = |count: usize| {
        let step = |at: usize| format!("  s{at}: {{ do: Wait., go: s{} }}\n", (at + 1) % count);
        let library = Written::small().steps(&(0..count).map(step).collect::<String>());
        text(&library, Look::default())
    };
    assert!(!circle(3).contains("the steps are"));
    assert!(circle(12).contains("the steps are s0, s1, s2, s3, s4, s5, s6, s7, s8, s9, s10, s11\n"));
    assert!(circle(100).contains("s58, s59 … 40 more\n"));
}

#[test]
fn colour_is_only_where_it_is_asked_for() {
    let colored = |color| {
        text(
            &broken(),
            Look {
                color,
                ..Look::default()
            },
        )
    };
    assert!(!colored(false).contains('\u{1b}'));
    assert!(colored(true).contains('\u{1b}'));
}

#[test]
fn json_has_every_finding() {
    let checked: serde_json::Value = serde_json::from_str(&json(&broken())).unwrap();
    assert_eq!(
        checked,
        serde_json::json!({
            "library": "small", "trees": 3, "steps": 15,
            "findings": [{
                "rule": "band-overlap", "level": "error", "file": "no-heat.yaml", "line": 11, "column": 7,
                "message": "`at most 2 V` and `at least 2 V` both take 2 V",
                "help": "they meet there: write `below` or `above` in one of the two", "witness": []
            }],
            "overlays": [], "replaced": []
        })
    );
}

/// With an overlay that replaces a put-back.
fn overlaid(name: &str) -> (Library, Vec<Problem>) {
    let over = [
        ("library.yaml", format!("title: \"{name}\"\nedition: 7\n")),
        (
            "registry/restores.yaml",
            "restores:\n  # Ours.\n  door_switch: See that it stops\n".to_owned(),
        ),
    ];
    let layer = Layer::overlay(1, "../company");
    let over = over.map(|(file, text)| SourceFile::new(file, text).in_layer(layer.clone()));
    load(over.into_iter().fold(Written::small().files(), Files::with))
}

#[test]
fn what_an_overlay_replaced_is_told_with_both_places() {
    let (library, problems) = overlaid("The north branch");
    let found = check::run(&library, &problems);
    let expected = "\
overlay The north branch, edition 7: replaces 1
  put-back `door_switch`: ../company/registry/restores.yaml:3 instead of registry/restores.yaml:2

no errors, no warnings in 2 trees, 13 steps
";
    assert_eq!(findings::text(&library, &found, None, Look::default()), expected);
    let checked: serde_json::Value = serde_json::from_str(&findings::json(&library, &found)).unwrap();
    assert_eq!(
        (&checked["overlays"], &checked["replaced"]),
        (
            &serde_json::json!([{ "name": "company", "title": "The north branch", "edition": "7" }]),
            &serde_json::json!([{
                "kind": "put-back", "name": "door_switch", "file": "../company/registry/restores.yaml", "line": 3,
                "instead_of": { "file": "registry/restores.yaml", "line": 2 }
            }])
        )
    );
}

#[test]
fn an_overlay_is_told_safely_and_its_text_is_looked_at() {
    let (library, problems) = overlaid("North\\e[2J");
    let found = check::run(&library, &problems);
    let places: Vec<_> = (found.iter())
        .map(|finding| (finding.rule, library.files.place(finding.span).file))
        .collect();
    assert_eq!(places, [("unsafe-text", "../company/library.yaml".to_owned())]);
    let text = findings::text(&library, &found, None, Look::default());
    assert!(text.contains("overlay North^[[2J, edition 7"), "{text}");
}

#[test]
fn nothing_that_an_author_wrote_acts_on_the_terminal() {
    let library = Written::small().steps("  a: { measure: \"x\\e[2J\u{9b}31m\", go: z\u{202e} }\n");
    for text in [text(&library, Look::default()), json(&library)] {
        let acts = text
            .chars()
            .find(|&c| c != '\n' && proofwalk::source::is_unsafe(c));
        assert_eq!(acts, None, "{text}");
    }
}

#[test]
fn a_long_line_does_not_widen_the_report() {
    let steps = format!(
        "  a: {{ do: {}, go: nowhere, title: {} }}\n",
        "x".repeat(3000),
        "y".repeat(3000)
    );
    let text = text(&Written::small().steps(&steps), Look::default());
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    assert!(text.contains("nowhere"));
}

#[test]
fn every_finding_is_read_in_eighty_columns_of_ascii_without_colour() {
    let look = Look {
        ascii: true,
        ..Look::default()
    };
    for rule in check::rules() {
        let text = text(&crate::pages::example(&rule.page(), "Fails"), look);
        assert!(text.is_ascii() && !text.contains('\u{1b}'), "{text}");
        let wide = text.lines().find(|line| line.len() > 80);
        assert_eq!(wide, None, "{text}");
    }
}
