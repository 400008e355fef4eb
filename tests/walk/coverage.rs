//! Which steps and edges the worked calls take, all together.

use proofwalk::report::findings::Look;
use proofwalk::report::rehearsal::{Listed, text};
use proofwalk::walk::{Coverage, Rehearsal, rehearse};

use crate::call::{library, tree};
use crate::rehearse::STEPS;

/// What was walked of the tree `t`: steps, edges, and the edges that were not.
fn coverage(scenarios: &[&str]) -> (String, String, Vec<String>) {
    let files = scenarios.iter().enumerate().map(|(number, scenario)| {
        let text = format!("scenario: S\ntree: t\n{scenario}");
        (format!("scenarios/s{number}.yaml"), text)
    });
    let files: Vec<_> = [tree("t", "", STEPS)].into_iter().chain(files).collect();
    let library = library(&files);
    let mut coverage = Coverage::new(&library);
    for scenario in &library.scenarios {
        coverage.add(&rehearse(&library, scenario).events);
    }
    let walked = coverage.of(library.trees.find("t").unwrap());
    let missed = walked.missed_edges.iter().map(|missed| {
        let step = &library[missed.step];
        format!("{}: {}", step.name, missed.exit.words(&library, step))
    });
    let share = |tally: proofwalk::walk::Tally| format!("{}/{}", tally.covered, tally.total);
    (share(walked.steps), share(walked.edges), missed.collect())
}

#[test]
fn every_step_and_edge_is_counted_once_over_all_scenarios() {
    let quiet = "signs: { noise: quiet, smell: nothing }\nexpect: { verdict: fine }\n";
    let hums = "signs: { noise: hum }\nreadings: { volts: [5 V, 5 V] }\nexpect: { verdict: dirty }\n";
    assert_eq!(coverage(&[]).0, "0/10");
    let (steps, edges, _) = coverage(&[quiet, quiet]);
    assert_eq!((steps.as_str(), edges.as_str()), ("3/10", "2/13"));
    let (steps, edges, missed) = coverage(&[quiet, hums]);
    assert_eq!((steps.as_str(), edges.as_str()), ("6/10", "6/13"));
    assert_eq!(
        missed,
        [
            "sound: unsure",
            "level: 10 V to 20 V",
            "level: above 20 V",
            "level: unable",
            "load: below 5 A",
            "load: at least 5 A",
            "sniff: gas_smell",
        ]
    );
}

#[test]
fn what_no_walk_can_take_is_told_apart_and_not_counted() {
    let visited = tree(
        "inner",
        "outcomes: [good, bad]\n",
        "  a: { do: Look., go: back }\n  back: { return: good }\n  never: { return: bad }\n",
    );
    let steps = "  go: { visit: inner, returns: { good: fine, bad: dirty }, on_verdict: dirty }\n";
    let scenario = "scenario: S\ntree: t\nexpect: { verdict: fine }\n".to_owned();
    let library = library(&[
        tree("t", "", steps),
        visited,
        ("scenarios/s.yaml".to_owned(), scenario),
    ]);
    let rehearsal = Rehearsal::of(&library, &library.scenarios);
    let walked = rehearsal.coverage.of(library.trees.find("t").unwrap());
    assert_eq!((walked.edges.covered, walked.edges.total), (1, 1));
    let missed = walked.missed_edges.iter();
    assert_eq!(
        missed.map(|missed| missed.reachable).collect::<Vec<_>>(),
        [false, false]
    );
    let page = text(&rehearsal, Listed::Few, None, Look::default());
    assert!(page.contains("go: bad → dirty  (no walk can)"), "{page}");
    let narrow = Look {
        columns: Some(40),
        ..Look::default()
    };
    let page = text(&rehearsal, Listed::Few, None, narrow);
    assert!(
        page.contains("\nt\n            2/2 100 %          1/1 100 %\n"),
        "{page}"
    );
    assert!(page.lines().all(|line| line.chars().count() <= 40), "{page}");
}
