//! How a reading is worked out: a formula of the program and its arguments.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};

use super::pattern;
use crate::trade;

/// The map behind `worked_out`.
pub(in crate::library) enum Formula {}

impl JsonSchema for Formula {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "formula".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let names: Vec<&str> = trade::all().iter().map(|formula| formula.name).collect();
        let meanings: Vec<&str> = trade::all().iter().map(|formula| formula.sentence).collect();
        let formula = json!({
            "description": "The formula, by its name. Example: `temperature_rise`",
            "type": "string",
            "enum": names,
            "enumDescriptions": meanings,
            "errorMessage": format!("the formulas are {}", names.join(", ")),
        });
        json_schema!({
            "type": "object",
            "required": ["formula"],
            "properties": { "formula": formula },
            "allOf": trade::all().iter().map(|formula| arguments(formula)).collect::<Vec<_>>(),
        })
    }
}

/// What a formula wants beside its name, and nothing else.
fn arguments(formula: &trade::Formula) -> Value {
    let mut properties = Map::new();
    properties.insert("formula".to_owned(), json!({}));
    for argument in formula.arguments {
        let symbol = argument.scale.symbol();
        let mut description = format!(
            "{}: a reading, `plate.FIELD` or a quantity, in {symbol} or another unit of its kind.",
            argument.meaning
        );
        if let (Some(default), Some(usual)) = (argument.default, argument.usual()) {
            let usual = usual.display(argument.scale);
            description.push_str(&format!(" Left out, it is {usual}: {}.", default.because));
        }
        properties.insert(
            argument.name.to_owned(),
            json!({
                "description": description,
                "type": ["string", "number"],
                "pattern": pattern::input(),
                "errorMessage": "write a reading, plate.FIELD, or a number with its unit",
            }),
        );
    }
    let required = formula
        .arguments
        .iter()
        .filter(|argument| argument.default.is_none());
    let required: Vec<&str> = required.map(|argument| argument.name).collect();
    json!({
        "if": { "required": ["formula"], "properties": { "formula": { "const": formula.name } } },
        "then": { "properties": properties, "required": required, "additionalProperties": false },
    })
}
