//! The findings as SARIF, held against the schema that OASIS publishes.

use proofwalk::check;
use proofwalk::library::load;
use proofwalk::report::findings;
use proofwalk::source::{Files, SourceFile};
use serde_json::{Value, json};

use crate::library::Written;
use crate::pages::example;

/// `sarif/README.md` says where it comes from.
const SCHEMA: &str = include_str!("sarif/sarif-schema-2.1.0.json");

/// The log of a check, which keeps to the schema.
#[track_caller]
fn log(files: Files) -> Value {
    let (library, problems) = load(files);
    let found = check::run(&library, &problems);
    let log = findings::sarif(&library, &found, Some("trees"));
    let log: Value = serde_json::from_str(&log).unwrap();
    let schema = serde_json::from_str(SCHEMA).unwrap();
    let validator = jsonschema::options()
        .should_validate_formats(true)
        .build(&schema)
        .unwrap();
    let errors: Vec<String> = validator
        .iter_errors(&log)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect();
    assert_eq!(errors, [""; 0]);
    log
}

fn results(log: &Value) -> &Vec<Value> {
    log["runs"][0]["results"].as_array().unwrap()
}

#[test]
fn the_log_of_the_built_in_library_keeps_to_the_schema() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("trees");
    let files = proofwalk::store::read_library(&root).unwrap();
    let log = log(Files::new(files));
    assert!(results(&log).is_empty());
    assert_eq!(log["runs"][0]["originalUriBaseIds"]["LIBRARY"]["uri"], "trees/");
}

#[test]
fn a_log_names_each_rule_with_its_page() {
    let log = log(Written::small().files());
    let rules = log["runs"][0]["tool"]["driver"]["rules"].as_array().unwrap();
    let known = || check::rules().iter().chain(check::release_rules());
    assert_eq!(rules.len(), known().count());
    for (descriptor, rule) in rules.iter().zip(known()) {
        assert_eq!(descriptor["id"], rule.name);
        assert_eq!(descriptor["help"]["markdown"], rule.page());
        assert_eq!(descriptor["defaultConfiguration"]["level"], rule.level.name());
        let (short, full) = (
            &descriptor["shortDescription"]["text"],
            &descriptor["fullDescription"]["text"],
        );
        let (short, full) = (short.as_str().unwrap(), full.as_str().unwrap());
        assert!(
            short.ends_with('.') && full.starts_with(short) && full.len() > short.len(),
            "{full}"
        );
        assert!(!full.contains("##"), "{full}");
    }
}

#[test]
fn every_rule_makes_a_result_that_points_to_it() {
    for (index, rule) in check::rules().iter().enumerate() {
        let log = log(example(&rule.page(), "Fails").files());
        let result = results(&log).iter().find(|result| result["ruleId"] == rule.name);
        let result = result.unwrap();
        assert_eq!(result["ruleIndex"], index);
        assert_eq!(result["level"], rule.level.name());
    }
}

#[test]
fn a_result_has_its_place_in_characters_and_its_mend() {
    let library = Written::small().bands("temperature_rise", &["at most 9 °F", "at least 9 °F"]);
    let log = log(library.files());
    assert_eq!(log["runs"][0]["columnKind"], "unicodeCodePoints");
    let result = &results(&log)[0];
    assert_eq!(
        result["message"]["text"],
        "`at most 9 °F` and `at least 9 °F` both take 9 °F; they meet there: write `below` or `above` in one of the two"
    );
    assert_eq!(
        result["locations"],
        json!([{ "physicalLocation": {
            "artifactLocation": { "uri": "no-heat.yaml", "uriBaseId": "LIBRARY" },
            "region": { "startLine": 11, "startColumn": 7, "endLine": 11, "endColumn": 20 },
        } }])
    );
}

#[test]
fn a_walk_that_shows_a_finding_is_its_code_flow() {
    let log = log(Written::small()
        .steps("  a: { do: Wait., go: b }\n  b: { do: Wait., go: a }\n")
        .files());
    let result = results(&log)
        .iter()
        .find(|result| result["ruleId"] == "endless-loop")
        .unwrap();
    let steps = result["codeFlows"][0]["threadFlows"][0]["locations"]
        .as_array()
        .unwrap();
    let told: Vec<(&Value, &Value)> = steps
        .iter()
        .map(|step| {
            let location = &step["location"];
            let line = &location["physicalLocation"]["region"]["startLine"];
            (&location["logicalLocations"][0]["fullyQualifiedName"], line)
        })
        .collect();
    let (a, b) = (json!("no-heat/a"), json!("no-heat/b"));
    assert!(told.starts_with(&[(&a, &json!(6)), (&b, &json!(7))]), "{told:?}");
}

#[test]
fn hostile_names_make_a_log_that_keeps_to_the_schema() {
    let texts = [
        "tree: \"a\\e[2J\"\nsteps: { \"[x](https://example.org)\": { do: \"{0}\\u202e\", go: \"\\0\" } }\n",
        "- [",
        "a: *b\n",
        "\u{9b}31m: \u{202e}\n",
        "",
        "🔥: 日本語\n",
    ];
    let names = [
        "c:.yaml",
        "a b.yaml",
        "%.yaml",
        "\u{1b}[2J.yaml",
        "registry/\u{202e}.yaml",
        "日本/🔥.yaml",
    ];
    let files = names
        .iter()
        .zip(texts)
        .map(|(name, text)| SourceFile::new(*name, text));
    let log = log(Files::new(files.collect()));
    assert!(results(&log).len() >= names.len(), "{log:#}");
    let acts = |c: char| c != '\n' && proofwalk::source::is_unsafe(c);
    for result in results(&log) {
        let message = result["message"]["text"].as_str().unwrap();
        assert!(!message.contains(acts) && !message.contains("]("), "{message}");
        let uri = result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
            .as_str()
            .unwrap();
        assert!(uri.is_ascii() && !uri.contains([':', ' ']), "{uri}");
    }
}
