//! The lines of a proof.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};

use super::pattern;

/// A line of a proof: claims, or `any` with alternatives.
pub(in crate::library) enum Line {}

impl JsonSchema for Line {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "line".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let alternatives = json!({
            "description": "Maps of which one is enough; every line of such a map must hold. \
                            Example: `- pump_current: below 1 A`",
            "type": "array",
            "minItems": 1,
            "items": claims(),
            "errorMessage": "write a list of maps below it: `- READING: band`",
        });
        json_schema!({
            "type": "object",
            "errorMessage": "write `- READING: band`, `- SIGN: value`, or `- any:` with alternatives below it",
            // Beside other claims, `any` would be a name like theirs.
            "if": { "required": ["any"], "maxProperties": 1 },
            "then": { "properties": { "any": alternatives } },
            "else": claims(),
        })
    }
}

/// A map of claims, all of which must hold.
fn claims() -> Value {
    let help = "write a band (`above 100 ohm`), the value of a sign, or several of its values in brackets";
    let claim = json!({ "type": "string", "pattern": pattern::band_or_name(), "errorMessage": help });
    json!({
        "type": "object",
        "minProperties": 1,
        "propertyNames": {
            "pattern": pattern::claim(),
            "errorMessage": "write the name of a reading, a sign or a plate field",
            "doNotSuggest": true,
        },
        "additionalProperties": {
            "if": { "type": "array" },
            "then": { "minItems": 1, "items": claim },
            "else": claim,
        },
    })
}
