//! The forms that what stands behind a key can have.
//!
//! None of these types has a value: each says what an editor is told of a text that [`raw`](super::super::raw) reads as a
//! text. The loader looks closer, so a form may let pass what the loader refuses, and never the other way round.

use std::borrow::Cow;
use std::marker::PhantomData;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};

use super::pattern;
use crate::library::tree::{Severity, Status};
use crate::measure::Unit;

/// A key that must be there. Without it, in `Option`, a key may be left out.
pub(in crate::library) type Must<T> = T;

/// Declares forms that are written out where they are used.
macro_rules! forms {
    ($($(#[$doc:meta])* $name:ident => $schema:expr;)*) => {$(
        $(#[$doc])*
        pub(in crate::library) enum $name {}

        impl JsonSchema for $name {
            fn inline_schema() -> bool {
                true
            }

            fn schema_name() -> Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                $schema
            }
        }
    )*};
}

forms! {
    /// A text, which may be a number or a truth value as YAML sees it: `edition: 2026.1`.
    Words => json_schema!({ "type": ["string", "number", "boolean"], "errorMessage": "write one text here" });

    /// A text that is not blank.
    Said => json_schema!({
        "type": ["string", "number", "boolean"],
        "pattern": "\\S",
        "errorMessage": "write a text here",
    });

    /// A key of the author's own words.
    Anything => json_schema!({});

    /// A name of anything but a tree.
    Name => json_schema!({
        "type": "string",
        "pattern": pattern::SNAKE_NAME,
        "errorMessage": "write one name: lower-case ASCII letters, digits and underscores, at most 64, and none of yes, no, \
                         on, off, true, false, null",
    });

    /// The name of a tree.
    TreeName => json_schema!({
        "type": "string",
        "pattern": pattern::KEBAB_NAME,
        "errorMessage": "write a tree's name: lower-case ASCII letters, digits and hyphens, at most 64, and none of yes, \
                         no, on, off, true, false, null",
    });

    /// How far a tree has been reviewed.
    StatusName => one_of(Status::ALL.map(|status| match status {
        Status::Draft => (status.name(), "Being written"),
        Status::FieldTrial => (status.name(), "Being tried on real calls"),
        Status::Approved => (status.name(), "In use"),
    }));

    /// How much a finding matters.
    SeverityName => one_of(Severity::ALL.map(|severity| match severity {
        Severity::Note => (severity.name(), "Worth knowing"),
        Severity::Advise => (severity.name(), "Worth doing"),
        Severity::Repair => (severity.name(), "Must be repaired"),
        Severity::Danger => (severity.name(), "Can hurt someone"),
    }));

    /// How a worked call ends where it ends without a verdict.
    EndName => one_of([("unproven", "The walk ends without a verdict")]);

    /// What is done about a fault.
    RemedyWords => json_schema!({
        "type": "string",
        "pattern": pattern::remedy(),
        "errorMessage": "write `replace PART`, `correct`, `shut_down`, `refer` or `none`",
        "defaultSnippets": [
            { "label": "replace PART", "description": "A part is replaced, once its proof holds", "body": "replace ${1:part}" },
            { "label": "correct", "description": "Something is put right, and nothing replaced", "body": "correct" },
            { "label": "shut_down", "description": "It may not run", "body": "shut_down" },
            { "label": "refer", "description": "Somebody else is called", "body": "refer" },
            { "label": "none", "description": "There is nothing to mend", "body": "none" },
        ],
    });

    /// What kind of source it is.
    SourceKind => json_schema!({
        "type": ["string", "number", "boolean"],
        "pattern": "\\S",
        "errorMessage": "write what kind of source it is",
        "defaultSnippets": [
            { "label": "published", "description": "It can be looked up", "body": "published" },
            { "label": "practice", "description": "Common practice of the trade", "body": "practice" },
        ],
    });

    /// The spelling of a unit.
    UnitSpelling => json_schema!({
        "type": "string",
        "pattern": pattern::unit(),
        "errorMessage": format!("write a unit: {}, or number for a count", units().collect::<Vec<_>>().join(", ")),
        "defaultSnippets": units().chain(["number"]).map(suggested).collect::<Vec<_>>(),
    });

    /// A range with both ends, in words.
    Plausible => json_schema!({
        "type": "string",
        "pattern": pattern::plausible(),
        "errorMessage": "write both ends with their units, the smaller first: `0 V to 150 V`",
    });

    /// How far a meter may be off, in words.
    AccuracyWords => json_schema!({
        "type": ["string", "number"],
        "pattern": pattern::accuracy(),
        "errorMessage": "write a share, an amount with its unit, or both: `1 % + 0.3 V`",
    });

    /// A band, in words.
    Band => json_schema!({
        "type": "string",
        "pattern": pattern::band(),
        "errorMessage": "write `below B`, `at most B`, `above B`, `at least B` or `A to B`, several joined by commas; \
                         a bound is a quantity (24 V), plate.FIELD, 90 % of plate.FIELD, or plate.FIELD - 0.3 in.w.c.",
    });

    /// How many minutes something takes.
    Minutes => json_schema!({ "type": "number", "minimum": 0, "errorMessage": "write a plain number of minutes" });

    /// How often something is met, relative to others.
    Weight => json_schema!({
        "type": "number",
        "exclusiveMinimum": 0,
        "errorMessage": "write a plain number above nothing",
    });

    /// How often something may happen.
    Count => json_schema!({
        "type": "integer",
        "minimum": 1,
        "maximum": u32::MAX,
        "errorMessage": "write a whole number, 1 or more",
    });

    /// A name, or several.
    Names => one_or_several(&json!({
        "type": "string",
        "pattern": pattern::SNAKE_NAME,
        "errorMessage": "write the name of a value, or several in brackets: [one, two]",
    }));

    /// A quantity, or several.
    Amounts => one_or_several(&json!({
        "type": ["string", "number"],
        "pattern": pattern::quantity(),
        "errorMessage": "write a number and its unit (24 V), or several in brackets: [24 V, 25 V]",
    }));

    /// The value of a plate field: a quantity or a name, or several.
    AnyOfName => one_or_several(&json!({
        "type": ["string", "number"],
        "pattern": pattern::quantity_or_name(),
        "errorMessage": "write a number and its unit (80000 BTU/h), or the name of a value",
    }));
}

/// Texts of which one is meant, each with what it means.
fn one_of<const N: usize>(texts: [(&str, &str); N]) -> Schema {
    let names = texts.map(|(name, _)| name);
    json_schema!({
        "type": "string",
        "enum": names.as_slice(),
        "enumDescriptions": texts.map(|(_, meaning)| meaning).as_slice(),
        "errorMessage": format!("write one of {}", names.join(", ")),
    })
}

/// A scalar, or a list with one or more of them. There is no choice between schemas here, since editors explain those badly.
fn one_or_several(scalar: &Value) -> Schema {
    json_schema!({ "if": { "type": "array" }, "then": { "minItems": 1, "items": scalar }, "else": scalar })
}

fn units() -> impl Iterator<Item = &'static str> {
    Unit::all().map(Unit::symbol).filter(|symbol| !symbol.is_empty())
}

