//! The shapes that the reader of YAML gives to what it reads.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};

use super::form::{Map, Name};
use super::pattern;
use crate::library::raw::{EdgeForm, EdgeMap};
use crate::library::yaml::{At, Entries, Keyed};

/// A place in the file changes nothing about what stands there.
impl<T: JsonSchema> JsonSchema for At<T> {
    fn inline_schema() -> bool {
        T::inline_schema()
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn schema_id() -> Cow<'static, str> {
        T::schema_id()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        T::json_schema(generator)
    }
}

/// Unless a field says otherwise, the keys that an author chooses are names.
impl<T: JsonSchema> JsonSchema for Entries<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        Map::<Name, T>::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        Map::<Name, T>::json_schema(generator)
    }
}

/// A map whose keys the format fixes has no others.
impl<T: JsonSchema> JsonSchema for Keyed<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut schema = T::json_schema(generator);
        // Editors name by this what they offer to write out.
        schema.insert("title".to_owned(), T::schema_name().to_lowercase().into());
        // A schema that deals its keys out to conditions closes each of those by itself.
        if schema.get("properties").is_some() {
            schema.insert("additionalProperties".to_owned(), false.into());
        }
        schema
    }
}

/// A step's name, or a map with more to say.
///
/// It has no description: an editor would show that instead of the one of the key in front of it.
impl JsonSchema for EdgeForm {
    fn schema_name() -> Cow<'static, str> {
        "edge".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut schema = Keyed::<EdgeMap>::json_schema(generator);
        schema.remove("description");
        schema.insert("type".to_owned(), json!(["string", "object"]));
        schema.insert("pattern".to_owned(), pattern::SNAKE_NAME.into());
        schema.insert(
            "patternErrorMessage".to_owned(),
            Value::from("write the name of the step this leads to, or a map with `go`"),
        );
        schema
    }
}

/// An edge behind an answer, which the author named.
pub(in crate::library) enum Leads {}

impl JsonSchema for Leads {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "leads".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "Where this answer leads: a step's name, or a map with `go` and more to say. \
                            Example: `{ go: valve_voltage, means: The board sees this flame }`",
            "allOf": [generator.subschema_for::<EdgeForm>()],
        })
    }
}
