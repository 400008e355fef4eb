//! Small libraries whose figures were worked out by hand.

use proofwalk::bench::cost::{Basis, Cost, TreeCost, as_asked, cost};
use proofwalk::library::{Id, Library, Step, load};
use proofwalk::report::findings::Look;
use proofwalk::report::rehearsal;
use proofwalk::source::{Files, SourceFile};

const SIGNS: &str = "\
signs:
  a: { ask: A?, values: { bad: Bad, good: Good }, minutes: 6 }
  b: { ask: B?, values: { bad: Bad, good: Good }, minutes: 1 }
  c: { ask: C?, values: { bad: Bad, good: Good }, minutes: 2 }
";

const FAULTS: &str = "\
faults:
  f1: { title: One, remedy: replace p1, group: [p1, p2] }
  f2: { title: Two, remedy: correct }
  f3: { title: Three, remedy: correct }
  f4: { title: Four, remedy: refer }
  f5: { title: Five, remedy: correct }
  fine: { title: Fine, remedy: none }
";

const PARTS: &str =
    "parts: { p1: { title: P1, proof: [ { a: bad } ] }, p2: { title: P2, proof: [ { a: bad } ] } }\n";

/// Three questions in a row, each with a fault of its own, the last with two.
const ROW: &str = "\
tree: row
title: Row
complaint: Row
start: a
steps:
  a: { observe: a, choices: { bad: f1, good: b } }
  b: { observe: b, choices: { bad: f2, good: c } }
  c: { observe: c, choices: { bad: f3, good: f4 } }
  f1: { verdict: f1, because: So. }
  f2: { verdict: f2, because: So. }
  f3: { verdict: f3, because: So. }
  f4: { verdict: f4, because: So. }
";

/// The library of the row, with pieces of its files changed.
fn library(changes: &[(&str, &str)]) -> Library {
    let files = [
        ("library.yaml", "library: small\n"),
        ("registry/signs.yaml", SIGNS),
        ("registry/faults.yaml", FAULTS),
        ("registry/parts.yaml", PARTS),
        ("registry/cautions.yaml", "cautions: { live: { text: Live. } }\n"),
        ("row.yaml", ROW),
        (
            "scenarios/two.yaml",
            "scenario: Two\ntree: row\nsigns: { a: good, b: bad }\nexpect: { verdict: f2 }\n",
        ),
    ];
    let mut changed = vec![false; changes.len()];
    let files = files.map(|(name, text)| {
        let mut text = text.to_owned();
        for (at, (from, to)) in changes.iter().enumerate() {
            changed[at] |= text.contains(from);
            text = text.replace(from, to);
        }
        SourceFile::new(name, text)
    });
    assert!(changed.iter().all(|changed| *changed), "a change changes nothing");
    let (library, problems) = load(Files::new(files.to_vec()));
    assert!(problems.is_empty(), "{problems:?}");
    library
}

fn of<'c>(cost: &'c Cost<'_>, tree: &str) -> &'c TreeCost {
    let id = cost.library.trees.find(tree).unwrap();
    cost.trees.iter().find(|priced| priced.tree == id).unwrap()
}

#[track_caller]
fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
}

fn names(library: &Library, steps: &[Id<Step>]) -> String {
    let names: Vec<&str> = steps.iter().map(|step| library[*step].name.as_str()).collect();
    names.join(" ")
}

/// By hand, all four faults alike: A is asked always, B of three, C of two: 6 + ¾·1 + ½·2 = 7.75. Two of the three that B is
/// asked of show it good, so One is taken to as well: B first takes 1 + ¾·6 + ½·2 = 6.5. What C shows of One and Two nothing
/// says, as it shows each of its answers of one fault, so it cannot come first. By the answers on the ways alone
/// nothing can.
#[test]
fn a_row_of_questions_costs_what_it_does_by_hand() {
    let library = library(&[]);
    let cost = cost(&library);
    let row = of(&cost, "row");
    close(row.minutes, 7.75);
    close(row.known.unwrap(), 7.75);
    close(row.least.unwrap(), 6.5);
    let floor = row.floor.unwrap();
    assert!(
        floor > 1.5 && floor <= 6.5,
        "A proves One, which alone is 6·¼: {floor}"
    );
    let each: Vec<f64> = row.faults.iter().map(|fault| fault.minutes).collect();
    assert_eq!(each, [6.0, 7.0, 9.0, 9.0]);
}

#[test]
fn the_best_change_is_found_with_what_it_spares_by_hand() {
    let library = library(&[]);
    let cost = cost(&library);
    let best = &of(&cost, "row").proposals[0];
    assert_eq!(names(&library, &best.now), "a b");
    assert_eq!(names(&library, &best.then), "b a");
    close(best.gain, 1.25);
    assert_eq!(best.basis, Basis::ToJudge);
}