fn suggested(unit: &str) -> Value {
    // A percent sign cannot begin a text in YAML.
    let body = if unit == "%" { "percent" } else { unit };
    json!({ "label": body, "body": body })
}

/// A list of something.
pub(in crate::library) struct List<T>(PhantomData<T>);

impl<T: JsonSchema> JsonSchema for List<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("list_of_{}", T::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "array",
            "items": generator.subschema_for::<T>(),
            "errorMessage": "write a list in brackets, [one, two], even where it has one entry",
        })
    }
}

/// A map whose keys the author chose.
pub(in crate::library) struct Map<K, V>(PhantomData<(K, V)>);

impl<K: JsonSchema, V: JsonSchema> JsonSchema for Map<K, V> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("map_of_{}_to_{}", K::schema_name(), V::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut keys = generator.subschema_for::<K>();
        // A key is a text already, and no editor can guess it.
        keys.remove("type");
        keys.insert("doNotSuggest".to_owned(), true.into());
        json_schema!({
            "type": "object",
            "propertyNames": keys,
            "additionalProperties": generator.subschema_for::<V>(),
            "errorMessage": "write a map: lines of `name: …`, indented below the key",
        })
    }
}

/// A list or a map with something in it.
pub(in crate::library) struct NonEmpty<T>(PhantomData<T>);

impl<T: JsonSchema> JsonSchema for NonEmpty<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut schema = T::json_schema(generator);
        let least = if schema.get("type") == Some(&json!("array")) {
            "minItems"
        } else {
            "minProperties"
        };
        schema.insert(least.to_owned(), 1.into());
        schema
    }
}
