//! Faults that are known as sets of readings: a worked call's file is the machine, and the meters err.

use std::path::Path;

use proofwalk::bench::dice::Dice;
use proofwalk::bench::told::Told;
use proofwalk::bench::trials::{Door, Ending, ending, walk};
use proofwalk::library::{ExpectedEnd, Library, Remedy, Scenario, load};
use proofwalk::source::{Files, SourceFile};
use proofwalk::store::read_library;

/// The built-in library, with one more file.
pub fn with(more: Option<(&str, &str)>) -> Library {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("trees");
    let mut files = read_library(&root).unwrap();
    files.extend(more.map(|(name, text)| SourceFile::new(name, text)));
    let (library, problems) = load(Files::new(files));
    assert!(problems.is_empty(), "{problems:?}");
    library
}

fn end_of(library: &Library, scenario: &Scenario, seed: u64) -> Ending {
    let tree = &library.trees[scenario.tree].name;
    let mut machine = Told::new(library, scenario);
    let walked = walk(library, tree, Door::Tree, &mut machine, Dice::new(seed)).unwrap();
    assert!(
        walked.state.closed && walked.state.open.is_empty(),
        "{}",
        scenario.name
    );
    ending(library, &walked)
}

/// A fault that somebody kept aside: its readings, and not a word of what it is. The file must expect something; that counts for
/// nothing here.
#[test]
fn a_fault_given_as_a_set_of_readings_is_isolated() {
    let readings = "scenario: kept aside\ntree: no-heat\nplate: { igniter_kind: hot_surface, igniter_volts: 120 V, \
                    igniter_ohm_min: 40 ohm, igniter_ohm_max: 90 ohm }\nreadings: { limit_chain_voltage: 0.2 V, \
                    pressure_switch_voltage: 0.3 V, igniter_voltage: 119 V, igniter_resistance: 100000000 ohm }\nsigns: \
                    { furnace_kind: one_stage, inducer: runs, igniter_in_warm_up: dark }\nexpect: { ends: unproven }\n";
    let library = with(Some(("scenarios/kept-aside.yaml", readings)));
    let scenario = library
        .scenarios
        .iter()
        .find(|scenario| scenario.name == "kept-aside")
        .unwrap();
    for seed in 0..20 {
        let end = end_of(&library, scenario, seed);
        assert_eq!(
            end,
            Ending::Fault("igniter_out_of_range".to_owned()),
            "seed {seed}"
        );
    }
}

/// What a library's author says each worked call ends in is the truth; a meter that errs may leave it open, never condemn
/// another part.
#[test]
fn no_worked_call_condemns_another_part_when_meters_err() {
    let library = with(None);
    let mut same = 0;
    let mut other = Vec::new();
    let mut walks = 0;
    for scenario in &library.scenarios {
        let Some(ExpectedEnd::Verdict(truth)) = scenario.expect.end.as_ref().map(|end| &end.what) else {
            continue;
        };
        for seed in 0..5 {
            walks += 1;
            let Ending::Fault(name) = end_of(&library, scenario, seed) else {
                continue;
            };
            let fault = &library.faults[library.faults.find(&name).unwrap()];
            if name == library.faults[*truth].name {
                same += 1;
            } else if matches!(fault.remedy, Remedy::Replace(_)) {
                other.push(format!("{}, seed {seed}: {name}", scenario.name));
            }
        }
    }
    assert!(other.is_empty(), "{}", other.join("\n"));
    assert!(
        same * 10 > walks * 8,
        "only {same} of {walks} walks end as their authors say"
    );
}
