//! What overlays make of a library.

use proofwalk::library::{Library, Table};

use crate::written::{TREE, Written};

const RESTORES: &str = "restores:\n  cover: Screw the cover on\n  plug: Plug it in\n  strap: Tie the strap\n";

/// With three put-backs, so that there is an order to keep.
fn base() -> Written {
    Written::small().with("registry/restores.yaml", RESTORES)
}

fn names<T>(table: &Table<T>) -> Vec<&str> {
    table.names().collect()
}

/// What was replaced, each as `kind name: by instead of first`.
fn replaced(library: &Library) -> Vec<String> {
    let words = library.replaced.iter().map(|replaced| {
        let (by, first) = (
            library.files.place(replaced.by),
            library.files.place(replaced.first),
        );
        let (kind, name) = (replaced.what, &replaced.name);
        format!(
            "{kind} {name}: {}:{} instead of {}:{}",
            by.file, by.line, first.file, first.line
        )
    });
    words.collect()
}

#[track_caller]
fn read(library: &Written) -> Library {
    library.says(&[]);
    library.read().0
}

#[test]
fn an_entry_of_a_name_that_is_there_takes_its_place_whole_and_a_new_one_comes_last() {
    let over = "restores:\n  net: Hang up the net\n  plug: Plug it in and see it run\n";
    let library = read(&base().with("1/registry/restores.yaml", over));
    assert_eq!(names(&library.restores), ["cover", "plug", "strap", "net"]);
    let plug = library.restores.find("plug").unwrap();
    assert_eq!(library.restores[plug].text, "Plug it in and see it run");
    assert_eq!(
        replaced(&library),
        ["put-back plug: over1/registry/restores.yaml:3 instead of registry/restores.yaml:3"]
    );
    // Nothing is left of the old entry: what it gave and the new one does not give is not there.
    let over = "readings:\n  supply: { title: Supply at the plug, unit: V }\n";
    Written::small().with("1/registry/readings.yaml", over).says(&[
        "over1/registry/readings.yaml:2:3 malformed: the reading `supply` has no `accuracy`",
        "over1/registry/readings.yaml:2:3 malformed: the reading `supply` has no `plausible`",
    ]);
}

#[test]
fn a_registry_that_the_library_has_not_may_come_from_an_overlay() {
    let over = "fields:\n  amps: { title: Amps, unit: A, plausible: 1 A to 9 A }\norder:\n  - [head_min, head_max]\n";
    let library = read(&base().with("1/registry/plate.yaml", over));
    assert_eq!(names(&library.plate), ["phase", "head_min", "head_max", "amps"]);
    assert_eq!(library.order.len(), 2, "the order of an overlay is added");
    // With what the library says already, it must make sense.
    let over = "order:\n  - [head_max, head_min]\n";
    base().with("1/registry/plate.yaml", over).says(&[
        "over1/registry/plate.yaml:2:6 malformed: by this order `head_max` would be smaller than itself",
    ]);
}

#[test]
fn a_tree_of_the_same_stem_takes_the_others_place_and_is_checked_with_all_the_rest() {
    let tree =
        "tree: stands-still\ntitle: Ours\nstart: a\nsteps:\n  a: { verdict: nothing_at_all, because: So. }\n";
    let library = base().with("1/ours/stands-still.yaml", tree);
    library.says(&["over1/ours/stands-still.yaml:5:17 unknown fault `nothing_at_all`"]);
    let library = read(&library.swapped("1/ours/stands-still.yaml", "nothing_at_all", "fine"));
    assert_eq!(names(&library.trees), ["stands-still"]);
    assert_eq!(library.steps.len(), 1);
    assert_eq!(
        replaced(&library),
        ["tree stands-still: over1/ours/stands-still.yaml:1 instead of stands-still.yaml:1"]
    );
}

#[test]
fn what_is_wrong_in_a_tree_that_no_longer_counts_is_not_looked_at() {
    let library = base().swapped(TREE, "choices: { hum: motor", "choices: { humm: motor");
    library.says(&["stands-still.yaml:12:39 unknown value `humm`, meant `hum`"]);
    let tree = "tree: stands-still\ntitle: Ours\nstart: a\nsteps:\n  a: { verdict: fine, because: So. }\n";
    library.with("1/stands-still.yaml", tree).says(&[]);
}

#[test]
fn a_scenario_of_the_same_file_name_takes_the_others_place() {
    let scenario = |title: &str| {
        format!(
            "scenario: {title}\ntree: stands-still\nreadings: {{ supply: 80 V }}\nexpect: {{ verdict: fine }}\n"
        )
    };
    let library = base()
        .with("scenarios/a.yaml", scenario("First"))
        .with("scenarios/b.yaml", scenario("Second"))
        .with("1/scenarios/a.yaml", scenario("Ours"))
        .with("1/scenarios/c.yaml", scenario("Third"));
    let library = read(&library);
    let titles: Vec<&str> = library
        .scenarios
        .iter()
        .map(|scenario| scenario.title.as_str())
        .collect();
    assert_eq!(titles, ["Ours", "Second", "Third"]);
    assert_eq!(
        replaced(&library),
        ["scenario scenarios/a.yaml: over1/scenarios/a.yaml:1 instead of scenarios/a.yaml:1"]
    );
}

