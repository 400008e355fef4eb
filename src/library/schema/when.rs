//! Which keys go together.
//!
//! Each condition looks at a key that is there and says what must or may not stand beside it, so that an editor's message
//! names the wrong key. A choice between whole schemas would only say that none of them fits.

use schemars::Schema;
use serde_json::{Map, Value, json};

use crate::library::resolve::{ANY, KINDS};

/// Takes the keys of a step apart, so that each kind of step has its own.
pub(in crate::library) fn one_kind(schema: &mut Schema) {
    let flat = schema.remove("properties");
    let required = schema.remove("required");
    let keys = Keys {
        all: flat.as_ref().and_then(Value::as_object),
        required: required.as_ref().and_then(Value::as_array),
    };
    let names: Vec<&str> = KINDS.iter().map(|(kind, _)| *kind).collect();
    let none_yet = json!({
        "properties": keys.offering(&[names.as_slice(), &ANY].concat()),
        "additionalProperties": false,
        // None of them stands here, so whichever is asked for is missing.
        "allOf": [{
            "required": ["measure"],
            "errorMessage": format!("give this step exactly one of {}", names.join(", ")),
        }],
    });
    let chain = KINDS.iter().rev().fold(none_yet, |otherwise, (kind, own)| {
        let required: Vec<&str> = (own.iter().copied().filter(|key| keys.is_required(key)))
            .chain([*kind])
            .collect();
        let mut then = json!({
            "properties": keys.some([kind].into_iter().chain(*own).chain(&ANY)),
            "required": required,
            "additionalProperties": false,
        });
        if let Some(answers) = answers(kind) {
            then["allOf"] = json!([answers]);
        }
        json!({ "if": { "required": [kind] }, "then": then, "else": otherwise })
    });
    if let (Some(schema), Value::Object(chain)) = (schema.as_object_mut(), chain) {
        schema.extend(chain);
    }
}

/// The keys of the flat map, to be dealt out.
struct Keys<'a> {
    all: Option<&'a Map<String, Value>>,
    required: Option<&'a Vec<Value>>,
}

impl Keys<'_> {
    fn some<'k>(&self, names: impl IntoIterator<Item = &'k &'k str>) -> Value {
        let found = names.into_iter().filter_map(|name| {
            let schema = self.all?.get(*name)?;
            Some(((*name).to_owned(), schema.clone()))
        });
        found.collect::<Map<_, _>>().into()
    }

    /// All keys, of which only these are offered: whether the others belong here is open until the kind is known.
    fn offering(&self, names: &[&str]) -> Value {
        let keys = self.all.into_iter().flatten().map(|(name, schema)| {
            let offered = names.contains(&name.as_str());
            let schema = if offered {
                schema.clone()
            } else {
                json!({ "doNotSuggest": true })
            };
            (name.clone(), schema)
        });
        keys.collect::<Map<_, _>>().into()
    }

    fn is_required(&self, name: &str) -> bool {
        self.required
            .is_some_and(|required| required.iter().any(|key| key == name))
    }
}

/// What a step of this kind must say about where it leads.
fn answers(kind: &str) -> Option<Value> {
    let or_go = |key| {
        let why =
            format!("say in one way where the answers lead: `{key}`, or `go` where all lead to one step");
        either(key, "go", &why)
    };
    match kind {
        "measure" => Some(or_go("bands")),
        "observe" => Some(or_go("choices")),
        "plate" => {
            let why =
                "say in one way where the answers lead: `choices` for a field of words, `bands` for a number";
            Some(either("choices", "bands", why))
        }
        "do" => Some(must("go", "say which step comes next: `go: …`")),
        _ => None,
    }
}

/// A field is a choice, or a number with its unit and range.
pub(in crate::library) fn choices_or_a_number(schema: &mut Schema) {
    let why = "keep `choices` for a field of words, or `unit` and `plausible` for a number";
    also(
        schema,
        json!({
            "if": given("choices"),
            "then": must_not("unit", why),
            "else": { "allOf": [must("unit", why), must("plausible", "a field that is a number needs `plausible`")] },
        }),
    );
}

/// A reading is measured with a meter of some accuracy, or worked out.
pub(in crate::library) fn measured_or_worked_out(schema: &mut Schema) {
    also(
        schema,
        json!({
            "if": given("worked_out"),
            "then": must_not("accuracy", "take `accuracy` out: it follows from the readings that go in"),
            "else": { "allOf": [
                must("plausible", "a reading that is measured needs `plausible`, the range that is believed at once"),
                must("accuracy", "a reading that is measured needs `accuracy`, that of the usual meter"),
            ] },
        }),
    );
}

/// A limited edge says where it leads after that.
pub(in crate::library) fn limit_and_then(schema: &mut Schema) {
    also(
        schema,
        json!({
            "if": given("at_most"),
            "then": must("then", "`at_most` needs `then`: the step this leads to after that"),
        }),
    );
    also(
        schema,
        json!({
            "if": given("then"),
            "then": must("at_most", "`then` needs `at_most`: how often the edge may be taken before"),
        }),
    );
}

/// A walk ends in exactly one way.
pub(in crate::library) fn one_end(schema: &mut Schema) {
    let why = "write exactly one of `verdict: FAULT`, `outcome: NAME` and `ends: unproven`";
    also(
        schema,
        json!({
            "if": given("verdict"),
            "then": { "allOf": [must_not("outcome", why), must_not("ends", why)] },
            "else": either("outcome", "ends", why),
        }),
    );
}

/// Exactly one of two keys.
fn either(one: &str, other: &str, why: &str) -> Value {
    json!({ "if": given(one), "then": must_not(other, why), "else": must(other, why) })
}

/// A key that is there, with something behind it: one with nothing counts as left out.
fn given(key: &str) -> Value {
    json!({ "required": [key], "properties": { key: { "not": { "type": "null" } } } })
}

fn must(key: &str, why: &str) -> Value {
    let something = json!({ "if": { "type": "null" }, "then": { "type": "string", "errorMessage": why } });
    json!({ "required": [key], "properties": { key: something }, "errorMessage": why })
}

fn must_not(key: &str, why: &str) -> Value {
    let nothing = json!({
        "if": { "type": "null" },
        "else": { "type": "null", "errorMessage": why },
        "doNotSuggest": true,
    });
    json!({ "properties": { key: nothing } })
}

fn also(schema: &mut Schema, condition: Value) {
    let conditions = schema.ensure_object().entry("allOf").or_insert_with(|| json!([]));
    if let Some(conditions) = conditions.as_array_mut() {
        conditions.push(condition);
    }
}
