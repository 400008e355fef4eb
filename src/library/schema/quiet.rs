//! The schema as editors show it best.

use schemars::Schema;
use schemars::transform::transform_subschemas;
use serde_json::{Value, json};

const TYPES: [&str; 6] = ["string", "number", "boolean", "object", "array", "null"];

/// Changes how a schema says something, never what it says.
///
/// Editors offer `true`, `false` and `null` for every value of which a `type` lists them, and would do so for most texts:
/// YAML reads `edition: 2026.1` as a number, and a key with nothing behind it as null. So only the type that an author
/// means is listed, and the others are let pass by naming those that are not.
pub(super) fn quiet(schema: &mut Schema) {
    // What is inside comes first: what is written below is in its last form.
    transform_subschemas(&mut quiet, schema);
    if let Some(Value::String(description)) = schema.get_mut("description") {
        // Editors show each line of a description as one of its own.
        *description = description.replace('\n', " ");
    }
    schema.remove("format");
    if let Some(Value::Array(ways)) = schema.get_mut("anyOf") {
        for way in ways.iter_mut().filter(|way| **way == json!({ "type": "null" })) {
            *way = none_but(&["null"]);
        }
    }
    let Some(Value::Array(types)) = schema.get("type") else {
        return;
    };
    let types: Vec<String> = types
        .iter()
        .filter_map(Value::as_str)
        .map(str::to_owned)
        .collect();
    let (also, meant): (Vec<&str>, Vec<&str>) = (types.iter().map(String::as_str))
        .partition(|name| *name != types[0] && *name != "object" && *name != "array");
    // Below a key that holds a list or a map, editors begin a new line, as long as the type stands right there.
    if also.is_empty() || ["object", "array"].contains(&meant[0]) {
        return;
    }
    let description = schema.remove("description");
    let mut main = std::mem::take(schema);
    main.insert(
        "type".to_owned(),
        if let [one] = meant[..] {
            json!(one)
        } else {
            json!(meant)
        },
    );
    if let Some(Value::Array(values)) = main.get_mut("enum") {
        values.retain(|value| !value.is_null());
    }
    schema.insert("anyOf".to_owned(), json!([main, none_but(&also)]));
    if let Some(description) = description {
        schema.insert("description".to_owned(), description);
    }
}

/// Any value of these types.
fn none_but(types: &[&str]) -> Value {
    let others = TYPES
        .iter()
        .filter(|name| !types.contains(name))
        .collect::<Vec<_>>();
    json!({ "not": { "type": others } })
}
