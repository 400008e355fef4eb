//! A picture says everything there is, and says it once.

use std::collections::BTreeMap;

use proofwalk::library::{Id, Kind, Library, Remedy, Tree};
use proofwalk::source::safe;

use crate::libraries::{built_in, picture, sump_pumps, whole, written as written_library};
use crate::sheet::Sheet;

/// How often each thing is there.
fn counted<T: Ord>(things: impl IntoIterator<Item = T>) -> BTreeMap<T, usize> {
    let mut counts = BTreeMap::new();
    for thing in things {
        *counts.entry(thing).or_default() += 1;
    }
    counts
}

/// Every step of a tree, and every way, as its author wrote them.
fn written(library: &Library, tree: Id<Tree>) -> (Vec<String>, Vec<(String, String)>) {
    let steps = library.trees[tree].steps.clone().map(|step| &library.steps[step]);
    let ways = steps.clone().flat_map(|step| {
        let edges = step.edges();
        edges.map(|edge| (step.name.clone(), library[edge.go].name.clone()))
    });
    (steps.map(|step| step.name.clone()).collect(), ways.collect())
}

#[test]
fn every_step_and_way_of_every_tree_is_on_its_sheet_once() {
    let library = built_in();
    assert!(library.trees.len() > 20);
    for (id, tree) in library.trees.iter() {
        let (steps, ways) = written(&library, id);
        let sheet = Sheet::read(&picture(&library, id).svg());
        assert_eq!(counted(sheet.steps), counted(steps), "{}", tree.name);
        assert_eq!(counted(sheet.ways), counted(ways), "{}", tree.name);
    }
}

#[test]
fn every_step_and_way_of_every_tree_is_in_its_graph_once() {
    let library = built_in();
    for (id, tree) in library.trees.iter() {
        let (steps, ways) = written(&library, id);
        let dot = picture(&library, id).dot();
        let mut names = BTreeMap::new();
        let mut found = Vec::new();
        for line in dot.lines().map(str::trim).filter(|line| line.starts_with('s')) {
            let words: Vec<&str> = line.split(' ').collect();
            match words[1] {
                "->" => found.push((words[0], words[2])),
                _ => {
                    let label = line.split("label=\"").nth(1).unwrap();
                    let name = label.split("\\l").next().unwrap().split(' ').nth(2).unwrap();
                    assert_eq!(names.insert(words[0], name.to_owned()), None);
                }
            }
        }
        assert_eq!(counted(names.values().cloned()), counted(steps), "{}", tree.name);
        let found = found
            .into_iter()
            .map(|(from, to)| (names[from].clone(), names[to].clone()));
        assert_eq!(counted(found), counted(ways), "{}", tree.name);
    }
}

#[test]
fn what_a_step_asks_and_every_answer_stand_in_the_author_s_words() {
    let library = built_in();
    for (id, tree) in library.trees.iter() {
        let sheet = Sheet::read(&picture(&library, id).svg());
        let said = |of: &str| {
            let texts = sheet.texts.iter().filter(|text| text.of.as_deref() == Some(of));
            texts
                .map(|text| text.words.as_str())
                .collect::<Vec<_>>()
                .join(" ")
        };
        let everything: String = (1..=sheet.steps.len())
            .map(|number| said(&format!("s{number}")))
            .collect();
        for step in library.trees[id].steps.clone().map(|step| &library.steps[step]) {
            let words = match &step.kind {
                Kind::Measure { reading, .. } => &library.readings[*reading].title,
                Kind::Observe { sign, .. } => &library.signs[*sign].ask,
                Kind::Plate { field, .. } => &library.plate[*field].title,
                Kind::Verdict { fault, .. } => &library.faults[*fault].title,
                _ => continue,
            };
            let squeezed = words.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(
                everything.contains(safe(&squeezed).as_str()),
                "{}: {words}",
                tree.name
            );
        }
    }
}