/// By hand, One nine times as often: 6 + 3/12·1 + 2/12·2 as it stands; with B first 1 + 11/12·6 + 2/12·2, which is more.
#[test]
fn the_weights_of_the_registry_decide() {
    let library = library(&[("group: [p1, p2] }", "group: [p1, p2], weight: 9 }")]);
    let cost = cost(&library);
    let row = of(&cost, "row");
    close(row.minutes, 6.0 + 0.25 + 1.0 / 3.0);
    close(row.least.unwrap(), row.minutes);
    assert_eq!(row.proposals, []);
    assert_eq!(cost.weighted, 1);
}

#[test]
fn a_question_with_a_caution_does_not_pass_one_without() {
    let live = ("minutes: 1 }", "minutes: 1, cautions: [live] }");
    let library = library(&[live]);
    let priced = cost(&library);
    close(of(&priced, "row").least.unwrap(), 7.75);
    assert_eq!(of(&priced, "row").proposals, []);
}

#[test]
fn nothing_passes_a_question_of_danger() {
    let library = library(&[("remedy: replace p1, group: [p1, p2]", "remedy: shut_down")]);
    let cost = cost(&library);
    close(of(&cost, "row").least.unwrap(), 7.75);
    assert_eq!(of(&cost, "row").proposals, []);
}

/// By hand: the work takes 5 minutes on three ways of four, and B stays behind it.
#[test]
fn a_question_does_not_pass_work() {
    let work = ("good: b }", "good: work }");
    let step = (
        "steps:\n",
        "steps:\n  work: { do: Work., minutes: 5, voids: [c], go: b }\n",
    );
    let library = library(&[work, step]);
    let cost = cost(&library);
    let row = of(&cost, "row");
    close(row.minutes, 7.75 + 0.75 * 5.0);
    close(row.least.unwrap(), row.minutes);
    assert_eq!(row.proposals, []);
}

/// B is asked whatever A shows, and A decides only where B is good: then A is asked once more, and stands. By hand, with Two
/// on two ways: 6 + 1 as it stands; B first 1 + 2/3·6 = 5.
#[test]
fn what_every_way_asks_anyway_may_be_asked_first() {
    let at = ROW.find("  a: {").unwrap();
    let steps =
        "  a: { observe: a, choices: { bad: { go: b, finding: { severity: note, text: A. } }, good: b } }
  b: { observe: b, choices: { bad: f2, good: a_again } }
  a_again: { observe: a, choices: { bad: f3, good: f5 } }
  f2: { verdict: f2, because: So. }
  f3: { verdict: f3, because: So. }
  f5: { verdict: f5, because: So. }
";
    let library = library(&[(&ROW[at..], steps)]);
    let cost = cost(&library);
    let row = of(&cost, "row");
    assert_eq!((row.ways, row.faults.len()), (4, 3));
    close(row.minutes, 7.0);
    close(row.known.unwrap(), 5.0);
    let best = &row.proposals[0];
    assert_eq!(
        (names(&library, &best.then).as_str(), best.basis),
        ("b a", Basis::Known)
    );
    close(best.gain, 2.0);
}

/// By hand: four of five faults are met. One leaves two parts, Four is handed on: two of the four are isolated to one.
#[test]
fn faults_are_found_and_isolated_as_by_hand() {
    let library = library(&[]);
    let cost = cost(&library);
    close(cost.detected.unwrap(), 0.8);
    close(cost.isolated.fraction(1).unwrap(), 0.5);
    close(cost.isolated.fraction(2).unwrap(), 0.75);
    close(cost.isolated.mean_size().unwrap(), 4.0 / 3.0);
    let unmet: Vec<&str> = cost
        .unmet
        .iter()
        .map(|fault| library.faults[*fault].name.as_str())
        .collect();
    assert_eq!(unmet, ["f5"]);
}

/// A bounded edge is taken as often as it may be, and a value that work voids is taken again: the way round costs 6 + 5 + 6.
#[test]
fn a_way_that_goes_round_is_paid_for_each_time() {
    let at = ROW.find("  a: {").unwrap();
    let steps = "  a: { observe: a, choices: { bad: { go: mend, at_most: 1, then: f2 }, good: f3 } }
  mend: { do: Mend., minutes: 5, voids: [a], go: a }
  f2: { verdict: f2, because: So. }
  f3: { verdict: f3, because: So. }
";
    let library = library(&[(&ROW[at..], steps)]);
    let cost = cost(&library);
    let minutes: Vec<f64> = of(&cost, "row")
        .faults
        .iter()
        .map(|fault| fault.minutes)
        .collect();
    // Three is met at once with a chance of a half, and after the work with a quarter: 2/3·6 + 1/3·17.
    close(minutes[0], 17.0);
    close(minutes[1], 4.0 + 17.0 / 3.0);
}

