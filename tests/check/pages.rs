//! Every rule's page: its failing example fails with that rule, and its mend is right.

use proofwalk::check::{page, release_rules, rules};

use crate::library::Written;

/// The library that a page's section shows, each file under a comment with its name.
pub fn example(page: &str, heading: &str) -> Written {
    let (_, section) = page.split_once(&format!("## {heading}\n")).unwrap();
    let (_, fenced) = section.split_once("```yaml\n# ").unwrap();
    let (code, _) = fenced.split_once("```").unwrap();
    code.split("\n# ").fold(Written::small(), |library, file| {
        let (name, text) = file.split_once('\n').unwrap();
        library.with(name, text)
    })
}

#[test]
fn every_failing_example_fails_with_its_rule_and_every_mend_is_right() {
    for rule in rules() {
        let page = page(rule.name).unwrap();
        let mut found: Vec<&str> = example(&page, "Fails")
            .found()
            .iter()
            .map(|found| found.rule)
            .collect();
        if rule.name == "dead-end" {
            // A step always leads on, so what leads nowhere leads round in a circle.
            found.retain(|&found| found != "endless-loop");
        }
        found.dedup();
        assert_eq!(found, [rule.name]);
        assert_eq!(example(&page, "Mended").found(), [], "{}", rule.name);
    }
}

#[test]
fn rules_are_in_the_order_of_their_names_and_end_no_message_with_a_full_stop() {
    let names: Vec<&str> = rules().iter().map(|rule| rule.name).collect();
    assert!(names.is_sorted(), "{names:?}");
    for rule in rules() {
        for found in example(&rule.page(), "Fails").found() {
            let first = found.message.chars().next().unwrap();
            assert!(
                !found.message.ends_with('.') && !first.is_uppercase(),
                "{found:?}"
            );
            assert!(!found.help.is_empty() && !found.help.ends_with('.'), "{found:?}");
        }
    }
}

#[test]
fn the_pages_of_the_release_rules_are_about_trees_that_a_check_lets_pass() {
    for rule in release_rules() {
        let page = page(rule.name).unwrap();
        // The trees that every example stands among are drafts.
        let found = |heading| {
            let mut found = example(&page, heading).found_for_release();
            found.retain(|found| found.place.starts_with("no-heat.yaml:"));
            found.into_iter().map(|found| found.rule).collect::<Vec<_>>()
        };
        assert_eq!(found("Fails"), [rule.name]);
        assert_eq!(found("Mended"), [""; 0], "{}", rule.name);
        assert_eq!(example(&page, "Fails").found(), [], "{}", rule.name);
    }
}

#[test]
fn a_page_begins_with_its_rule() {
    let page = page("band-gap").unwrap();
    assert!(
        page.starts_with("# band-gap (error)\n\nA value lies in none of a step's bands"),
        "{page}"
    );
    assert_eq!(proofwalk::check::page("nothing"), None);
}
