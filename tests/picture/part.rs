//! A part of a tree: `from` and `depth`.

use proofwalk::report::picture::{Part, Picture, Refusal};

use crate::libraries::sump_pumps;
use crate::sheet::Sheet;

fn part(from: Option<&str>, depth: Option<usize>) -> Part {
    Part {
        from: from.map(str::to_owned),
        depth,
    }
}

#[track_caller]
fn steps(from: Option<&str>, depth: Option<usize>) -> Vec<String> {
    let library = sump_pumps();
    let id = library.trees.find("pump").unwrap();
    let picture = Picture::new(&library, id, part(from, depth)).unwrap();
    let sheet = Sheet::read(&picture.svg());
    let graph = picture.dot();
    for step in &sheet.steps {
        assert!(graph.contains(&format!(" {step}\\l")), "{step} in {graph}");
    }
    sheet.steps
}

#[test]
fn from_a_step_everything_that_follows_is_drawn() {
    assert_eq!(steps(Some("other"), None), ["other", "back"]);
    assert_eq!(steps(Some("supply"), None).len(), 5);
}

#[test]
fn to_a_depth_so_many_steps_on_are_drawn() {
    assert_eq!(steps(None, Some(0)), ["plate"]);
    assert_eq!(steps(None, Some(1)), ["plate", "float", "other"]);
    assert_eq!(
        steps(Some("float"), Some(1)),
        ["float", "supply", "lift", "other"]
    );
}

#[test]
fn a_way_that_leaves_the_sheet_names_the_step_at_which_it_goes_on() {
    let library = sump_pumps();
    let id = library.trees.find("pump").unwrap();
    let picture = Picture::new(&library, id, part(Some("supply"), Some(0))).unwrap();
    let sheet = Sheet::read(&picture.svg());
    let said: Vec<&str> = sheet.texts.iter().map(|text| text.words.as_str()).collect();
    assert_eq!(
        said.iter().filter(|words| **words == "not on this sheet").count(),
        3
    );
    for words in [
        "no_power",
        "dead",
        "other",
        "A part of the tree: from supply, 0 steps on",
    ] {
        assert!(said.contains(&words), "{words} in {said:?}");
    }
    let graph = picture.dot();
    assert!(graph.contains("\"goes on: no_power\\lNo power at the"), "{graph}");
}

#[test]
fn a_step_that_is_not_there_is_refused_with_those_that_are() {
    let library = sump_pumps();
    let id = library.trees.find("pump").unwrap();
    let refused = Picture::new(&library, id, part(Some("suply"), None))
        .err()
        .unwrap();
    let Refusal::NoSuchStep { name, steps } = refused else {
        panic!("{refused:?}");
    };
    assert_eq!(name, "suply");
    assert!(steps.contains(&"supply".to_owned()));
}