#[test]
fn the_worked_calls_are_counted_as_they_were_walked() {
    let library = library(&[]);
    let cost = cost(&library);
    let row = of(&cost, "row");
    assert_eq!(row.calls.count, 1);
    close(row.calls.mean().unwrap(), 7.0);
}

#[test]
fn the_report_says_what_its_figures_lean_on() {
    let library = library(&[]);
    let cost = cost(&library);
    let page = rehearsal::cost::text(&cost, None, Look::default());
    for line in [
        "minutes to a verdict faults   ways    now   least     gap  calls  alone",
        "row                       4      4    7.8     6.5     1.2    7.0   50 %",
        "One fault: a single one is there, and one that the tree can end in.",
        "a step's own (0 of 7 steps), else those of what it asks for (3 of 3\n    readings and signs).",
        "Weights: all faults count alike",
        "since none of the\n    6 has a `weight`",
        "Fault detection: 80 % of the registered faults are some tree's verdict. Of no\n    tree: f5.",
        "Ambiguity groups, which no question tells apart: f1 (2 parts).",
        "1.25  row.yaml:6  ask `b` before `a`: judge\n        b: B?\n        a: A?",
    ] {
        assert!(page.contains(line), "{line}\n{page}");
    }
    assert!(page.lines().all(|line| line.chars().count() <= 80), "{page}");
    let narrow = Look {
        columns: Some(40),
        ..Look::default()
    };
    let page = rehearsal::cost::text(&cost, None, narrow);
    let named = "\nrow\n  faults 4, ways 4, now 7.8, least 6.5,\n  gap 1.2, calls 7.0, alone 50 %\n";
    assert!(page.contains(named), "{page}");
    assert!(page.lines().all(|line| line.chars().count() <= 40), "{page}");
    let json: serde_json::Value = serde_json::from_str(&rehearsal::cost::json(&cost)).unwrap();
    assert_eq!(json["assumed"]["faults_at_once"], 1);
    assert_eq!(
        json["trees"][0]["proposals"][0]["then"],
        serde_json::json!(["b", "a"])
    );
    assert_eq!(json["trees"][0]["minutes"], 7.75);
}

/// Whose minutes and weights they are is said as they stand: some, or of an overlay as well.
#[test]
fn the_report_says_whose_its_figures_are() {
    let weighed = library(&[
        ("group: [p1, p2] }", "group: [p1, p2], weight: 9 }"),
        (
            "values: { bad: Bad, good: Good }, minutes: 6 }",
            "values: { bad: Bad, good: Good } }",
        ),
    ]);
    let page = rehearsal::cost::text(&cost(&weighed), None, Look::default());
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in [
        "written by the authors of small as `minutes`",
        "(2 of 3 readings and signs)",
        "Without minutes, so they count nothing: a.",
        "as its author wrote it in the registry for 1 of 6 faults; the others count as 1.",
    ] {
        assert!(page.contains(words), "{words}\n{page}");
    }
}

/// A tree whose best order is not searched for has a bound, and so has its gap; the gate has neither.
#[test]
fn a_gap_that_is_only_bounded_says_so() {
    let library = library(&[]);
    let mut cost = cost(&library);
    cost.trees[0].least = None;
    cost.trees[0].floor = Some(2.5);
    let page = rehearsal::cost::text(
        &cost,
        None,
        Look {
            ascii: true,
            ..Look::default()
        },
    );
    assert!(page.contains("7.8   >=2.5   <=5.2    7.0"), "{page}");
    cost.trees[0].floor = None;
    let page = rehearsal::cost::text(&cost, None, Look::default());
    assert!(page.contains("7.8       -       -    7.0"), "{page}");
}

#[test]
fn a_library_without_trees_is_told_that_nothing_is_priced() {
    let (nothing, _) = load(Files::new(vec![SourceFile::new(
        "library.yaml",
        "library: nothing\n",
    )]));
    let page = rehearsal::cost::text(&cost(&nothing), None, Look::default());
    assert_eq!(
        page,
        "nothing can be priced: the library has no tree yet\n0 trees priced, 0 end in no fault\n"
    );
}

#[test]
fn what_trees_cost_as_they_ask_is_the_same_without_looking_for_better_orders() {
    let library = library(&[]);
    let cost = cost(&library);
    let asked = as_asked(&library);
    assert_eq!(asked.len(), cost.trees.len());
    for (tree, asked) in cost.trees.iter().zip(&asked) {
        assert_eq!(tree.tree, asked.tree);
        close(asked.minutes, tree.minutes);
        for (fault, (same, minutes)) in tree.faults.iter().zip(&asked.faults) {
            assert_eq!(fault.fault, *same);
            close(*minutes, fault.minutes);
        }
    }
}
