//! The built-in library, priced as `rehearse --cost` does.

use std::process::Command;

use serde_json::Value;

/// What holds of every tree whatever its figures are: no order is dearer than the tree's own, and none comes below the floor.
#[test]
fn no_tree_of_the_built_in_library_takes_less_than_its_least_or_its_floor() {
    let said = Command::new(env!("CARGO_BIN_EXE_proofwalk"))
        .args(["rehearse", "--cost", "--format", "json"])
        .output()
        .unwrap();
    assert!(said.status.success(), "{}", String::from_utf8_lossy(&said.stderr));
    let cost: Value = serde_json::from_slice(&said.stdout).unwrap();
    let trees = cost["trees"].as_array().unwrap();
    let mut least_of = 0;
    for tree in trees {
        let name = &tree["tree"];
        let minutes = tree["minutes"].as_f64().unwrap();
        let floor = tree["floor"].as_f64();
        for least in [&tree["least"], &tree["least_known"]]
            .into_iter()
            .filter_map(Value::as_f64)
        {
            assert!(least <= minutes + 1e-9, "{name}: {least} is more than {minutes}");
            assert!(
                floor <= Some(least + 1e-9),
                "{name}: {floor:?} is more than {least}"
            );
            least_of += 1;
        }
        assert!(
            floor <= Some(minutes + 1e-9),
            "{name}: {floor:?} is more than {minutes}"
        );
        // A change of one question spares no more than the best order does.
        let spared = tree["least"].as_f64().map(|least| minutes - least);
        let gains = tree["proposals"].as_array().unwrap().iter();
        let gain = gains
            .filter(|change| change["basis"] == "known")
            .filter_map(|change| change["gain"].as_f64());
        assert!(
            gain.fold(0.0, f64::max) <= spared.unwrap_or(f64::INFINITY) + 1e-9,
            "{name}"
        );
    }
    assert!(least_of >= 10, "only {least_of} were found");
    // The gate and the dangers keep their order.
    let of = |name: &str| trees.iter().find(|tree| tree["tree"] == name).unwrap();
    for name in ["safe-to-start", "gas-smell"] {
        assert!(of(name)["least"].is_null() && of(name)["proposals"].as_array().unwrap().is_empty());
    }
    // The fault of a motor that cannot be told from its module leaves two parts.
    let faults = of("blower-silent")["faults"].as_array().unwrap();
    let fault = faults
        .iter()
        .find(|fault| fault["fault"] == "blower_or_module")
        .unwrap();
    assert_eq!(fault["group"], 2);
    let detected = cost["fault_detection"].as_f64().unwrap();
    assert!(detected > 0.9 && detected <= 1.0, "{detected}");
    // Of the largest trees not all ways are followed: a verdict that lies on the others is a tree's all the same.
    let faults = |key: &str| {
        cost[key]
            .as_array()
            .unwrap()
            .iter()
            .filter_map(Value::as_str)
            .collect::<Vec<_>>()
    };
    let (unmet, not_followed) = (faults("unmet"), faults("not_followed"));
    assert!(
        !not_followed.is_empty(),
        "all ways are short now: see that the next lines still say something"
    );
    assert_eq!(detected == 1.0, unmet.is_empty(), "{unmet:?}");
    let texts: Vec<String> = std::fs::read_dir("trees")
        .unwrap()
        .filter_map(|file| std::fs::read_to_string(file.unwrap().path()).ok())
        .collect();
    let is_stated = |fault: &str| {
        let verdict = format!("verdict: {fault}");
        let mut ends = texts.iter().flat_map(|text| text.lines());
        ends.any(|line| {
            line.split([',', '}'])
                .any(|part| part.trim_end().ends_with(&verdict))
        })
    };
    assert!(
        not_followed.iter().all(|fault| is_stated(fault)),
        "{not_followed:?}"
    );
    assert!(!unmet.iter().any(|fault| is_stated(fault)), "{unmet:?}");
}
