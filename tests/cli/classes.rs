//! Practice of a class: long lists, and what everybody found set side by side.

use crate::common::scene::{Scene, run, scene};
use crate::practising::{asks, below, number_of, plays, practice, squeezed};

#[test]
fn a_word_that_finds_much_gives_pages_with_what_is_asked_most_first() {
    let scene = scene();
    let mut call = practice(&scene, &["--seed", "3"]);
    asks(&call);
    call.say("2");
    asks(&call);
    call.say("help");
    let help = squeezed(&asks(&call));
    assert!(help.contains("words to look for"), "{help}");
    call.say("inducer");
    let first = asks(&call);
    let prompt = squeezed(&first);
    assert!(prompt.contains("Which of these? 1 to 12 of"), "{first}");
    // What a no-heat call asks of an inducer before all else: what it does.
    let found = first
        .find("call for heat has stood")
        .expect("what the inducer does");
    assert!(first[..found].matches(" min)").count() < 6, "{first}");
    call.say(&number_of(&first, "The next"));
    let second = asks(&call);
    assert!(squeezed(&second).contains("13 to 24 of"), "{second}");
    assert!(second.contains("The 12 before"), "{second}");
    call.ends().exits(0);
}

#[test]
fn a_fault_is_found_by_its_key_and_its_part_in_any_order() {
    let scene = scene();
    let mut call = practice(&scene, &["--seed", "3"]);
    asks(&call);
    call.say("2");
    asks(&call);
    // No title has both words.
    call.say("open igniter");
    let found = asks(&call);
    assert!(
        found.contains("Name it: Igniter draws too little in the warm-up"),
        "{found}"
    );
    call.ends().exits(0);
}

#[test]
fn nothing_walks_in_free_practice_and_no_way_out_says_so() {
    let scene = scene();
    let mut call = practice(&scene, &["--seed", "3"]);
    asks(&call);
    for line in ["2", "inducer draft", "1"] {
        call.say(line);
        asks(&call);
    }
    let asked = squeezed(&call.fresh());
    assert!(
        asked.contains("unable, if it cannot be taken; it is left untaken, and you choose again"),
        "{asked}"
    );
    assert!(!asked.contains("the walk goes on"), "{asked}");
    call.ends().exits(0);
}

fn stops(scene: &Scene, who: &str, reason: &str) {
    let call = practice(scene, &["--seed", "3", "--technician", who]);
    let mut lines = ["2", reason, "yes", "close"].into_iter();
    plays(call, |_| lines.next().unwrap().to_owned()).exits(0);
}

