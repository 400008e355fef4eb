//! An edge, as it is written: where an answer leads.

use std::fmt;

use schemars::JsonSchema;
use serde::Deserialize;
use serde::de::value::MapAccessDeserializer;
use serde::de::{Deserializer, Error, MapAccess, Visitor};

use super::super::schema::form::{Count, Must, Name, SeverityName, Words};
use super::super::schema::when;
use super::super::yaml::{At, Keyed};
use super::Text;

/// An edge as written: a step's name, or a map with more to say.
pub(in crate::library) type Edge = At<EdgeForm>;

#[derive(Debug)]
pub(in crate::library) enum EdgeForm {
    /// Nothing stands there.
    Nothing,
    Name(String),
    /// A number or a truth value, which is no name.
    Other,
    Map(Box<Keyed<EdgeMap>>),
}

/// An edge with more to say: beside `go`, a limit, what the answer means, a line for the job report.
#[derive(Debug, Deserialize, JsonSchema)]
#[schemars(rename = "edge", transform = when::limit_and_then)]
pub(in crate::library) struct EdgeMap {
    /// The step this leads to. Example: `clean_sensor`
    #[schemars(with = "Must<Name>")]
    pub go: Option<Text>,
    /// How often a walk may take this edge in one visit of the tree; after that it takes `then`. Example: `1`
    #[schemars(with = "Option<Count>")]
    pub at_most: Option<At<u32>>,
    /// Where it leads once it has been taken `at_most` times. Example: `sensor_dead`
    pub then: Option<Edge>,
    /// What the answer means, shown beside it. Example: `The board sees this flame`
    #[schemars(with = "Option<Words>")]
    pub means: Option<Text>,
    /// A line that goes on the job report when the walk takes this edge. Example:
    /// `{ severity: advise, text: Weak flame signal }`
    pub finding: Option<Keyed<Finding>>,
}

/// A line of the job report.
#[derive(Debug, Deserialize, JsonSchema)]
pub(in crate::library) struct Finding {
    /// How much it matters. Example: `advise`
    #[schemars(with = "Must<SeverityName>")]
    pub severity: Option<Text>,
    /// What the report says. Example: `Weak flame signal`
    #[schemars(with = "Must<Words>")]
    pub text: Option<Text>,
}

impl<'de> Deserialize<'de> for EdgeForm {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Form;

        impl<'de> Visitor<'de> for Form {
            type Value = EdgeForm;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a step's name, or a map with `go`")
            }

            fn visit_str<E: Error>(self, name: &str) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Name(name.to_owned()))
            }

            fn visit_bool<E: Error>(self, _: bool) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Other)
            }

            fn visit_i64<E: Error>(self, _: i64) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Other)
            }

            fn visit_u64<E: Error>(self, _: u64) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Other)
            }

            fn visit_f64<E: Error>(self, _: f64) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Other)
            }

            fn visit_unit<E: Error>(self) -> Result<EdgeForm, E> {
                Ok(EdgeForm::Nothing)
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<EdgeForm, A::Error> {
                let map = Keyed::deserialize(MapAccessDeserializer::new(map))?;
                Ok(EdgeForm::Map(Box::new(map)))
            }
        }

        deserializer.deserialize_any(Form)
    }
}
