//! Every key is explained to the author, with an example.

use proofwalk::library::{FileKind, schema};
use serde_json::Value;

#[test]
fn every_key_says_what_it_means_and_shows_an_example() {
    let mut keys = 0;
    for kind in FileKind::ALL {
        let schema = schema(kind);
        assert!(schema["description"].is_string(), "{}", kind.name());
        explained(&schema, kind.name(), &mut keys);
    }
    assert!(keys > 100, "only {keys} keys were seen");
}

fn explained(schema: &Value, path: &str, keys: &mut usize) {
    match schema {
        Value::Object(map) => {
            // What has no such end is a condition on keys that are explained elsewhere.
            let closed = map.get("additionalProperties") == Some(&Value::Bool(false));
            let properties = map.get("properties").and_then(Value::as_object);
            for (key, about) in properties.into_iter().flatten().filter(|_| closed) {
                let description = about["description"].as_str().unwrap_or_default();
                if about["doNotSuggest"] == true {
                    continue;
                }
                let is_of_formula = properties.is_some_and(|keys| keys.contains_key("formula"));
                if is_of_formula {
                    assert!(
                        key == "formula" || description.contains("a reading"),
                        "{path}/{key}: {description:?}"
                    );
                    continue;
                }
                let (meaning, example) = description.split_once(" Example: `").unwrap_or_default();
                assert!(
                    meaning.len() > 10 && meaning.ends_with('.'),
                    "{path}/{key}: {description:?}"
                );
                assert!(
                    example.len() > 1 && example.ends_with('`'),
                    "{path}/{key}: {description:?}"
                );
                assert!(!description.contains('\n'), "{path}/{key}");
                *keys += 1;
            }
            for (key, inside) in map {
                explained(inside, &format!("{path}/{key}"), keys);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| explained(item, path, keys)),
        _ => {}
    }
}

#[test]
fn a_step_offers_the_keys_of_its_kind_and_no_others() {
    let tree = schema(FileKind::Tree);
    let mut step = &tree["properties"]["steps"]["additionalProperties"];
    let mut kinds = Vec::new();
    while let Some(kind) = step["if"]["required"][0].as_str() {
        let keys: Vec<&str> = step["then"]["properties"]
            .as_object()
            .unwrap()
            .keys()
            .map(String::as_str)
            .collect();
        kinds.push((kind, keys.join(" ")));
        step = &step["else"];
    }
    let own: Vec<(&str, &str)> = kinds.iter().map(|(kind, keys)| (*kind, keys.as_str())).collect();
    assert_eq!(
        own,
        [
            (
                "measure",
                "bands cautions go how measure minutes source title unable why"
            ),
            (
                "observe",
                "cautions choices go how minutes observe source title unable unsure why"
            ),
            (
                "do",
                "cautions do go leaves minutes restores source title voids why"
            ),
            (
                "plate",
                "bands cautions choices minutes plate source title unable why"
            ),
            (
                "visit",
                "cautions minutes on_verdict returns source title visit why"
            ),
            (
                "verdict",
                "advice because cautions minutes source title verdict why"
            ),
            ("return", "cautions minutes return source title why"),
        ]
    );
    let offered = step["properties"].as_object().unwrap().iter();
    let offered: Vec<&str> = offered
        .filter(|(_, about)| about["doNotSuggest"] != true)
        .map(|(key, _)| key.as_str())
        .collect();
    assert_eq!(
        offered.join(" "),
        "cautions do measure minutes observe plate return source title verdict visit why"
    );
}