#[test]
fn a_class_is_set_side_by_side_and_nobody_is_ranked() {
    let scene = scene();
    stops(&scene, "t-02", "stop I hand it on");
    // A note is not the score, whatever it says.
    let call = practice(&scene, &["--seed", "3", "--technician", "t-01"]);
    let forged = "note Practice: right, and proven; 1 min, the tree 2 min; probes misplaced: 0; parts condemned for nothing: \
                  none; dangers overlooked: 0; left open: 0";
    let mut lines = [
        "2",
        forged,
        "gas valve leaks through",
        "1",
        "back",
        "says it calls",
        "1",
        "all the same",
        "close",
    ]
    .into_iter();
    let said = plays(call, |asked| match lines.next().unwrap() {
        "all the same" => number_of(asked, "Name it all the same"),
        "back" => number_of(asked, "Back to the list"),
        line => line.to_owned(),
    })
    .exits(0);
    assert!(said.out.contains("Wrong, and not proven"), "{}", said.out);
    let short = below(&said.out, "IN SHORT").remove(0);
    assert!(
        short.contains("1 other fault was named before"),
        "{short} in {}",
        said.out
    );
    stops(&scene, "t-01", "stop now I know");
    // Left in the middle.
    let call = practice(&scene, &["--seed", "3", "--technician", "t-03"]);
    asks(&call);
    call.ends().exits(0);

    // A call at a house lies among them.
    let answers = "trees/scenarios/board-lets-the-valve-go.yaml";
    scene.run(&["walk", "no-heat", "--answers", answers]).exits(0);

    let folder = scene.sessions().to_string_lossy().into_owned();
    let page = run(&["practice", "--class", &folder]).exits(0).out;
    let rows: Vec<String> = page.lines().map(squeezed).collect();
    let row = |start: &str| {
        rows.iter()
            .filter(|row| row.starts_with(start))
            .cloned()
            .collect::<Vec<_>>()
    };
    assert_eq!(rows[0], "4 practice sessions, 1 of them not finished");
    assert_eq!(rows[1], "Left out (calls at a house, no practice): 1 session");
    // One is still at it.
    assert_eq!(
        row("what was wrong:"),
        ["what was wrong: told once all have finished; `--tell` tells it now"]
    );
    assert!(row("SEED 3, LEVEL 1, free: the tree takes").len() == 1, "{page}");
    assert_eq!(row("t-01 wrong"), ["t-01 wrong 0 yes 5 - -"], "{page}");
    assert!(row("t-01 stopped, try 2").len() == 1, "{page}");
    assert_eq!(row("t-02 stopped"), ["t-02 stopped 0 - 5 - -"], "{page}");
    assert!(row("t-03 not finished").len() == 1, "{page}");
    assert!(
        rows.contains(&"condemned for nothing: Thermostat".to_owned()),
        "{page}"
    );
    assert!(
        rows.contains(&"proven by 0 of 2 at the first try".to_owned()),
        "{page}"
    );
    assert_eq!(row("1 furnace: too few to say").len(), 2, "{page}");
    assert_eq!(row("other faults named before, unproven: 1").len(), 1, "{page}");
    // Whose only try was left in the middle is still one of the class.
    assert_eq!(row("t-03 0 of 0").len(), 1, "{page}");
    assert_eq!(
        row("1 first try not finished, and not counted").len(),
        1,
        "{page}"
    );
    assert!(page.lines().all(|line| line.chars().count() <= 80), "{page}");

    let said = run(&["practice", "--class", &folder, "--format", "json"]).exits(0);
    assert!(
        said.err.contains("(calls at a house, no practice): 1 session"),
        "{}",
        said.err
    );
    let all: serde_json::Value = serde_json::from_str(&said.out).unwrap();
    assert_eq!(all.as_array().unwrap().len(), 4);
    assert_eq!(all[0]["apprentice"], "t-01");
    assert_eq!(all[0]["condemned_for_nothing"], "Thermostat");
    assert_eq!(all[0]["named_before"], 1);
    assert_eq!(all[1]["attempt"], 2);
    assert_eq!(all[3]["solved"], serde_json::Value::Null);
    assert_eq!(all[3]["closed"], false);
    assert_eq!(all[0]["what_was_wrong"], serde_json::Value::Null);
}

#[test]
fn a_folder_without_practice_says_how_one_comes_into_it() {
    let scene = scene();
    let answers = "trees/scenarios/board-lets-the-valve-go.yaml";
    scene.run(&["walk", "no-heat", "--answers", answers]).exits(0);
    let folder = scene.sessions().to_string_lossy().into_owned();
    let page = squeezed(&run(&["practice", "--class", &folder]).exits(0).out);
    assert!(
        page.starts_with(
            "0 practice sessions Left out (calls at a house, no practice): 1 session `proofwalk practice"
        ),
        "{page}"
    );
    assert!(!page.contains("Nobody gave a name"), "{page}");
}

#[test]
fn a_class_is_no_call() {
    run(&["practice", "--class", "nowhere-at-all"]).exits(2);
    run(&["practice", "--class", ".", "--seed", "3"]).exits(2);
    for other in [&["--level", "1", "--seed", "3"][..], &[]] {
        let said = run(&[&["practice", "--format", "json"], other].concat()).exits(2);
        assert!(said.err.contains("--class"), "{}", said.err);
    }
}

#[test]
fn who_leaves_for_gas_has_smelled_for_it() {
    let scene = scene();
    let call = practice(&scene, &["--seed", "3"]);
    let mut lines = [
        "2",
        "danger 1",
        "done",
        "done",
        "done",
        "done",
        "stop it smelled of gas",
        "yes",
        // The other appliances, which lost their gas.
        "done",
        "close",
    ]
    .into_iter();
    let said = plays(call, |_| lines.next().unwrap().to_owned()).exits(0);
    assert_eq!(
        below(&said.out, "DANGERS ACTED UPON"),
        ["Gas is smelled: in doubt that is right, whatever it took"]
    );
    let overlooked = below(&said.out, "DANGERS OVERLOOKED");
    assert_eq!(overlooked.len(), 4, "{overlooked:?}");
    assert!(
        overlooked.iter().all(|line| !line.contains("smell gas")),
        "{overlooked:?}"
    );
}