const GATE: &str = "outcomes: [ready]\nstart: a\nsteps:\n  a: { return: ready }\n";

fn gate(name: &str) -> String {
    format!("tree: {name}\ntitle: Gate\n{GATE}")
}

#[test]
fn dangers_the_gate_and_the_tree_after_work_are_replaced_and_told_and_cautions_only_added() {
    let library = base()
        .with(
            "library.yaml",
            "library: pumps\nstanding_cautions: [care]\ngate: one\nafter_work: one\ndangers: { Fire: one, Water: one }\n",
        )
        .with(
            "1/library.yaml",
            "standing_cautions: [pairs, care]\ngate: two\nafter_work: two\ndangers:\n  Dog: two\n  Fire: two\n",
        )
        .with(
            "1/registry/cautions.yaml",
            "cautions: { pairs: { text: In pairs only, source: practice } }\n",
        )
        .with("one.yaml", gate("one"))
        .with("1/two.yaml", gate("two"));
    let library = read(&library);
    let dangers: Vec<_> = (library.dangers.iter())
        .map(|danger| (danger.label.as_str(), library.trees[danger.tree].name.as_str()))
        .collect();
    assert_eq!(dangers, [("Fire", "two"), ("Water", "one"), ("Dog", "two")]);
    assert_eq!(library.gate, library.trees.find("two"));
    assert_eq!(library.after_work, library.trees.find("two"));
    let standing = library.standing_cautions.iter();
    let standing: Vec<&str> = standing.map(|id| library.cautions[*id].name.as_str()).collect();
    assert_eq!(standing, ["care", "pairs"]);
    assert_eq!(
        replaced(&library),
        [
            "gate one: over1/library.yaml:2 instead of library.yaml:3",
            "tree after work one: over1/library.yaml:3 instead of library.yaml:4",
            "danger Fire: over1/library.yaml:6 instead of library.yaml:5"
        ]
    );
}

#[test]
fn of_several_overlays_the_last_has_the_say_and_each_replacement_is_told() {
    let over = |text: &str| format!("restores:\n  plug: {text}\n");
    let library = base()
        .with("1/registry/restores.yaml", over("One"))
        .with("2/registry/restores.yaml", over("Two"))
        .with("10/registry/restores.yaml", over("Ten"));
    let library = read(&library);
    let plug = library.restores.find("plug").unwrap();
    assert_eq!(library.restores[plug].text, "Ten");
    let [one, two, ten] = [1, 2, 10].map(|n| format!("over{n}/registry/restores.yaml:2"));
    assert_eq!(
        replaced(&library),
        [
            format!("put-back plug: {one} instead of registry/restores.yaml:3"),
            format!("put-back plug: {two} instead of {one}"),
            format!("put-back plug: {ten} instead of {two}"),
        ]
    );
    let told: Vec<usize> = (library.overlays.iter())
        .map(|overlay| library.replaced_by(overlay).count())
        .collect();
    assert_eq!(told, [1, 1, 1]);
}

#[test]
fn twice_in_one_layer_stays_a_duplicate_and_a_look_alike_of_another_layer_a_finding() {
    let library = base().with(
        "1/registry/restores.yaml",
        "restores:\n  net: One\n  net: Two\n  p1ug: Three\n",
    );
    library.says(&[
        "over1/registry/restores.yaml:3:3 duplicate put-back `net`, first over1/registry/restores.yaml:2:3",
        "over1/registry/restores.yaml:4:3 duplicate put-back `p1ug` looks like `plug`, registry/restores.yaml:3:3",
    ]);
}

#[test]
fn a_reading_of_an_overlay_does_not_take_the_name_of_a_sign() {
    let over = "readings:\n  noise: { title: Noise, unit: V, plausible: 0 V to 1 V, accuracy: 1 V }\n";
    base()
        .swapped("registry/parts.yaml", "      - noise: hum\n", "").with("1/registry/readings.yaml", over).says(&[
        "over1/registry/readings.yaml:2:3 duplicate reading or sign `noise`, first registry/signs.yaml:2:3",
    ]);
}

#[test]
fn an_overlay_goes_by_its_title_or_its_folder() {
    let library = base()
        .with(
            "1/library.yaml",
            "library: north\nedition: 7\ntitle: The north branch\n",
        )
        .with("2/library.yaml", "library: south\n")
        .with("3/registry/restores.yaml", "restores: { net: Net }\n")
        .with("4/library.yaml", "library: ''\ntitle: ' '\n");
    let library = read(&library);
    let titled: Vec<String> = library.overlays.iter().map(|overlay| overlay.titled()).collect();
    assert_eq!(titled, ["The north branch, edition 7", "south", "over3", "over4"]);
    assert_eq!(
        (library.name.as_str(), library.title.as_str()),
        ("pumps", "Pumps")
    );
}

#[test]
fn a_file_that_is_no_registry_is_told_in_an_overlay_as_well() {
    base()
        .with("1/registry/part.yaml", "parts: {}\n")
        .says(&["over1/registry/part.yaml:1:1 malformed: `part.yaml` is no registry of the format"]);
}
