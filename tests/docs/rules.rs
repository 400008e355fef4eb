//! The page of the rules is what the rules say of themselves.

use proofwalk::check::{Rule, release_rules, rules};

use super::kept::keep;

#[test]
fn the_page_of_the_rules_is_what_they_say() {
    keep("docs/rules.md", &written());
}

fn written() -> String {
    let mut page = String::from(
        "# What is checked\n\n\
         Each rule is named for what is wrong. An *error* keeps a library from being walked; a *warning* does not.\n\
         `proofwalk check` looks for all of them, `proofwalk check --explain RULE` prints the page of one. This page is made from\n\
         the rules themselves: see [DEVELOPERS.md](../DEVELOPERS.md#documents).\n",
    );
    page.push_str(&table(rules()));
    page.push_str("\nOnly `proofwalk check --release` looks for these:\n");
    page.push_str(&table(release_rules()));
    for rule in rules().iter().chain(release_rules()) {
        page.push('\n');
        page.push_str(&below(&rule.page()));
    }
    page
}

/// The rules, each with a link to its page.
fn table(rules: &[&Rule]) -> String {
    let mut table = String::from("\n| rule | level | what is wrong |\n|---|---|---|\n");
    for rule in rules {
        let (name, level) = (rule.name, rule.level.name());
        // What a reader of Markdown makes of the heading `NAME (LEVEL)`.
        table.push_str(&format!(
            "| [`{name}`](#{name}-{level}) | {level} | {} |\n",
            rule.sentence()
        ));
    }
    table
}

/// A page of its own, as a part of another: its headings one step down. In its examples, `#` begins a comment.
fn below(page: &str) -> String {
    let mut fenced = false;
    let mut text = String::new();
    for line in page.lines() {
        fenced ^= line.starts_with("```");
        let heading = !fenced && line.starts_with('#');
        text.push_str(if heading { "#" } else { "" });
        text.push_str(line);
        text.push('\n');
    }
    text
}
