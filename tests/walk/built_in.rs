//! The built-in library, read from its folder.

use std::path::Path;

use proofwalk::library::{Library, load};
use proofwalk::source::{Files, SourceFile};
use proofwalk::walk::rehearse;

/// The library of the folder `trees`.
pub fn built_in() -> Library {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("trees");
    let mut files = Vec::new();
    for entry in walkdir::WalkDir::new(&root) {
        let entry = entry.unwrap();
        if entry.path().extension().is_some_and(|ending| ending == "yaml") {
            let name = entry.path().strip_prefix(&root).unwrap();
            let name = name.to_string_lossy().replace('\\', "/");
            files.push(SourceFile::new(
                name,
                std::fs::read_to_string(entry.path()).unwrap(),
            ));
        }
    }
    let (library, problems) = load(Files::new(files));
    assert!(problems.is_empty(), "{problems:?}");
    library
}

#[test]
fn every_scenario_walks_as_it_says() {
    let library = built_in();
    assert!(library.scenarios.len() > 100, "the scenarios were found");
    let departures = library.scenarios.iter().flat_map(|scenario| {
        let run = rehearse(&library, scenario);
        let lines = run.departures.into_iter();
        lines.map(|line| {
            format!(
                "{}: expected {}, but {}",
                scenario.name, line.expected, line.happened
            )
        })
    });
    let departures: Vec<String> = departures.collect();
    assert!(departures.is_empty(), "{}", departures.join("\n"));
}