#[test]
fn a_verdict_that_replaces_a_part_names_it_and_its_proof() {
    let library = built_in();
    let mut seen = 0;
    for (id, tree) in library.trees.iter() {
        let svg = picture(&library, id).svg();
        let sheet = Sheet::read(&svg);
        let verdicts = library.trees[id]
            .steps
            .clone()
            .filter_map(|step| match library.steps[step].kind {
                Kind::Verdict { fault, .. } => Some((&library.steps[step].name, &library.faults[fault])),
                _ => None,
            });
        for (name, fault) in verdicts {
            let Remedy::Replace(part) = fault.remedy else {
                continue;
            };
            let at = sheet.steps.iter().position(|step| step == name).unwrap() + 1;
            let of = format!("s{at}");
            let texts = sheet.texts.iter().filter(|text| text.of.as_ref() == Some(&of));
            let said = texts
                .map(|text| text.words.as_str())
                .collect::<Vec<_>>()
                .join(" ");
            let title = &library.parts[part].title;
            assert!(said.contains("must hold: P"), "{}: {said}", tree.name);
            assert!(
                fault
                    .group
                    .is_empty()
                    .then(|| said.contains(&format!("replace {title}")))
                    != Some(false)
            );
            assert!(
                svg.contains(&format!("{title}: all of this, fresh")),
                "{}: {title}",
                tree.name
            );
            seen += 1;
        }
    }
    assert!(seen > 20, "only {seen} such verdicts");
}

#[test]
fn marks_say_what_a_step_proves_opens_and_how_it_can_hurt() {
    let library = sump_pumps();
    let sheet = Sheet::read(&whole(&library, "pump").svg());
    let said: String = sheet.texts.iter().map(|text| text.words.clone() + " ").collect();
    for words in [
        "The owner says: Water in the basement",
        "Status: FIELD TRIAL",
        "Prints on Tabloid or A3, or larger.",
        "Power",
        "proves: P1 Pump",
        "caution: line voltage",
        "opens: cover",
        "voids: float",
        "replace Pump",
        "must hold: P1",
        "108 V to 132 V",
        "cannot be read",
        "cannot tell",
        "at most 2 times, then 2",
        "Caught on the wall, after 2 times",
        "DANGER: Overvoltage",
        "Not this pump's",
        "comes back: dry",
        "pump runs",
        "– Where does the float hang? Free",
        "line voltage: Line voltage kills",
        "cover: Refit the cover of the pit",
        "For qualified people",
        "refer to others: Call an",
    ] {
        assert!(said.contains(words), "{words:?} in {said}");
    }
}

#[test]
fn the_head_says_how_a_call_comes_to_the_tree() {
    let library = built_in();
    for (tree, words) in [
        ("no-heat", "The owner says: No heat"),
        ("safe-to-start", "Walked before every complaint"),
        ("gas-smell", "Danger, at hand at every step: I smell gas"),
        ("line-supply", "Visited by other trees; no complaint begins here"),
    ] {
        let sheet = Sheet::read(&whole(&library, tree).svg());
        assert!(sheet.texts.iter().any(|text| text.words == words), "{tree}");
    }
}

#[test]
fn a_tree_without_a_step_is_an_empty_sheet() {
    let library = written_library(&[("empty.yaml", "tree: empty\ntitle: Empty\nstart: a\nsteps: {}\n")]);
    let picture = whole(&library, "empty");
    assert_eq!(Sheet::read(&picture.svg()).steps, [""; 0]);
    assert!(picture.dot().ends_with("}\n"));
}

#[test]
fn a_picture_is_the_same_each_time() {
    let (one, other) = (built_in(), built_in());
    for (id, _) in one.trees.iter() {
        assert_eq!(picture(&one, id).svg(), picture(&other, id).svg());
        assert_eq!(picture(&one, id).dot(), picture(&other, id).dot());
    }
}
