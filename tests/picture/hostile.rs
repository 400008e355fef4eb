//! Texts that would end a string, open a tag, act on a terminal or hide, wherever an author can write one.

use proofwalk::library::Library;
use roxmltree::Document;

use crate::libraries::{whole, written};

/// Texts as an author wrote them, and as they must be shown.
pub const TEXTS: [(&str, &str); 9] = [
    ("\"];x->y[label=\"", "\"];x->y[label=\""),
    ("a\\", "a\\"),
    ("\\N\\G\\n\\\\", "\\N\\G\\n\\\\"),
    ("<b>x</b>", "<b>x</b>"),
    ("&lt;&#65;&amp;", "&lt;&#65;&amp;"),
    ("]]><script>x</script>", "]]><script>x</script>"),
    ("{a|b}", "{a|b}"),
    ("a\u{1b}[2J\u{202e}b\u{200b}", "a^[[2J<U+202E>b<U+200B>"),
    ("--><!--'x'", "--><!--'x'"),
];

/// A tree with a text wherever it can have one.
pub fn hostile(text: &str) -> Library {
    let text = quoted(text);
    let tree = format!(
        "tree: hostile\ntitle: {text}\ncomplaint: {text}\nedition: {text}\nchanged: {text}\noutcomes: [back]\nstart: \
         look\nsteps:\n  look:\n    observe: look\n    title: {text}\n    cautions: [hurt]\n    choices: {{ one: {{ go: act, \
         means: {text}, finding: {{ severity: danger, text: {text} }} }}, two: end }}\n  act: {{ do: {text}, leaves: \
         [lid], go: back }}\n  back: {{ return: back }}\n  end: {{ verdict: broken, because: {text} }}\n"
    );
    let files = [
        (
            "library.yaml",
            format!("library: hostile\nedition: {text}\ntitle: {text}\nstanding_cautions: [hurt]\n"),
        ),
        ("hostile.yaml", tree),
        (
            "registry/signs.yaml",
            format!("signs:\n  look: {{ ask: {text}, values: {{ one: {text}, two: {text} }} }}\n"),
        ),
        (
            "registry/parts.yaml",
            format!("parts:\n  part: {{ title: {text}, proof: [ {{ look: one }} ] }}\n"),
        ),
        (
            "registry/faults.yaml",
            format!("faults:\n  broken: {{ title: {text}, remedy: replace part, text: {text} }}\n"),
        ),
        ("registry/restores.yaml", format!("restores:\n  lid: {text}\n")),
        (
            "registry/cautions.yaml",
            format!("cautions:\n  hurt: {{ text: {text} }}\n"),
        ),
    ];
    let files: Vec<(&str, &str)> = files.iter().map(|(name, text)| (*name, text.as_str())).collect();
    written(&files)
}

/// A text as a scalar of YAML, which reads the escapes of JSON.
fn quoted(text: &str) -> String {
    serde_json::to_string(text).unwrap()
}

#[test]
fn the_sheet_is_well_formed_and_says_it_to_the_letter() {
    for (text, shown) in TEXTS {
        let library = hostile(text);
        let svg = whole(&library, "hostile").svg();
        let document = Document::parse(&svg).unwrap_or_else(|error| panic!("{text:?}: {error}"));
        let lines = document.descendants().filter(|node| node.has_tag_name("tspan"));
        let said: String = lines.filter_map(|node| node.text()).collect();
        let said = said.replace(' ', "");
        let times = said.matches(&shown.replace(' ', "")).count();
        assert!(times >= 15, "{shown:?} is said {times} times: {said}");
        let known = ["svg", "title", "desc", "style", "path", "g", "text", "tspan"];
        for node in document.descendants().filter(roxmltree::Node::is_element) {
            assert!(known.contains(&node.tag_name().name()), "{node:?}");
        }
    }
}

#[test]
fn a_sheet_refers_to_nothing_outside_itself() {
    let library = hostile("https://example.com/x.css url(x) @import");
    let svg = whole(&library, "hostile").svg();
    let document = Document::parse(&svg).unwrap();
    for node in document.descendants().filter(roxmltree::Node::is_element) {
        for attribute in node.attributes() {
            let (name, value) = (attribute.name(), attribute.value());
            assert!(
                name != "href" && name != "src" && !name.starts_with("on"),
                "{name}"
            );
            assert!(
                !value.contains("url(") && !value.contains("://"),
                "{name}={value}"
            );
        }
    }
    let style = document
        .descendants()
        .find(|node| node.has_tag_name("style"))
        .unwrap();
    let rules = style.text().unwrap();
    assert!(!rules.contains("url(") && !rules.contains("@import"));
}
