//! What Graphviz makes of the graphs.

use std::io::Write;
use std::process::{Command, Stdio};

use proofwalk::library::Library;
use roxmltree::Document;

use crate::hostile::{TEXTS, hostile};
use crate::libraries::{built_in, picture, sump_pumps, whole};
use crate::tools::tool;

/// Has `dot` read a graph and write it as SVG; nothing where it is not installed.
#[track_caller]
fn drawn(graph: &str) -> Option<String> {
    let mut dot = Command::new(tool("dot")?)
        .arg("-Tsvg")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = dot.stdin.take().unwrap();
    let graph = graph.to_owned();
    // It may begin to write before it has read everything.
    let writer = std::thread::spawn(move || input.write_all(graph.as_bytes()));
    let output = dot.wait_with_output().unwrap();
    writer.join().unwrap().unwrap();
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    let complaints = said.lines().filter(|line| line.starts_with("Error"));
    assert!(output.status.success() && complaints.count() == 0, "{said}");
    Some(String::from_utf8(output.stdout).unwrap())
}

/// What a drawing by Graphviz says, without the spaces at which lines were broken.
fn words(svg: &str) -> String {
    let text = svg
        .split_once("<svg")
        .map(|(_, rest)| format!("<svg{rest}"))
        .unwrap();
    // Graphviz writes one character entity of HTML that XML does not know.
    let text = text.replace("&nbsp;", " ");
    let document = Document::parse(&text).unwrap();
    let texts = document.descendants().filter(|node| node.has_tag_name("text"));
    let said: String = texts.filter_map(|node| node.text()).collect();
    squeezed(&said)
}

fn squeezed(text: &str) -> String {
    text.chars()
        .filter(|character| !character.is_whitespace())
        .collect()
}

#[track_caller]
fn counts(library: &Library, graph: &str, tree: &str) {
    let Some(svg) = drawn(graph) else { return };
    let id = library.trees.find(tree).unwrap();
    let steps = library.trees[id].steps.clone();
    let edges: usize = steps
        .clone()
        .map(|step| library.steps[step].edges().count())
        .sum();
    assert_eq!(svg.matches("class=\"node\"").count(), steps.len(), "{tree}");
    assert_eq!(svg.matches("class=\"edge\"").count(), edges, "{tree}");
}

#[test]
fn every_built_in_tree_is_drawn_whole() {
    let library = built_in();
    for (id, tree) in library.trees.iter() {
        counts(&library, &picture(&library, id).dot(), &tree.name);
    }
}

#[test]
fn a_tree_of_every_kind_of_step_is_drawn_whole() {
    let library = sump_pumps();
    counts(&library, &whole(&library, "pump").dot(), "pump");
}

#[test]
fn a_hostile_text_is_drawn_to_the_letter() {
    for (written, shown) in TEXTS {
        let library = hostile(written);
        let Some(svg) = drawn(&whole(&library, "hostile").dot()) else {
            return;
        };
        let said = words(&svg);
        let times = said.matches(&squeezed(shown)).count();
        assert!(times >= 6, "{shown:?} is said {times} times: {said}");
    }
}
