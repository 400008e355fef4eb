//! A value that may be a text, a list or a map.

use std::fmt;

use serde::de::value::MapAccessDeserializer;
use serde::de::{Deserialize, Deserializer, Error, MapAccess, SeqAccess, Visitor};

use super::{At, Entries};

/// A value of a shape that only the key in front of it decides, with its place.
pub(in crate::library) type Node = At<Form>;

/// The shapes such a value can have.
#[derive(Clone, Debug)]
pub(in crate::library) enum Form {
    Nothing,
    Text(String),
    /// A number or a truth value. What was typed is in the file's text at this place.
    Plain,
    List(Vec<Node>),
    Map(Entries<Node>),
}

impl<'de> Deserialize<'de> for Form {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Any;

        impl<'de> Visitor<'de> for Any {
            type Value = Form;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a text, a list or a map")
            }

            fn visit_str<E: Error>(self, text: &str) -> Result<Form, E> {
                Ok(Form::Text(text.to_owned()))
            }

            fn visit_bool<E: Error>(self, _: bool) -> Result<Form, E> {
                Ok(Form::Plain)
            }

            fn visit_i64<E: Error>(self, _: i64) -> Result<Form, E> {
                Ok(Form::Plain)
            }

            fn visit_u64<E: Error>(self, _: u64) -> Result<Form, E> {
                Ok(Form::Plain)
            }

            fn visit_f64<E: Error>(self, _: f64) -> Result<Form, E> {
                Ok(Form::Plain)
            }

            fn visit_unit<E: Error>(self) -> Result<Form, E> {
                Ok(Form::Nothing)
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Form, A::Error> {
                let mut items = Vec::new();
                while let Some(item) = seq.next_element()? {
                    items.push(item);
                }
                Ok(Form::List(items))
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Form, A::Error> {
                Entries::deserialize(MapAccessDeserializer::new(map)).map(Form::Map)
            }
        }

        deserializer.deserialize_any(Any)
    }
}
