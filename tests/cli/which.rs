//! Which library a command works on, and what it says of that.

use crate::common::scene::{Said, Scene, program, run, scene};

/// A sound library of one complaint, and the name of its folder.
fn written(scene: &Scene) -> String {
    for (name, text) in [
        ("library.yaml", "library: pumps\n"),
        (
            "registry/faults.yaml",
            "faults: { fine: { title: Fine, remedy: none } }\n",
        ),
        (
            "hums.yaml",
            "tree: hums\ntitle: It hums\ncomplaint: It hums\nstart: fine\nsteps:\n  fine: { verdict: fine, because: So. }\n",
        ),
    ] {
        scene.write(&format!("library/{name}"), text);
    }
    scene.temp.path().join("library").to_str().unwrap().to_owned()
}

#[test]
fn an_option_before_the_command_is_refused_and_not_forgotten() {
    for (arguments, option, mend) in [
        (
            &["--library", "x", "check"][..],
            "--library",
            "`proofwalk check … --library …`",
        ),
        (
            &["--overlay", "x", "rehearse"],
            "--overlay",
            "`proofwalk rehearse … --overlay …`",
        ),
        (
            &["--sessions", "x", "walk", "no-heat"],
            "--sessions",
            "`proofwalk walk … --sessions …`",
        ),
        (
            &["--plain", "walk", "no-heat"],
            "--plain",
            "`proofwalk walk … --plain …`",
        ),
        (
            &["--site", "x", "sessions"],
            "--site",
            "leave it out: `sessions` takes no `--site`",
        ),
    ] {
        let said = run(arguments).exits(2);
        let message = format!("`{option}` stands before the command");
        assert!(
            said.out.is_empty() && said.err.contains(&message) && said.err.contains(mend),
            "{said:?}"
        );
    }
    // The technician of the environment stands before no command.
    let mut command = program();
    command
        .env("PROOFWALK_TECHNICIAN", "t1")
        .args(["check", "--explain"]);
    Said::from(command.output().unwrap()).exits(0);
}

#[test]
fn a_library_is_named_as_its_folder_or_as_for_the_other_commands() {
    let scene = scene();
    let folder = written(&scene);
    for command in ["check", "rehearse"] {
        let said = run(&[command, &folder]).exits(0);
        assert_eq!(run(&[command, "--library", &folder]).exits(0).out, said.out);
        assert_eq!(
            run(&[command, &folder, "--library", &folder]).exits(0).out,
            said.out
        );
        assert!(said.out.contains(&format!("{folder}: ")), "{said:?}");
        let said = run(&[command, &folder, "--library", "other"]).exits(2);
        assert!(said.err.contains("two libraries are named"), "{said:?}");
    }
}

#[test]
fn the_built_in_library_is_named_and_the_one_in_this_folder_is_pointed_to() {
    let scene = scene();
    let folder = written(&scene);
    let checked = |arguments: &[&str]| -> Said {
        let mut command = program();
        command.args(arguments).current_dir(&folder);
        Said::from(command.output().unwrap()).exits(0)
    };
    let said = checked(&["check"]);
    assert!(
        said.err
            .contains("For the one in this folder: `proofwalk check .`"),
        "{said:?}"
    );
    let count = said.out.lines().next_back().unwrap();
    assert!(
        count.starts_with("residential-gas-furnace ") && count.contains(", built in: "),
        "{count}"
    );
    let said = checked(&["check", "."]);
    assert!(
        said.err.is_empty() && said.out.starts_with(".: no errors"),
        "{said:?}"
    );
    assert!(run(&["check"]).exits(0).err.is_empty());
}

#[test]
fn a_tree_that_is_not_built_in_may_be_in_another_library() {
    let said = run(&["walk", "hums"]).exits(2);
    let message = "the built-in library has no tree `hums`";
    assert!(
        said.err.contains(message) && said.err.contains("`--library DIR` names another"),
        "{said:?}"
    );
}

#[test]
fn without_a_terminal_a_complaint_of_the_library_is_named() {
    let scene = scene();
    let folder = written(&scene);
    let said = run(&["--library", &folder]).exits(2);
    let command = format!("`proofwalk walk hums --library {folder} --plain`");
    assert!(said.err.contains(&command), "{said:?}");
    assert!(run(&[]).exits(2).err.contains("`proofwalk walk no-heat --plain`"));
}

#[test]
fn an_unknown_value_lists_those_there_are_and_a_worked_out_reading_its_inputs() {
    let scene = scene();
    for (name, text) in [
        (
            "registry/plate.yaml",
            "fields: { gas: { title: Gas, choices: { natural: N, propane: P } } }\n",
        ),
        (
            "registry/readings.yaml",
            "readings:\n  supply: { title: S, unit: °F, how: H, accuracy: 1 °F, plausible: 0 °F to 200 °F }\n  \
             back: { title: B, unit: °F, how: H, accuracy: 1 °F, plausible: 0 °F to 200 °F }\n  \
             rise: { title: R, unit: °F, difference: true, worked_out: { formula: temperature_rise, supply: supply, return: back } }\n",
        ),
        (
            "scenarios/s.yaml",
            "scenario: S\ntree: hums\nplate: { gas: butane }\nexpect: { verdict: fine }\n",
        ),
    ] {
        scene.write(&format!("library/{name}"), text);
    }
    let folder = written(&scene);
    let said = run(&["check", &folder]).exits(1);
    assert!(said.out.contains("`natural`, `propane`"), "{said:?}");
    scene.write(
        "library/scenarios/s.yaml",
        "scenario: S\ntree: hums\nreadings: { rise: 50 °F }\nexpect: { verdict: fine }\n",
    );
    let said = run(&["rehearse", &folder]).exits(0);
    assert!(said.out.contains("give `supply` and"), "{said:?}");
}
